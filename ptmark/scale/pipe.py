"""A pipe or bar of known outside diameter: lengths along its unwrapped surface."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.checks import MIN_LINE_PX, MM_PER_PX_RANGE, check_length, check_points
from ptmark.scale.cylinder import Cylinder, cylinder_of
from ptmark.scale.maps import FOCAL_KNOWN, PICK_U_PX, camera_priors
from ptmark.scale.plane import Lens
from ptmark.scale.problem import CENTRE_U, KAPPA_U
from ptmark.scale.surface import SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import PipeReference

__all__ = ["DIAMETER_REL", "MOST_TURNED_DEG", "PipeMap", "solve_pipe"]

Array = npt.NDArray[np.float64]

# Out of round and out of size, as half-width of a rectangular distribution, for a diameter
# that was measured. Common practice, no source.
DIAMETER_REL = 0.005
# Beyond this a pixel covers over twice the surface, and ever faster more.
MOST_TURNED_DEG = 60.0
# A pipe seen along its axis more than this shows no pair of edges to measure from.
_LEAST_AXIS_DEG = 35.0
_AGAIN = "pick two points far apart on each of the pipe's two outer edges"
FOCAL_CAUTION = (
    "the photo does not tell its focal length: how far the pipe bulges towards the camera is "
    "taken from a usual range, and U is larger. Use the photo as the camera wrote it"
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PipeMap(SurfaceMap):
    """Map from px to the unwrapped surface of a pipe, mm.

    ``h`` is the plane that touches the pipe along its line nearest to the camera. ``given``
    and ``given_u`` are the 13 independent quantities of `cylinder_of` and their standard
    uncertainties, ``sources`` their names in the budget. ``covariance`` is empty: the
    quantities are propagated as they are.
    """

    cylinder: Cylinder
    given: Array
    given_u: Array
    sources: tuple[str, ...]

    @property
    def flat(self) -> bool:
        return False

    def to_mm(self, points_px: Array) -> Array:
        """Map points of shape (N, 2) from px to unwrapped mm."""
        places, _ = self.cylinder.meet(np.asarray(points_px, np.float64))
        return self.cylinder.unwrapped(places)

    def to_px(self, points_mm: Array) -> Array:
        """Map points of shape (N, 2) from unwrapped mm to px."""
        return self.cylinder.to_px(self.cylinder.wrapped(np.asarray(points_mm, np.float64)))

    def turned_deg(self, points_px: Array) -> Array:
        """Angle between surface normal and line of sight, shape (N,); 90 beside the pipe."""
        places, met = self.cylinder.meet(np.asarray(points_px, np.float64))
        angle = np.degrees(np.arccos(np.clip(self.cylinder.sight(places)[:, 2], -1, 1)))
        return np.where(met, angle, 90.0)

    def in_view(self, points_px: Array) -> bool:
        """Whether the surface turns away no more than `MOST_TURNED_DEG` at any point."""
        return bool((self.turned_deg(points_px) <= MOST_TURNED_DEG).all())

    def out_of_view(self, points_px: Array) -> tuple[str, str]:
        """Why an outline cannot be measured, and the mend."""
        most = float(self.turned_deg(points_px).max())
        says = (
            f"the pipe's surface turns away {most:.0f} degrees there, more than "
            f"{MOST_TURNED_DEG:.0f}"
            if most < 90
            else "the outline reaches beyond the pipe's edge"
        )
        return says, "take another photo from that side of the pipe"

    def lowered(self, outline_mm: Array, height_mm: float) -> Array:
        """Outline seen ``height_mm`` over the surface, along that higher surface."""
        places, _ = self.cylinder.meet(self.to_px(outline_mm), height_mm)
        return self.cylinder.unwrapped(places, height_mm)

    def jacobian(self, points_px: Array) -> Array:
        """Local derivative d(u, v)/d(x, y), mm/px, by differences: shape (N, 2, 2)."""
        points, step = np.asarray(points_px, np.float64), 0.05
        columns = [
            (self.to_mm(points + move) - self.to_mm(points - move)) / (2 * step)
            for move in (np.array([step, 0.0]), np.array([0.0, step]))
        ]
        return np.stack(columns, axis=2)

    def mm_per_px(self, at_px: Array | None = None) -> float:
        """Mean local scale; by default where the pipe is nearest, amid the picks."""
        if at_px is None:
            along = self.to_mm(self.reference_px)[:, 1].mean()
            at_px = self.to_px(np.array([[0.0, along]]))[0]
        slopes = self.jacobian(np.asarray(at_px, np.float64).reshape(1, 2))[0]
        return float(np.sqrt(abs(np.linalg.det(slopes))))

    def distance_u(self, a_px: Array, b_px: Array) -> dict[str, float]:
        """Standard uncertainty in mm of the unwrapped distance a-b, by named source.

        Each quantity is moved up and down by its standard uncertainty (JCGM 100:2008, 5.1.3,
        note 2), which also carries what is not linear in an unknown focal length.
        """
        ends = np.array([a_px, b_px], np.float64)
        squares = dict.fromkeys(self.sources, 0.0)
        for i, name in enumerate(self.sources):
            seen = []
            for sign in (1, -1):
                moved = self.given.copy()
                moved[i] += sign * self.given_u[i]
                body = cylinder_of(moved, self.lens)
                start, end = body.unwrapped(body.meet(ends)[0])
                seen.append(float(np.hypot(*(end - start))))
            squares[name] += ((seen[0] - seen[1]) / 2) ** 2
        return {name: float(np.sqrt(square)) for name, square in squares.items()}

    def view_slope(self, ends_mm: Array) -> float:
        """Slope of the line of sight along two points, mm aside for each mm of height."""
        chord = ends_mm[1] - ends_mm[0]
        size = float(np.hypot(*chord))
        if size == 0.0:
            return 0.0
        sight = self.cylinder.sight(self.cylinder.wrapped(ends_mm.mean(axis=0)[None]))[0]
        return float(abs(sight[:2] @ chord) / size / max(float(sight[2]), 1e-6))


def solve_pipe(reference: "PipeReference", photo: "Photo") -> PipeMap:
    """Map of a pipe from its two edges and its outside diameter.

    Raises
    ------
    ScaleError
        If the picks are degenerate, no edges of one pipe, or the scale is absurd.
    """
    check_length(reference.diameter_mm, "an outside diameter")
    edges = check_points(reference.edges_px, photo)
    _check_edges(edges)
    lens = Lens.of_picture(photo.info.width, photo.info.height)
    priors, centre_u = camera_priors(photo), CENTRE_U * 2 * lens.radius_px
    radius = reference.diameter_mm / 2
    made = pipe_map(edges, radius, priors.focal_px, priors.log_focal_u, lens, centre_u)
    body = made.cylinder
    if abs(body.axis[2]) > np.cos(np.radians(_LEAST_AXIS_DEG)) or body.away[2] <= 0:
        raise ScaleError(
            "the pipe is seen too far along its axis", where="scale", mend="take it from aside"
        )
    low, high = MM_PER_PX_RANGE
    if not low <= made.mm_per_px() <= high:
        raise ScaleError(
            f"a diameter of {reference.diameter_mm:g} mm gives {made.mm_per_px():.3g} mm per "
            f"pixel, outside {low:g} to {high:g}",
            where="scale",
            mend="check the diameter and its unit",
        )
    return made


def pipe_map(
    edges: Array, radius: float, focal: float, focal_u: float, lens: Lens, centre_u: float
) -> PipeMap:
    """Map of four picks of shape (4, 2), px, a radius, mm, and a camera."""
    given = np.array([*edges.ravel(), np.log(focal), *lens.centre, lens.kappa, radius])
    sizes = np.array([focal_u, centre_u, centre_u, KAPPA_U, radius * DIAMETER_REL / np.sqrt(3)])
    body = cylinder_of(given, lens)
    nearest = body.away * (body.distance - radius)
    to_px = np.diag([focal, focal, 1.0]) @ np.column_stack([body.aside, body.axis, nearest])
    to_px[:2] += np.outer(body.centre, to_px[2])
    h = np.linalg.inv(to_px)
    known = focal_u < FOCAL_KNOWN
    return PipeMap(
        h=np.asarray(h / h[2, 2]),
        covariance={},
        reference="pipe",
        reference_px=edges,
        tilt_deg=float(np.degrees(np.arcsin(min(1.0, abs(body.axis[2]))))),
        working_distance_mm=body.distance - radius if known else None,
        focal_px=focal if known else None,
        camera_mm=np.array([0.0, 0.0, body.distance - radius]),
        camera_height_rel_u=focal_u,
        lens=body.lens,
        cautions=() if known else (FOCAL_CAUTION,),
        cylinder=body,
        given=given,
        given_u=np.concatenate([np.full(8, PICK_U_PX), sizes]),
        sources=("picking",) * 8 + ("focal length", "lens", "lens", "lens", "reference"),
    )


def _check_edges(edges: Array) -> None:
    """Refuse edges that are too short, cross, or are picked in no order."""
    (a, b), (c, d) = edges[:2], edges[2:]
    for name, way in (("first", b - a), ("second", d - c)):
        if np.hypot(*way) < MIN_LINE_PX:
            raise ScaleError(
                f"the picks on the {name} edge are {np.hypot(*way):.0f} px apart, under "
                f"{MIN_LINE_PX:.0f}",
                where="scale",
                mend=_AGAIN,
            )
    gaps = [_beside(c, a, b), _beside(d, a, b), _beside(a, c, d), _beside(b, c, d)]
    apart = min(abs(gap) for gap in gaps)
    if gaps[0] * gaps[1] <= 0 or gaps[2] * gaps[3] <= 0 or apart < MIN_LINE_PX:
        raise ScaleError(
            "the two edges cross or lie too near each other", where="scale", mend=_AGAIN
        )


def _beside(point: Array, start: Array, end: Array) -> float:
    """Signed distance of a point from a line, px."""
    way, off = end - start, point - start
    return float((way[0] * off[1] - way[1] * off[0]) / np.hypot(*way))
