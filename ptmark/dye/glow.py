"""Penetrant left over under UV-A: how much of the background shines, and glow without edges.

What is called there is told from glow by its edge, in the photo's own light: beside bright
indications the engine works on faint ones as if they were as bright.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.about import pixels_about, within_outline
from ptmark.dye.like_contrast import MOST_BLUE, VIOLET, brightest_green
from ptmark.dye.quick import quantiles
from ptmark.dye.suggest import Suggestion
from ptmark.photo import Photo, ends_at_border, srgb_to_linear

__all__ = ["background_glow", "fades"]

Array = npt.NDArray[np.float64]
Float = npt.NDArray[np.float32]

_REDUCED = 8
_WINDOW = 0.05  # of the photo's width: as the background of red dye is taken
# Blue over green of what UV lamps leave to see; own choice. Where it is less in truth, a part
# of that light, which is dark, passes for glow.
_OF_VIOLET = 6.0
_LEAST_LIGHT = 0.03  # linear; a photo that shows nothing brighter holds no indication
# How far a glow's edge fades: light left 5 px outside of it, and a tenth for each time that it
# is softer than the edges of the bright ones. Of 191 true ones under half of the brightest 0.11
# at most, 99 % under 0.06; of 170 called clouds, toes and fingers 90 % over 0.25.
_MOST_FADING, _PER_SOFTNESS, _LEFT_PX, _REACH_PX = 0.25, 0.1, 5, 20
_MOST_AT_BORDER = 0.05
_BRIGHT = 0.5  # of the brightest: what shines so is no glow


def background_glow(photo: Photo, area_px: Array | None) -> float:
    """The green-yellow light of the background, as a share of the brightest indication's.

    Parameters
    ----------
    photo : Photo
        A fluorescent one.
    area_px : ndarray of shape (N, 2), optional
        Examined area, px; the whole photo where None.

    Returns
    -------
    float
        0 (dark) to 1: that below which four fifths of the background lie.

    Notes
    -----
    Green light is of penetrant or of lamps. With blue over green ``p`` of what shines and
    ``l`` of lamps, penetrant has ``(l green - blue) / (l - p)`` of green. ``l`` is that of the
    bluest places, where the least penetrant is, and no less than a violet lamp's where they
    are violet: penetrant all over leaves no place without.
    """
    light = srgb_to_linear(photo.reduced(_REDUCED))
    green, blue = light[..., 1], light[..., 2]
    bright = brightest_green(photo)
    top = float(bright.max())
    if top < _LEAST_LIGHT:
        return 0.0
    bluish = blue / np.maximum(green, 1e-4)
    of_glow = float(np.median(bluish[bright > _BRIGHT * top]))
    of_lamp = max(float(np.quantile(bluish[::3, ::3], 0.95)), 1 / MOST_BLUE)
    if of_lamp > VIOLET:
        of_lamp = max(of_lamp, _OF_VIOLET)
    of_glow = min(of_glow, 0.5 * of_lamp)  # clipped light has lost its hue
    glow = np.clip((of_lamp * green - blue) / (of_lamp - of_glow), 0, 1)
    coded = np.rint(255 * np.sqrt(glow)).astype(np.uint8)  # dark steps are finer so
    window = min(max(5, round(_WINDOW * coded.shape[1])) | 1, 255)
    background = (cv2.medianBlur(coded, window).astype(np.float32) / 255) ** 2
    if area_px is not None:
        inside = within_outline((area_px + 0.5) / _REDUCED - 0.5, coded.shape)
        background = background[inside > 0]
    return min(1.0, quantiles(background, (0.8,))[0] / top) if background.size else 0.0


def fades(photo: Photo, found: Sequence[Suggestion]) -> list[bool]:
    """Which of the called outlines are of a glow that has no edge, as they stand beside others.

    ``found`` is what `ptmark.dye.suggest.suggest` calls in the photo's picture in colour
    contrast.
    """
    if not found:
        return []
    seen = [_profile(photo, one.outline_px) for one in found]
    brightest = float(np.quantile([one.light for one in seen], 0.95))
    bright = [one.light > _BRIGHT * brightest for one in seen]
    shifts = [one.edge.shift_px for one in found]
    usual = float(
        np.median([shift for shift, is_so in zip(shifts, bright, strict=True) if is_so])
    )
    height, width = photo.rgb.shape[:2]
    made = []
    for outline, one, is_bright, shift in zip(found, seen, bright, shifts, strict=True):
        softer = max(0.0, shift / max(usual, 1e-3) - 1)
        fading = one.left_outside + _PER_SOFTNESS * softer
        most = _MOST_FADING
        if ends_at_border(outline.outline_px, width, height):  # which is as sharp as can be
            fading, most = one.left_outside, _MOST_AT_BORDER
        made.append(not is_bright and fading > most)
    return made


@dataclass(frozen=True, slots=True)
class _Profile:
    """Green light of a core over what lies round it, and the share of it just outside."""

    light: float
    left_outside: float


def _profile(photo: Photo, outline_px: Array) -> _Profile:
    crop, low = pixels_about(photo, outline_px, _REACH_PX + 2)
    codes, inside = crop[..., 1], within_outline(outline_px - low, crop.shape)
    away = cv2.distanceTransform(1 - inside, cv2.DIST_L2, 5)
    near, far = (abs(away - px) <= 1 for px in (_LEFT_PX, _REACH_PX))
    core = _light(np.percentile(codes[inside > 0], 90)) if inside.any() else 0.0
    ground = _light(np.median(codes[far])) if far.any() else 0.0
    left = _light(np.median(codes[near])) if near.any() else ground
    return _Profile(core - ground, (left - ground) / max(core - ground, 1e-4))


def _light(code: float) -> float:
    return float(srgb_to_linear(np.array([code / 255]))[0])
