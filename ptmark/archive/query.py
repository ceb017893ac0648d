"""What is looked for: part, serial, dates, verdict, kind, lengths, words."""

import json
from dataclasses import asdict, dataclass, fields

from ptmark.errors import ArchiveError

__all__ = ["Query", "query_from_json", "query_to_json"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Query:
    """Which inspections; empty members ask nothing.

    ``part``, ``serial``, ``examiner`` and ``procedure`` take ``*`` for any letters and ``?``
    for one, and do not tell capitals apart. Dates are year-month-day, both ends included.
    ``kind``, ``shape`` and the lengths (mm) ask for one indication that has all of them, or may
    have: whose length is the least that it can be fits any ``shortest_mm``, and a
    ``longest_mm`` that is no less than what is seen of it.
    ``words`` are whole words, all of them; a last ``*`` takes the beginning of one.
    """

    part: str = ""
    serial: str = ""
    since: str = ""
    until: str = ""
    verdict: str = ""
    disposition: str = ""
    examiner: str = ""
    procedure: str = ""
    criteria: str = ""
    kind: str = ""
    shape: str = ""
    shortest_mm: float | None = None
    longest_mm: float | None = None
    words: str = ""
    photo: str = ""
    record_id: str = ""


def query_to_json(query: Query) -> str:
    """A query as JSON text, only what it asks."""
    return json.dumps({k: v for k, v in asdict(query).items() if v not in ("", None)})


def query_from_json(said: str) -> Query:
    """A query from its JSON text.

    Raises
    ------
    ArchiveError
        If it asks for something there is not.
    """
    known = {one.name for one in fields(Query)}
    told = json.loads(said)
    if not isinstance(told, dict) or not told.keys() <= known:
        raise ArchiveError(
            f"'{said}' is no query", mend=f"it may ask {', '.join(sorted(known))}"
        )
    return Query(**told)
