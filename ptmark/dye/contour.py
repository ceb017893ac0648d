"""The sub-pixel outlines of blobs, at half contrast, with what their edges show.

Sheet px count from the centre of the sheet's top-left pixel; what leaves is in photo px.
"""

from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.edge import EdgeQuality, unsharpened
from ptmark.dye.fine import CloseLook
from ptmark.dye.hue import red_codes, taken_light
from ptmark.dye.level import band_width, crossing, edge_share, width_doubt
from ptmark.dye.mask import Part, part_within, parts_of, ridge_near, stride_of
from ptmark.dye.moved import Moved
from ptmark.dye.opened import opened
from ptmark.dye.quick import middle, sample
from ptmark.dye.rings import Rings, without_crossings
from ptmark.dye.tips import drawn_out, fading, farthest, own_ridge

__all__ = ["Contour", "contours", "edge_of"]

Float = npt.NDArray[np.float32]
Array = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int32]

_OUT_PX, _MOST_IN_PX = 1.5, 4.0  # how far a vertex may move from the mask's border
_IN_SHARE = 0.35  # and inwards no further than this share of the width
_STEP_PX, _LEAP_PX = 0.5, 1.5
_NINE = np.ones((3, 3), np.uint8)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Contour:
    """One closed outline in photo px with what its edge shows.

    ``shift_px`` is half the way of the outline between 40 and 60 % of the contrast, the mean
    along it; ``end_shift_px`` the same for each end of its greatest length; ``doubt_px``
    its like with the doubt of its width where the photo moved or its blur is not known, else
    0. ``left_outside`` is what is left of the level 2.5 blurs outside: next to nothing at an
    edge, most of it in haze. ``taken_light`` is the share of R, G and B light that the core
    takes, NaN where it is too pale to tell, ``red_codes`` how far JPEG's red difference lies
    above the developer's. ``cut`` is the share of the outline where the look ended, not at an
    edge: haze goes on there. ``grain`` is the spread of the developer round it, as a share of
    full dye.
    """

    outline_px: Array
    shift_px: float
    end_shift_px: float
    noise_px: float
    contrast: float
    left_outside: float
    taken_light: Array
    area_px: float
    cut: float
    grain: float
    doubt_px: float = 0.0
    red_codes: float = np.inf


def edge_of(one: Contour, source: str) -> EdgeQuality:
    """The quality of a contour's edge, as it goes with the outline."""
    return EdgeQuality(
        shift_px=max(unsharpened(one.shift_px, one.left_outside), one.doubt_px),
        noise_px=one.noise_px,
        source=source,
        end_shift_px=unsharpened(one.end_shift_px, one.left_outside),
    )


def contours(
    close: CloseLook,
    photo_blur_px: float,
    least_px: float,
    *,
    trace_pale: bool = True,
    moved: Moved | None = None,
    blur_doubt_px: float = 0.0,
    follow_tips: bool = True,
) -> list[Contour]:
    """Closed outlines of a sheet's blobs, one for each part of at least ``least_px`` across.

    A part counts where it holds a seed. ``photo_blur_px`` is the edge's standard deviation
    elsewhere in the photo, known to within ``blur_doubt_px``, for blobs too thin to show their
    own, unless it ``moved``. Unless ``trace_pale``, what `is_hidden` is told by
    the border of its mask, as sure as a pixel is wide; ``follow_tips`` as they fade out.
    """
    steps = np.array([crop.step for crop in close.sheet.crops])
    blur_px = np.where(np.isnan(close.blur_px), photo_blur_px / steps, close.blur_px)
    ridge = ridge_near(close, blur_px, pale_too=trace_pale)
    relative = opened(close.amount / ridge, close.sheet.near)
    parts = list(parts_of(close, relative, least_px / steps))
    traced = [one for one in parts if trace_pale or not one.pale]
    made = [] if trace_pale else [_rough(close, one) for one in parts if one.pale]
    if traced:
        look = _look(close, traced, relative, ridge, blur_px)
        made += _made(look, moved, blur_doubt_px, follow=follow_tips)
    return [one for one in made if len(one.outline_px) >= 4]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Look:
    """What all contours of a sheet share: ``relative`` is amount over plateau (``ridge``).

    ``chain`` of shape (N, 2) are the vertices taken of the parts' borders, in ``rings``;
    ``number`` of shape (R,) are their crops, ``of`` of shape (N,) the crop of each vertex,
    ``blur_px`` one for each crop.
    """

    close: CloseLook
    relative: Float
    ridge: Float
    blur_px: Array
    parts: list[Part]
    number: npt.NDArray[np.intp]
    strides: npt.NDArray[np.intp]
    chain: Ints
    rings: Rings
    of: npt.NDArray[np.intp]

    def at(self, values: npt.NDArray[np.generic]) -> Array:
        """Values at the vertices."""
        return values[self.chain[:, 1], self.chain[:, 0]].astype(np.float64)

    def width(self) -> Array:
        """The blobs' width near the vertices."""
        return self.rings.smooth(self.at(self.close.width), 3)

    @property
    def steps(self) -> npt.NDArray[np.intp]:
        """Photo px a px of each crop."""
        return np.array([crop.step for crop in self.close.sheet.crops])


def _look(
    close: CloseLook,
    parts: list[Part],
    relative: Float,
    ridge: Float,
    blur_px: Array,
) -> _Look:
    number = np.array([one.number for one in parts])
    borders = [one.border for one in parts]
    strides = np.array([stride_of(one) for one in borders])
    chains = [chain[::stride] for chain, stride in zip(borders, strides, strict=True)]
    rings = Rings([len(one) for one in chains])
    return _Look(
        close=close,
        relative=relative,
        ridge=ridge,
        blur_px=blur_px,
        parts=parts,
        number=number,
        strides=strides,
        chain=np.concatenate(chains),
        rings=rings,
        of=number[rings.of],
    )


def _made(look: _Look, moved: Moved | None, doubt_px: float, *, follow: bool) -> list[Contour]:
    close, rings, number = look.close, look.rings, look.number
    grain = close.grain[number]
    cut = rings.mean(look.at(cv2.erode(close.sheet.near, _NINE) == 0))
    outward = _normals(look)
    target = _target(look, outward, moved)
    points, low, high = _to_level(look, outward, target)
    # across the smoothed outline: across the raw one the grain that placed each vertex would
    # make a soft edge look sharp
    base = rings.smooth(points, 3)
    away = 2.5 * look.blur_px[look.of][:, None]
    inner, outer, far = sample(
        look.relative, np.stack([base + by * outward for by in (-1.0, 1.0, away)])
    )
    slopes = (inner - outer) / 2
    slope = np.maximum(rings.mean(slopes / target), 0.01)
    left = rings.mean(far / target)
    level = np.array([middle(one) for one in rings.apart(look.at(look.ridge) * target)])
    noise = grain / np.maximum(level * slope, 1e-3)
    outlines = rings.apart(points)
    at = np.array([farthest(one)[:2] for one in outlines]) + rings.starts[:, None]
    fades = fading(look.relative, points[at], target[at])
    steps, along = look.steps[number], look.blur_px[number]
    if moved is not None:
        along = np.maximum(along, moved.along_px(points[at]) / steps)
    points, untold = drawn_out(close, points, at, rings, along * follow, grain)
    outlines = rings.apart(points)
    longest = np.array([[farthest(one)[2] for one in level] for level in (low, high)])
    shorter = np.hypot(np.maximum((longest[0] - longest[1]) / 4, fades), untold)
    unsure = np.where(np.isnan(close.blur_px[number]), doubt_px / steps, np.nan)
    band = np.array([band_width(one) for one in outlines])
    seen_px, blur_px = close.whole_px[number], look.blur_px[number]
    doubt = width_doubt(seen_px, band, blur_px, unsure, 0.2 / slope)
    if moved is not None:
        beyond, own = moved.end_px(points[at[:, 0]] - points[at[:, 1]]), look.steps[look.of]
        shorter = np.maximum(shorter, beyond / steps)
        doubt = moved.doubt_px(rings, outward, slopes / own, look.width() * own) / steps
    areas = [float(cv2.contourArea(outline.astype(np.float32))) for outline in outlines]
    made = []
    for i, one, share in without_crossings(outlines, hairs=follow):
        part = look.parts[i] if share == 1 else part_within(close, look.parts[i].number, one)
        step, blur = close.sheet.crops[part.number].step, float(look.blur_px[part.number])
        taken = taken_light(close, part.number, part.border, blur, part.contrast)
        made.append(
            Contour(
                outline_px=close.sheet.in_photo(part.number, one),
                shift_px=0.2 / float(slope[i]) * step,
                end_shift_px=float(shorter[i]) * step,
                doubt_px=float(doubt[i]) * step,
                noise_px=float(noise[i]) * step,
                contrast=part.contrast,
                left_outside=float(left[i]),
                taken_light=taken,
                area_px=areas[i] * share * step**2,
                cut=float(cut[i]),
                grain=float(grain[i]),
                red_codes=red_codes(taken, close.color[part.number]),
            )
        )
    return made


def _rough(close: CloseLook, part: Part) -> Contour:
    """What its mask alone tells of a part."""
    step = close.sheet.crops[part.number].step
    return Contour(
        outline_px=close.sheet.in_photo(part.number, part.border),
        shift_px=step,
        end_shift_px=step,
        noise_px=step,
        contrast=part.contrast,
        left_outside=0.0,
        taken_light=np.full(3, np.nan),
        area_px=part.pixels * step**2,
        cut=0.0,
        grain=float(close.grain[part.number]),
    )


def _normals(look: _Look) -> Array:
    """Unit normals of shape (N, 2), outwards, down the smoothed contrast."""
    smooth = cv2.GaussianBlur(look.relative, (0, 0), 1.0)
    right = cv2.Sobel(smooth, cv2.CV_32F, 1, 0, scale=1 / 8)
    down = cv2.Sobel(smooth, cv2.CV_32F, 0, 1, scale=1 / 8)
    outward = look.rings.smooth(-np.column_stack([look.at(right), look.at(down)]), 2)
    size = np.hypot(outward[:, :1], outward[:, 1:])
    return np.asarray(outward / np.maximum(size, 1e-9))


def _target(look: _Look, outward: Array, moved: Moved | None) -> Array:
    """Share of the plateau at which each vertex lies, shape (N,).

    Blur lowers a thin line's plateau and so puts half of it too far out at the flanks; along
    the line nothing is lowered, so that at a tip half the plateau is the edge.
    """
    rings, seen_px = look.rings, look.close.seen_px[look.of]
    width, blur = look.width(), look.blur_px[look.of]
    if moved is not None:
        untold = np.isnan(look.close.blur_px)[look.of]
        blur = np.where(untold, moved.blur_px(outward) / look.steps[look.of], blur)
    flank, end = edge_share(width, blur)
    ridge = np.minimum(look.at(own_ridge(look.relative, look.close, look.number)), 1.0)
    flank = flank * rings.smooth(ridge, 3)
    span = np.maximum(3, np.round(0.8 * seen_px / look.strides[rings.of])).astype(np.intp)
    along = np.einsum("ij,ij->i", outward[rings.beside(-span)], outward[rings.beside(span)])
    tip = np.clip(-1.5 * along, 0, 1)
    tip[rings.counts[rings.of] < 2 * span + 2] = 0
    return np.asarray(flank + (end - flank) * tip)


def _to_level(
    look: _Look, outward: Array, target: Array
) -> tuple[Array, list[Array], list[Array]]:
    """Move the masks' borders along their normals to ``target`` of the plateau.

    Returns
    -------
    points : ndarray of shape (N, 2)
        Sheet px, at the target.
    low, high : list of ndarray of shape (N / 2, 2)
        For each ring every second one at 40 and at 60 hundredths, where the target is a half.
    """
    most_in = np.minimum(_MOST_IN_PX, np.maximum(1.0, _IN_SHARE * look.close.seen_px))[look.of]
    places = -most_in[:, None] + _STEP_PX * np.arange((_MOST_IN_PX + _OUT_PX) / _STEP_PX + 1)
    start = look.chain.astype(np.float64)
    lines = start[:, None, :] + places[..., None] * outward[:, None, :]
    values = np.full((len(lines), places.shape[1] + 1), -np.inf)
    values[:, :-1] = sample(look.relative, lines) / target[:, None]
    values[:, :-1][places > _OUT_PX + 1e-9] = -np.inf

    def moved(index: slice | npt.NDArray[np.intp], rings: Rings, level: float) -> Array:
        by = crossing(values[index], level) * _STEP_PX - most_in[index]
        return rings.calm(start[index] + by[:, None] * outward[index], _LEAP_PX)

    index, half = look.rings.every_second()
    low, high = (half.apart(moved(index, half, level)) for level in (0.8, 1.2))
    return moved(slice(None), look.rings, 1.0), low, high
