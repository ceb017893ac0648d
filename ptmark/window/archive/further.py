"""Looking back through the archive in stretches, for as long as one waits unasked."""

import time
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Page, Query

__all__ = ["Counted", "look"]

_WAITED = 0.5  # s, common practice, no source


class Counted(NamedTuple):
    """How many a search found; more than these unless ``known``.

    ``back_to`` is set where it did not look to the end, but through all after that day.
    """

    number: int
    query: "Query"
    known: bool = True
    back_to: str = ""


def look(
    archive: "Archive",
    query: "Query",
    token: Token,
    *,
    after: tuple[str, int] | None = None,
    limit: int,
) -> "Page":
    """A page of what fits; its ``back_to`` tells where looking stopped before it was full."""
    from ptmark.archive import find

    began = time.monotonic()
    page = find(archive, query, after=after, limit=limit, whole=False)
    hits = page.hits
    while page.back_to and time.monotonic() - began < _WAITED:
        token.check()
        left = limit - len(hits)
        page = find(archive, query, after=page.after, limit=left, whole=False)
        hits += page.hits
    return replace(page, hits=hits)
