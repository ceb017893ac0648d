"""A scene from the JSON that ``ptmark measure`` writes, or from less."""

from collections.abc import Mapping
from math import isfinite
from typing import Any, NamedTuple

import numpy as np

from ptmark.criteria.geometry import Array
from ptmark.criteria.rough import (
    ROUGHNESS,
    ROUNDING_MM,
    Rough,
    agreed,
    measured_closely,
    roughly,
)
from ptmark.criteria.scene import Judged, Scene
from ptmark.errors import CriteriaError, OutlineError

__all__ = ["scene_from_json"]

_MOST_INDICATIONS = 100_000
_FARTHEST_MM = 1e7  # ten kilometres: beyond it a double cannot tell a thousandth of a tolerance
_LARGEST = 1e9  # of any number, in mm or degrees
_DEPARTS_MM = 0.01
_NUMBERS = ("length_mm", "path_mm", "width_mm", "length_u_mm", "width_u_mm", "edge_u_mm")
_FEW = 300  # so many are all measured closely at once


def scene_from_json(document: Mapping[str, Any]) -> Scene:
    """Read the shape that ``ptmark measure --json`` writes, or less.

    Each of ``indications`` needs ``id`` and ``outline_mm``, and takes ``length_u_mm``,
    ``width_u_mm`` and ``edge_u_mm`` (how well the place of the edges is known from there; 0
    where absent), ``kind``, ``relevance`` and ``reason``; the top level
    takes ``weld_length_mm``, ``thickness_mm``, ``diameter_mm``, ``weld_direction_deg`` and
    ``edges_mm``: lines as lists of [x, y], either a list of free edges or an object of lines
    or lists of them by name ("edge" is a free edge). The outline is what is judged: length,
    path and width are taken from it by `ptmark.measure`, so that sizes, gaps and windows
    cannot contradict each other. A stated ``length_mm``, ``path_mm`` or ``width_mm`` is taken
    only where it is the same figure less coarsely rounded, within 0.002 mm of the outline's
    (1 % for the path), so that a file from ``ptmark measure`` is judged as it was measured. A
    length or width that departs by more than 0.01 mm and its own uncertainty is noted as a
    caution. Widths and paths of many outlines are measured only where something hangs on
    them (`ptmark.criteria.rough`). Whatever else the document holds is left alone.

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
    read: list[_Read] = []
    seen: set[str] = set()
    for nth, data in enumerate(listed):
        one = _read(data, f"indications[{nth}]")
        if one.id in seen:
            raise CriteriaError(f"id '{one.id}' is used twice", where=f"indications[{nth}]")
        seen.add(one.id)
        read.append(one)
    notes: list[str] = []
    rough = roughly([one.outline for one in read]) if read else []
    return Scene(
        indications=tuple(
            _judged(one, size, notes, closely=len(read) <= _FEW)
            for one, size in zip(read, rough, strict=True)
        ),
        weld_length_mm=_number(document, "weld_length_mm", "document", positive=True),
        thickness_mm=_number(document, "thickness_mm", "document", positive=True),
        diameter_mm=_number(document, "diameter_mm", "document", positive=True),
        weld_direction_deg=_number(document, "weld_direction_deg", "document"),
        edges=_edges(document.get("edges_mm")),
        notes=tuple(notes),
    )


class _Read(NamedTuple):
    """One indication as written, checked but not yet measured."""

    id: str
    outline: Array
    numbers: dict[str, float | None]
    texts: dict[str, str]


def _read(data: object, where: str) -> _Read:
    from ptmark.measure.geometry import as_outline

    if not isinstance(data, Mapping):
        raise CriteriaError("must be an object", where=where)
    name = data.get("id")
    if isinstance(name, bool) or not isinstance(name, str | int) or not str(name).strip():
        raise CriteriaError(f"id must be text, got {name!r}", where=where)
    where = f"indication {name}"
    points = _points(data.get("outline_mm"), f"{where}, outline_mm")
    try:
        outline = as_outline(points)
    except OutlineError as error:
        raise CriteriaError(error.what, where=f"{where}, outline_mm") from error
    numbers = {
        key: _number(data, key, where, least=0.0 if key.endswith("_u_mm") else None)
        for key in _NUMBERS
    }
    texts = {key: _text(data, key, where) for key in ("kind", "relevance", "reason")}
    return _Read(str(name), outline, numbers, texts)


def _judged(one: _Read, rough: Rough, notes: list[str], *, closely: bool) -> Judged:
    stated = one.numbers
    length_u, width_u = stated["length_u_mm"] or 0.0, stated["width_u_mm"] or 0.0
    rough.stated = stated["width_mm"], stated["path_mm"]
    _note(notes, one, "length_mm", rough.length, length_u)
    if not closely and not _is_within(stated["width_mm"], rough.widths, width_u):
        closely = True
    width, path = rough.widths[1], rough.length
    if closely:
        measured, way = measured_closely(one.outline, rough.length)
        _note(notes, one, "width_mm", measured, width_u)
        width = agreed(stated["width_mm"], measured, ROUNDING_MM)
        path = agreed(stated["path_mm"], way, ROUGHNESS * way)
    return Judged(
        id=one.id,
        outline_mm=one.outline,
        length=agreed(stated["length_mm"], rough.length, ROUNDING_MM),
        path=path,
        width=width,
        length_u=length_u,
        width_u=width_u,
        edge_u=stated["edge_u_mm"] or 0.0,
        **one.texts,
        rough=None if closely else rough,
    )


def _is_within(stated: float | None, bounds: tuple[float, float], u: float) -> bool:
    """Whether a stated width needs no closer look: it lies between the quick bounds."""
    slack = max(_DEPARTS_MM, u)
    return stated is None or bounds[0] - slack <= stated <= bounds[1] + slack


def _note(notes: list[str], one: _Read, key: str, measured: float, u: float) -> None:
    """Keep the word that a stated figure departs from the outline's."""
    stated = one.numbers[key]
    if stated is not None and abs(stated - measured) > max(_DEPARTS_MM, u):
        notes.append(
            f"Indication {one.id} states {key} {stated:g}, but its outline measures "
            f"{measured:.2f} mm; the outline was judged."
        )


def _points(given: object, where: str) -> Array:
    """Points of shape (N, 2) as listed, each of them a pair of finite numbers."""
    try:
        points = np.array(given, dtype=float)
    except (TypeError, ValueError, OverflowError) as error:
        raise CriteriaError("must be a list of [x, y]", where=where) from error
    if points.ndim != 2 or points.shape[1] != 2:
        raise CriteriaError("must be a list of [x, y]", where=where)
    if not np.isfinite(points).all():
        raise CriteriaError("has a coordinate that is no number", where=where)
    if np.abs(points).max() > _FARTHEST_MM:
        raise CriteriaError(
            f"has a coordinate of {np.abs(points).max():g} mm, beyond 10 km", where=where
        )
    return points


def _edges(given: object) -> dict[str, tuple[Array, ...]]:
    """Lines by name; a bare list of lines, or one line, is the free edge."""
    named = given if isinstance(given, Mapping) else {"edge": given}
    return {
        str(name): tuple(_lines(lines, f"edges_mm, {name}"))
        for name, lines in named.items()
        if lines is not None and lines != []
    }


def _lines(given: object, where: str) -> list[Array]:
    if not isinstance(given, list):
        raise CriteriaError("must be a list of lines of [x, y]", where=where)
    first = given[0]
    single = isinstance(first, list) and bool(first) and not isinstance(first[0], list)
    made = []
    for nth, line in enumerate([given] if single else given, start=1):
        points = _points(line, f"{where}, line {nth}")
        if len(points) < 2:
            raise CriteriaError("needs two or more points", where=f"{where}, line {nth}")
        made.append(points)
    return made


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
    if isinstance(value, bool) or not isinstance(value, int | float) or not _is_finite(value):
        raise CriteriaError(f"must be a number, got {value!r:.40}", where=f"{where}, {key}")
    if abs(value) > _LARGEST:
        raise CriteriaError(f"{value:g} is beyond all measure", where=f"{where}, {key}")
    if (positive and value <= 0) or (least is not None and value < least):
        wanted = "above zero" if positive else "zero or more"
        raise CriteriaError(f"must be {wanted}, got {value:g}", where=f"{where}, {key}")
    return float(value)


def _is_finite(value: float) -> bool:
    try:
        return isfinite(value)
    except OverflowError:  # a whole number too large for a double
        return False


def _text(data: Mapping[str, Any], key: str, where: str) -> str:
    value = data.get(key)
    if value is None:
        return ""
    if isinstance(value, bool) or not isinstance(value, str | int):
        raise CriteriaError(f"must be text, got {value!r:.40}", where=f"{where}, {key}")
    return str(value).strip()
