"""Name and logo of the firm that reports, from the user's own settings.

``company.json`` in the user's folder, plain JSON: ``{"name": …, "lines": [address, …],
"logo": file}``; the logo, PNG or JPEG, lies beside it. Nothing is there by default.
"""

import json
from dataclasses import dataclass
from pathlib import Path

from ptmark.errors import ReportError
from ptmark.places import user_folder

__all__ = ["Company", "company"]

_LARGEST = 4 * 2**20  # bytes of a logo


@dataclass(frozen=True, slots=True, kw_only=True)
class Company:
    """What stands at the head of a report; ``logo`` holds the picture's bytes or None."""

    name: str
    lines: tuple[str, ...] = ()
    logo: bytes | None = None


def company(folder: Path | None = None) -> Company | None:
    """The settings in ``folder``, the user's own if None; None where there are none.

    Raises
    ------
    ReportError
        If the file is there and cannot be used: a report goes out with the firm's name as it
        was set, or not at all.
    """
    path = (folder or user_folder()) / "company.json"
    mend = 'write {"name": "…", "lines": ["…"], "logo": "logo.png"}, or take the file away'
    if not path.exists():
        return None
    try:
        name, lines, logo = _told(json.loads(path.read_text(encoding="utf-8")))
    except (OSError, ValueError, KeyError, TypeError, AttributeError) as exc:
        raise ReportError(f"cannot be used: {exc}", where=str(path), mend=mend) from exc
    picture = None if not logo else _logo(path.parent / logo)
    return Company(name=name[:100], lines=tuple(line[:100] for line in lines[:4]), logo=picture)


def _told(told: dict[str, object]) -> tuple[str, list[str], str]:
    """Name, lines and the logo's file; TypeError where one is no text."""
    name, lines, logo = told["name"], told.get("lines", []), told.get("logo") or ""
    if not isinstance(lines, list):
        raise TypeError("lines must be a list")
    texts = [one for one in (name, logo, *lines) if isinstance(one, str)]
    if len(texts) < 2 + len(lines):
        raise TypeError("name, logo and lines must be texts")
    return texts[0], texts[2:], texts[1]


def _logo(path: Path) -> bytes:
    mend = "give a PNG or JPEG of at most 4 MB"
    try:
        data = path.read_bytes() if path.stat().st_size <= _LARGEST else b""
    except OSError as exc:
        raise ReportError(
            f"the logo cannot be read ({exc.strerror or exc})", where=str(path), mend=mend
        ) from exc
    if not data.startswith((b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff")):
        raise ReportError("is no logo of a known kind and size", where=str(path), mend=mend)
    return data
