"""Records of earlier versions, step by step to the present one.

Version 1: one revision, no signatures.
Version 2: revisions, signatures, reviews, the link from a retest to what was tested before.
Version 3: several photos in one record.
"""

from collections.abc import Callable
from typing import Any

__all__ = ["migrated"]

Document = dict[str, Any]


def migrated(document: Document) -> Document:
    """The document as `Record` takes it; the one given is not written to.

    Version 2 needs no step: what it lacks is empty, and a record read from it stays in it, so
    that its signatures and the hashes that others hold of it stay true. Earlier revisions in
    ``history`` stay as they are too: their hashes stand in the chain.
    """
    now = dict(document)
    while (step := _STEPS.get(now["schema"])) is not None:
        now = step(now)
    return now


def _from_1(document: Document) -> Document:
    return {
        **document,
        "schema": "ptmark-record/2",
        "retest_of": None,
        "reviews": [],
        "previous": None,
        "change": None,
        "signatures": [],
    }


_STEPS: dict[str, Callable[[Document], Document]] = {"ptmark-record/1": _from_1}
