"""One inspection: what a person decides and what follows from it, from photo to record.

`Inspection` holds the flow; window and commands both work through it. What is decided is one
immutable `State`, from which undo, redo and the draft on disk come; what follows from it is
worked out again (`workings`, `set_results`) and handed on as scene and record (`handing_on`).
An inspection has one photo or several (`photo_set`), and several inspections of one area can
be laid side by side (`several`).
"""

from ptmark.inspection.draft import draft_to_json, restore_draft
from ptmark.inspection.state import Marked, State
from ptmark.inspection.tracing import trace_again
from ptmark.inspection.whole import Inspection

__all__ = [
    "Inspection",
    "Marked",
    "State",
    "draft_to_json",
    "restore_draft",
    "trace_again",
]
