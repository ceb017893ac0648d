"""Refuse a scale reference that cannot give a surface, with the reason."""

from math import hypot, isfinite
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import Point

__all__ = [
    "MM_PER_PX_RANGE",
    "check_length",
    "check_line",
    "check_points",
    "check_scale",
    "clockwise_corners",
]

Array = npt.NDArray[np.float64]

# A 200 megapixel photo of 8 mm, and a 2 megapixel photo of 4 m: nobody measures
# indications outside these.
MM_PER_PX_RANGE = (0.0005, 2.0)
MIN_LINE_PX = 50.0
MIN_SINE = 0.05  # about 3 degrees between the sides at a corner

_AGAIN = "pick it again under the magnifier"


def check_points(points: "tuple[Point, ...]", photo: "Photo") -> Array:
    """Points as an array, refused where not finite or outside the photo."""
    at = np.asarray(points, float).reshape(-1, 2)
    if not np.isfinite(at).all():
        raise ScaleError(
            "a point has a coordinate that is no number", where="scale", mend=_AGAIN
        )
    width, height = photo.info.width, photo.info.height
    for x, y in at:
        if not (-0.5 <= x <= width - 0.5 and -0.5 <= y <= height - 0.5):
            raise ScaleError(
                f"point {x:g}, {y:g} lies outside the photo of {width} x {height} px",
                where="scale",
                mend="pick inside the photo",
            )
    return at


def check_length(mm: float, what: str) -> None:
    """Refuse a length that is not a positive number."""
    if not (isfinite(mm) and mm > 0):
        raise ScaleError(
            f"{what} of {mm:g} mm is no length",
            where="scale",
            mend="give the true length, above zero",
        )


def check_scale(mm: float, px: float) -> None:
    """Refuse a scale that no photo of an indication has."""
    low, high = MM_PER_PX_RANGE
    if not low <= mm / px <= high:
        raise ScaleError(
            f"{mm:g} mm over {px:.0f} px is {mm / px:.3g} mm per pixel, "
            f"outside {low:g} to {high:g}",
            where="scale",
            mend="check the length and its unit",
        )


def check_line(ends: Array, mm: float, what: str = "the line") -> float:
    """Refuse a degenerate line; returns its length in px."""
    px = hypot(*(ends[1] - ends[0]))
    if px == 0:
        raise ScaleError(f"both ends of {what} are the same point", where="scale", mend=_AGAIN)
    if px < MIN_LINE_PX:
        raise ScaleError(
            f"{what} is {px:.0f} px long; under {MIN_LINE_PX:.0f} px it fixes no scale",
            where="scale",
            mend="take a longer line or a closer photo",
        )
    check_scale(mm, px)
    return px


def clockwise_corners(corners: Array) -> tuple[Array, bool]:
    """Corners in clockwise order as seen, the first kept; whether they had to be turned round.

    Raises
    ------
    ScaleError
        If two corners coincide, three lie on one line, or the sides cross.
    """
    for i in range(4):
        for j in range(i + 1, 4):
            if hypot(*(corners[i] - corners[j])) < 2.0:
                raise ScaleError(
                    f"corners {i + 1} and {j + 1} are the same point",
                    where="scale",
                    mend=_AGAIN,
                )
    sides = np.roll(corners, -1, axis=0) - corners
    lengths = np.hypot(sides[:, 0], sides[:, 1])
    nexts = np.roll(sides, -1, axis=0)
    turns = (sides[:, 0] * nexts[:, 1] - sides[:, 1] * nexts[:, 0]) / (
        lengths * np.roll(lengths, -1)
    )
    if np.abs(turns).min() < MIN_SINE:
        raise ScaleError("three of the corners lie on one line", where="scale", mend=_AGAIN)
    if abs(np.sign(turns).sum()) != 4:
        raise ScaleError(
            "the sides cross: the corners are out of order, or one lies inside the other three",
            where="scale",
            mend="pick the corners clockwise from the top left",
        )
    if turns[0] > 0:  # y down: a positive turn is clockwise as seen
        return corners, False
    return corners[[0, 3, 2, 1]], True
