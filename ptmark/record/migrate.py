"""Records of earlier versions, step by step to the present one.

Version 1: one revision, no signatures.
Version 2: revisions, signatures, reviews, the link from a retest to what was tested before.
"""

from collections.abc import Callable
from typing import Any

from ptmark.record.check import SCHEMA_NAME

__all__ = ["migrated"]

Document = dict[str, Any]


def migrated(document: Document) -> Document:
    """The document as the present version has it; the one given is not written to.

    Earlier revisions in ``history`` stay as they are: their hashes stand in the chain.
    """
    now = dict(document)
    while now["schema"] != SCHEMA_NAME:
        now = _STEPS[now["schema"]](now)
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
