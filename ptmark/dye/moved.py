"""Whether the camera or the part moved during the exposure: edges that face one way are softer.

A motion blurs what it runs across and leaves what it runs along sharp. A line no wider than the
motion is long is seen as wide as that, at a lower plateau, with flanks as soft as it is wide:
its own look does not tell the two apart, so that the motion is taken from all blobs together.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, pi, sqrt

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.beside import moved_on
from ptmark.dye.edge import LEVEL_DIVISOR
from ptmark.dye.level import error_function
from ptmark.dye.quick import median, middle, quantiles
from ptmark.dye.remark import Remark
from ptmark.dye.rings import Rings
from ptmark.dye.sharpness import blurs_of_card
from ptmark.photo import Photo, srgb_to_linear
from ptmark.scale import SurfaceMap

__all__ = ["Moved", "motion_of", "moved_remark"]

Array = npt.NDArray[np.float64]
Floats = npt.NDArray[np.float32]

# How much softer edges that face along the motion are than those square to it, and each blob by
# itself that way. First looks of 25 rendered photos, sharp or out of focus: 1.0 to 1.25 all
# together, of 3 photos of other things 1.15 to 1.18, at most 0.45 of the blobs that soft each;
# moved by 7 px 1.6, by 13 px 2.2, and all of the blobs. Called outlines: 1.0 to 1.13, at most
# 0.17 of them; moved 1.24 and more, 0.73 and more.
LEAST_RATIO, LEAST_OWN, LEAST_AGREE = 1.4, 1.25, 0.75
LEAST_RATIO_CALLED, LEAST_OWN_CALLED, LEAST_AGREE_CALLED = 1.2, 1.2, 0.7
LEAST_RATIO_CARD = 1.4  # of the card's two directions; 1.0 to 1.12 where nothing moved
_LEAST_BLOBS = 3  # 2 in 100 draws of three from sharp photos agree by chance, of two 5
_LEAST_SIDES = 9  # places on a blob's rim
_MOST_CALLED, _MOST_SIDES = 100, 80
_ROUNDS, _NEAR = 6, 0.05
_FACING = 0.7  # cosine from which an edge faces along the motion
_FLANKS = (
    0.4  # share of a rim that faces so where it is the flanks; of a line's tips at most 0.22
)
_SURELY_WIDER = 1.25  # than the longest motion there may be: as wide as it seems
# The ends of a length along the motion, in its lengths: from 40 to 60 % a box is 0.1 to each
# side, and swept aslant, tips come out too far by up to half as much again. Own measurement.
_END_PER_PX = 0.15
_STILL = (
    "Rest the camera on something, keep the part still, give more light so that the exposure "
    "is shorter, and take the photo again."
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Moved:
    """The blur of a moved photo.

    Attributes
    ----------
    way : ndarray of shape (2,)
        The motion's unit direction, in photo px.
    still_px : float
        Standard deviation of edges square to it, px.
    length_px : float
        Of the motion, px, as edges that face along it show it; at least so long.
    most_px : float
        And at most so long: no blob reaches less far that way.
    """

    way: Array
    still_px: float
    length_px: float
    most_px: float

    def blur_px(self, outward: Array) -> Array:
        """Standard deviation of the blur of edges that face so, unit normals (N, 2), px."""
        along = (outward @ self.way) * self.length_px
        return np.sqrt(self.still_px**2 + along**2 / 12)  # a box's variance

    def along_px(self, ends: Array) -> Array:
        """The same along lines between ends of shape (R, 2, 2)."""
        way = ends[:, 0] - ends[:, 1]
        return self.blur_px(way / np.maximum(np.hypot(way[:, :1], way[:, 1:]), 1e-9))

    def doubt_px(self, rings: Rings, outward: Array, slopes: Array, widths: Array) -> Array:
        """Shift of the flanks of each of R outlines, px, by which its width may be less.

        Parameters
        ----------
        rings : Rings
            Of N vertices.
        outward : ndarray of shape (N, 2)
        slopes : ndarray of shape (N,)
            Of the edge, as a share of the plateau a photo px.
        widths : ndarray of shape (N,)
            Of the outline near each, photo px.

        Notes
        -----
        A line of width w moved over by m is seen max(w, m) wide, its flanks min(w, m) wide. So
        what is seen no wider than the longest motion there may be may truly be as narrow as
        its flanks, less the blur of what stood still.
        """
        facing = np.abs(outward @ self.way)
        doubt = np.zeros(len(rings.counts))
        for i, (turned, slope, wide) in enumerate(
            zip(*map(rings.apart, (facing, slopes, widths)), strict=True)
        ):
            some = turned > _FACING
            if not some.any():
                continue
            seen = float(middle(wide[some]))
            if seen > _SURELY_WIDER * self.most_px * float(middle(turned[some])):
                continue
            flank = 1 / max(float(middle(slope[some])), 1e-3)
            still = sqrt(2 * pi) * self.still_px
            least = sqrt(max(flank**2 - still**2, 0.0))
            doubt[i] = max(seen - least, 0.0) * LEVEL_DIVISOR / 4
        return doubt

    def end_px(self, way: Array) -> Array:
        """The same of the ends of lengths that run so, (R, 2), px."""
        size = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-9)
        return np.asarray(_END_PER_PX * self.length_px * np.abs(way @ self.way) / size)


def motion_of(sides: Sequence[Floats]) -> Moved | None:
    """The motion that first looks at a photo's blobs show, or None where they show none.

    Parameters
    ----------
    sides : sequence of R ndarray of shape (5, K)
        Of places on each blob's rim: the slope there, x and y, as a share of the plateau a px;
        the place, px; the blob's width, px.
    """
    blobs = [one.astype(np.float64) for one in sides if one.shape[1] >= _LEAST_SIDES]
    found = _agreed([one[:2] for one in blobs], LEAST_RATIO, LEAST_OWN, LEAST_AGREE)
    if found is None:
        return None
    usual, wave = found
    most, angle = float(np.hypot(*wave)), np.arctan2(wave[1], wave[0]) / 2
    way, still = np.array([np.cos(angle), np.sin(angle)]), exp(usual - most) / sqrt(2 * pi)
    return Moved(
        way=way,
        still_px=still,
        length_px=still * _box(exp(2 * most)),
        most_px=min(_reach(one, way) for one in blobs),
    )


def moved_remark(
    photo: Photo, surface: SurfaceMap | None, outlines_px: Sequence[Array]
) -> Remark | None:
    """What is to be said of a photo that moved, by the card's edges or those of outlines.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap, optional
    outlines_px : sequence of ndarray of shape (N, 2)
        Indications, px, at the edge of their dye.
    """
    ratio = _ratio_of_card(photo, surface)
    if ratio < LEAST_RATIO_CARD:
        sides = [_sides(photo, one) for one in outlines_px[:_MOST_CALLED]]
        sides = [one for one in sides if one.shape[1] >= _LEAST_SIDES]
        bounds = LEAST_RATIO_CALLED, LEAST_OWN_CALLED, LEAST_AGREE_CALLED
        found = _agreed(sides, *bounds)
        if found is None:
            return None
        ratio = exp(2 * float(np.hypot(*found[1])))
    return Remark(
        f"Moved during the exposure: edges that face one way are {ratio:.1f} times as soft as "
        "the others, and a thin line across the motion looks wider than it is, so that a "
        "linear indication may be taken for a rounded one.",
        _STILL,
    )


def _ratio_of_card(photo: Photo, surface: SurfaceMap | None) -> float:
    if surface is None or surface.reference != "card":
        return 1.0
    both = blurs_of_card(photo, surface)
    return max(both) / max(min(both), 0.5) if len(both) == 2 else 1.0


def _sides(photo: Photo, outline: Array) -> Array:
    """Slopes of green light across an outline, as a share of its contrast a px, (2, K)."""
    turn = moved_on(outline, 2) - moved_on(outline, -2)
    normal = np.column_stack([turn[:, 1], -turn[:, 0]])
    normal /= np.maximum(np.hypot(normal[:, 0], normal[:, 1]), 1e-9)[:, None]
    if cv2.contourArea(outline.astype(np.float32), oriented=True) < 0:
        normal = -normal
    step = 1 + len(outline) // _MOST_SIDES
    at, normal = outline[::step], normal[::step]
    lines = (at + np.array([-2.5, -1.0, 1.0, 4.0])[:, None, None] * normal).astype(np.float32)
    code = cv2.remap(
        photo.rgb,
        lines[..., 0],
        lines[..., 1],
        cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_REPLICATE,
    )
    deep, inner, outer, white = srgb_to_linear(np.asarray(code, np.uint8))[..., 1].astype(float)
    contrast = float(median(white)) - quantiles(deep, (0.2,))[0]
    if contrast < 0.1:  # too pale: grain decides
        return np.empty((2, 0))
    return np.asarray(normal.T * np.maximum((outer - inner) / (2 * contrast), 0.01))


def _agreed(
    sides: Sequence[Array], ratio: float, own: float, agree: float
) -> tuple[float, Array] | None:
    """`_fitted` of all blobs, where it is so uneven and so many of them agree; else None."""
    if len(sides) < _LEAST_BLOBS:
        return None
    usual, wave = _fitted(sides)
    most = float(np.hypot(*wave))
    if 2 * most < log(ratio):
        return None
    each = 2 * np.array([_fitted([one])[1] @ wave / most for one in sides])
    return (usual, wave) if np.mean(each > log(own)) > agree else None


def _fitted(sides: Sequence[Array]) -> tuple[float, Array]:
    """The usual log of softness, and its wave of shape (2,) over twice the direction's angle.

    By least absolute differences, every blob of one weight.
    """
    x, y = np.hstack(sides)
    squares = np.maximum(x**2 + y**2, 1e-12)
    softness = -np.log(squares) / 2
    waves = np.column_stack([np.ones_like(x), (x**2 - y**2) / squares, 2 * x * y / squares])
    alike = np.concatenate([np.full(one.shape[1], one.shape[1] ** -0.5) for one in sides])
    weight, found = alike, np.zeros(3)
    for _ in range(_ROUNDS):
        weighed = waves * weight[:, None]
        found = np.linalg.lstsq(weighed.T @ waves, weighed.T @ softness, rcond=None)[0]
        weight = alike / np.maximum(np.abs(softness - waves @ found), _NEAR)
    return float(found[0]), found[1:]


def _box(ratio: float) -> float:
    """Length of a motion whose edge is so many times softer than a still one, in still blurs.

    A box of length x convolved with a Gaussian has an edge x / (sqrt(2 pi) erf(x / (2 sqrt 2)))
    times as soft (own derivation, checked numerically in the tests).
    """
    box = np.linspace(0.1, 60, 600)
    softer = box / (sqrt(2 * pi) * error_function(box / (2 * sqrt(2))))
    return float(np.interp(ratio, softer, box))


def _reach(one: Array, way: Array) -> float:
    """How far a blob reaches along a way, px: by its flanks where they face so."""
    facing = np.abs(way @ one[:2]) / np.maximum(np.hypot(one[0], one[1]), 1e-9)
    turned = facing > _FACING
    if np.mean(turned) > _FLANKS:
        return float(one[4, 0] / np.median(facing[turned]))
    return float(np.ptp(way @ one[2:4])) + 1
