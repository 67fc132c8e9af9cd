"""Memory that is free but not given back: the allocator keeps what lies between what is in use."""

import ctypes
import sys
from functools import cache


def give_back() -> None:
    """Give free memory back to the system, where its allocator can be told to (glibc)."""
    trim = _trim()
    if trim is not None:
        trim(0)


@cache
def _trim() -> "ctypes._NamedFuncPointer | None":
    if sys.platform != "linux":
        return None
    return getattr(ctypes.CDLL(None), "malloc_trim", None)
