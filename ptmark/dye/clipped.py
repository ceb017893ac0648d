"""Fluorescent indications so bright that the photo clips them: they read too large.

Half of what a clipped edge shows lies too far out, the farther the brighter the light was. By
the red light, which clips last, or where that is clipped too by what phones' photos have been
seen to reach, the uncertainty of the edge is widened to hold where it may lie.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from statistics import NormalDist

import numpy as np
import numpy.typing as npt

from ptmark.dye.about import pixels_about, within_outline
from ptmark.dye.edge import LEVEL_DIVISOR, EdgeQuality
from ptmark.dye.exposure import FULL
from ptmark.dye.remark import Remark
from ptmark.photo import Photo, srgb_to_linear

__all__ = ["as_clipped", "clipped_remark"]

Array = npt.NDArray[np.float64]

_LEAST_SHARE = 0.1  # of an indication's pixels, clipped: less does not move its edge
_MOST_OVER = 5.0  # times the brightest that a photo holds; up to 8 is within the U of that
_BRIGHTEST = 90.0  # percentile of an indication's red light that stands for its plateau


def as_clipped(photo: Photo, outline_px: Array, edge: EdgeQuality) -> EdgeQuality:
    """The edge of an outline (N, 2), px, in a fluorescent photo, as sure as its light is."""
    over = _times_over(photo, outline_px)
    if over <= 1.0:
        return edge
    shift = _widened(round(over, 1)) * edge.shift_px
    return replace(edge, shift_px=shift, end_shift_px=max(shift, edge.end_shift_px or 0.0))


def clipped_remark(photo: Photo, outlines_px: Sequence[Array]) -> Remark | None:
    """What is to be said where indications of a fluorescent photo are clipped; else None."""
    count = sum(_times_over(photo, one) > 1.0 for one in outlines_px)
    if not count:
        return None
    return Remark(
        f"Too bright: the photo clips the light of {count} of {len(outlines_px)} indications, "
        "and these read larger than they are, which their U holds.",
        "Expose less, until the brightest indication keeps its colour, or move the lamp away.",
    )


def _times_over(photo: Photo, outline_px: Array) -> float:
    """How many times brighter than what the photo can hold an indication is; 1 where not."""
    crop, low = pixels_about(photo, outline_px)
    inside = crop[within_outline(outline_px - low, crop.shape) > 0]
    if not len(inside) or np.mean(inside[:, 1] >= FULL) < _LEAST_SHARE:
        return 1.0
    red = float(np.percentile(inside[:, 0], _BRIGHTEST))
    if red >= FULL:
        return _MOST_OVER
    ring = np.round(outline_px - low).astype(np.int32)
    x, y = np.clip(ring, 0, np.array(crop.shape[1::-1]) - 1).T
    core, rim = srgb_to_linear(np.array([red, np.median(crop[y, x, 0])]) / 255).tolist()
    return float(np.clip(core / max(2 * rim, 1e-3), 1.2, _MOST_OVER))


@lru_cache(maxsize=128)
def _widened(over: float) -> float:
    """By how much the shift of an edge clipped so many times has to grow to hold the true one.

    A Gaussian edge from ``over`` to 0, clipped at 1: half of 1 lies z(1 - 1 / (2 over))
    standard deviations outside half of ``over``, and its shift is half the way from 0.6 to
    0.4 of 1. A shift over `LEVEL_DIVISOR` is a standard uncertainty, of which U is twice.
    """
    z = NormalDist().inv_cdf
    off = z(1 - 0.5 / over)
    shift = (z(1 - 0.4 / over) - z(1 - 0.6 / over)) / 2
    return max(1.0, off / shift * LEVEL_DIVISOR / 2)
