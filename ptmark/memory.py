"""What becomes of memory that looking at a photo lets go of, where the GNU C library has it.

Looking takes and frees many pieces of up to some ten megabytes. The library hands a large piece
back at once and takes it anew for the next, which costs more than the work in it; so a program
that looks at photo after photo keeps them (`keep_freed_memory`). The window, which lies idle
between two photos, gives them back (`share_memory`, `give_memory_back`). Elsewhere these do
nothing. Numbers and meaning: man mallopt(3), malloc_trim(3).
"""

import ctypes
import os
import sys
from threading import Event

__all__ = ["give_memory_back", "keep_freed_memory", "share_memory"]

_TRIM_THRESHOLD, _MMAP_THRESHOLD, _ARENA_MAX = -1, -3, -8  # mallopt's numbers of them
_LARGE = (
    4_000_000  # bytes: NumPy asks for large pages from here on, so that fresh ones cost little
)
_WHOLE_PICTURE = 32 << 20  # bytes, about: a decoded picture goes back all the same
_KEPT = 256 << 20  # bytes at the end of the heap


_chosen = Event()


def keep_freed_memory() -> None:
    """Keep freed pieces smaller than a whole picture for the next.

    Not where that was chosen before: by `share_memory` or by the environment (MALLOC_…).
    """
    if not _chosen.is_set():
        _chosen.set()
        if not any(name.startswith(("MALLOC_", "GLIBC_TUNABLES")) for name in os.environ):
            _choose({_MMAP_THRESHOLD: _WHOLE_PICTURE, _TRIM_THRESHOLD: _KEPT})


def share_memory() -> None:
    """Let threads share free pieces and keep no large ones.

    Each thread would keep such pieces of its own, so that what one lets go of no other can
    take. Large pieces go back as soon as they are free where their threshold is set, as it
    grows no more then.
    """
    _chosen.set()
    _choose({_ARENA_MAX: 1, _MMAP_THRESHOLD: _LARGE})


def give_memory_back(_token: object = None) -> None:
    """Let go of what is free; for a worker."""
    if sys.platform.startswith("linux"):
        trim = getattr(ctypes.CDLL(None), "malloc_trim", None)
        if trim is not None:  # musl has none
            trim(0)


def _choose(settings: dict[int, int]) -> None:
    if sys.platform.startswith("linux"):
        choose = getattr(ctypes.CDLL(None), "mallopt", None)
        if choose is not None:
            for name, value in settings.items():
                choose(name, value)
