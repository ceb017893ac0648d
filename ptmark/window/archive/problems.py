"""What a check of the archive found, by part number, serial and day in place of hashes."""

import re
from typing import TYPE_CHECKING, NamedTuple

from ptmark.errors import PtmarkError
from ptmark.window.words import day, from_core, tr

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit, Problem, Verified

__all__ = ["Row", "problem_rows"]

_MOST = 5000  # problems that are listed; the count tells of all
_LOOKED_UP = 500
_HASH = re.compile(r"[0-9a-f]{64}")


class Row(NamedTuple):
    """One problem in words; ``hit`` is the record it is of, where there is one."""

    kind: str
    what: str
    says: str
    hit: "Hit | None"


def problem_rows(archive: "Archive", found: "Verified") -> list[Row]:
    """The problems, those that are a loss first."""
    words = {
        "missing": tr("missing"),
        "changed": tr("changed"),
        "damaged": tr("cannot be read"),
        "orphaned": tr("belongs to no record"),
    }
    rows = []
    ordered = sorted(found.problems, key=lambda one: one.kind == "orphaned")
    for number, one in enumerate(ordered[:_MOST]):
        hit = _hit(archive, one) if number < _LOOKED_UP else None
        kind, what = words.get(one.kind, one.kind), _what(one.subject, hit)
        rows.append(Row(kind, what, from_core(one.says), hit))
    return rows


def _hit(archive: "Archive", one: "Problem") -> "Hit | None":
    from ptmark.archive import Query, find

    a_photo = _HASH.fullmatch(one.subject) is not None
    query = Query(photo=one.subject) if a_photo else Query(record_id=one.subject)
    try:
        hits = find(archive, query, limit=1).hits
    except PtmarkError:
        return None  # a damaged database may not answer; the subject is told all the same
    return hits[0] if hits else None


def _what(subject: str, hit: "Hit | None") -> str:
    a_photo = _HASH.fullmatch(subject) is not None
    words = {"database": tr("database"), "log": tr("log"), "store": tr("store of the photos")}
    named = tr("photo {0}", f"{subject[:12]}…") if a_photo else words.get(subject, subject)
    if hit is None:
        return named
    where = (hit.part or tr("no part number"), hit.serial, day(hit.examined_on), named)
    return ", ".join(piece for piece in where if piece)
