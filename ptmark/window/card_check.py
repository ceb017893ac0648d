"""The check length of the card on the bench: measured once, used until it is changed."""

import json
from datetime import datetime
from math import isfinite
from pathlib import Path

from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.words import day, format_length, tr

__all__ = ["check_in_words", "keep_check", "kept_check"]


def kept_check() -> float | None:
    """The check length in mm that was measured last; None where none is known."""
    return _kept()[0]


def keep_check(check_mm: float | None) -> None:
    """Use this check length from now on; None forgets it."""
    if check_mm is None:
        _file().unlink(missing_ok=True)
    elif check_mm != kept_check():
        today = datetime.now().astimezone().date()
        told = {"check_mm": check_mm, "measured": today.isoformat()}
        write_whole(_file(), json.dumps(told).encode())


def check_in_words(check_mm: float | None) -> str:
    """Where a card's check length comes from; "" where it was not kept from before."""
    kept, measured = _kept()
    if check_mm is None or check_mm != kept:
        return ""
    return tr(
        "The card's check length is {0}, as entered on {1}; another print has its own.",
        format_length(check_mm, "mm", 2),
        day(measured),
    )


def _file() -> Path:
    return user_folder() / "card.json"


def _kept() -> tuple[float | None, str]:
    try:
        told = json.loads(_file().read_text(encoding="utf-8"))
        check_mm, measured = float(told["check_mm"]), str(told["measured"])
    except (OSError, ValueError, TypeError, KeyError):
        return None, ""
    return (check_mm, measured) if isfinite(check_mm) and check_mm > 0 else (None, "")
