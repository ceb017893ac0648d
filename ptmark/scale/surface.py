"""The map from the photo to the examined surface, with its uncertainty.

Pixel frame as in `ptmark.photo`; surface frame in mm, origin and axis set by the reference.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

__all__ = ["SurfaceMap"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceMap:
    """Plane homography from px to mm with the covariance of its eight parameters.

    Attributes
    ----------
    h : ndarray of shape (3, 3)
        ``[X, Y, 1] ~ h @ [x, y, 1]``, ``h[2, 2] == 1``; x, y in px, X, Y in mm.
    covariance : mapping of name to ndarray of shape (8, 8)
        Covariance of the first eight entries of ``h``, row by row, one matrix for each named
        source ("picking", "reference", "map", "tilt", "lens" …); sources are independent.
    reference : str
        "card", "rectangle", "two lines" or "line".
    reference_px : ndarray of shape (N, 2)
        The points that fixed it, px.
    residual_px : float
        Root mean square misfit of those points, px; 0 where nothing is left over.
    tilt_deg : float or None
        Angle between the optical axis and the surface normal; None where unknown.
    working_distance_mm : float or None
        Camera to surface along the optical axis; None where the focal length is unknown.
    focal_px : float or None
        Focal length used, px: from EXIF or, where the reference tells it, estimated.
    cautions : tuple of str
        What the user should know of this map, each with its mend.
    """

    h: Array
    covariance: dict[str, Array]
    reference: str
    reference_px: Array
    residual_px: float = 0.0
    tilt_deg: float | None = None
    working_distance_mm: float | None = None
    focal_px: float | None = None
    cautions: tuple[str, ...] = ()

    def to_mm(self, points_px: Array) -> Array:
        """Map points of shape (N, 2) from px to mm."""
        raise NotImplementedError

    def to_px(self, points_mm: Array) -> Array:
        """Map points of shape (N, 2) from mm to px."""
        raise NotImplementedError

    def jacobian(self, points_px: Array) -> Array:
        """Local derivative d(X, Y)/d(x, y) at points of shape (N, 2): shape (N, 2, 2), mm/px."""
        raise NotImplementedError

    def mm_per_px(self, at_px: Array | None = None) -> float:
        """Mean local scale, sqrt of the local area factor; at the reference's centre by default."""
        raise NotImplementedError

    def distance_u(self, a_px: Array, b_px: Array) -> dict[str, float]:
        """Standard uncertainty in mm that the map gives the distance a-b, by named source.

        ``a_px`` and ``b_px`` of shape (2,). Picking of a and b themselves is not included.
        """
        raise NotImplementedError
