"""libhilum through ctypes, loaded once per process; addresses in, nothing copied. Needs nothing but Python."""

import ctypes
import functools
import os
import struct
from collections.abc import Iterable, Mapping
from ctypes import c_size_t

ROOM_TOO_SMALL, UNIT_NOT_GIVEN, BUSHEL_NOT_GIVEN, REFUSED = 6, 216, 217, 400
CURVES = {"log_linear": 1, "weibull": 2, "two_phase": 3}


class HilumError(ValueError):
    """What the library, or the contract of a table's columns, refuses."""


class Library:
    """The functions of hilum.h that are called here."""

    def __init__(self, path: str) -> None:
        self._functions = ctypes.CDLL(path)
        for words in ("hilum_status_message", "hilum_status_subject", "hilum_version"):
            getattr(self._functions, words).restype = ctypes.c_char_p
        self.version: str = self._functions.hilum_version().decode()

    def message(self, code: int) -> str:
        """What a code says: "the seed size must be more than 0"."""
        said = (self._functions.hilum_status_subject(code), self._functions.hilum_status_message(code))
        return b" ".join(part for part in said if part).decode()

    def call(self, function: str, *arguments: object, allowed: Iterable[int] = (), whose: str = "") -> int:
        """The status of a call, 0 or allowed, else an error; an int is an address, None is NULL."""
        given = (ctypes.c_void_p(value) if isinstance(value, int) else value for value in arguments)
        code: int = getattr(self._functions, function)(*given)
        if code != 0 and code not in allowed:
            raise HilumError(f"{whose or function}: {self.message(code)}")
        return code

    def measure(self, text: str, whose: str = "") -> tuple[float, tuple[int, ...], int]:
        """A quantity as text in base units; what it measures; 216 or 217 where its "unit" or "bu" needs a column."""
        raw, room, bases = text.encode(), ctypes.create_string_buffer(24), (struct.pack("@idd", 1, 1, 0), struct.pack("d", 1))
        read = functools.partial(self.call, "hilum_text_read", raw, c_size_t(len(raw)), whose=f'{whose}"{text}"')
        needs = read(None, None, room, allowed=(UNIT_NOT_GIVEN, BUSHEL_NOT_GIVEN))
        if needs:
            read(*bases, room)
        value, *measures = struct.unpack_from("@di6b", room)
        return value, tuple(measures), needs

    def words(self, measures: tuple[int, ...]) -> str:
        """What it is: "volume per mass"."""
        room = ctypes.create_string_buffer(32)
        unnamed = self.call("hilum_powers_name", struct.pack("6b", *measures[1:]), room, allowed=(220,))
        return "something else" if unnamed else room.value.decode()

    def curves(self, curves: Iterable[Mapping[str, object]]) -> bytes:
        """hilum_survival of curves as job documents write them: {"model": "log_linear", "decimal_reduction": "60 d"}."""
        names, packed = ("decimal_reduction", "fast", "fraction", "scale", "shape", "at", "z"), b""
        for curve in curves:
            given = [({"decimal_reduction": curve.get("slow", 0), **curve}).get(name, 0) for name in names]
            numbers = [self.measure(value)[0] if isinstance(value, str) else value for value in given]
            packed += struct.pack("@ii7d", CURVES[str(curve["model"])], "z" in curve, *numbers)
        return packed

    def plan(self, job: bytes) -> tuple[int, str]:
        """hilum_plan_json: 0 and the plan, or 400 and what is wrong with the job, as JSON."""
        length, code = c_size_t(1 << 16), ROOM_TOO_SMALL
        while code == ROOM_TOO_SMALL:
            room = ctypes.create_string_buffer(length.value)
            sizes = (c_size_t(len(job)), room, c_size_t(len(room)), ctypes.byref(length))
            code = self.call("hilum_plan_json", job, *sizes, allowed=(ROOM_TOO_SMALL, REFUSED))
        return code, room.raw[: length.value].decode()


@functools.cache
def library(version: str | None = None) -> Library:
    """The library of this process: HILUM_LIBRARY, else libhilum.so as Spark brought it; of the driver's version."""
    try:
        path = os.environ.get("HILUM_LIBRARY") or __import__("pyspark").SparkFiles.get("libhilum.so")
        found = Library(path)
    except (OSError, AssertionError, ImportError) as why:
        remedy = "set HILUM_LIBRARY on driver and workers, or addFile it as libhilum.so"
        raise HilumError(f"libhilum cannot be loaded: {remedy} ({why or 'there is no Spark session'})") from None
    if version not in (None, found.version):
        raise HilumError(f"{path} is libhilum {found.version}, but the driver has {version}: send the same to all")
    return found
