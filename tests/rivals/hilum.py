"""The C library, called as any program calls it."""
import ctypes
from ctypes import Structure, byref, c_char, c_double, c_int8, c_int32, c_size_t


class One(Structure):
    """Every quantity is a structure of one double."""

    _fields_ = [("value", c_double)]


class Powers(Structure):
    _fields_ = [(name, c_int8) for name in ("length", "mass", "time", "temperature", "seeds", "cells")]

    def tuple(self):
        return tuple(getattr(self, name) for name, _ in self._fields_)


class Word(Structure):
    _fields_ = [("text", c_char * 32)]

    def __str__(self):
        return self.text.decode()


class Unit(Structure):
    _fields_ = [("factor", c_double), ("number", c_int32), ("powers", Powers), ("symbol", Word), ("ucum", Word)]


class Survival(Structure):
    _fields_ = [
        ("curve", c_int32), ("has_reference", c_int32), ("reduction", c_double), ("fast", c_double), ("fraction", c_double),
        ("scale", c_double), ("shape", c_double), ("reference", c_double), ("z", c_double),
    ]


class Period(Structure):
    _fields_ = [("lasts", c_double), ("at", c_double), ("known", c_int32)]


class Sample(Structure):
    _fields_ = [("at", c_double), ("count", c_double)]


class Fit(Structure):
    _fields_ = [
        ("log10_initial", c_double), ("reduction", c_double), ("log10_initial_error", c_double), ("reduction_error", c_double),
        ("residual", c_double), ("known", c_int32),
    ]


class Refused(Exception):
    """A status other than 0."""


class Library:
    def __init__(self, path):
        self.own = ctypes.CDLL(path)

    def call(self, name, *arguments):
        status = getattr(self.own, name)(*arguments)
        if status != 0:
            raise Refused(f"{name}: status {status}")

    def units(self):
        """All units of the table."""
        index = 0
        while True:
            unit = Unit()
            if self.own.hilum_unit_at(c_size_t(index), byref(unit)) != 0:
                return
            yield unit
            index += 1

    def of_one(self, name, *numbers):
        """A function of quantities that gives one quantity."""
        out = One()
        self.call(name, *[One(number) for number in numbers], byref(out))
        return out.value

    def read(self, kind, text):
        """A text as a quantity of a kind, in base units."""
        out = One()
        raw = text.encode()
        self.call(f"hilum_{kind}_read", raw, c_size_t(len(raw)), byref(out))
        return out.value

    def survived(self, name, survival, periods, after):
        n = len(periods)
        storage = (Period * max(n, 1))(*[Period(*period) for period in periods])
        work = (ctypes.c_uint64 * (3 * max(n, 1)))()
        out = c_double()
        self.call(name, byref(survival), storage, work, c_size_t(n), One(after), byref(out))
        return out.value

    def fit(self, samples):
        list_ = (Sample * len(samples))(*[Sample(*sample) for sample in samples])
        work = (ctypes.c_uint64 * (3 * len(samples)))()
        fit = Fit()
        self.call("hilum_fit_log_linear", list_, work, c_size_t(len(samples)), byref(fit))
        return fit


