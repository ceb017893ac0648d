"""An inspection under way as plain JSON, so that a kill loses nothing.

A draft holds what a person decided (the state) and which photos it belongs to; what follows
from the state is worked out again. What the last look left out, and its haze, go with it. The
photo at hand stands at the top level, the others of the set before and after it.
"""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.rule_files import rules_again
from ptmark.dye import EdgeQuality, LeftOut
from ptmark.errors import RecordError, ScaleError
from ptmark.hides import Hides
from ptmark.inspection.whole import Inspection, Marked, State
from ptmark.inspection.workings import Look
from ptmark.photo import CameraProfile, Photo, PhotoInfo, open_photo
from ptmark.record import Record
from ptmark.record.plain import OUTLINE_DIGITS, points
from ptmark.scale import reference_from_json, reference_to_json

__all__ = ["draft_of_record", "draft_to_json", "restore_draft"]

Array = npt.NDArray[np.float64]
DRAFT_SCHEMA = "ptmark-draft/2"
_READ = {"ptmark-draft/1", DRAFT_SCHEMA}  # version 1: one photo
_SAID = ("id", "outline_px", "standing", "confidence", "kind", "note", "relevance", "reason")
_PLAIN = ("relief_mm", "weld_length_mm", "thickness_mm")
_SHARED = ("profile", "decision_rule", "fields", "decision", "decision_reason")


def draft_to_json(inspection: Inspection) -> dict[str, Any]:
    """The inspection's photos and state as a JSON document."""
    state = inspection.state
    return {
        "schema": DRAFT_SCHEMA,
        **_photo_to_json(state, inspection),
        **{name: getattr(state, name) for name in _SHARED},
        "carried": sorted(state.carried),
        "before": [_photo_to_json(one, inspection) for one in state.before],
        "after": [_photo_to_json(one, inspection) for one in state.after],
        "sizes_from": state.sizes_from,
        "retest_of": state.retest_of,
        "process": state.process,
    }


def _photo_to_json(state: State, inspection: Inspection) -> dict[str, Any]:
    info = state.info
    return {
        "photo": None
        if info is None
        else {
            "path": str(info.path.absolute()),
            "sha256": info.sha256,
            "lens": None if info.calibrated is None else info.calibrated.to_json(),
        },
        "reference": None if state.reference is None else reference_to_json(state.reference),
        "area_px": None if state.area_px is None else [list(p) for p in state.area_px],
        "weld_px": None if state.weld_px is None else [list(p) for p in state.weld_px],
        "marked": [_marked_to_json(m) for m in state.marked],
        "mode": state.mode,
        "look": _NO_LOOK if info is None else _look_to_json(inspection, info, state),
        "edges": [
            {"name": name, "points_px": [list(p) for p in points]}
            for name, points in state.edges_px
        ],
        **{name: getattr(state, name) for name in _PLAIN},
        "diameter_mm": state.diameter_mm,
    }


_NO_LOOK: dict[str, Any] = {"left_out": [], "haze": None}


def _look_to_json(inspection: Inspection, info: PhotoInfo, state: State) -> dict[str, Any]:
    left_out, haze = inspection.look_of(info)
    outlines = ((one, points(one.outline_px, OUTLINE_DIGITS)) for one in left_out)
    blobs = [{"outline_px": outline, "reason": one.reason} for one, outline in outlines]
    searched = inspection.workings.searched.to_json(info.sha256, state)
    return {"left_out": blobs, "haze": haze, **searched}


def _look(document: dict[str, Any]) -> Look:
    """The last look; its blobs' edges are not kept, as nothing goes by them."""
    told = document.get("look", _NO_LOOK)
    no_edge = EdgeQuality(shift_px=0.0, noise_px=0.0)
    blobs = (
        LeftOut(outline_px=_outline(one["outline_px"]), edge=no_edge, reason=one["reason"])
        for one in told["left_out"]
    )
    return tuple(blobs), told["haze"]


def _outline(points: Sequence[Sequence[float]]) -> Array:
    return np.array(points, float).reshape(-1, 2)


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
        rest = [(_state({**shared, **one}), _place(one), _look(one)) for one in others]
        look = _look(document)
    except (KeyError, TypeError, ValueError) as exc:
        raise RecordError(f"does not fit: {exc!r}", where="draft") from exc
    if photo is not None:
        inspection.set_photo(_opened(photo))
        inspection.left_out, inspection.haze = look
        searched, states = inspection.workings.searched, (state, *(one for one, *_ in rest))
        for one, told in zip(states, [document, *others], strict=True):
            if told["photo"]:
                searched.restore(told["photo"]["sha256"], one, told.get("look", {}))
    count = len(document.get("before", ()))
    photos = [
        _with_photo(inspection, one, place, look)
        for one, place, look in rest
        if place is not None
    ]
    before, after = tuple(photos[:count]), tuple(photos[count:])
    sizes_from = dict(document.get("sizes_from", {}))
    inspection.take_state(replace(state, before=before, after=after, sizes_from=sizes_from))


def draft_of_record(record: Record, photos: Sequence[Path]) -> dict[str, Any]:
    """A record as the draft to go on with it, such as one that the reviewer returned.

    ``photos`` are the files of the record's photos, in its order. All comes back but the order
    in which dropped outlines stood among the others; records written before `Record.given` was
    there lack dropped outlines, the weld's two points and how sure an outline's ends are.
    """
    views = [_view_to_json(*one) for one in zip(record.views(), photos, strict=True)]
    chosen = record.chosen or {}
    evaluation = record.evaluation or chosen
    return {
        "schema": DRAFT_SCHEMA,
        **views[0],
        "profile": rules_again(evaluation),
        "decision_rule": str(evaluation.get("decision_rule", "guarded")),
        "fields": dict(record.fields),
        "decision": record.disposition["decision"],
        "decision_reason": record.disposition["reason"],
        "carried": chosen.get("carried", []),
        "before": [],
        "after": views[1:],
        "sizes_from": chosen.get("sizes_from", {}),
        "retest_of": record.retest_of,
        "process": record.process or {},
    }


def _view_to_json(view: Record, photo: Path) -> dict[str, Any]:
    given = view.given or {"mode": "", "weld_px": None, "dropped": []}
    weld_px = given["weld_px"]
    dropped = [{**one, "standing": "dropped"} for one in given["dropped"]]
    return {
        "photo": {
            "path": str(photo.absolute()),
            "sha256": view.photo["sha256"],
            **({"lens": view.scale.get("lens")} if view.scale else {}),
        },
        "reference": view.scale.get("given"),
        "area_px": view.area_px,
        "weld_px": weld_px,
        "marked": [
            {
                **{name: one[name] for name in _SAID},
                "edge": {**one["edge"], "source": one["source"]},
            }
            for one in (*view.indications, *dropped)
        ],
        "mode": given["mode"],
        "look": {
            "left_out": view.left_out,
            "haze": view.conditions["haze"],
            "looked": not view.conditions.get(Hides.UNLOOKED),
            "leaves_out": view.conditions.get(Hides.UNLOOKED_PART, False),
        },
        "relief_mm": view.conditions["relief_mm"],
        # with the weld's two points it may be the distance between them
        "weld_length_mm": given["weld_length_mm"] if weld_px else view.weld_length_mm,
        "thickness_mm": view.thickness_mm,
        "diameter_mm": view.diameter_mm,
        "edges": given.get("edges", []),
    }


@dataclass(frozen=True, slots=True)
class _Place:
    """A photo's file, its content, and the profiles of its lens: the one it had, if told."""

    path: Path
    sha256: str
    lens: tuple[CameraProfile | None, ...]


def _place(document: dict[str, Any]) -> _Place | None:
    photo = document["photo"]
    if photo is None:
        return None
    lens: tuple[CameraProfile | None, ...] = ()
    if "lens" in photo:  # earlier drafts do not tell: then the profile that fits now
        lens = (None if photo["lens"] is None else CameraProfile.from_json(photo["lens"]),)
    return _Place(Path(photo["path"]), str(photo["sha256"]), lens)


def _opened(place: _Place) -> Photo:
    opened = open_photo(place.path)
    if opened.info.sha256 != place.sha256:
        raise RecordError(
            "the photo was changed since", where=str(place.path), mend="put the original back"
        )
    return opened.with_lens(place.lens[0]) if place.lens else opened


def _with_photo(inspection: Inspection, state: State, place: _Place, look: Look) -> State:
    """A photo's state with its facts; its scale is worked out while its pixels are there."""
    photo = _opened(place)
    inspection.workings.keep_look(photo.info, look)
    if state.reference is not None:
        with suppress(ScaleError):  # kept as refused, as it was
            inspection.prepare(state.reference, photo)
    return replace(state, info=photo.info)


def _marked_to_json(one: Marked) -> dict[str, Any]:
    return {
        "id": one.id,
        "outline_px": one.outline_px.tolist(),
        "edge": {**asdict(one.edge), "traces_px": list(one.edge.traces_px)},
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
            "outline_px": _outline(document["outline_px"]),
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
        process=dict(document.get("process", {})),
        carried=frozenset(document.get("carried", ())),
        edges_px=tuple(
            (str(one["name"]), tuple(_point(p) for p in one["points_px"]))
            for one in document.get("edges", ())
        ),
        diameter_mm=document.get("diameter_mm"),
        **{name: document[name] for name in (*_PLAIN, *_SHARED)},
    )
