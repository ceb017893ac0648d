"""Everything to be said of a photo before and after looking: one list of remarks."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.criteria import Profile
from ptmark.criteria.rules import SizeRule
from ptmark.dye import (
    Remark,
    clipped_remark,
    glow_remark,
    haze_remark,
    kind_remark,
    lighting_remark,
    look_at_quality,
    moved_remark,
    recognise,
)
from ptmark.inspection.compressed import compressed_remark
from ptmark.inspection.state import State
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap
from ptmark.units import MM_PER_IN

__all__ = ["SMALLEST_MM", "remarks_on", "smallest_that_counts"]

_CROWN = Remark(
    "A weld is named, but not the height of its crown: 0 to 2 mm is assumed, and on a higher "
    "crown a length across it may be off by more than its U.",
    "Give the height of the indications above the surface, 0 where the weld is flat.",
)

_ON_WELD = Remark(
    "The scale reference lies on the weld: where the crown lifts it off the surface, lengths "
    "beside it come out too short, 0.5 % for each mm at 200 mm.",
    "Lay it beside the weld, or give how far it lies above the surface; where the weld is "
    "flat, give 0 as the height of the indications.",
)
_ON_WELD_MM = 3.0  # from a weld's middle; a reference beside it lies farther off

SMALLEST_MM = 1.5  # where no profile says more: the commonest relevance threshold (1/16 in)


def remarks_on(
    photo: Photo,
    state: State,
    surface: SurfaceMap | None,
    haze: float | None,
    profile: Profile | None,
) -> tuple[Remark, ...]:
    """Quality of the photo, what its file hides, haze, lighting, and a weld's height.

    Takes some milliseconds for each dozen megapixels, so a window may ask for it in a worker.
    """
    mode = state.mode or recognise(photo)
    area_px = None if state.area_px is None else np.array(state.area_px, float)
    quality = look_at_quality(
        photo,
        surface,
        area_px,
        smallest_that_counts(profile),
        fluorescent=mode == "fluorescent",
    )
    edges = [one.outline_px for one in state.marked if one.edge.source != "hand"]
    shines = mode == "fluorescent"
    edge = clipped_remark(photo, edges) if shines else moved_remark(photo, surface, edges)
    file = (edge, compressed_remark(photo.info, mode), transparent_remark(photo, area_px))
    glow = glow_remark(haze) if shines else haze_remark(haze)
    kind = kind_remark(photo, state.mode, area_px)
    more = (*file, glow, kind, lighting_remark(mode), crown_remark(state))
    return (*quality, *(one for one in more if one is not None))


def transparent_remark(photo: Photo, area_px: npt.NDArray[np.float64] | None) -> Remark | None:
    """Where the file is transparent in the examined area, (N, 2), px; None where nowhere."""
    clear = photo.see_through
    if clear is None:
        return None
    area = np.ones_like(clear)
    if area_px is not None:
        area[:] = 0
        cv2.fillPoly(area, [np.round(area_px).astype(np.int32)], 1)
    if not (clear & area).any():
        return None
    share = max(1.0, 100 * float(np.count_nonzero(clear & area)) / max(int(area.sum()), 1))
    return Remark(
        f"The file is transparent in some {share:.0f} % of the examined area: that is shown "
        "white, as clean developer is, and nothing beneath it is seen.",
        "Use the photo as the camera wrote it.",
    )


def crown_remark(state: State) -> Remark | None:
    """Where a weld is named whose height is not given; None where nothing is to be said."""
    weld = state.weld_px is not None or state.weld_length_mm is not None
    return _CROWN if weld and state.relief_mm is None else None


def on_weld_remark(state: State, surface: SurfaceMap | None) -> Remark | None:
    """Where a flat reference lies on the named weld at no height that is given."""
    if state.weld_px is None or surface is None or not surface.flat or state.relief_mm == 0:
        return None
    if getattr(state.reference, "offset_mm", 0.0):
        return None
    import shapely

    weld = shapely.LineString(surface.to_mm(np.array(state.weld_px, float)))
    reference = shapely.MultiPoint(surface.to_mm(surface.reference_px)).convex_hull
    return _ON_WELD if shapely.distance(weld, reference) < _ON_WELD_MM else None


def smallest_that_counts(profile: Profile | None) -> float:
    """The smallest size, mm, that a profile distinguishes: relevance, else its least limit.

    Examples
    --------
    >>> from ptmark.criteria import load_profile
    >>> smallest_that_counts(load_profile("iso-23277-1"))
    2.0
    """
    if profile is None:
        return SMALLEST_MM
    if profile.relevance is not None:
        amounts = [profile.relevance.relevant.value]
    else:
        amounts = [rule.reject.value for rule in profile.rules if isinstance(rule, SizeRule)]
    amounts = [amount for amount in amounts if amount > 0]
    if not amounts:
        return SMALLEST_MM
    return min(amounts) * (MM_PER_IN if profile.unit == "in" else 1.0)
