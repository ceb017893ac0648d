"""Parts of a record as a person reads them, in place of their paths in the JSON alone."""

from collections.abc import Callable

from ptmark.record.fields import FIELDS

__all__ = ["path_label"]

_FIELDS = {one.key: one.label for one in FIELDS}
_LABELS = {
    "photo": "the photo's file",
    "scale": "scale of the photo",
    "conditions": "what the photo cannot show",
    "area_px": "area that is examined",
    "left_out": "what was left out",
    "evaluation": "verdict and findings",
    "disposition.decision": "the inspector's decision",
    "disposition.reason": "reason of the decision",
    "cautions": "what is cautioned of",
    "weld_length_mm": "length of the weld",
    "thickness_mm": "thickness of the part",
    "weld_direction_deg": "course of the weld",
    "diameter_mm": "diameter of the part",
    "edges_mm": "lines on the part",
    "given": "what was given for the photo",
    "chosen": "what was chosen for all photos",
    "process": "limits of the process",
    "more_photos": "further photos",
    "together": "verdict of all photos",
    "retest_of": "link to the test before",
    "reviews": "the reviewer's entries",
}


def path_label(path: str, say: Callable[[str], str] = str) -> str:
    """What a path of `changed_paths` is called, as ``say`` has it, the path behind it.

    Examples
    --------
    >>> path_label("disposition.decision"), path_label("fields.examiner")
    ("the inspector's decision (disposition.decision)", 'Examiner (fields.examiner)')
    >>> path_label("indications.B.length_mm"), path_label("seal")
    ('indication B (indications.B.length_mm)', 'seal')
    """
    head, _, tail = path.partition(".")
    if head == "indications" and tail:
        label = f"indication {tail.partition('.')[0]}"
    elif head == "fields":
        label = _FIELDS.get(tail, "")
    else:
        label = _LABELS.get(path) or _LABELS.get(head, "")
    return f"{say(label)} ({path})" if label else path
