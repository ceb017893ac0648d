"""The scale bar and where it holds: under perspective no bar holds for the whole photo."""

from dataclasses import dataclass
from math import floor, log10
from typing import Any

import numpy as np
import numpy.typing as npt
import shapely

from ptmark.record import Record

__all__ = ["ScaleBar", "local_bar", "scale_bar"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class ScaleBar:
    """A bar of ``length_mm`` that is ``length_px`` long along the photo's width at ``at_px``.

    ``spread`` is the least and the greatest photo scale (px per mm, along the photo's width)
    over the examined area, relative to that at ``at_px``; ``place`` says where that is.
    """

    length_mm: float
    length_px: float
    at_px: tuple[float, float]
    place: str
    spread: tuple[float, float]


def scale_bar(record: Record, wanted_px: float) -> ScaleBar | None:
    """The bar of a round length (1, 2 or 5 times a power of ten) nearest below ``wanted_px``.

    None where the record has no scale, or the map is degenerate at that place.
    """
    matrix = record.scale["homography"]
    if matrix is None:
        return None
    h = np.array(matrix, dtype=float)
    middle, place, area = _where(record)
    at = _beside(middle, record, 0.1 * wanted_px)
    bar = local_bar(record, at, wanted_px)
    if bar is None:
        return None
    length, here = bar[0], bar[1] / bar[0]
    around = _px_per_mm(h, area) / here
    around = around[np.isfinite(around)]
    spread = (float(around.min()), float(around.max())) if len(around) else (1.0, 1.0)
    return ScaleBar(length, length * here, (float(at[0]), float(at[1])), place, spread)


def local_bar(record: Record, at_px: Array, wanted_px: float) -> tuple[float, float] | None:
    """Length in mm and in px, along the photo's width, of a round bar that holds at a place.

    ``at_px`` of shape (2,), px of the upright photo. None where there is no scale there.
    """
    matrix = record.scale["homography"]
    if matrix is None:
        return None
    here = float(_px_per_mm(np.array(matrix, dtype=float), at_px[np.newaxis])[0])
    if not np.isfinite(here) or here <= 0:
        return None
    length = _round_below(wanted_px / here)
    return length, length * here


def _where(record: Record) -> tuple[Array, str, Array]:
    """The place the bar is made for, in words, and the points it is compared over."""
    photo: dict[str, Any] = record.photo
    if record.area_px:
        area = np.array(record.area_px, dtype=float)
        return area.mean(axis=0), "the middle of the examined area", area
    if record.indications:
        area = np.concatenate([np.array(one["outline_px"]) for one in record.indications])
        middle = (area.min(axis=0) + area.max(axis=0)) / 2
        return middle, "the middle of the indications", area
    if record.scale["reference_px"]:
        area = np.array(record.scale["reference_px"], dtype=float)
        return area.mean(axis=0), "the scale reference", area
    middle = np.array([(photo["width"] - 1) / 2, (photo["height"] - 1) / 2])
    return middle, "the middle of the photo", middle[np.newaxis]


def _beside(middle: Array, record: Record, room_px: float) -> Array:
    """The place nearest the middle that is clear of every indication by ``room_px``."""
    if not record.indications:
        return middle
    marked = shapely.union_all(
        [shapely.MultiPoint(one["outline_px"]).convex_hull for one in record.indications]
    )
    steps = np.arange(-20, 21) * room_px / 2
    places = middle + np.stack(np.meshgrid(steps, steps), axis=-1).reshape(-1, 2)
    size = (record.photo["width"] - 1, record.photo["height"] - 1)
    free = ((places >= 0) & (places <= size)).all(axis=1)
    free &= shapely.distance(shapely.points(places), marked) > room_px
    if not free.any():
        return middle
    places = places[free]
    return np.asarray(places[np.argmin(np.round(np.linalg.norm(places - middle, axis=1), 6))])


def _px_per_mm(h: Array, points: Array) -> Array:
    """Photo scale along the photo's width: one over the mm that one px to the right spans."""
    steps = np.array([[-0.5, 0.0], [0.5, 0.0]])
    both = points[:, np.newaxis] + steps
    flat = np.concatenate([both.reshape(-1, 2), np.ones((both.size // 2, 1))], axis=1) @ h.T
    with np.errstate(divide="ignore", invalid="ignore"):
        mm = (flat[:, :2] / flat[:, 2:]).reshape(-1, 2, 2)
        scale: Array = 1.0 / np.linalg.norm(mm[:, 1] - mm[:, 0], axis=1)
    return scale


def _round_below(value: float) -> float:
    power = 10.0 ** floor(log10(value))
    return next(step * power for step in (5.0, 2.0, 1.0) if step * power <= value * (1 + 1e-9))
