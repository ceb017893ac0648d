"""Photo quality told before measuring: remarks with their mend, none of them a block."""

from collections.abc import Sequence

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import widened
from ptmark.dye.distance import too_far_remark
from ptmark.dye.exposure import FULL, clipped_share
from ptmark.dye.grain import smoothed_remark
from ptmark.dye.quick import value_at
from ptmark.dye.remark import Remark
from ptmark.dye.sampled import SAMPLES, Sample, card_corners, sampled
from ptmark.dye.sharpness import blur_of_card, blur_of_edges, halo_of_card, ink_of_card
from ptmark.photo import Photo, srgb_to_linear
from ptmark.scale import FAR_SIZES, SurfaceMap, sizes_away

__all__ = ["holds_no_colour", "look_at_quality"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

# Bounds of our own: common practice, no source; the stress set and the demo photos stay quiet.
BLUR_SHARE = 0.25  # of the smallest size that counts, full width at half of the blur
BLUR_SHARE_GUESSED = 0.4  # where the edges looked at may be soft in truth
BLUR_OF_WIDTH = 0.001  # of the photo's width, where there is no scale
WHITE_CLIPPED, RED_CLIPPED, DYE_CLIPPED = 0.05, 0.10, 0.25
DARKEST_WHITE = 0.08  # linear light; below it grain covers a faint indication
# Least over most of the developer's R, G and B light. Dye is told by its colour under a cast of
# 0.29; where a sodium lamp leaves 0.24 it passes for rust.
LEAST_OF_MOST = 0.25
# The card's ink over its white: 0.04 in demo and truth photos, 0.24 to 0.4 in a veil of 30 %,
# 0.52 and more in one of 50 %, 0.11 in a glow about bright things. A grey print has 0.1.
MOST_OF_INK = 0.2
# Bright rims beside the card's ink, over its contrast: 123 rendered photos as taken, some of
# them sharpened as cameras do, at most 0.25; unsharp masks of 2 to 2.5 make 0.21 to 1.4.
MOST_OF_HALO = 0.27
NEAR_BORDER = 0.005  # of the photo's longer side
_LEAST_GLARE = 0.008  # of the photo's width
_NO_COLOUR = Remark(
    "The photo holds no colour, so nothing in it can be told to be dye.",
    "Take the photo in colour, without a filter.",
)


def look_at_quality(
    photo: Photo,
    surface: SurfaceMap | None,
    area_px: Array | None,
    smallest_mm: float = 1.5,
    *,
    fluorescent: bool = False,
) -> tuple[Remark, ...]:
    """Say what about a photo may spoil the finding or the measuring.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap, optional
        Without it, only what needs no scale is told.
    area_px : ndarray of shape (N, 2), optional
        Examined area, px; the whole photo where None.
    smallest_mm : float, mm
        The smallest size that the criteria care about.
    fluorescent : bool
        A photo under UV-A, dark by intent: light is not remarked upon.

    Returns
    -------
    tuple of Remark
        In the order colour, distance, focus, grain, sharpening, veil, light, reference;
        empty where nothing is to be said.
    """
    made = [_NO_COLOUR if holds_no_colour(photo) else None]
    made += [
        too_far_remark(surface, area_px, smallest_mm),
        _out_of_focus(photo, surface, smallest_mm),
    ]
    sample = sampled(photo, surface, area_px)
    if not fluorescent:
        made += [smoothed_remark(photo, surface), _sharpened(photo, surface)]
        made += [_veiled(photo, surface)]
    if sample is not None and not fluorescent:
        glare = _glare(sample)
        made += [_clipped(sample, glare), _reds(sample), _dark(sample)]
        made += [_coloured(sample), glare]
    if surface is not None:
        made += [_cut_off(photo, surface), _far_reference(surface, area_px)]
    return tuple(one for one in made if one is not None)


def holds_no_colour(photo: Photo) -> bool:
    """Whether red, green and blue are the same all over the photo, as after a grey filter.

    Exactly the same: in a photo in colour the sensor's noise alone parts some of them.
    """
    step = max(1, round(float(np.sqrt(photo.rgb.shape[0] * photo.rgb.shape[1] / SAMPLES))))
    for every in (8 * step, step):  # colour mostly shows in a few pixels already
        some = np.ascontiguousarray(photo.rgb[::every, ::every])
        red, green, blue = (cv2.extractChannel(some, i) for i in range(3))
        if (red != green).any() or (green != blue).any():
            return False
    return True


def _out_of_focus(
    photo: Photo, surface: SurfaceMap | None, smallest_mm: float
) -> Remark | None:
    mend = "Hold the camera still, let it focus on the developer, and take the photo again."
    known = surface is not None and surface.reference == "card"
    blur = blur_of_card(photo, surface) if surface is not None and known else None
    share = BLUR_SHARE
    if blur is None:
        blur, share = blur_of_edges(photo), BLUR_SHARE_GUESSED
    if blur is None:
        return None
    width = 2.355 * blur  # full width at half of a Gaussian
    if surface is None:
        if width < 2.355 * BLUR_OF_WIDTH * photo.info.width:
            return None
        return Remark(f"Out of focus or moved: edges are {width:.0f} pixels wide.", mend)
    width_mm = width * surface.mm_per_px()
    if width_mm <= share * smallest_mm:
        return None
    return Remark(
        f"Out of focus or moved: edges are {width_mm:.1f} mm wide, where sizes from "
        f"{smallest_mm:.1f} mm count.",
        mend,
    )


def _sharpened(photo: Photo, surface: SurfaceMap | None) -> Remark | None:
    """Strong sharpening, which brings back the grain that was smoothed away, but no ends."""
    if surface is None or surface.reference != "card":
        return None
    halo = halo_of_card(photo, surface)
    if halo is None or halo < MOST_OF_HALO:
        return None
    return Remark(
        f"The photo was sharpened strongly: a rim beside the card's black is {100 * halo:.0f} "
        "% brighter than its white. Thin ends and faint indications that were smoothed away "
        "before do not come back, so that lengths may come out too short by more than their U.",
        "Use the photo as the camera wrote it, with sharpening and noise filters off.",
    )


def _veiled(photo: Photo, surface: SurfaceMap | None) -> Remark | None:
    """Light over the whole photo, which the card's black ink shows; nothing else surely is."""
    if surface is None or surface.reference != "card":
        return None
    ink = ink_of_card(photo, surface)
    if ink is None or ink < MOST_OF_INK:
        return None
    return Remark(
        f"A veil of light lies over the photo: the card's black shows {100 * ink:.0f} % of its "
        "white, and faint indications may be lost in it.",
        "Clean the lens, keep lamps and windows out of it, and take the photo again.",
    )


def _clipped(sample: Sample, glare: Remark | None) -> Remark | None:
    share = clipped_share(sample)
    if share < WHITE_CLIPPED or (glare is not None and share < 4 * WHITE_CLIPPED):
        return None
    return Remark(
        f"Overexposed: {100 * share:.0f} % of the examined area is clipped, and pale "
        "indications on it are lost.",
        "Lower the exposure until the developer is light grey, and use no scanning program or "
        "filter that makes white pure.",
    )


def _reds(sample: Sample) -> Remark | None:
    red, green, _ = sample.planes
    full = (red >= FULL) & sample.inside
    dye = (np.asarray(cv2.subtract(red, green)) > 60) & sample.inside
    dyed = int(np.count_nonzero(dye))
    in_dye = int(np.count_nonzero(full & dye)) if dyed >= 40 else 0
    share = np.count_nonzero(full & (green < FULL - 7)) / sample.count
    if in_dye <= DYE_CLIPPED * dyed and share < RED_CLIPPED:
        return None
    return Remark(
        "The red is clipped: how much dye there is can no longer be told, and edges shift.",
        "Lower the exposure, or set the white balance to the light in use.",
    )


def _dark(sample: Sample) -> Remark | None:
    brightest = value_at(0.8, sample.most, sample.inside)
    white = float(srgb_to_linear(np.array([brightest]).astype(np.uint8))[0])
    if white >= DARKEST_WHITE:
        return None
    return Remark(
        f"Too dark: the developer shows {100 * white:.0f} % of full light, and grain may hide "
        "faint indications.",
        "Light the surface better (the procedure asks for it too), or expose longer.",
    )


def _coloured(sample: Sample) -> Remark | None:
    """Light of one colour, as the brightest fifth shows it: it is the developer."""
    least = int(np.ceil(value_at(0.8, sample.most, sample.inside) - 1e-6))
    brightest = (sample.most >= least) & sample.inside
    usual = [value_at(0.5, plane, brightest) for plane in sample.planes]
    light = srgb_to_linear(np.array(usual).astype(np.uint8))
    if light.min() >= LEAST_OF_MOST * light.max():
        return None
    return Remark(
        "Coloured light: the developer does not look white, and dye may pass for rust or ink, "
        "or not show at all.",
        "Take the photo in white light, with the white balance set to it.",
    )


def _glare(sample: Sample) -> Remark | None:
    """Saturated patches that fade out softly; paper and tape end at a sharp rim."""
    full = (sample.least >= FULL) & sample.inside
    if not cv2.countNonZero(full):
        return None
    _, names, stats, _ = cv2.connectedComponentsWithStats(full)
    least = max(3.0, _LEAST_GLARE * sample.photo_width / sample.step)
    order = np.argsort(-stats[1:, cv2.CC_STAT_AREA])[:12] + 1
    covered = 0
    for name in order.tolist():
        *box, area = stats[name].tolist()
        if area < 0.6 * least**2:
            break
        if _soft_rim(sample, names == name, box):
            covered += area
    if not covered:
        return None
    share = 100 * covered / sample.count
    return Remark(
        f"Glare covers {share:.1f} % of the examined area, and nothing can be seen there.",
        "Turn the light or the camera, or diffuse the light, and take the photo again.",
    )


def _soft_rim(sample: Sample, own: Mask, box: Sequence[int]) -> bool:
    place = widened(box, 10)
    away = cv2.distanceTransform((~own[place]).astype(np.uint8), cv2.DIST_L2, 3)
    crop = cv2.merge([plane[place] for plane in sample.planes])
    light = srgb_to_linear(np.asarray(crop, np.uint8)).mean(axis=2)
    near, far = light[(away > 2) & (away < 4)], light[away > 7]
    if not near.size or not far.size:
        return False
    ground = float(np.median(far))
    return float(np.median(near)) - ground > 0.12 * (1 - ground)


def _cut_off(photo: Photo, surface: SurfaceMap) -> Remark | None:
    height, width = photo.rgb.shape[:2]
    card = surface.reference == "card"
    seen = card_corners(surface) if card else surface.reference_px
    beyond = np.array([width, height]) - 1 - seen.max(axis=0)
    room = float(np.minimum(seen.min(axis=0), beyond).min())
    mend = "Keep the whole reference well inside the photo."
    if card and room < 0:
        return Remark("The scale card is cut off by the photo's border.", mend)
    if room < NEAR_BORDER * max(width, height):
        return Remark(
            "The scale reference lies at the photo's border, where the lens bends most.", mend
        )
    return None


def _far_reference(surface: SurfaceMap, area_px: Array | None) -> Remark | None:
    if area_px is None or not surface.in_view(area_px):
        return None
    away, size = sizes_away(surface, area_px)
    if away <= FAR_SIZES * size:
        return None
    return Remark(
        f"The examined area reaches {away:.0f} mm away from the scale reference, which is "
        f"{size:.0f} mm large: the scale is less sure there.",
        "Lay the reference beside the indications.",
    )
