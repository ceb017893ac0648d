"""From an inspection's objects to its record: plain JSON-ready data, sensibly rounded.

Outlines to 0.01 px and 0.001 mm, other lengths to 0.0001 mm, standard uncertainties to
0.000001 mm: each well below what a photo can tell, so that rounding never decides anything.
"""

import math
import uuid
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from datetime import UTC, datetime
from typing import Any

import numpy as np
import numpy.typing as npt

import ptmark
from ptmark.criteria import Evaluation, Finding
from ptmark.dye import EdgeQuality, LeftOut
from ptmark.errors import RecordError
from ptmark.measure import Conditions, Measurement, Quantity
from ptmark.photo import PhotoInfo
from ptmark.record.model import Record
from ptmark.scale import Reference, SurfaceMap, reference_to_json

__all__ = ["Entry", "build_record"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Entry:
    """One indication as it goes into the record.

    ``outline_px`` of shape (N, 2) px of the upright photo; ``measurement`` is None where there
    is no surface. ``standing`` is "suggested" (not looked at) or "taken"; ``confidence`` 0 to 1
    or None; ``relevance`` is "", "non-relevant" or "false", the latter two with a ``reason``.
    """

    id: str
    outline_px: Array
    edge: EdgeQuality
    measurement: Measurement | None = None
    standing: str = "taken"
    confidence: float | None = None
    kind: str = ""
    note: str = ""
    relevance: str = ""
    reason: str = ""


def build_record(  # noqa: PLR0913 - one argument for each part of the record, by name
    *,
    info: PhotoInfo,
    surface: SurfaceMap | None,
    reference: Reference | None = None,
    entries: Sequence[Entry],
    left_out: Sequence[LeftOut],
    evaluation: Evaluation | None,
    conditions: Conditions,
    fields: dict[str, str],
    area_px: Iterable[Sequence[float]] | Array | None,
    decision: str,
    decision_reason: str,
    haze: float | None,
    record_id: str | None = None,
    created: str | None = None,
    weld_length_mm: float | None = None,
    thickness_mm: float | None = None,
) -> Record:
    """Gather everything a second person needs to repeat the inspection.

    Parameters
    ----------
    info : PhotoInfo
        The photo's facts; its folder is left out of the record.
    surface : SurfaceMap or None
        The map that was measured with; None where no scale is set.
    reference : Reference or None
        What the user gave as the scale; kept as plain data.
    entries : sequence of Entry
    left_out : sequence of LeftOut
        Blobs the suggestions left out.
    evaluation : Evaluation or None
    conditions : Conditions
    fields : dict of str to str
        By the keys of `FIELDS`; empty ones are left out.
    area_px : points (x, y), shape (N, 2), or None
        The examined area, px of the upright photo.
    decision, decision_reason : str
        The disposition.
    haze : float or None
        Background pinkness, 0 to 1.
    record_id, created : str or None
        Given where a record is made again; else a new random UUID and the time now (UTC).
    weld_length_mm, thickness_mm : float or None
        What rules were told of the weld, mm.

    Returns
    -------
    Record

    Raises
    ------
    RecordError
        If two indications carry the same letter.
    """
    letters = [one.id for one in entries]
    if len(set(letters)) != len(letters):
        twin = next(name for name in letters if letters.count(name) > 1)
        raise RecordError(f"the letter {twin} stands for two indications", where="record")
    now = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
    return Record(
        id=record_id or str(uuid.uuid4()),
        created=created or now,
        fields={key: text for key, text in fields.items() if text.strip()},
        photo=_photo(info),
        scale=_scale(surface, reference),
        conditions={"relief_mm": _number(conditions.relief_mm, 4), "haze": _number(haze, 4)},
        area_px=None if area_px is None else _points(area_px, 2),
        indications=[_indication(one, surface) for one in entries],
        left_out=[
            {"outline_px": _points(b.outline_px, 2), "reason": b.reason} for b in left_out
        ],
        evaluation=None if evaluation is None else _evaluation(evaluation),
        disposition={"decision": decision, "reason": decision_reason},
        cautions=_cautions(surface, entries, evaluation, (decision, decision_reason)),
        software=f"ptmark {ptmark.__version__}",
        weld_length_mm=_number(weld_length_mm, 4),
        thickness_mm=_number(thickness_mm, 4),
    )


def _number(value: float | None, digits: int) -> float | None:
    """A plain rounded number; what is not finite is not known. Minus zero becomes zero."""
    if value is None or not math.isfinite(value):
        return None
    return round(float(value), digits) + 0.0


def _points(points: Iterable[Sequence[float]] | Array, digits: int) -> list[list[float]]:
    array = np.array(points if isinstance(points, np.ndarray) else list(points), dtype=float)
    rounded: list[list[float]] = (np.round(array.reshape(-1, 2), digits) + 0.0).tolist()
    return rounded


def _photo(info: PhotoInfo) -> dict[str, Any]:
    camera = asdict(info.camera)
    return {
        "file": info.path.name,
        "sha256": info.sha256,
        "width": info.width,
        "height": info.height,
        "bytes": info.bytes,
        "format": info.format,
        "orientation": info.orientation,
        "color_profile": info.profile,
        "focal_px": _number(info.focal_px, 2),
        "camera": {k: _number(v, 6) if isinstance(v, float) else v for k, v in camera.items()},
    }


def _scale(surface: SurfaceMap | None, reference: Reference | None) -> dict[str, Any]:
    given = None if reference is None else reference_to_json(reference)
    if surface is None:
        unknown = ("mm_per_px", "tilt_deg", "working_distance_mm", "residual_px", "focal_px")
        return {
            "reference": None,
            **dict.fromkeys(unknown),
            "reference_px": None,
            "homography": None,
            "given": given,
            "cautions": [],
        }
    return {
        "reference": surface.reference,
        "mm_per_px": _number(surface.mm_per_px(), 8),
        "tilt_deg": _number(surface.tilt_deg, 3),
        "working_distance_mm": _number(surface.working_distance_mm, 2),
        "residual_px": _number(surface.residual_px, 4),
        "focal_px": _number(surface.focal_px, 2),
        "reference_px": _points(surface.reference_px, 3),
        # Not rounded: the entries span seven decades and map every pixel.
        "homography": np.asarray(surface.h, dtype=float).tolist(),
        "given": given,
        "cautions": list(surface.cautions),
    }


def _indication(one: Entry, surface: SurfaceMap | None) -> dict[str, Any]:
    made = one.measurement
    return {
        "id": one.id,
        **(_unmeasured() if made is None else _measured(made)),
        "outline_px": _points(one.outline_px, 2),
        "centre_px": _centre_px(one, surface),
        "ends_px": None
        if made is None or surface is None
        else _points(surface.to_px(np.array(made.ends_mm, dtype=float)), 2),
        "edge": {
            "shift_px": _number(one.edge.shift_px, 4),
            "noise_px": _number(one.edge.noise_px, 4),
        },
        "source": one.edge.source,
        "standing": one.standing,
        "confidence": _number(one.confidence, 4),
        "kind": one.kind,
        "note": one.note,
        "relevance": one.relevance,
        "reason": one.reason,
    }


def _centre_px(one: Entry, surface: SurfaceMap | None) -> list[float]:
    if one.measurement is not None and surface is not None:
        return _points(surface.to_px(np.array([one.measurement.centre_mm], dtype=float)), 2)[0]
    low, high = one.outline_px.min(axis=0), one.outline_px.max(axis=0)
    return _points([(low + high) / 2], 2)[0]


_MEASURED = (
    "outline_mm",
    "length_mm",
    "length_u_mm",
    "path_mm",
    "path_u_mm",
    "width_mm",
    "width_u_mm",
    "area_mm2",
    "area_u_mm2",
    "ratio",
    "ratio_u",
    "shape",
    "shape_sure",
    "centre_mm",
    "ends_mm",
    "budget",
    "width_budget",
)


def _unmeasured() -> dict[str, Any]:
    return dict.fromkeys(_MEASURED)


def _measured(made: Measurement) -> dict[str, Any]:
    values = (
        _points(made.outline_mm, 3),
        *_pair(made.length),
        *_pair(made.path),
        *_pair(made.width),
        *_pair(made.area),
        *_pair(made.ratio),
        made.shape,
        bool(made.shape_sure),
        _points([made.centre_mm], 4)[0],
        _points(made.ends_mm, 4),
        _budget(made.length),
        _budget(made.width),
    )
    return dict(zip(_MEASURED, values, strict=True))


def _pair(quantity: Quantity) -> tuple[float | None, float | None]:
    return _number(quantity.value, 4), _number(quantity.expanded, 4)


def _budget(quantity: Quantity) -> dict[str, float | None]:
    return {name: _number(u, 6) for name, u in quantity.budget.items()}


def _evaluation(evaluation: Evaluation) -> dict[str, Any]:
    return {
        "profile": evaluation.profile,
        "title": evaluation.title,
        "edition": evaluation.edition,
        "decision_rule": evaluation.decision_rule,
        "verdict": evaluation.verdict,
        "findings": [_finding(one) for one in evaluation.findings],
        "relevance": dict(evaluation.relevance),
        "cautions": list(evaluation.cautions),
        "checksum": evaluation.checksum,
    }


def _finding(one: Finding) -> dict[str, Any]:
    return {
        "rule": one.rule,
        "clause": one.clause,
        "indications": list(one.indications),
        "value": _number(one.value, 6),
        "u": _number(one.u, 6),
        "limit": _number(one.limit, 6),
        "unit": one.unit,
        "verdict": one.verdict,
        "says": one.says,
        "conformity": _number(one.conformity, 6),
        "sketch": _points(one.sketch, 4),
    }


def _cautions(
    surface: SurfaceMap | None,
    entries: Sequence[Entry],
    evaluation: Evaluation | None,
    disposition: tuple[str, str],
) -> list[str]:
    """Everything a reader should know of this record before relying on it, each once."""
    said: list[str] = []
    if surface is None:
        said.append("No scale is set: nothing is measured and no verdict can be given.")
    elif evaluation is None:
        said.append("No acceptance criteria are chosen: there is no verdict.")
    open_ = [one.id for one in entries if one.standing == "suggested"]
    if open_:
        said.append(
            f"Not yet looked at by a person: {', '.join(open_)}. The verdict counts them; "
            "take or drop each."
        )
    bare = [one.id for one in entries if one.relevance and not one.reason.strip()]
    if bare:
        said.append(f"Set aside without a reason: {', '.join(bare)}. Give the reason.")
    unsure = [one.id for one in entries if one.measurement and not one.measurement.shape_sure]
    if unsure:
        said.append(
            f"Linear or rounded is not sure for {', '.join(unsure)}: judged as the stricter."
        )
    verdict = None if evaluation is None else evaluation.verdict
    decision, reason = disposition
    departs = (decision == "accept" and verdict != "acceptable") or (
        decision in {"reject", "rework and retest"} and verdict == "acceptable"
    )
    if departs and not reason.strip():
        said.append("The disposition departs from the verdict and gives no reason.")
    said += list(surface.cautions) if surface else []
    said += list(evaluation.cautions) if evaluation else []
    return list(dict.fromkeys(said))
