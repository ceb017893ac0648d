"""How far from its reference a scale is used: it is extrapolated there, and U grows."""

from collections.abc import Mapping

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.scale.surface import SurfaceMap

__all__ = ["FAR_SIZES", "far_caution", "sizes_away"]

Array = npt.NDArray[np.float64]

# What a reference tells of the tilt is an angle over its own size; at a distance it is taken
# times distance over size. At two sizes from its rim the map's part of U is 3 to 5 times what
# it is beside the reference (card and rectangle picked by hand, tilt 12 degrees), and sets U.
FAR_SIZES = 2.0


def sizes_away(surface: SurfaceMap, points_px: Array) -> tuple[float, float]:
    """How far the farthest point lies from the reference's hull, mm, and the reference's size.

    Of two references the one nearer for its size counts. The size is the diagonal of the
    reference's extent, mm; a point within the hull has a distance below 0.
    """
    there = surface.to_mm(points_px)
    found = []
    for reference, size in _references(surface):
        hull = cv2.convexHull(reference.astype(np.float32))
        away = max(
            -cv2.pointPolygonTest(hull, (float(x), float(y)), measureDist=True)
            for x, y in there
        )
        found.append((away, size))
    return min(found, key=lambda one: one[0] / one[1])


def _references(surface: SurfaceMap) -> list[tuple[Array, float]]:
    """Points of each reference, mm, and the diagonal of their extent."""
    at = [surface.reference_px]
    if surface.beside is not None:
        at.append(surface.beside.reference_px)
    flat = [surface.to_mm(one) for one in at]
    return [(one, float(np.linalg.norm(np.ptp(one, axis=0)))) for one in flat]


def far_caution(surface: SurfaceMap | None, outlines: Mapping[str, Array]) -> str:
    """Which outlines lie far from the reference against its size, with the mend; "" if none.

    ``outlines`` holds points of shape (N, 2), px, by letter. A pipe is its own reference.
    """
    if surface is None or not surface.flat:
        return ""
    far, middles = {}, [(one.mean(axis=0), size) for one, size in _references(surface)]
    for name, outline_px in outlines.items():
        few = outline_px[:: max(1, len(outline_px) // 40)]
        there = surface.to_mm(few)
        if any((np.hypot(*(there - m).T) <= FAR_SIZES * size).all() for m, size in middles):
            continue  # no farther from the hull than from its middle
        if surface.in_view(outline_px):
            away, size = sizes_away(surface, few)
            if away > FAR_SIZES * size:
                far[name] = away, size
    if not far:
        return ""
    away, size = max(far.values())
    return (
        f"Far from the scale reference: {', '.join(far)}, up to {away:.0f} mm away where it is "
        f"{size:.0f} mm large. The scale is several times less sure there, as U says. Lay the "
        "reference beside the indications."
    )
