"""One inspection: what a person decides and what follows from it, from photo to record.

`Inspection` holds the flow; window and commands both work through it. What is decided is one
immutable `State`, from which undo, redo and the draft on disk come; what follows from it is
worked out again (`workings`, `set_results`) and handed on as scene and record (`handing_on`).
An inspection has one photo or several (`photo_set`), and several inspections of one area can
be laid side by side (`several`).
"""

from ptmark.inspection.draft import draft_of_record, draft_to_json, restore_draft
from ptmark.inspection.several import frame_of, minutes_given, minutes_taken, same_in_set
from ptmark.inspection.state import DISPOSITIONS, Marked, State, letter
from ptmark.inspection.tracing import trace_again
from ptmark.inspection.whole import Inspection

__all__ = [
    "DISPOSITIONS",
    "Inspection",
    "Marked",
    "State",
    "draft_of_record",
    "draft_to_json",
    "frame_of",
    "letter",
    "minutes_given",
    "minutes_taken",
    "restore_draft",
    "same_in_set",
    "trace_again",
]
