"""In which order the inspections found are shown."""

from collections.abc import Callable
from dataclasses import replace
from itertools import islice
from typing import TYPE_CHECKING, Any

from ptmark.window.bits import Choice
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit, Page, Query

__all__ = ["NEWEST", "OrderChoice", "in_order"]

NEWEST = "newest"
_BY: "dict[str, tuple[str, Callable[[Hit], Any]]]" = {
    "oldest": (tr("oldest first"), lambda hit: (hit.examined_on, hit.number)),
    "longest": (tr("longest indication first"), lambda hit: -(hit.longest_mm or 0.0)),
    "most": (tr("most indications first"), lambda hit: -hit.indications),
    "part": (
        tr("by part and serial number"),
        lambda hit: (hit.part, hit.serial, hit.examined_on, hit.number),
    ),
}


class OrderChoice(Choice):
    """Newest first, as the archive gives them, or one of the others."""

    def __init__(self) -> None:
        super().__init__(tr("Order of the records found"))
        self.addItem(tr("newest first"), NEWEST)
        for name, (shown, _) in _BY.items():
            self.addItem(shown, name)

    @property
    def chosen(self) -> str:
        """The name of the order."""
        return str(self.currentData())


def in_order(
    archive: "Archive", token: Token, query: "Query", page: "Page", order: str, most: int
) -> "Page":
    """A search's first page, or what fits in another order: up to ``most``, the newest ones."""
    if order == NEWEST:
        return page
    from ptmark.archive import find_all

    hits = page.hits
    if page.after is not None:
        token.check()
        hits = list(islice(find_all(archive, query), most))
    return replace(page, hits=sorted(hits, key=_BY[order][1]), after=None, back_to="")
