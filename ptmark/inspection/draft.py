"""An inspection under way as plain JSON, so that a kill loses nothing.

A draft holds what a person decided (the state) and which photos it belongs to; what follows
from the state is worked out again. Left-out blobs are found again by looking again. The photo
at hand stands at the top level, the others of the set before and after it.
"""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np

from ptmark.dye import EdgeQuality
from ptmark.errors import RecordError, ScaleError
from ptmark.inspection.whole import Inspection, Marked, State
from ptmark.photo import Photo, open_photo
from ptmark.record import Record
from ptmark.scale import reference_from_json, reference_to_json

__all__ = ["DRAFT_SCHEMA", "draft_of_record", "draft_to_json", "restore_draft"]

DRAFT_SCHEMA = "ptmark-draft/2"
_READ = {"ptmark-draft/1", DRAFT_SCHEMA}  # version 1: one photo
_PLAIN = ("relief_mm", "weld_length_mm", "thickness_mm")
_SHARED = ("profile", "decision_rule", "fields", "decision", "decision_reason")


def draft_to_json(inspection: Inspection) -> dict[str, Any]:
    """The inspection's photos and state as a JSON document."""
    state = inspection.state
    return {
        "schema": DRAFT_SCHEMA,
        **_photo_to_json(state),
        **{name: getattr(state, name) for name in _SHARED},
        "before": [_photo_to_json(one) for one in state.before],
        "after": [_photo_to_json(one) for one in state.after],
        "sizes_from": state.sizes_from,
        "retest_of": state.retest_of,
    }


def _photo_to_json(state: State) -> dict[str, Any]:
    info = state.info
    return {
        "photo": None
        if info is None
        else {"path": str(info.path.absolute()), "sha256": info.sha256},
        "reference": None if state.reference is None else reference_to_json(state.reference),
        "area_px": None if state.area_px is None else [list(p) for p in state.area_px],
        "weld_px": None if state.weld_px is None else [list(p) for p in state.weld_px],
        "marked": [_marked_to_json(m) for m in state.marked],
        "mode": state.mode,
        **{name: getattr(state, name) for name in _PLAIN},
    }


def restore_draft(inspection: Inspection, document: dict[str, Any]) -> None:
    """Open the draft's photos, one after the other, and take its state.

    Raises
    ------
    PhotoError
        If the photo cannot be opened any more.
    RecordError
        If the draft does not fit, or the photo at that place is another one now.
    """
    try:
        if document["schema"] not in _READ:
            raise RecordError(f"unknown version {document['schema']!r}", where="draft")
        state, photo = _state(document), _place(document)
        others = [*document.get("before", ()), *document.get("after", ())]
        shared = {name: document[name] for name in _SHARED}
        rest = [(_state({**shared, **one}), _place(one)) for one in others]
    except (KeyError, TypeError, ValueError) as exc:
        raise RecordError(f"does not fit: {exc!r}", where="draft") from exc
    if photo is not None:
        inspection.set_photo(_opened(*photo))
    count = len(document.get("before", ()))
    photos = [_with_photo(inspection, one, place) for one, place in rest if place is not None]
    before, after = tuple(photos[:count]), tuple(photos[count:])
    sizes_from = dict(document.get("sizes_from", {}))
    inspection.take_state(replace(state, before=before, after=after, sizes_from=sizes_from))


def draft_of_record(record: Record, photos: Sequence[Path]) -> dict[str, Any]:
    """A record as the draft to go on with it, such as one that the reviewer returned.

    ``photos`` are the files of the record's photos, in its order. A record does not hold
    everything: dropped outlines, the two points of a weld's course and how sure an outline's
    ends are apart from its flanks are not brought back.
    """
    views = [_view_to_json(*one) for one in zip(record.views(), photos, strict=True)]
    evaluation = record.evaluation or {}
    return {
        "schema": DRAFT_SCHEMA,
        **views[0],
        "profile": str(evaluation.get("profile", "")),
        "decision_rule": str(evaluation.get("decision_rule", "guarded")),
        "fields": dict(record.fields),
        "decision": record.disposition["decision"],
        "decision_reason": record.disposition["reason"],
        "before": [],
        "after": views[1:],
        "sizes_from": {},
        "retest_of": record.retest_of,
    }


def _view_to_json(view: Record, photo: Path) -> dict[str, Any]:
    same = ("id", "outline_px", "edge", "standing", "confidence", "kind", "note", "relevance")
    return {
        "photo": {"path": str(photo.absolute()), "sha256": view.photo["sha256"]},
        "reference": view.scale.get("given"),
        "area_px": view.area_px,
        "weld_px": None,
        "marked": [
            {
                **{name: one[name] for name in (*same, "reason")},
                "edge": {**one["edge"], "source": one["source"]},
            }
            for one in view.indications
        ],
        "mode": "",
        "relief_mm": view.conditions["relief_mm"],
        "weld_length_mm": view.weld_length_mm,
        "thickness_mm": view.thickness_mm,
    }


def _place(document: dict[str, Any]) -> tuple[Path, str] | None:
    photo = document["photo"]
    return None if photo is None else (Path(photo["path"]), str(photo["sha256"]))


def _opened(path: Path, sha256: str) -> Photo:
    opened = open_photo(path)
    if opened.info.sha256 != sha256:
        raise RecordError(
            "the photo was changed since", where=str(path), mend="put the original back"
        )
    return opened


def _with_photo(inspection: Inspection, state: State, place: tuple[Path, str]) -> State:
    """A photo's state with its facts; its scale is worked out while its pixels are there."""
    photo = _opened(*place)
    if state.reference is not None:
        with suppress(ScaleError):  # kept as refused, as it was
            inspection.prepare(state.reference, photo)
    return replace(state, info=photo.info)


def _marked_to_json(one: Marked) -> dict[str, Any]:
    return {
        "id": one.id,
        "outline_px": np.round(one.outline_px, 3).tolist(),
        "edge": {
            "shift_px": one.edge.shift_px,
            "noise_px": one.edge.noise_px,
            "source": one.edge.source,
            "end_shift_px": one.edge.end_shift_px,
            "operator_px": one.edge.operator_px,
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
        retest_of=document.get("retest_of"),
        **{name: document[name] for name in (*_PLAIN, *_SHARED)},
    )
