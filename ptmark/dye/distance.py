"""Whether a photo was taken from too far, or reduced: how many pixels what counts still has."""

import numpy as np
import numpy.typing as npt

from ptmark.dye.remark import Remark
from ptmark.scale import SurfaceMap

__all__ = ["LEAST_PX_ACROSS", "is_coarse", "too_far_remark"]

Array = npt.NDArray[np.float64]

# The smallest size that counts; both its edges take about 3 px each. Of full dye 1.5 mm and
# longer, in two renderers' photos as taken and reduced, 0 and 8 % were lost at 10 to 12 px for
# 1.5 mm, at 8 to 10 px 0.8 and 17 %, at 4 to 6 px 8 and 40 %; of faint dye more.
LEAST_PX_ACROSS = 10.0
_COUNTS_MM = 1.5  # the commonest relevance threshold; a narrow crack is lost however long


def is_coarse(surface: SurfaceMap | None, area_px: Array | None) -> bool:
    """Whether thin and faint indications may be lost, their ends too, whatever counts.

    Parameters
    ----------
    surface : SurfaceMap, optional
        None where there is no scale, and so no verdict.
    area_px : ndarray of shape (N, 2), optional
        Examined area, px; beside the reference where None, or where the surface ends within it.
        Of a pipe, whose flanks turn away, where it is nearest.
    """
    if surface is None:
        return False
    if not surface.flat:
        return LEAST_PX_ACROSS * surface.mm_per_px() > _COUNTS_MM
    seen = area_px is not None and surface.in_view(area_px)
    return _px_across(surface, area_px if seen else None, _COUNTS_MM) < LEAST_PX_ACROSS


def too_far_remark(
    surface: SurfaceMap | None, area_px: Array | None, smallest_mm: float
) -> Remark | None:
    """What is to be said where the smallest size that counts has too few pixels; else None."""
    if surface is None:
        return None
    px = _px_across(surface, area_px, smallest_mm)
    if px >= LEAST_PX_ACROSS:
        return None
    return Remark(
        f"Too far: {smallest_mm:.1f} mm is only {px:.0f} pixels in the farthest part of the "
        "examined area, and what just counts may be missed or measured poorly.",
        f"Go closer, or take several photos, so that it is at least {LEAST_PX_ACROSS:.0f}; in "
        "place of a copy that was sent or scaled, use the photo as the camera wrote it.",
    )


def _px_across(surface: SurfaceMap, area_px: Array | None, size_mm: float) -> float:
    """How many px a size has in the farthest part of the area, the way it is seen shortest."""
    places = surface.reference_px.mean(axis=0, keepdims=True) if area_px is None else area_px
    return size_mm / max(float(np.linalg.norm(one, 2)) for one in surface.jacobian(places))
