"""One field of a scene's JSON at a time: numbers, texts, points, lines; mm, or refused."""

from collections.abc import Mapping
from functools import cache
from math import isfinite
from typing import Any
from unicodedata import category

import numpy as np

from ptmark.criteria.geometry import Array
from ptmark.errors import CriteriaError

__all__ = [
    "FARTHEST_MM",
    "edges_of",
    "number_of",
    "points_of",
    "refuse_other_names",
    "shares_of",
    "text_of",
    "truth_of",
]

FARTHEST_MM = 1e7  # ten kilometres: beyond it a double cannot tell a thousandth of a tolerance
_LARGEST = 1e9  # of any number, in mm or degrees
_OTHER_UNITS = ("", "_in", "_inch", "_cm", "_m", "_um", "_px", "_rad")
_UNIT_KEYS = ("unit", "units")
_MILLIMETRES = {"mm", "millimetre", "millimetres", "millimeter", "millimeters"}
_LIST = "a list of corners in mm, such as [[0, 0], [4, 0], [4, 1]]"


def refuse_other_names(data: Mapping[str, Any], read: tuple[str, ...], where: str) -> None:
    """Refuse another unit, and a key that stands in place of one of ``read``."""
    if _suspects(read).isdisjoint(data):
        return
    for key in _UNIT_KEYS:
        told = data.get(key)
        if told is not None and str(told).strip().lower() not in _MILLIMETRES:
            raise CriteriaError(
                f"{told!r:.40} is not read: outlines and all lengths here are in mm",
                where=f"{where}, {key}",
                mend="convert them (1 in = 25.4 mm) and take this key out",
            )
    for wanted in read:
        stem = wanted.rpartition("_")[0]
        found = [stem + unit for unit in _OTHER_UNITS if stem + unit in data]
        if found and data.get(wanted) is None:
            raise CriteriaError(
                f"is not read; what stands for it is {wanted}",
                where=f"{where}, {found[0]}",
                mend=f"give it in {wanted.rpartition('_')[2]}, as {wanted}",
            )


@cache
def _suspects(read: tuple[str, ...]) -> frozenset[str]:
    """Keys that tell another unit, or may stand in place of one of ``read``."""
    stems = [wanted.rpartition("_")[0] for wanted in read]
    return frozenset({*_UNIT_KEYS, *(stem + unit for stem in stems for unit in _OTHER_UNITS)})


def points_of(given: object, where: str) -> Array:
    """Points of shape (N, 2) as listed, each of them a pair of finite numbers."""
    if given is None:
        raise CriteriaError("is missing", where=where, mend=f"give {_LIST}")
    try:
        points = np.array(given, dtype=float)
    except (TypeError, ValueError, OverflowError) as error:
        raise CriteriaError(
            "must be a list of [x, y]", where=where, mend=f"give {_LIST}"
        ) from error
    if points.ndim != 2 or points.shape[1] != 2:
        raise CriteriaError("must be a list of [x, y]", where=where, mend=f"give {_LIST}")
    if not np.isfinite(points).all():
        raise CriteriaError(
            "has a coordinate that is no number", where=where, mend=f"give {_LIST}"
        )
    if np.abs(points).max() > FARTHEST_MM:
        raise CriteriaError(
            f"has a coordinate of {np.abs(points).max():g} mm, beyond 10 km",
            where=where,
            mend="give it in mm, from an origin near the part",
        )
    return points


def edges_of(given: object) -> dict[str, tuple[Array, ...]]:
    """Lines by name; a bare list of lines, or one line, is the free edge."""
    named = given if isinstance(given, Mapping) else {"edge": given}
    return {
        str(name): tuple(_lines(lines, f"edges_mm, {name}"))
        for name, lines in named.items()
        if lines is not None and lines != []
    }


def _lines(given: object, where: str) -> list[Array]:
    if not isinstance(given, list):
        raise CriteriaError(
            "must be a list of lines of [x, y]", where=where, mend="give [[[0, 0], [100, 0]]]"
        )
    first = given[0]
    single = isinstance(first, list) and bool(first) and not isinstance(first[0], list)
    made = []
    for nth, line in enumerate([given] if single else given, start=1):
        points = points_of(line, f"{where}, line {nth}")
        if len(points) < 2:
            raise CriteriaError(
                "needs two or more points",
                where=f"{where}, line {nth}",
                mend="give [[0, 0], [100, 0]]",
            )
        made.append(points)
    return made


def number_of(
    data: Mapping[str, Any],
    key: str,
    where: str,
    *,
    positive: bool = False,
    least: float | None = None,
) -> float | None:
    """A finite number; None where there is none."""
    value = data.get(key)
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, int | float) or not _is_finite(value):
        raise CriteriaError(
            f"must be a number, got {value!r:.40}",
            where=f"{where}, {key}",
            mend="write it without a unit, or leave it out",
        )
    if abs(value) > _LARGEST:
        raise CriteriaError(
            f"{value:g} is beyond all measure", where=f"{where}, {key}", mend="correct it"
        )
    if (positive and value <= 0) or (least is not None and value < least):
        wanted = "above zero" if positive else "zero or more"
        raise CriteriaError(
            f"must be {wanted}, got {value:g}",
            where=f"{where}, {key}",
            mend="correct it, or leave it out",
        )
    return float(value)


def shares_of(data: Mapping[str, Any], key: str, where: str, count: int) -> tuple[float, ...]:
    """So many numbers of 0 or more; none where there are none."""
    listed = data.get(key)
    if listed is None:
        return ()
    if not isinstance(listed, list) or len(listed) != count:
        raise CriteriaError(
            f"must be a list of {count} numbers, got {listed!r:.40}",
            where=f"{where}, {key}",
            mend="correct it, or leave it out",
        )
    told = [number_of({key: one}, key, where, least=0.0) for one in listed]
    return tuple(one or 0.0 for one in told)


def _is_finite(value: float) -> bool:
    try:
        return isfinite(value)
    except OverflowError:  # a whole number too large for a double
        return False


def text_of(data: Mapping[str, Any], key: str, where: str) -> str:
    """A text or whole number as text, without blanks around it; "" where there is none."""
    value = data.get(key)
    if value is None:
        return ""
    if isinstance(value, bool) or not isinstance(value, str | int):
        raise CriteriaError(
            f"must be text, got {value!r:.40}", where=f"{where}, {key}", mend="put it in quotes"
        )
    text = str(value).strip()
    shown = text.isprintable()  # what is not may still be the end of a line, or a blank
    if not shown and any(category(sign) in {"Cc", "Cs"} for sign in text if sign not in "\n\t"):
        raise CriteriaError(
            f"has a sign that cannot be shown, in {text!r:.40}",
            where=f"{where}, {key}",
            mend="take it out",
        )
    return text


def truth_of(data: Mapping[str, Any], key: str, where: str) -> bool:
    """True or false as written; false where there is nothing."""
    value = data.get(key)
    if value is None or isinstance(value, bool):
        return bool(value)
    raise CriteriaError(
        f"must be true or false, got {value!r:.40}",
        where=f"{where}, {key}",
        mend="write true, or leave it out",
    )
