"""Gives memory back to the system once a photo has been looked at.

Looking for indications takes and frees many pieces of up to some ten megabytes. glibc keeps
those for the next one (man mallopt, M_MMAP_THRESHOLD grows with what is freed): about one
decoded picture more than is used. Large pieces go back as soon as they are free where that
threshold is set, as it grows no more then. Each thread would keep such pieces of its own, so
that what one lets go of no other can take (M_ARENA_MAX).
"""

import ctypes
import sys

__all__ = ["give_memory_back", "share_memory"]

_MMAP_THRESHOLD, _ARENA_MAX = -3, -8  # mallopt's numbers of them
_LARGE = (
    4_000_000  # bytes: NumPy asks for large pages from here on, so that fresh ones cost little
)


def share_memory() -> None:
    """On a glibc system let threads share free pieces and keep no large ones, else nothing."""
    if sys.platform.startswith("linux"):
        choose = getattr(ctypes.CDLL(None), "mallopt", None)
        if choose is not None:
            choose(_ARENA_MAX, 1)
            choose(_MMAP_THRESHOLD, _LARGE)


def give_memory_back(_token: object = None) -> None:
    """Ask glibc to let go of what is free (man malloc_trim), else nothing; for a worker."""
    if sys.platform.startswith("linux"):
        trim = getattr(ctypes.CDLL(None), "malloc_trim", None)
        if trim is not None:  # musl has none
            trim(0)
