"""A pipe of known diameter with a flat reference lying on it, for close-ups without edges.

The reference (a rule along the crown, the card, a rectangle) gives the plane that touches the
pipe, with its own uncertainty; a line along the pipe through where it touches gives the axis,
and the diameter the curvature. So scale and tilt come from the reference, and nothing has to
be seen of the pipe's edges.
"""

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.checks import check_length, check_line, check_points
from ptmark.scale.cylinder import Cylinder, touched_by
from ptmark.scale.lines import LINE_CAUTION
from ptmark.scale.maps import FOCAL_KNOWN, PICK_U_PX
from ptmark.scale.pipe import DIAMETER_REL, check_pipe_map, picked_edges
from ptmark.scale.pipe_joint import fit_pipe, touch_by_edges
from ptmark.scale.pipe_map import (
    MOVED_U,
    MOVED_WEIGHT,
    TOUCH_REL_U,
    MovedCylinder,
    PipeMap,
    leaning_deg,
    principal_steps,
    touching_h,
)
from ptmark.scale.plane import apply_homography, pose_from_homography
from ptmark.scale.reference import LineReference
from ptmark.scale.surface import SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import PipeReference

__all__ = ["touching_map"]

_BESIDE = (
    "lay the reference on the pipe and pick where it touches; leave out one that lies beside "
    "the pipe, and give the pipe's two edges and its outside diameter"
)
# Of right edges and references fewer than this contradict each other so much: 3.2 and 2
# standard uncertainties, as of two flat references.
_REFUSED, _SAID = 0.0014, 0.046

Array = npt.NDArray[np.float64]

# How far beside its own points a reference still reaches: a card beyond its markers, a
# rule picked along one of its sides. A pipe's own size limits it too. Own choice.
_REACH_MM, _RULE_REACH_MM, _MOST_REACH_REL = 5.0, 20.0, 0.5
# The line of a rule and that of the pipe are the same within this sine.
_MOST_SINE = 0.17


def touching_map(reference: "PipeReference", plane: SurfaceMap, photo: "Photo") -> PipeMap:
    """Map of a pipe that a plane of known map touches along a line.

    Where the pipe's edges are given as well, they tell that line and all is fitted together.

    Parameters
    ----------
    reference : PipeReference
        ``axis_px`` may be empty where ``on`` is a line, which runs along the pipe itself.
    plane : SurfaceMap
        The map of ``reference.on``.
    photo : Photo

    Raises
    ------
    ScaleError
        If the line is degenerate, lies across the reference's or beside it, edges and
        reference contradict each other, or the scale is absurd.
    """
    check_length(reference.diameter_mm, "an outside diameter")
    radius = reference.diameter_mm / 2
    if reference.edges_px:
        made = _joint_map(reference, plane, photo)
    else:
        axis = _axis_of(reference, photo)
        _check_on_it(plane, plane.to_mm(axis), radius)
        make = _Maker(plane, axis, radius)
        known = plane.working_distance_mm is not None
        made = replace(
            _map_of(plane, make.body(), tuple(make.moved()), known=known),
            camera_height_rel_u=plane.camera_height_rel_u,
            view_slope_u=plane.view_slope_u,
            focal_px=plane.focal_px,
        )
    check_pipe_map(made, reference.diameter_mm)
    return made


def _joint_map(reference: "PipeReference", plane: SurfaceMap, photo: "Photo") -> PipeMap:
    """The map by edges and reference together."""
    edges, radius = picked_edges(reference, photo), reference.diameter_mm / 2
    told = plane.evidence
    if told is None:
        raise ScaleError(f"a {plane.reference} cannot be used with edges", where="scale")
    line, leans = None, plane.view_slope_u > 0
    if leans and isinstance(reference.on, LineReference):
        # A line that tells no plane tells at least where it lies.
        line = plane.to_mm(np.array(reference.on.ends_px))
    touch = touch_by_edges(told, edges, radius) if line is None else line
    _check_on_it(plane, touch, radius)
    try:
        fit = fit_pipe(told, edges, radius, line)
    except np.linalg.LinAlgError as exc:
        raise ScaleError(
            "the edges and the reference fix no pipe", where="scale", mend=_BESIDE
        ) from exc
    if fit.chance < _REFUSED:
        raise ScaleError(
            f"the pipe's edges, the {plane.reference} on it and a diameter of "
            f"{reference.diameter_mm:g} mm contradict each other: of right ones fewer than 2 "
            "in 1000 do",
            where="scale",
            mend="check the diameter, and that the edges are the pipe's; lay the reference on "
            "the pipe so that it touches along a line, or use edges or reference alone",
        )
    said = tuple(c for c in plane.cautions if not leans or c != LINE_CAUTION) + edges.cautions
    if fit.chance < _SAID:
        said += (
            "edges, diameter and the reference on the pipe fit together badly (1 in 20 right "
            "ones do): look whether the reference lies on it, and whether the edges are right",
        )
    known = fit.log_focal_u < FOCAL_KNOWN
    return replace(
        _map_of(plane, fit.body, fit.moved, known=known),
        tilt_deg=leaning_deg(fit.body, np.asarray(fit.centre)),
        camera_height_rel_u=fit.log_focal_u,
        focal_px=fit.focal_px if known else None,
        cautions=said,
    )


def _map_of(
    plane: SurfaceMap, body: Cylinder, moved: tuple[MovedCylinder, ...], *, known: bool
) -> PipeMap:
    near = body.distance - body.radius
    return PipeMap(
        h=touching_h(body),
        covariance={},
        reference=f"{plane.reference} on a pipe",
        reference_px=plane.reference_px,
        residual_px=plane.residual_px,
        tilt_deg=plane.tilt_deg,
        working_distance_mm=near if known else None,
        camera_mm=np.array([0.0, 0.0, near]),
        lens=body.lens,
        cautions=plane.cautions,
        reading=plane.reading,
        cylinder=body,
        moved=moved,
    )


def _axis_of(reference: "PipeReference", photo: "Photo") -> Array:
    on = reference.on
    line = check_points(on.ends_px, photo) if isinstance(on, LineReference) else None
    if not reference.axis_px:
        if line is None:
            raise ScaleError(
                "a line along the pipe is missing",
                where="scale",
                mend="pick two points along the pipe, where the reference touches it",
            )
        return line
    axis = check_points(reference.axis_px, photo)
    check_line(axis, 1.0, "the line along the pipe")
    if line is not None:
        a, b = axis[1] - axis[0], line[1] - line[0]
        if abs(a[0] * b[1] - a[1] * b[0]) > _MOST_SINE * np.hypot(*a) * np.hypot(*b):
            raise ScaleError(
                "the line of known length does not run along the pipe",
                where="scale",
                mend="lay the rule along the pipe, on its crown",
            )
    return axis


def _check_on_it(plane: SurfaceMap, ends_mm: Array, radius: float) -> None:
    """Refuse a reference that the line where the pipe is touched does not run through.

    It lies beside the pipe then, in a plane that has nothing to do with the pipe's surface.
    """
    start, end = ends_mm
    way = (end - start) / np.hypot(*(end - start))
    off = (plane.to_mm(plane.reference_px) - start) @ np.array([-way[1], way[0]])
    beside = max(float(off.min()), float(-off.max()), 0.0)
    reach = _RULE_REACH_MM if plane.reference == "line" else _REACH_MM
    if beside > min(reach, _MOST_REACH_REL * radius):
        raise ScaleError(
            f"the line along the pipe runs {beside:.0f} mm beside the reference: this does not "
            "lie on the pipe",
            where="scale",
            mend=_BESIDE,
        )


class _Maker:
    """Cylinders under a plane's map, as it is and with each quantity off."""

    def __init__(self, plane: SurfaceMap, axis_px: Array, radius: float) -> None:
        self._plane, self._axis, self._radius = plane, axis_px, radius
        self._focal, self._centre = _camera_matrix(plane)

    def body(
        self,
        h: Array | None = None,
        *,
        kappa: float | None = None,
        axis: Array | None = None,
        radius: float | None = None,
        higher: float = 1.0,
        aside_mm: float = 0.0,
    ) -> Cylinder:
        """The cylinder, with what is given in place of what is known."""
        plane = self._plane
        lens = plane.lens if kappa is None else replace(plane.lens, kappa=kappa)
        camera, h_now = plane.camera_mm, plane.h
        if h is not None:
            camera = pose_from_homography(_inverse(h), self._focal, self._centre).camera_mm
            h_now = h
        ends = apply_homography(h_now, lens.undistort(self._axis if axis is None else axis))
        along = ends[1] - ends[0]
        ends = ends + aside_mm * np.array([-along[1], along[0]]) / np.hypot(*along)
        near = lens.undistort(plane.reference_px.mean(axis=0))
        size = self._radius if radius is None else radius
        return touched_by(h_now, camera * [1, 1, higher], ends, size, lens, near)

    def moved(self) -> list[MovedCylinder]:
        """Every quantity up and down; a joint covariance along its principal axes."""
        plane, made = self._plane, []
        parameters = np.append(plane.h.ravel()[:8], plane.lens.kappa)
        for source, matrix in plane.covariance.items():
            for step in principal_steps(matrix):
                for sign in (1, -1):
                    off = parameters + sign * MOVED_U * step
                    body = self.body(np.append(off[:8], 1.0).reshape(3, 3), kappa=off[8])
                    made.append(MovedCylinder(source, MOVED_WEIGHT, body))
        for source, others in plane.alternatives.items():
            made += [MovedCylinder(source, one.weight, self.body(one.h)) for one in others]
        for far in (MOVED_U, -MOVED_U):
            made += [MovedCylinder("picking", MOVED_WEIGHT, b) for b in self._picked(far)]
            longer = 1 + far * DIAMETER_REL / np.sqrt(3)
            bodies = {
                "reference": self.body(radius=self._radius * longer),
                "focal length": self.body(higher=np.exp(far * plane.camera_height_rel_u)),
                "touching line": self.body(aside_mm=far * TOUCH_REL_U * self._radius),
            }
            made += [MovedCylinder(s, MOVED_WEIGHT, body) for s, body in bodies.items()]
        return made

    def _picked(self, sign: float) -> list[Cylinder]:
        along = self._axis[1] - self._axis[0]
        across = np.array([-along[1], along[0]]) / np.hypot(*along)
        step = sign * PICK_U_PX * across
        return [self.body(axis=self._axis + np.outer(end, step)) for end in ([1, 0], [0, 1])]


def _inverse(matrix: Array) -> Array:
    return np.asarray(np.linalg.inv(matrix), np.float64)


def _camera_matrix(plane: SurfaceMap) -> tuple[float, Array]:
    """Focal length and optical centre, px, that a plane's map and its camera's place imply.

    The homography back gives three of the four columns of the camera matrix; the fourth
    follows from the camera's place, which it maps to nothing. Its left part is K R (Hartley
    and Zisserman, Multiple View Geometry, 2004, section 6.2.4, from memory).
    """
    first, second, last = _inverse(plane.h).T
    x, y, height = plane.camera_mm
    third = (x * first + y * second + last) / height
    m = np.column_stack([first, second, third])
    omega = m @ m.T  # K K', up to scale
    omega = omega / omega[2, 2]
    centre = omega[:2, 2]
    return float(np.sqrt(np.mean(np.diag(omega)[:2] - centre**2))), np.asarray(centre)
