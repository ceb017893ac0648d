"""An inspection under way as plain JSON, so that a kill loses nothing.

A draft holds what a person decided (the state) and which photo it belongs to; what follows
from the state is worked out again. Left-out blobs are found again by looking again.
"""

from pathlib import Path
from typing import Any

import numpy as np

from ptmark.dye import EdgeQuality
from ptmark.errors import RecordError
from ptmark.inspection import Inspection, Marked, State
from ptmark.photo import open_photo
from ptmark.scale import reference_from_json, reference_to_json

__all__ = ["DRAFT_SCHEMA", "draft_to_json", "restore_draft"]

DRAFT_SCHEMA = "ptmark-draft/1"
_PLAIN = (
    "profile",
    "decision_rule",
    "relief_mm",
    "weld_length_mm",
    "thickness_mm",
    "fields",
    "decision",
    "decision_reason",
)


def draft_to_json(inspection: Inspection) -> dict[str, Any]:
    """The inspection's photo and state as a JSON document."""
    state, photo = inspection.state, inspection.photo
    return {
        "schema": DRAFT_SCHEMA,
        "photo": None
        if photo is None
        else {"path": str(photo.info.path.absolute()), "sha256": photo.info.sha256},
        "reference": None if state.reference is None else reference_to_json(state.reference),
        "area_px": None if state.area_px is None else [list(p) for p in state.area_px],
        "weld_px": None if state.weld_px is None else [list(p) for p in state.weld_px],
        "marked": [_marked_to_json(m) for m in state.marked],
        "mode": state.mode,
        **{name: getattr(state, name) for name in _PLAIN},
    }


def restore_draft(inspection: Inspection, document: dict[str, Any]) -> None:
    """Open the draft's photo and take its state.

    Raises
    ------
    PhotoError
        If the photo cannot be opened any more.
    RecordError
        If the draft does not fit, or the photo at that place is another one now.
    """
    try:
        if document["schema"] != DRAFT_SCHEMA:
            raise RecordError(f"unknown version {document['schema']!r}", where="draft")
        state = _state(document)
        photo = document["photo"]
        path = None if photo is None else Path(photo["path"])
        sha256 = None if photo is None else str(photo["sha256"])
    except (KeyError, TypeError, ValueError) as exc:
        raise RecordError(f"does not fit: {exc!r}", where="draft") from exc
    if path is not None:
        opened = open_photo(path)
        if opened.info.sha256 != sha256:
            raise RecordError(
                "the photo was changed since", where=str(path), mend="put the original back"
            )
        inspection.set_photo(opened)
    inspection.take_state(state)


def _marked_to_json(one: Marked) -> dict[str, Any]:
    return {
        "id": one.id,
        "outline_px": np.round(one.outline_px, 3).tolist(),
        "edge": {
            "shift_px": one.edge.shift_px,
            "noise_px": one.edge.noise_px,
            "source": one.edge.source,
            "end_shift_px": one.edge.end_shift_px,
        },
        "standing": one.standing,
        "confidence": one.confidence,
        "kind": one.kind,
        "note": one.note,
        "relevance": one.relevance,
        "reason": one.reason,
    }


def _marked(document: dict[str, Any]) -> Marked:
    return Marked(
        **{
            **document,
            "outline_px": np.array(document["outline_px"], float).reshape(-1, 2),
            "edge": EdgeQuality(**document["edge"]),
        }
    )


def _point(pair: list[float]) -> tuple[float, float]:
    x, y = pair
    return float(x), float(y)


def _state(document: dict[str, Any]) -> State:
    reference, area = document["reference"], document["area_px"]
    weld = document.get("weld_px")
    return State(
        reference=None if reference is None else reference_from_json(reference),
        area_px=None if area is None else tuple(_point(p) for p in area),
        weld_px=None if weld is None else (_point(weld[0]), _point(weld[1])),
        marked=tuple(_marked(m) for m in document["marked"]),
        mode=str(document.get("mode", "")),
        **{name: document[name] for name in _PLAIN},
    )
