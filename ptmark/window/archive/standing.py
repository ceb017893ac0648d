"""What the state page tells of an archive: where it is, its rules and holds, what is due."""

from typing import TYPE_CHECKING, NamedTuple

from ptmark.window.archive.saved import asked_in_words
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["State", "read_state"]


class State(NamedTuple):
    """Rules and holds as rows of the table, and what this login may."""

    where: str
    records: int
    rows: list[tuple[str, ...]]  # kind, name, what, how long, why
    due: int
    holds: frozenset[str]  # their names
    may: bool  # set one


def read_state(archive: "Archive") -> State:
    """Read it beside the window."""
    from ptmark.archive import Query, count, due, keeping, may_hold, query_from_json

    place = archive.file or archive.engine.url.render_as_string(hide_password=True)
    where = tr("database {0}; photos {1}", place, archive.store.url)
    rows: list[tuple[str, ...]] = []
    told = keeping(archive)
    for kind, found in told.items():
        for one in found:
            what = asked_in_words(query_from_json(str(one["query"])))
            years = _years(one["years"]) if kind == "rule" else tr("as long as it stands")
            shown = tr("rule") if kind == "rule" else tr("hold")
            rows.append((shown, str(one["name"]), what, years, str(one["reason"])))
    holds = frozenset(str(one["name"]) for one in told["hold"])
    gone = len(due(archive)) if rows else 0
    return State(where, count(archive, Query()), rows, gone, holds, may_hold(archive))


def _years(told: object) -> str:
    number = float(str(told))
    return tr("1 year") if number == 1 else tr("{0:g} years", number)
