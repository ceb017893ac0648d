"""Facts of photo, scale and verdict as plain JSON-ready data, sensibly rounded.

Outlines to 0.01 px and 0.001 mm, other lengths to 0.0001 mm, standard uncertainties to
0.000001 mm: each well below what a photo can tell, so that rounding never decides anything.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import asdict
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria import Evaluation, Finding
from ptmark.dye import EdgeQuality
from ptmark.photo import PhotoInfo
from ptmark.scale import PipeMap, Reference, SurfaceMap, reference_to_json

__all__ = [
    "EDGE_DIGITS",
    "OUTLINE_DIGITS",
    "edge_json",
    "evaluation_json",
    "lens_json",
    "number",
    "photo_json",
    "points",
    "scale_json",
    "share",
]

Array = npt.NDArray[np.float64]
_TEXT = 200
# What a person may go on with; `ptmark.inspection.Marked` holds it as finely.
OUTLINE_DIGITS = 2  # 0.01 px
EDGE_DIGITS = 4


def number(value: float | None, digits: int) -> float | None:
    """A plain rounded number; what is not finite is not known. Minus zero becomes zero."""
    if value is None or not math.isfinite(value):
        return None
    return round(float(value), digits) + 0.0


def share(value: float | None) -> float | None:
    """A rounded share from 0 to 1; rounding noise beyond either end is cut."""
    rounded = number(value, 4)
    return None if rounded is None else min(max(rounded, 0.0), 1.0)


def points(given: Iterable[Sequence[float]] | Array, digits: int) -> list[list[float]]:
    """Points (x, y) of shape (N, 2) as plain rounded pairs."""
    array = np.array(given if isinstance(given, np.ndarray) else list(given), dtype=float)
    rounded: list[list[float]] = (np.round(array.reshape(-1, 2), digits) + 0.0).tolist()
    return rounded


def edge_json(edge: EdgeQuality) -> dict[str, Any]:
    """How sure an outline's edge is, px; where its ends were not taken apart, not of them."""
    apart = {"end_shift_px": edge.end_shift_px, "operator_px": edge.operator_px}
    return {
        "shift_px": number(edge.shift_px, EDGE_DIGITS),
        "noise_px": number(edge.noise_px, EDGE_DIGITS),
        **{
            name: number(value, EDGE_DIGITS)
            for name, value in apart.items()
            if value is not None
        },
        **({"operator_free": edge.operator_free} if edge.operator_free else {}),
        **(
            {"traces_px": [number(one, EDGE_DIGITS) for one in edge.traces_px]}
            if edge.traces_px
            else {}
        ),
        **({"ends_unsure": True} if edge.ends_unsure else {}),
    }


def photo_json(info: PhotoInfo) -> dict[str, Any]:
    """The photo's facts; its folder is left out, it tells about a machine, not a photo."""
    # What a file says of itself is cut to what the schema takes: it must not stop a record.
    camera = {k: v[:_TEXT] if isinstance(v, str) else v for k, v in asdict(info.camera).items()}
    camera["taken"] = camera["taken"][:40]
    return {
        "file": info.path.name,
        "sha256": info.sha256,
        "width": info.width,
        "height": info.height,
        "bytes": info.bytes,
        "format": info.format[:20],
        "orientation": info.orientation,
        "color_profile": info.profile[:_TEXT],
        "focal_px": number(info.focal_px, 2),
        "camera": {k: number(v, 6) if isinstance(v, float) else v for k, v in camera.items()},
    }


def lens_json(info: PhotoInfo) -> dict[str, Any]:
    """The profile of the camera, where its lens was calibrated; nothing otherwise."""
    return {} if info.calibrated is None else {"lens": info.calibrated.to_json()}


def scale_json(surface: SurfaceMap | None, reference: Reference | None) -> dict[str, Any]:
    """What fixed the scale, the map it gave, and what was given for it; lengths in mm."""
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
        "mm_per_px": number(surface.mm_per_px(), 8),
        "tilt_deg": number(surface.tilt_deg, 3),
        "working_distance_mm": number(surface.working_distance_mm, 2),
        "residual_px": number(surface.residual_px, 4),
        "focal_px": number(surface.focal_px, 2),
        "reference_px": points(surface.reference_px, 3),
        # Not rounded: the entries span seven decades and map every pixel.
        "homography": np.asarray(surface.h, dtype=float).tolist() if surface.flat else None,
        "given": given,
        "cautions": list(surface.cautions),
        **_shape(surface),
        **_beside(surface),
    }


def _beside(surface: SurfaceMap) -> dict[str, Any]:
    """The second reference and how it agrees; nothing where one was used."""
    beside = surface.beside
    if beside is None:
        return {}
    return {
        "references": [
            {
                "reference": beside.reference,
                "reference_px": points(beside.reference_px, 3),
                "en": number(beside.en, 3),
                "difference": number(beside.difference, 6),
            }
        ]
    }


def _shape(surface: SurfaceMap) -> dict[str, Any]:
    """The cylinder of a pipe; nothing for a plane."""
    if not isinstance(surface, PipeMap):
        return {}
    body = surface.cylinder
    return {
        "surface": {
            "shape": "cylinder",
            "radius_mm": number(body.radius, 4),
            "axis_distance_mm": number(body.distance, 4),
            # From straightened [x, y, 1], px, to lines of sight in the frame (aside, along
            # the axis, towards it), its origin the camera; not rounded, as a homography.
            "rays": np.asarray(body.back, dtype=float).tolist(),
        }
    }


def evaluation_json(evaluation: Evaluation) -> dict[str, Any]:
    """The verdict with every finding; values in each finding's own unit."""
    return {
        "profile": evaluation.profile,
        "title": evaluation.title,
        "edition": evaluation.edition,
        "decision_rule": evaluation.decision_rule,
        "verdict": evaluation.verdict,
        "findings": [_finding(one) for one in evaluation.findings],
        "relevance": dict(evaluation.relevance),
        "shape": dict(evaluation.shape),
        "cautions": list(evaluation.cautions),
        "checksum": evaluation.checksum,
    }


def _finding(one: Finding) -> dict[str, Any]:
    return {
        "rule": one.rule,
        "clause": one.clause,
        "indications": list(one.indications),
        "value": number(one.value, 6),
        "u": number(one.u, 6),
        "limit": number(one.limit, 6),
        "unit": one.unit,
        "verdict": one.verdict,
        "says": one.says,
        "conformity": number(one.conformity, 6),
        "sketch_mm": points(one.sketch, 4),
    }
