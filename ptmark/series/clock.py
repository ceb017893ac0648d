"""Minutes between the developer and a photo, both by the camera's clock."""

from collections.abc import Sequence
from datetime import datetime

from ptmark.errors import SeriesError, UsageError

__all__ = ["minutes_since"]


def minutes_since(developed: str, taken: Sequence[tuple[str, str]]) -> list[float]:
    """Minutes from when the developer was dry (or applied) to each photo.

    Parameters
    ----------
    developed : str
        ``2026-01-15T10:00`` or ``10:00`` (of the first photo's day), seconds if wanted.
    taken : sequence of (str, str)
        A photo's name and when it was taken, ISO 8601 as its EXIF data tell it.

    Raises
    ------
    UsageError
        If the developer's time cannot be read.
    SeriesError
        If a photo has no time or was taken before; an edited photo often has none.

    Examples
    --------
    >>> minutes_since("10:00", [("a.jpg", "2026-01-15T10:12:30+01:00")])
    [12.5]
    """
    clocks = [_clock(name, time) for name, time in taken]
    text = developed.strip()
    try:
        if "T" not in text and "-" not in text:
            text = f"{min(clocks).date().isoformat()}T{text}"
        start = datetime.fromisoformat(text).replace(tzinfo=None)
    except ValueError as exc:
        raise UsageError(
            f"'{developed}' is no time",
            where="--developed",
            mend="write 10:05 or 2026-01-15T10:05, by the camera's clock",
        ) from exc
    minutes = [round((one - start).total_seconds() / 60, 3) for one in clocks]
    for (name, _), one in zip(taken, minutes, strict=True):
        if not 0 <= one <= 1440:
            raise SeriesError(
                f"was taken {one:g} min after the developer by the camera's clock",
                where=name,
                mend="check --developed, or give --minutes",
            )
    return minutes


def _clock(name: str, taken: str) -> datetime:
    """The camera's clock, without its offset: both ends are read by the same clock."""
    try:
        return datetime.fromisoformat(taken).replace(tzinfo=None)
    except ValueError as exc:
        raise SeriesError(
            "the photo does not tell when it was taken",
            where=name,
            mend="give the minutes since the developer with --minutes",
        ) from exc
