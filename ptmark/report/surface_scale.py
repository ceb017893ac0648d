"""The scale bar and where it holds: under perspective no bar holds for the whole photo."""

from dataclasses import dataclass
from math import floor, log10
from typing import Any

import numpy as np
import numpy.typing as npt
import shapely

from ptmark.record import Record
from ptmark.scale import Cylinder, Lens

__all__ = ["ScaleBar", "local_bar", "photo_px", "scale_bar"]

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
    middle, place, area = _where(record)
    at = _beside(middle, record, 0.1 * wanted_px)
    bar = local_bar(record, at, wanted_px)
    if bar is None:
        return None
    length, here = bar[0], bar[1] / bar[0]
    around = _px_per_mm(record, area) / here
    around = around[np.isfinite(around)]
    spread = (float(around.min()), float(around.max())) if len(around) else (1.0, 1.0)
    return ScaleBar(length, length * here, (float(at[0]), float(at[1])), place, spread)


def local_bar(record: Record, at_px: Array, wanted_px: float) -> tuple[float, float] | None:
    """Length in mm and in px, along the photo's width, of a round bar that holds at a place.

    ``at_px`` of shape (2,), px of the upright photo. None where there is no scale there.
    """
    here = float(_px_per_mm(record, at_px[np.newaxis])[0])
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


def photo_px(record: Record, points_mm: Array) -> Array | None:
    """Where points of the surface, shape (N, 2) mm, are in the photo, px; None without a scale.

    A place at a plane's horizon is not finite. The lens term, under a percent, is left out.
    """
    pipe, matrix = _pipe_of(record), record.scale["homography"]
    if pipe is not None:
        return pipe.to_px(pipe.wrapped(points_mm))
    if matrix is None:
        return None
    # The adjugate maps mm to px like the inverse, and exists for every matrix.
    h = np.array(matrix, dtype=float)
    back = [np.cross(h[:, 1], h[:, 2]), np.cross(h[:, 2], h[:, 0]), np.cross(h[:, 0], h[:, 1])]
    return _mapped(np.array(back), points_mm)


def _px_per_mm(record: Record, points: Array) -> Array:
    """Photo scale along the photo's width: one over the mm that one px to the right spans.

    NaN where there is no scale.
    """
    both = (points[:, np.newaxis] + np.array([[-0.5, 0.0], [0.5, 0.0]])).reshape(-1, 2)
    pipe, matrix = _pipe_of(record), record.scale["homography"]
    if pipe is not None:
        places, met = pipe.meet(both)
        mm = np.where(met[:, np.newaxis], pipe.unwrapped(places), np.nan)
    elif matrix is not None:
        mm = _mapped(np.array(matrix, dtype=float), both)
    else:
        return np.full(len(points), np.nan)
    ends = mm.reshape(-1, 2, 2)
    with np.errstate(divide="ignore", invalid="ignore"):
        scale: Array = 1.0 / np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1)
    return scale


def _mapped(h: Array, points: Array) -> Array:
    flat = np.column_stack([points, np.ones(len(points))]) @ h.T
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(flat[:, :2] / flat[:, 2:])


def _pipe_of(record: Record) -> Cylinder | None:
    """The pipe that a record's surface is; None for a plane."""
    surface = record.scale.get("surface")
    if surface is None or surface.get("shape") != "cylinder":
        return None
    rays = np.array(surface["rays"], dtype=float)
    distance, radius = float(surface["axis_distance_mm"]), float(surface["radius_mm"])
    return Cylinder(distance, radius, rays, Lens((0.0, 0.0), 1.0))


def _round_below(value: float) -> float:
    power = 10.0 ** floor(log10(value))
    return next(step * power for step in (5.0, 2.0, 1.0) if step * power <= value * (1 + 1e-9))
