"""From a record's bytes to the rows it is found by; pure, so that it can be done again."""

import hashlib
import re
from contextlib import suppress
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import Any
from unicodedata import normalize

from ptmark.criteria import SEVERITY
from ptmark.errors import ArchiveError
from ptmark.record import least_of
from ptmark.record.migrate import migrated
from ptmark.record.revisions import revision_hash
from ptmark.record.signing import photo_hashes

__all__ = ["Derived", "derived", "fold", "is_day_given"]

Row = dict[str, Any]
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}(?!\d)")


@dataclass(frozen=True, slots=True)
class Derived:
    """The rows of one record, without the numbers the database gives them."""

    part: str
    serial: str
    inspection: Row
    revisions: list[Row]
    photos: list[Row]  # sha256, place, name
    indications: list[Row]
    text: str


@lru_cache(1024)
def fold(text: str) -> str:
    r"""A text as it is searched: one space between words, no case, accents one with letters.

    Keyboards and file names give an accented letter as one character or as two (Unicode
    Standard Annex 15: NFC and NFD); both are the same part number.

    Examples
    --------
    >>> fold("  P-17  Ab")
    'p-17 ab'
    >>> fold("U\u0308") == fold("\u00dc")
    True
    """
    plain = " ".join(text.split())
    if plain.isascii():
        return plain.casefold()
    return normalize("NFC", normalize("NFC", plain).casefold())


def derived(document: Row, data: bytes) -> Derived:
    """The rows of a record.

    Parameters
    ----------
    document : dict
        The record's JSON as parsed, of any version.
    data : bytes
        The file's bytes.

    Raises
    ------
    ArchiveError
        If the document is no record of any version.
    """
    try:
        return _derived(migrated(document), document, data)
    except (KeyError, TypeError, AttributeError, ValueError) as exc:
        raise ArchiveError(f"is no record ({exc!r})", where="document") from exc


def _derived(now: Row, document: Row, data: bytes) -> Derived:
    fields = now["fields"]
    photos = [now, *now.get("more_photos", ())]
    judged = [one["evaluation"] for one in photos if one["evaluation"]]
    indications = _indications(now, photos, judged)
    lengths = [one["length_mm"] for one in indications if one["length_mm"] is not None]
    examiner, procedure = fields.get("examiner", ""), fields.get("procedure", "")
    history = now.get("history", [])
    newest = {name: value for name, value in document.items() if name != "history"}
    return Derived(
        part=fields.get("part_number", "").strip(),
        serial=fields.get("serial_number", "").strip(),
        inspection={
            "record_id": now["id"],
            "sha256": hashlib.sha256(data).hexdigest(),
            "revision": now["revision"],
            "signatures": len(now["signatures"]),
            "created": now["created"],
            "examined_on": _date(fields.get("examination_date", ""), now["created"]),
            "examiner": examiner,
            "examiner_key": fold(examiner),
            "procedure": procedure,
            "procedure_key": fold(procedure),
            "profile": judged[0].get("profile", "") if judged else "",
            "verdict": (now.get("together") or now["evaluation"] or {}).get("verdict") or "",
            "disposition": now["disposition"].get("decision", ""),
            "datum": fields.get("location_datum", ""),
            "retest_of": (now["retest_of"] or {}).get("id"),
            "indications": len(indications),
            "longest_mm": (longest := max(lengths, default=None)),
            "longest_u_mm": _uncertainty(indications, longest),
            # What runs out of the photo may be the longest, however short the part that shows.
            "longest_least": max((one["least"] for one in indications), default=0),
        },
        revisions=[_revision(one) for one in [*history, newest]],
        photos=_photos([*history, newest]),
        indications=indications,
        text=_text(now),
    )


def _uncertainty(indications: list[Row], longest: float | None) -> float | None:
    """U of the longest, mm; the largest where several are as long."""
    found = [one["length_u_mm"] for one in indications if one["length_mm"] == longest]
    return max((u for u in found if u is not None), default=None)


def _date(given: str, created: str) -> str:
    """Year-month-day by ASCII digits, as indexes and the index of words are ordered by it."""
    if found := _DAY.match(given.strip()):
        return found[0]
    return created[:10] if _DAY.fullmatch(created[:10]) else "0000-00-00"


def is_day_given(given: str, filed: str) -> bool:
    """Whether the day that a record is filed under is the one it gives, and one there is.

    Examples
    --------
    >>> is_day_given("2026-03-01", "2026-03-01")
    True
    >>> is_day_given("1st of March", "2026-03-02"), is_day_given("2026-02-30", "2026-02-30")
    (False, False)
    """
    with suppress(ValueError):
        return date.fromisoformat(filed).isoformat() == given.strip()[:10]
    return False


def _indications(now: Row, photos: list[Row], judged: list[Row]) -> list[Row]:
    """One row for each letter of a set: as the photo shows it whose size is that of record.

    Places of further photos stand in frames of their own, which cannot be laid over others;
    they are left out.
    """
    seen = (now.get("together") or {}).get("seen_again", ())
    held = {one["id"]: one["of_record"] for one in seen}
    findings = [f for one in judged for f in one.get("findings", ())]
    rows: dict[str, Row] = {}
    for number, photo in enumerate(photos, 1):
        for one in photo["indications"]:
            if held.get(one["id"]) in {None, number}:
                own = {} if number == 1 else {"centre_mm": None, "ends_mm": None}
                rows.setdefault(one["id"], _indication({**one, **own}, findings))
    return list(rows.values())


def _indication(one: Row, findings: list[Row]) -> Row:
    found = {f["verdict"] for f in findings if one["id"] in f["indications"]}
    centre = one["centre_mm"] or [None, None]
    ends = one["ends_mm"] or [[None, None], [None, None]]
    return {
        "letter": one["id"],
        "kind": one["kind"],
        "kind_key": fold(one["kind"]),
        "shape": one["shape"] or "",
        "relevance": one["relevance"],
        "verdict": next((word for word in reversed(SEVERITY) if word in found), ""),
        "length_mm": _float(one["length_mm"]),
        "length_u_mm": _float(one["length_u_mm"]),
        "width_mm": _float(one["width_mm"]),
        "x_mm": _float(centre[0]),
        "y_mm": _float(centre[1]),
        "x1_mm": _float(ends[0][0]),
        "y1_mm": _float(ends[0][1]),
        "x2_mm": _float(ends[1][0]),
        "y2_mm": _float(ends[1][1]),
        "least": int(one["length_mm"] is not None and any(least_of(one).values())),
    }


def _float(value: float | None) -> float | None:
    return None if value is None else float(value)


def _revision(one: Row) -> Row:
    change = one.get("change") or {}
    return {
        "number": one["revision"],
        # The seal was checked when the record was taken in; version 1 had none.
        "sha256": (one.get("seal") or {}).get("sha256") or revision_hash(one),
        "at": change.get("at", one["created"]),
        "by": change.get("by", ""),
        "why": change.get("why", ""),
        "signatures": len(one.get("signatures", ())),
    }


def _photos(revisions: list[Row]) -> list[Row]:
    """Photos of every revision, those of the newest first."""
    names: dict[str, str] = {}
    for one in reversed(revisions):
        shown = [each["photo"] for each in (one, *one.get("more_photos", ()))]
        own = {str(photo["sha256"]): str(photo["file"]) for photo in shown}
        for sha256 in photo_hashes(one):
            names[sha256] = names.get(sha256) or own.get(sha256, "")
    return [
        {"place": place, "sha256": sha256, "name": name}
        for place, (sha256, name) in enumerate(names.items())
    ]


def _text(now: Row) -> str:
    said = [now["id"], *now["fields"].values(), now["disposition"].get("reason", "")]
    for photo in (now, *now.get("more_photos", ())):
        for one in photo["indications"]:
            said += [one["kind"], one["note"], one["reason"]]
    return "\n".join(text for text in said if text)
