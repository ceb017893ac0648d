"""Indications that stand above the plane of the reference: a weld's crown.

A point at height ``h`` over the plane is seen where the line from the camera through it meets
the plane: ``h / (D - h)`` of its distance from the camera's foot too far out, with the camera
``D`` above the plane. So a length at one height reads ``D / (D - h)`` too long, and one whose
ends differ by ``dh`` reads ``dh`` times the view's slope along it too long or too short.

Given a height, outlines are corrected for it (JCGM 100:2008, 3.2.4: known effects are
corrected). Without one, 0 to 2 mm is assumed and nothing is corrected: flat ground is
the likeliest single height, the correction would only ever shorten a length, and that is the
unsafe side. The whole second moment about 0, not only the spread about its mean, is then the
contribution (as in JCGM 100:2008, F.2.4.5 where a correction is not applied). A rule's own
thickness makes lengths short as a crown makes them long: within what is assumed, but beside a
given height a contribution of its own.
"""

from math import hypot, sqrt

import numpy as np
import numpy.typing as npt

from ptmark.errors import OutlineError
from ptmark.scale import SurfaceMap

__all__ = ["flattened", "relief_u_mm"]

Array = npt.NDArray[np.float64]

ASSUMED_RELIEF_MM = 2.0
# How well a height is given: 0.2 mm, or a tenth of it where that is more. Common practice, no
# source.
GIVEN_U_MM, GIVEN_REL_U = 0.2, 0.1
# Slope along an indication, for each mm of root mean square height: a crown of height h on a
# bead 15 mm wide is a parabola of rms slope 4 h / (15 sqrt(3)) = 0.15 h across; half of the
# indications lie on it, in any direction: times sqrt(1/2) twice. Own estimate, no source.
SLOPE_PER_MM = 0.077
# Most that two ends differ, for each mm of that height: the spread of heights on the parabola.
STEP_PER_MM = 0.45


def flattened(outline_mm: Array, surface: SurfaceMap, height_mm: float | None) -> Array:
    """Outline as it lies at its given height, shape (N, 2) mm; unchanged without one.

    Raises
    ------
    OutlineError
        If the height is not well below the camera.
    """
    if not height_mm:
        return outline_mm
    camera = float(surface.camera_mm[2])
    if not abs(height_mm) < 0.5 * camera:
        raise OutlineError(
            f"a relief of {height_mm:g} mm, where the camera was {camera:.0f} mm away",
            where="conditions",
            mend="give the height of the indications over the reference",
        )
    return surface.lowered(outline_mm, height_mm)


def relief_u_mm(ends_px: Array, surface: SurfaceMap, height_mm: float | None) -> Array:
    """Standard uncertainty, mm, that the height gives the distances of two points each.

    ``ends_px`` of shape (K, 2, 2); gives shape (K,).
    """
    ends = surface.to_mm(ends_px.reshape(-1, 2)).reshape(-1, 2, 2)
    chord = ends[:, 1] - ends[:, 0]
    distance = np.hypot(chord[:, 0], chord[:, 1])
    camera = float(surface.camera_mm[2])
    if height_mm is None:
        rms = height_u = ASSUMED_RELIEF_MM / sqrt(3)
        known = 0.0
    else:
        rms = known = abs(height_mm)
        given_u = max(GIVEN_U_MM, GIVEN_REL_U * known) if known else 0.0
        height_u = hypot(given_u, surface.lying_u_mm)
    level = distance * hypot(height_u, known * surface.camera_height_rel_u) / camera
    step = np.minimum(SLOPE_PER_MM * distance, STEP_PER_MM) * rms
    return np.hypot(level, step * surface.view_slopes(ends))
