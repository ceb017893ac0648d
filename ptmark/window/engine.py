"""Loads the rooms in workers, one at a time.

Packages that import each other must not be loaded by two threads at once: each would wait for
the other, and Python ends that by handing one of them a half-made module.
"""

import threading
from typing import TYPE_CHECKING

from ptmark.memory import share_memory

if TYPE_CHECKING:
    from ptmark.inspection import Inspection

__all__ = ["load_engine", "load_photo_room"]

_one_at_a_time = threading.Lock()


def load_photo_room() -> None:
    """Load what a first look at a photo needs, and no more."""
    with _one_at_a_time:
        import ptmark.photo  # noqa: F401 - loaded here so that later imports find it whole


def load_engine() -> "type[Inspection]":
    """Load every room that an inspection needs."""
    with _one_at_a_time:
        share_memory()
        import ptmark.inspection.draft
        import ptmark.record  # noqa: F401 - as above
        from ptmark.inspection import Inspection
    return Inspection
