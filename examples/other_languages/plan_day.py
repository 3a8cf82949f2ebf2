"""Plans a treating day from Python: the C library through ctypes, a job as JSON in, the plan as JSON out.

    python3 plan_day.py libhilum.so job.json

The library must have been built with the feature `job`, as `cargo xtask dist c` does.
"""

import ctypes
import sys

OK, ROOM_TOO_SMALL, REFUSED = 0, 6, 400


def library(path):
    """The library, with the one function that is called here declared as in hilum.h."""
    hilum = ctypes.CDLL(path)
    hilum.hilum_plan_json.restype = ctypes.c_int32
    hilum.hilum_plan_json.argtypes = [
        ctypes.c_char_p,
        ctypes.c_size_t,
        ctypes.c_char_p,
        ctypes.c_size_t,
        ctypes.POINTER(ctypes.c_size_t),
    ]
    hilum.hilum_status_message.restype = ctypes.c_char_p
    hilum.hilum_status_message.argtypes = [ctypes.c_int32]
    return hilum


def plan(hilum, job):
    """The plan of a job, both as JSON in UTF-8. A refused job raises ValueError with its problems."""
    room, length = 0, ctypes.c_size_t()
    while True:
        out = ctypes.create_string_buffer(room) if room else None
        status = hilum.hilum_plan_json(job, len(job), out, room, ctypes.byref(length))
        if status != ROOM_TOO_SMALL:
            break
        room = length.value
    text = out.raw[: length.value] if out else b""
    if status == REFUSED:
        raise ValueError(text.decode())
    if status != OK:
        raise RuntimeError(hilum.hilum_status_message(status).decode())
    return text


def main():
    path, job = sys.argv[1:]
    with open(job, "rb") as file:
        try:
            sys.stdout.buffer.write(plan(library(path), file.read()))
        except ValueError as refused:
            sys.exit(f"{job} is refused: {refused}")


if __name__ == "__main__":
    main()
