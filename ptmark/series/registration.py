"""What registering two photos gives: a homography, its covariance and its figures."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.scale import SurfaceMap
from ptmark.scale.plane import apply_homography
from ptmark.series.fit import place_slopes

__all__ = ["Registration"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Registration:
    """A homography between two photos of one plane area.

    Attributes
    ----------
    h : ndarray of shape (3, 3)
        ``[x_b, y_b, 1] ~ h @ [x_a, y_a, 1]``, px, ``h[2, 2] == 1``.
    covariance : ndarray of shape (8, 8)
        Of the first eight entries of ``h``, row by row.
    by : str
        "features", "features and scales" (both photos' scales helped where features alone
        were too few), "marks" (picked by a person) or "card" (said not to have moved).
    inliers, matches : int
        Point pairs that agree, and that were tried.
    residual_px : float
        Root mean square misfit of a pair in photo b, both coordinates together; 0 where no
        pair is left over.
    card : str
        A sentence on whether the scale card moved; "" where not both photos show it.
    cautions : tuple of str
    """

    h: Array
    covariance: Array
    by: str
    inliers: int
    matches: int
    residual_px: float
    card: str = ""
    cautions: tuple[str, ...] = ()

    def to_b(self, points_a: Array) -> Array:
        """Map points of shape (N, 2) from photo a to photo b, px."""
        return apply_homography(self.h, np.asarray(points_a, np.float64))

    def to_a(self, points_b: Array) -> Array:
        """Map points of shape (N, 2) from photo b to photo a, px."""
        back = np.asarray(np.linalg.inv(self.h), np.float64)
        return apply_homography(back, np.asarray(points_b, np.float64))

    def u_px(self, points_a: Array) -> Array:
        """Standard uncertainty of where points of photo a lie in photo b, px, shape (N,).

        Of each coordinate, root mean square of the two. The parameters' share grows away from
        the matched points (JCGM 100:2008, 5.2.2); the residual's share covers what a plane and
        a pinhole leave out: relief, lens, a place that is not quite flat.
        """
        slopes = place_slopes(self.h, np.asarray(points_a, np.float64))
        spread = np.einsum("nij,jk,nik->n", slopes, self.covariance, slopes)
        return np.asarray(np.sqrt(np.maximum(spread, 0.0) / 2 + self.residual_px**2 / 2))

    def u_mm(self, points_a: Array, surface_b: SurfaceMap) -> Array:
        """The same in mm on the surface, by photo b's scale at each place, shape (N,)."""
        there = self.to_b(points_a)
        scales = np.array([surface_b.mm_per_px(place) for place in there], np.float64)
        return np.asarray(self.u_px(points_a) * scales)
