"""Indications on rendered pipes of known truth: error, coverage, the limb, the flat limit.

The camera and the cylinder here are written for the tests alone: points of the surface are
projected, and what the picture shows of the edges comes from the planes that touch it.
"""

from dataclasses import dataclass

import numpy as np
import pytest

from ptmark.dye import EdgeQuality
from ptmark.errors import OutlineError, ScaleError
from ptmark.measure import Conditions, measure_outline
from ptmark.scale import LineReference, PipeMap, PipeReference, RectangleReference, solve
from ptmark.scale.maps import camera_priors
from ptmark.scale.pipe import FoundEdges, pipe_map
from ptmark.scale.plane import Lens
from ptmark.scale.problem import Priors

WIDTH, HEIGHT = 4000, 3000
SURE = EdgeQuality(shift_px=0.0, noise_px=0.0, source="suggested")
FLAT = Conditions(relief_mm=0.0)


@dataclass
class Pipe:
    """Axis through ``origin`` along ``axis``; camera at 0 looking along z; mm."""

    diameter: float
    axis: np.ndarray
    origin: np.ndarray
    focal: float
    centre: np.ndarray
    kappa: float = 0.0

    def __post_init__(self):
        self.axis = self.axis / np.linalg.norm(self.axis)
        foot = self.origin - (self.origin @ self.axis) * self.axis
        self.off = float(np.linalg.norm(foot))
        self.near = -foot / self.off  # outwards, where the surface is nearest
        self.side = np.cross(self.axis, self.near)

    def see(self, points):
        straight = self.focal * points[:, :2] / points[:, 2:] + self.centre
        radius = np.hypot(WIDTH, HEIGHT) / 2
        middle = np.array([(WIDTH - 1) / 2, (HEIGHT - 1) / 2])
        bent = straight
        for _ in range(30):  # straight = c + (bent - c) (1 + kappa r²), by fixed point
            r2 = (((bent - middle) / radius) ** 2).sum(1, keepdims=True)
            bent = middle + (straight - middle) / (1 + self.kappa * r2)
        return bent

    def place(self, angle, along):
        """Places in space at angles round the axis (0 nearest) and along it."""
        angle, along = np.broadcast_arrays(np.asarray(angle, float), np.asarray(along, float))
        out = np.cos(angle)[:, None] * self.near + np.sin(angle)[:, None] * self.side
        return self.origin + along[:, None] * self.axis + self.diameter / 2 * out

    def edges(self, span):
        limb = np.arccos(
            min(1.0, self.diameter / 2 / self.off)
        )  # where the line of sight touches
        return np.vstack([self.see(self.place([s * limb] * 2, [-span, span])) for s in (-1, 1)])


def make_pipe(rng, diameter, *, tilt=15.0, focal=3000.0, centre=None, kappa=0.0):
    off = diameter / 2 + rng.uniform(0.75, 1.3) * diameter
    lean, turn = np.radians(rng.uniform(-tilt, tilt)), rng.uniform(0, 2 * np.pi)
    axis = [np.cos(lean) * np.cos(turn), np.cos(lean) * np.sin(turn), np.sin(lean)]
    aside = rng.uniform(-0.05, 0.05, 2) * diameter
    middle = np.array([(WIDTH - 1) / 2, (HEIGHT - 1) / 2]) if centre is None else centre
    return Pipe(diameter, np.array(axis), np.array([*aside, off]), focal, middle, kappa)


def line_on(pipe, rng, *, most_deg=40.0, start_deg=None):
    """A band 1 % of the diameter wide along a helix; its outline in px, its length in mm."""
    radius = pipe.diameter / 2
    length = rng.uniform(0.1, 0.3) * radius
    way = rng.uniform(0, np.pi)
    start = np.radians(rng.uniform(-most_deg, most_deg) if start_deg is None else start_deg)
    limit = np.arccos(radius / pipe.off) / (np.pi / 2)  # of the visible part, as of 90 degrees
    if start_deg is None:
        start *= limit
    step = np.linspace(0, length, 60)
    half = 0.005 * radius
    flat = np.vstack(
        [
            np.column_stack([step, np.full(60, half)]),
            np.column_stack([step[::-1], np.full(60, -half)]),
        ]
    )
    turned = flat @ np.array([[np.cos(way), np.sin(way)], [-np.sin(way), np.cos(way)]])
    # Unwrapping is an isometry, s² = (R dθ)² + dz²: do Carmo, Differential Geometry of Curves
    # and Surfaces (1976), section 4-2 on isometries (from memory).
    seen = pipe.see(pipe.place(start + turned[:, 0] / radius, turned[:, 1] - length / 2))
    return seen, float(np.hypot(length, 2 * half)), start


@pytest.fixture
def make_photo():
    from pathlib import Path

    from ptmark.photo import Photo, PhotoInfo

    def made(focal, size=(HEIGHT, WIDTH)):
        info = PhotoInfo(
            path=Path("made.png"),
            sha256="0" * 64,
            bytes=0,
            format="PNG",
            width=WIDTH,
            height=HEIGHT,
            focal_px=focal,
        )
        blank = np.broadcast_to(np.zeros(3, np.uint8), (*size, 3))
        return Photo(info, blank)

    return made


@pytest.mark.truth
@pytest.mark.parametrize("diameter", [60.3, 168.3, 323.9, 600.0])
def test_exact_picks_give_the_lengths_of_the_unwrapped_plane(make_photo, diameter):
    rng = np.random.default_rng(int(diameter))
    for _ in range(3):
        pipe = make_pipe(rng, diameter)
        edges = pipe.edges(0.2 * diameter)
        reference = PipeReference(edges_px=tuple(map(tuple, edges)), diameter_mm=diameter)
        surface = solve(reference, make_photo(pipe.focal))
        outline, truth, _ = line_on(pipe, rng)
        if not surface.in_view(outline):
            continue
        made = measure_outline(outline, surface, SURE, FLAT)
        assert made.length.value == pytest.approx(truth, rel=1e-6)
        np.testing.assert_allclose(surface.to_px(surface.to_mm(outline)), outline, atol=1e-6)


# Focal lengths of phones' cameras, mm of a 36 x 24 mm picture: main, wide and tele. Common
# practice, no source.
PHONES_MM = [14, 24, 24, 26, 26, 26, 28, 28, 50, 70]


def trials(make_photo, rng, count, *, known):
    """Errors over true lengths, and whether U covers them, with everything drawn anew."""
    errors, covered = [], []
    lens = Lens.of_picture(WIDTH, HEIGHT)
    while len(errors) < count:
        nominal, told = rng.uniform(60, 600), 3000.0
        film = rng.choice(PHONES_MM) / 43.27 * np.hypot(WIDTH, HEIGHT)
        pipe = make_pipe(
            rng,
            nominal * (1 + rng.uniform(-0.005, 0.005)),
            focal=told * np.exp(0.03 * rng.normal()) if known else film,
            centre=np.array([1999.5, 1499.5]) + rng.normal(0, 50, 2),
            kappa=rng.normal(0, 0.015),
        )
        edges = pipe.edges(0.2 * nominal) + rng.normal(0, 1.2, (4, 2))
        if not ((edges > 0) & (edges < [WIDTH - 1, HEIGHT - 1])).all():
            continue
        given = camera_priors(make_photo(told if known else None))
        found = FoundEdges(edges, np.full(4, 1.2), edges)
        surface = pipe_map(found, nominal / 2, given, lens)
        outline, truth, _ = line_on(pipe, rng)
        if not surface.in_view(outline):
            continue
        made = measure_outline(outline, surface, SURE, FLAT)
        errors.append(made.length.value / truth - 1)
        covered.append(abs(made.length.value - truth) <= made.length.expanded)
    return np.abs(errors), np.mean(covered)


@pytest.mark.truth
@pytest.mark.slow
def test_lengths_on_pipes_are_right_to_a_percent_and_covered(make_photo):
    errors, covered = trials(make_photo, np.random.default_rng(8), 200, known=True)
    assert np.median(errors) <= 0.01
    # The aim of the project's own: 95 % within ± U. JCGM 100:2008, 6.2.1 and G.6.6 (k = 2).
    assert 0.93 <= covered <= 0.985


@pytest.mark.slow
def test_an_unknown_focal_length_is_covered_for_the_cameras_of_phones(make_photo):
    _, covered = trials(make_photo, np.random.default_rng(9), 80, known=False)
    assert covered >= 0.93


@pytest.mark.truth
@pytest.mark.slow
@pytest.mark.parametrize("film_mm", [13, 24, 28, 50, 70])
def test_each_camera_of_a_phone_is_covered_without_its_focal_length(make_photo, film_mm):
    """The pipe fills half to four fifths of the picture, as a person frames it.

    All lengths of one photo are off by the same share, so each camera has to be covered by
    itself: 0.93 over a mixture could leave out a whole camera.
    """
    rng, lens = np.random.default_rng(film_mm), Lens.of_picture(WIDTH, HEIGHT)
    focal = film_mm / 43.27 * np.hypot(WIDTH, HEIGHT)
    covered = []
    while len(covered) < 20:
        pipe = make_pipe(rng, rng.uniform(60, 600), focal=focal)
        half = rng.uniform(0.5, 0.8) * HEIGHT / 2 / focal
        pipe.origin[2] = pipe.diameter / 2 / np.sin(np.arctan(half))
        pipe = Pipe(pipe.diameter, pipe.axis, pipe.origin, focal, pipe.centre)
        edges = pipe.edges(0.05 * pipe.diameter) + rng.normal(0, 1.2, (4, 2))
        found = FoundEdges(edges, np.full(4, 1.2), edges)
        surface = pipe_map(found, pipe.diameter / 2, camera_priors(make_photo(None)), lens)
        outline, truth, _ = line_on(pipe, rng)
        if surface.in_view(outline):
            made = measure_outline(outline, surface, SURE, FLAT)
            covered.append(abs(made.length.value - truth) <= made.length.expanded)
    assert np.mean(covered) >= 0.93


def test_without_a_focal_length_u_holds_and_says_why(make_photo):
    rng = np.random.default_rng(4)
    pipe = make_pipe(rng, 168.3)
    reference = PipeReference(edges_px=tuple(map(tuple, pipe.edges(30.0))), diameter_mm=168.3)
    surface = solve(reference, make_photo(None))
    outline, truth, _ = line_on(pipe, rng, start_deg=0.0)
    made = measure_outline(outline, surface, SURE, FLAT)
    assert abs(made.length.value - truth) <= made.length.expanded
    assert max(made.length.budget, key=made.length.budget.get) == "focal length"
    assert any("focal length" in caution for caution in surface.cautions)


def test_u_grows_to_the_limb_and_then_it_is_refused(make_photo):
    rng = np.random.default_rng(1)
    pipe = make_pipe(rng, 200.0, tilt=0.0)
    reference = PipeReference(edges_px=tuple(map(tuple, pipe.edges(40.0))), diameter_mm=200.0)
    surface = solve(reference, make_photo(pipe.focal))
    assert isinstance(surface, PipeMap)
    soft = EdgeQuality(shift_px=0.7, noise_px=0.3)
    found, edge = [], []
    for angle in (0, 10, 20, 30, 36):  # the line of sight leans further than the surface does
        corner = np.radians(angle) + np.array([0.0, 0.1, 0.1, 0.0])
        along = np.array([0.0, 0.0, 1.0, 1.0])
        made = measure_outline(pipe.see(pipe.place(corner, along)), surface, soft, FLAT)
        found.append(made.length.expanded)
        edge.append(made.length.budget["edge"])
    assert edge == sorted(edge)
    # The edges pin the surface beside them, and least its crown: what the focal length leaves
    # open falls to the side, and U as a whole by 0.3 % before the edge's share outgrows it.
    assert min(found) > 0.99 * found[0]
    assert found[2:] == sorted(found[2:])
    assert found[-1] > 1.1 * found[0]
    outline, _, _ = line_on(pipe, rng, start_deg=55.0)
    with pytest.raises(OutlineError, match=r"turns away|beyond the pipe's edge"):
        measure_outline(outline, surface, SURE, FLAT)


def lying_on(pipe, angle, wide, high):
    """Corners of a rectangle that touches the pipe, and two points of the line where, px."""
    out = np.cos(angle) * pipe.near + np.sin(angle) * pipe.side
    right = np.sin(angle) * pipe.near - np.cos(angle) * pipe.side
    middle = pipe.origin + pipe.diameter / 2 * out
    corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    places = [middle + x * wide / 2 * right + y * high / 2 * pipe.axis for x, y in corners]
    touching = [middle - high / 2 * pipe.axis, middle + high / 2 * pipe.axis]
    return pipe.see(np.array(places)), pipe.see(np.array(touching))


def points(array):
    return tuple(map(tuple, array.tolist()))


@pytest.mark.truth
@pytest.mark.parametrize("angle", [-14.0, 0.0, 14.0])
def test_a_rectangle_that_touches_the_pipe_gives_its_surface(make_photo, angle):
    rng = np.random.default_rng(11)
    for diameter in (60.3, 323.9):
        pipe = make_pipe(rng, diameter)
        wide, high = 0.25 * diameter, 0.15 * diameter
        corners, touching = lying_on(pipe, np.radians(angle), wide, high)
        on = RectangleReference(corners_px=points(corners), width_mm=wide, height_mm=high)
        reference = PipeReference(axis_px=points(touching), diameter_mm=diameter, on=on)
        surface = solve(reference, make_photo(pipe.focal))
        outline, truth, _ = line_on(pipe, rng)
        made = measure_outline(outline, surface, SURE, FLAT)
        assert made.length.value == pytest.approx(truth, rel=1e-6)
        assert made.length.budget["touching line"] > 0
        np.testing.assert_allclose(surface.to_px(surface.to_mm(outline)), outline, atol=1e-6)


@pytest.mark.parametrize(("aside", "refused"), [(0.0, False), (14.0, False), (40.0, True)])
def test_a_reference_beside_the_pipe_is_refused(make_photo, aside, refused):
    """Shifted in its own plane, a rectangle 30 mm wide leaves the line of touch at 15 mm."""
    pipe = make_pipe(np.random.default_rng(11), 168.3)
    corners, _ = lying_on(pipe, 0.0, 30.0, 20.0)
    right = -pipe.side  # as `lying_on` turns a rectangle at angle 0
    middle = pipe.origin + pipe.diameter / 2 * pipe.near
    touching = [
        middle + aside * right - 10 * pipe.axis,
        middle + aside * right + 10 * pipe.axis,
    ]
    on = RectangleReference(corners_px=points(corners), width_mm=30.0, height_mm=20.0)
    axis = points(pipe.see(np.array(touching)))
    given = PipeReference(axis_px=axis, diameter_mm=168.3, on=on)
    if refused:
        with pytest.raises(ScaleError, match=r"2[4-6] mm beside the reference.*edges"):
            solve(given, make_photo(pipe.focal))
    else:
        assert solve(given, make_photo(pipe.focal)).reference == "rectangle on a pipe"


def with_edges(pipe, rng, angle=0.0, *, aside=0.0, told=1.0, noise=1.2):
    """A rectangle on a pipe, ``aside`` mm along its own plane, and both edges, as picked."""
    wide, high = 0.5 * pipe.diameter, 0.3 * pipe.diameter
    out = np.cos(angle) * pipe.near + np.sin(angle) * pipe.side
    right = np.sin(angle) * pipe.near - np.cos(angle) * pipe.side
    middle = pipe.origin + pipe.diameter / 2 * out + aside * right
    corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    places = [middle + x * wide / 2 * right + y * high / 2 * pipe.axis for x, y in corners]
    seen = pipe.see(np.array(places)) + rng.normal(0, noise, (4, 2))
    on = RectangleReference(corners_px=points(seen), width_mm=wide, height_mm=high)
    edges = pipe.edges(0.25 * pipe.diameter) + rng.normal(0, noise, (4, 2))
    return PipeReference(edges_px=points(edges), diameter_mm=told * pipe.diameter, on=on)


@pytest.mark.truth
@pytest.mark.parametrize("angle", [-14.0, 0.0, 14.0])
def test_edges_and_what_lies_on_the_pipe_give_the_exact_surface(make_photo, angle):
    rng = np.random.default_rng(21)
    for diameter in (60.3, 323.9):
        pipe = make_pipe(rng, diameter)
        both = with_edges(pipe, rng, np.radians(angle), noise=0.0)
        surface = solve(both, make_photo(pipe.focal))
        outline, truth, _ = line_on(pipe, rng)
        made = measure_outline(outline, surface, SURE, FLAT)
        assert made.length.value == pytest.approx(truth, rel=1e-5)
        alone = solve(
            PipeReference(edges_px=both.edges_px, diameter_mm=diameter), make_photo(3000)
        )
        by_edges = measure_outline(outline, alone, SURE, FLAT)
        assert made.length.expanded < 0.5 * by_edges.length.expanded


@pytest.mark.truth
@pytest.mark.slow
def test_edges_and_a_rectangle_hold_where_the_focal_length_is_badly_told(make_photo):
    """EXIF off by 3 %: the edges alone make 1 % of it in the median, both together a fifth."""
    rng, errors, covered = np.random.default_rng(22), [], []
    for _ in range(24):
        focal = 3000.0 * float(np.exp(0.03 * rng.normal()))
        pipe = make_pipe(rng, float(np.exp(rng.uniform(*np.log([60, 600])))), focal=focal)
        off = 1 / (1 + rng.uniform(-0.005, 0.005))
        both = with_edges(pipe, rng, np.radians(rng.uniform(-15, 15)), told=off)
        surface = solve(both, make_photo(3000.0))
        for _ in range(3):
            outline, truth, _ = line_on(pipe, rng)
            if surface.in_view(outline):
                made = measure_outline(outline, surface, SURE, FLAT)
                errors.append(abs(made.length.value / truth - 1))
                covered.append(errors[-1] <= made.length.expanded / truth)
    assert len(errors) > 50
    assert np.median(errors) < 0.0035  # a third of the 1 % asked of pipes of 60 to 600 mm
    # 95 % within ± U is the project's aim (k = 2, JCGM 100:2008, 6.2.1).
    assert np.mean(covered) >= 0.93


@pytest.mark.parametrize(
    ("aside", "told", "says"),
    [
        (0.0, 1.15, "contradict each other"),
        (0.0, 0.87, "contradict each other"),
        (60.0, 1.0, "beside the reference"),
    ],
)
def test_edges_that_contradict_what_lies_on_the_pipe_are_refused(make_photo, aside, told, says):
    rng = np.random.default_rng(23)
    pipe = make_pipe(rng, 168.3, tilt=5.0)
    with pytest.raises(ScaleError, match=says):
        solve(with_edges(pipe, rng, aside=aside, told=told), make_photo(pipe.focal))


@pytest.mark.truth
@pytest.mark.slow
def test_a_rule_on_the_crown_is_covered_however_it_and_the_camera_lean(make_photo):
    rng, errors, covered = np.random.default_rng(12), [], []
    for _ in range(25):
        pipe = make_pipe(rng, rng.uniform(60, 600))
        angle = np.radians(rng.uniform(-15, 15))  # what looks like the crown
        _, ends = lying_on(pipe, angle, 1.0, 0.4 * pipe.diameter)
        line = LineReference(
            ends_px=points(ends + rng.normal(0, 1.2, (2, 2))), length_mm=0.4 * pipe.diameter
        )
        reference = PipeReference(diameter_mm=pipe.diameter, on=line)
        surface = solve(reference, make_photo(3000.0, (8, 8)))  # no rule to be read
        outline, truth, _ = line_on(pipe, rng)
        if surface.in_view(outline):
            made = measure_outline(outline, surface, SURE, FLAT)
            errors.append(abs(made.length.value / truth - 1))
            covered.append(errors[-1] <= made.length.expanded / truth)
    assert np.median(errors) < 0.06  # how the pipe is turned is not seen
    assert np.mean(covered) >= 0.93


@pytest.mark.truth
def test_a_huge_pipe_measures_like_a_solved_plane_and_differs_by_one_over_r(make_photo):
    """The surface lies x²/2R under the plane that touches it (the circle's sagitta, to first
    order), so a ray meets it farther aside by a share of that: the difference falls as 1/R.
    """
    lens = Lens.of_picture(WIDTH, HEIGHT)
    off = {"edges": [], "touching": []}
    for radius in (1e3, 1e4, 1e5):
        origin, centre = np.array([0.0, 0.0, radius + 200.0]), np.asarray(lens.centre)
        pipe = Pipe(2 * radius, np.array([1.0, 0.2, 0.0]), origin, 3000.0, centre)
        corners, touching = lying_on(pipe, 0.0, 60.0, 40.0)
        on = RectangleReference(corners_px=points(corners), width_mm=60.0, height_mm=40.0)
        photo = make_photo(3000.0)
        plane = solve(on, photo)
        ends = np.array([[2100.0, 1400.0], [2700.0, 300.0]])
        edges = FoundEdges(pipe.edges(500.0), np.full(4, 1.2), corners)
        reference = PipeReference(axis_px=points(touching), diameter_mm=2 * radius, on=on)
        made = {
            "edges": pipe_map(edges, radius, Priors(3000.0, 0.03), lens),
            "touching": solve(reference, photo),
        }
        flat = np.hypot(*np.diff(plane.to_mm(ends), axis=0)[0])
        for name, surface in made.items():
            curved = np.hypot(*np.diff(surface.to_mm(ends), axis=0)[0])
            off[name].append(abs(curved / flat - 1))
    for three in off.values():
        assert three[0] / three[1] == pytest.approx(10, rel=0.1)
        assert three[1] / three[2] == pytest.approx(10, rel=0.1)
        assert three[2] < 1e-3
