"""What is judged: indications on the surface with their measured uncertainty."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import isfinite
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.errors import CriteriaError, OutlineError

__all__ = ["Judged", "Scene", "scene_from_json"]

_MOST_INDICATIONS = 100_000
_DEPARTS_MM = 0.01
_ROUNDING_MM = 0.002  # outlines are written in thousandths of a millimetre
_ROUGHNESS = 0.01  # of a path traced along a rounded outline


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Judged:
    """One indication as the criteria see it; mm on the surface.

    ``length_u`` and ``width_u`` are expanded uncertainties, k = 2. ``kind`` is an ISO 6520-1
    name or number where the inspector has named one, else "".
    """

    id: str
    outline_mm: npt.NDArray[np.float64]  # shape (N, 2)
    length: float
    path: float
    width: float
    length_u: float = 0.0
    width_u: float = 0.0
    kind: str = ""
    relevance: str = ""  # "", or "non-relevant"/"false" as set by the inspector, with a reason
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """All that an evaluation needs of one examined area.

    ``weld_direction_deg`` is the angle of the weld from the surface's x axis towards its y
    axis; ``notes`` are cautions about the scene itself, repeated by the evaluation.
    """

    indications: tuple[Judged, ...]
    weld_length_mm: float | None = None
    thickness_mm: float | None = None
    diameter_mm: float | None = None
    weld_direction_deg: float | None = None
    edges: Mapping[str, tuple[npt.NDArray[np.float64], ...]] = field(default_factory=dict)
    notes: tuple[str, ...] = ()


def scene_from_json(document: Mapping[str, Any]) -> Scene:
    """Read the shape that ``ptmark measure --json`` writes, or less.

    Each of ``indications`` needs ``id`` and ``outline_mm``, and takes ``length_u_mm`` and
    ``width_u_mm`` (0 where absent), ``kind``, ``relevance`` and ``reason``; the top level
    takes ``weld_length_mm``, ``thickness_mm``, ``diameter_mm``, ``weld_direction_deg`` and
    ``edges_mm``: lines as lists of [x, y], either a list of free edges or an object of lines
    or lists of them by name ("edge" is a free edge). The outline is what is judged: length,
    path and width are taken from it by `ptmark.measure`, so that sizes, gaps and windows
    cannot contradict each other. A stated ``length_mm``, ``path_mm`` or
    ``width_mm`` is taken only where it is the same figure less coarsely rounded, within
    0.002 mm of the outline's (1 % for the path), so that a file from ``ptmark measure`` is
    judged as it was measured. A length or width that departs by more than 0.01 mm and its
    own uncertainty is noted as a caution. Whatever else the document holds is left alone.

    Raises
    ------
    CriteriaError
        Naming the indication and the key, for what is missing, doubled or no measurement.
    """
    if not isinstance(document, Mapping):
        raise CriteriaError("the document must be a JSON object", where="document")
    listed = document.get("indications")
    if not isinstance(listed, list):
        raise CriteriaError("must be a list", where="indications")
    if len(listed) > _MOST_INDICATIONS:
        raise CriteriaError(
            f"{len(listed)} indications are more than {_MOST_INDICATIONS}", where="indications"
        )
    indications: list[Judged] = []
    notes: list[str] = []
    seen: set[str] = set()
    for nth, data in enumerate(listed):
        one = _judged(data, f"indications[{nth}]", notes)
        if one.id in seen:
            raise CriteriaError(f"id '{one.id}' is used twice", where=f"indications[{nth}]")
        seen.add(one.id)
        indications.append(one)
    return Scene(
        indications=tuple(indications),
        weld_length_mm=_number(document, "weld_length_mm", "document", positive=True),
        thickness_mm=_number(document, "thickness_mm", "document", positive=True),
        diameter_mm=_number(document, "diameter_mm", "document", positive=True),
        weld_direction_deg=_number(document, "weld_direction_deg", "document"),
        edges=_edges(document.get("edges_mm")),
        notes=tuple(notes),
    )


def _edges(given: object) -> dict[str, tuple[npt.NDArray[np.float64], ...]]:
    """Lines by name; a bare list of lines, or one line, is the free edge."""
    named = given if isinstance(given, Mapping) else {"edge": given}
    return {
        str(name): tuple(_lines(lines, f"edges_mm, {name}"))
        for name, lines in named.items()
        if lines
    }


def _lines(lines: object, where: str) -> list[npt.NDArray[np.float64]]:
    try:
        one = np.array(lines, dtype=float)
    except (TypeError, ValueError):
        one = np.empty(0)  # lines of different lengths, or no lines at all
    if one.ndim == 2 and one.shape[1] == 2:
        listed: list[object] = [lines]
    elif isinstance(lines, list):
        listed = lines
    else:
        raise CriteriaError("must be a list of lines of [x, y]", where=where)
    made = []
    for nth, line in enumerate(listed, start=1):
        try:
            points = np.array(line, dtype=float)
        except (TypeError, ValueError) as error:
            raise CriteriaError(f"line {nth} must be a list of [x, y]", where=where) from error
        if points.ndim != 2 or points.shape[1] != 2 or len(points) < 2:
            raise CriteriaError(f"line {nth} needs two or more [x, y]", where=where)
        if not np.isfinite(points).all():
            raise CriteriaError(f"line {nth} has a coordinate that is no number", where=where)
        made.append(points)
    return made


def _judged(data: object, where: str, notes: list[str]) -> Judged:
    from ptmark.measure import caliper, inscribed_width, path_length
    from ptmark.measure.geometry import as_outline
    from ptmark.measure.medial import medial_of

    if not isinstance(data, Mapping):
        raise CriteriaError("must be an object", where=where)
    name = data.get("id")
    if isinstance(name, bool) or not isinstance(name, str | int) or not str(name).strip():
        raise CriteriaError(f"id must be text, got {name!r}", where=where)
    where = f"indication {name}"
    try:
        outline = as_outline(_points(data, where))
    except OutlineError as error:
        raise CriteriaError(error.what, where=f"{where}, outline_mm") from error
    length_u = _number(data, "length_u_mm", where, least=0.0) or 0.0
    width_u = _number(data, "width_u_mm", where, least=0.0) or 0.0
    medial = medial_of(outline)
    length, width = caliper(outline)[0], inscribed_width(outline, medial)
    path = path_length(outline, medial)
    one = Judged(
        id=str(name),
        outline_mm=outline,
        length=_stated(data, "length_mm", where, length, _ROUNDING_MM),
        path=_stated(data, "path_mm", where, path, _ROUGHNESS * path),
        width=_stated(data, "width_mm", where, width, _ROUNDING_MM),
        length_u=length_u,
        width_u=width_u,
        kind=_text(data, "kind", where),
        relevance=_text(data, "relevance", where),
        reason=_text(data, "reason", where),
    )
    for key, value, u in (
        ("length_mm", length, length_u),
        ("width_mm", width, width_u),
    ):
        stated = _number(data, key, where)
        if stated is not None and abs(stated - value) > max(_DEPARTS_MM, u):
            notes.append(
                f"Indication {name} states {key} {stated:g}, but its outline measures "
                f"{value:.2f} mm; the outline was judged."
            )
    return one


def _stated(
    data: Mapping[str, Any], key: str, where: str, measured: float, within: float
) -> float:
    """The stated figure where it agrees with the outline's, else the outline's."""
    stated = _number(data, key, where)
    return stated if stated is not None and abs(stated - measured) <= within else measured


def _points(data: Mapping[str, Any], where: str) -> npt.NDArray[np.float64]:
    try:
        return np.array(data.get("outline_mm"), dtype=float).reshape(-1, 2)
    except (TypeError, ValueError) as error:
        raise CriteriaError("must be a list of [x, y]", where=f"{where}, outline_mm") from error


def _number(
    data: Mapping[str, Any],
    key: str,
    where: str,
    *,
    positive: bool = False,
    least: float | None = None,
) -> float | None:
    value = data.get(key)
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        raise CriteriaError(f"must be a number, got {value!r}", where=f"{where}, {key}")
    if (positive and value <= 0) or (least is not None and value < least):
        wanted = "above zero" if positive else "zero or more"
        raise CriteriaError(f"must be {wanted}, got {value:g}", where=f"{where}, {key}")
    return float(value)


def _text(data: Mapping[str, Any], key: str, where: str) -> str:
    value = data.get(key)
    if value is None:
        return ""
    if isinstance(value, bool) or not isinstance(value, str | int):
        raise CriteriaError(f"must be text, got {value!r}", where=f"{where}, {key}")
    return str(value).strip()
