"""A pipe or bar of known outside diameter, placed by its outer edges in the photo."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.checks import (
    MIN_LINE_PX,
    MM_PER_PX_RANGE,
    check_length,
    check_points,
)
from ptmark.scale.cylinder import cylinder_of
from ptmark.scale.maps import (
    FOCAL_KNOWN,
    PICK_U_PX,
    UNKNOWN_FOCAL_U,
    camera_priors,
    known_lens,
)
from ptmark.scale.pipe_edges import SeenEdge, edge_near, edges_beside
from ptmark.scale.pipe_map import (
    MOVED_U,
    MOVED_WEIGHT,
    MovedCylinder,
    PipeMap,
    leaning_deg,
    touching_h,
)
from ptmark.scale.plane import Lens
from ptmark.scale.problem import Priors

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import PipeReference

__all__ = [
    "DIAMETER_REL",
    "UNKNOWN_PIPE_FOCAL_U",
    "FoundEdges",
    "check_pipe_map",
    "picked_edges",
    "pipe_map",
    "solve_edges",
]

Array = npt.NDArray[np.float64]

# Out of round and out of size, as half-width of a rectangular distribution, for a diameter
# that was measured. Common practice, no source.
DIAMETER_REL = 0.005
# A plane hardly feels an unknown focal length, a pipe does: it bulges towards the camera. So
# twice this has to reach a phone's ultra-wide and tele cameras (13 to 70 mm against the main
# one's 26) and not only its usual ones. Common practice, no source.
UNKNOWN_PIPE_FOCAL_U = 0.45
# A pipe seen along its axis more than this shows no pair of edges to measure from.
_MOST_LEANING_DEG = 55.0
# How far a rough pick may lie beside its edge, as a share of the pipe's width in the picture.
_REACH, _LEAST_REACH_PX, _MOST_REACH_PX = 0.02, 8.0, 40.0
_AGAIN = "pick two points far apart on each of the pipe's two outer edges"
FOCAL_CAUTION = (
    "the photo does not tell its focal length: how far the pipe bulges towards the camera is "
    "taken from a usual range, and U is larger. Use the photo as the camera wrote it"
)
FOUND_CAUTION = (
    "the pipe's edges were found in the photo: look whether the marked lines lie on its two "
    "outer edges. Where they do not, pick two points on each edge"
)
_SOURCES = ("picking",) * 8 + ("focal length", "lens", "lens", "lens", "reference")


@dataclass(frozen=True, slots=True, eq=False)
class FoundEdges:
    """Four points on two edges, shape (4, 2) px, and the standard uncertainty of each, px.

    ``shown_px`` of shape (4, 2) are where the edges end for showing.
    """

    points_px: Array
    u_px: Array
    shown_px: Array
    cautions: tuple[str, ...] = ()


def solve_edges(reference: "PipeReference", photo: "Photo") -> PipeMap:
    """Map of a pipe from its two edges and its outside diameter.

    Rough picks are moved to the edges in the photo where these are clear. Where only a line
    along the pipe is given, both edges are found.

    Raises
    ------
    ScaleError
        If the picks are degenerate, no edges of one pipe, no edges are found, or the scale is
        absurd.
    """
    check_length(reference.diameter_mm, "an outside diameter")
    if reference.edges_px:
        found = picked_edges(reference, photo)
    else:
        found = _beside_axis(check_points(reference.axis_px, photo), photo)
    made = pipe_map(found, reference.diameter_mm / 2, camera_priors(photo), known_lens(photo))
    check_pipe_map(made, reference.diameter_mm)
    return made


def check_pipe_map(made: PipeMap, diameter_mm: float) -> None:
    """Refuse a pipe seen along its axis, or of an absurd scale."""
    if (made.tilt_deg or 0.0) > _MOST_LEANING_DEG:
        raise ScaleError(
            "the pipe is seen too far along its axis", where="scale", mend="take it from aside"
        )
    low, high = MM_PER_PX_RANGE
    if not low <= made.mm_per_px() <= high:
        raise ScaleError(
            f"a diameter of {diameter_mm:g} mm gives {made.mm_per_px():.3g} mm per "
            f"pixel, outside {low:g} to {high:g}",
            where="scale",
            mend="check the diameter and its unit",
        )


def pipe_map(edges: FoundEdges, radius: float, camera: Priors, lens: Lens) -> PipeMap:
    """Map of two edges, a radius, mm, and what is known of the camera."""
    points, focal, focal_u = edges.points_px, camera.focal_px, camera.log_focal_u
    if focal_u >= UNKNOWN_FOCAL_U:
        focal_u = max(focal_u, UNKNOWN_PIPE_FOCAL_U)
    given = np.array([*points.ravel(), np.log(focal), *lens.centre, lens.kappa, radius])
    centre_u = camera.centre_u * 2 * lens.radius_px
    radius_u = radius * DIAMETER_REL / np.sqrt(3)
    sizes = [focal_u, centre_u, centre_u, camera.kappa_u, radius_u]
    u = np.concatenate([np.repeat(edges.u_px, 2), sizes])
    moved = []
    for i, source in enumerate(_SOURCES):
        for sign in (1, -1):
            off = given.copy()
            off[i] += sign * MOVED_U * u[i]
            moved.append(MovedCylinder(source, MOVED_WEIGHT, cylinder_of(off, lens)))
    body = cylinder_of(given, lens)
    known, near = focal_u < FOCAL_KNOWN, body.distance - radius
    return PipeMap(
        h=touching_h(body),
        covariance={},
        reference="pipe",
        reference_px=edges.shown_px,
        tilt_deg=leaning_deg(body, np.asarray(lens.centre)),
        working_distance_mm=near if known else None,
        focal_px=focal if known else None,
        camera_mm=np.array([0.0, 0.0, near]),
        camera_height_rel_u=focal_u,
        lens=body.lens,
        cautions=edges.cautions if known else (*edges.cautions, FOCAL_CAUTION),
        cylinder=body,
        moved=tuple(moved),
    )


def picked_edges(reference: "PipeReference", photo: "Photo") -> FoundEdges:
    """Picks moved to the edges in the photo; as they are where no edge is clear.

    Raises
    ------
    ScaleError
        If the picks are degenerate or no edges of one pipe.
    """
    picked = check_points(reference.edges_px, photo)
    _check_edges(picked)
    ends = picked.reshape(2, 2, 2)
    apart = float(np.hypot(*(ends[0].mean(0) - ends[1].mean(0))))
    reach = float(np.clip(_REACH * apart, _LEAST_REACH_PX, _MOST_REACH_PX))
    seen = [edge_near(photo, edge, reach) for edge in ends]
    unclear = [n for n, edge in zip(("first", "second"), seen, strict=True) if edge is None]
    says = (
        f"no clear edge in the photo at the picks on the {' and the '.join(unclear)} edge: "
        "they count as they were picked. A background that differs from the pipe helps"
    )
    return _edges_of(ends, seen, (says,) if unclear else ())


def _beside_axis(axis: Array, photo: "Photo") -> FoundEdges:
    """Both edges beside a line along the pipe."""
    _check_long(axis, "the line along the pipe")
    rough = edges_beside(photo, axis)
    if rough is not None:
        seen = [edge_near(photo, edge, _LEAST_REACH_PX) for edge in rough]
        if all(edge is not None for edge in seen):
            return _edges_of(np.array(rough), seen, (FOUND_CAUTION,))
    raise ScaleError(
        "the pipe's two outer edges are not clear beside that line",
        where="scale",
        mend=f"{_AGAIN}, or lay a rule or the card on the pipe",
    )


def _edges_of(
    ends: Array, seen: list[SeenEdge | None], cautions: tuple[str, ...]
) -> FoundEdges:
    points, u, shown = [], [], []
    for rough, edge in zip(ends, seen, strict=True):
        if edge is None:
            points.append(rough)
            shown.append(rough)
            u += [PICK_U_PX] * 2
            continue
        points.append(edge.points_px)
        u += [edge.u_px] * 2
        along = edge.points_px[1] - edge.points_px[0]
        along = along / np.hypot(*along)
        foot = edge.points_px[0]
        shown.append(foot + np.outer((rough - foot) @ along, along))
    return FoundEdges(np.vstack(points), np.array(u), np.vstack(shown), cautions)


def _check_long(ends: Array, name: str) -> None:
    """Refuse picks too near each other to give a direction."""
    size = float(np.hypot(*(ends[1] - ends[0])))
    if size < MIN_LINE_PX:
        raise ScaleError(
            f"the picks on {name} are {size:.0f} px apart, under {MIN_LINE_PX:.0f}",
            where="scale",
            mend="pick two points far apart",
        )


def _check_edges(edges: Array) -> None:
    """Refuse edges that are too short, cross, or are picked in no order."""
    (a, b), (c, d) = edges[:2], edges[2:]
    _check_long(edges[:2], "the first edge")
    _check_long(edges[2:], "the second edge")
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
