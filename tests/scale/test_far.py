"""Far from the reference U grows, and it is said; the lens's share depends on both places."""

from dataclasses import replace

import numpy as np
import pytest
from uncertainties import correlated_values
from uncertainties.umath import sqrt as usqrt

from ptmark.scale import FAR_SIZES, LineReference, RectangleReference, SurfaceMap, solve
from ptmark.scale.far import far_caution, sizes_away
from ptmark.scale.plane import Lens

SIZE_MM = (40.0, 25.0)
AWAY_MM = (0.0, 40.0, 80.0, 120.0, 160.0)


def eye(camera, **more):
    return camera(
        width=4000,
        height=3000,
        distance_mm=300.0,
        lean_deg=(10.0, -6.0),
        aim_mm=(90.0, 20.0),
        **{"focal_px": 2900.0, **more},
    )


def rectangle(view, noise=0.0, seen=lambda points_px: points_px):
    width, height = SIZE_MM
    flat = np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])
    at = seen(view.project(flat)) + noise
    return RectangleReference(
        corners_px=tuple((float(x), float(y)) for x, y in at), width_mm=width, height_mm=height
    )


def ends_at(view, away_mm):
    """10 mm along the way from the reference, their middle ``away_mm`` beyond its middle."""
    x = SIZE_MM[0] / 2 + away_mm
    return view.project(np.array([[x - 5.0, 12.5], [x + 5.0, 12.5]]))


def u_of(surface, ends):
    return float(np.sqrt(sum(u**2 for u in surface.distance_u(*ends).values())))


@pytest.mark.truth
def test_u_grows_with_the_distance_as_the_covariance_says(camera):
    """Against the package uncertainties: nine correlated parameters, JCGM 100:2008, 5.2.2."""
    view = eye(camera)
    surface = solve(rectangle(view), view.photo(exif=True))
    whole = sum(surface.covariance.values())
    *h, bend = correlated_values([*surface.h.ravel()[:8], surface.lens.kappa], whole)
    grown = []
    for away in AWAY_MM:
        ends = ends_at(view, away)
        mapped = []
        for right, down in (ends - surface.lens.centre).tolist():
            factor = 1 + bend * (right**2 + down**2) / surface.lens.radius_px**2
            x = surface.lens.centre[0] + right * factor
            y = surface.lens.centre[1] + down * factor
            w = h[6] * x + h[7] * y + 1
            mapped.append(((h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w))
        (ax, ay), (bx, by) = mapped
        length = usqrt((bx - ax) ** 2 + (by - ay) ** 2)
        assert u_of(surface, ends) == pytest.approx(length.std_dev, rel=1e-6)
        grown.append(length.std_dev)
    assert np.all(np.diff(grown) > 0)
    assert grown[-1] > 4 * grown[0]


@pytest.mark.slow
@pytest.mark.truth
def test_u_far_away_by_sampling(camera):
    """JCGM 101:2008, 5.9: picks, focal length, centre and lens term drawn anew each time."""
    rng = np.random.default_rng(12)
    trials, off = 120, []
    straight = Lens.of_picture(4000, 3000)
    for _ in range(trials):
        told = eye(camera)
        view = eye(camera, focal_px=2900.0 * np.exp(rng.normal(0, 0.03)))
        lens = replace(straight, kappa=rng.normal(0, 0.015))
        aside = rng.normal(0, 0.01 * 5000.0, 2)

        def seen(points_px, lens=lens, aside=aside):
            return lens.distort(points_px + aside)

        picked = rectangle(view, rng.normal(0, 1.2, (4, 2)), seen)
        surface = solve(picked, told.photo(exif=True))
        row = []
        for away in AWAY_MM:
            ends = seen(ends_at(view, away))
            parts = surface.distance_u(*ends)
            read = np.hypot(*np.diff(surface.to_mm(ends), axis=0)[0])
            # All but the rectangle's own size, which was not drawn.
            row.append((read - 10.0) / np.hypot(parts["picking"], parts["lens"]))
        off.append(row)
    # A spread from 120 trials is known to 1 / sqrt(2 * 119) = 6.5 %.
    assert np.std(off, axis=0) == pytest.approx(1.0, abs=0.22)


def outline_at(view, mm):
    return view.project(np.array([[mm, 10.0], [mm + 4, 10.0], [mm + 4, 11.0], [mm, 11.0]]))


def test_far_indications_are_named_with_the_mend(camera):
    view = eye(camera)
    surface = solve(rectangle(view), view.photo(exif=True))
    size = np.hypot(*SIZE_MM)
    away, found = sizes_away(surface, outline_at(view, SIZE_MM[0] + 50.0 - 4.0))
    assert (away, found) == pytest.approx((50.0, size), rel=1e-4)
    edge = SIZE_MM[0] + FAR_SIZES * size
    near, far = outline_at(view, edge - 5.0), outline_at(view, edge + 1.0)
    assert far_caution(surface, {"A": near}) == ""
    said = far_caution(surface, {"A": near, "B": far})
    assert "Far from the scale reference: B," in said
    assert "47 mm large" in said
    assert said.endswith("Lay the reference beside the indications.")
    assert far_caution(None, {"B": far}) == ""


def test_a_line_and_what_lies_beside_it(camera):
    view = camera()
    line = LineReference(
        ends_px=tuple(tuple(p) for p in view.project(np.array([[0, 5], [20, 5.0]])).tolist()),
        length_mm=20.0,
    )
    surface = solve(line, view.photo(exif=True))
    away, size = sizes_away(surface, view.project(np.array([[10.0, 35.0], [12.0, 45.0]])))
    assert (away, size) == pytest.approx((40.0, 20.0), rel=1e-4)


@pytest.mark.truth
def test_the_lens_contribution_depends_on_both_places():
    """In closed form: c + (p - c)(1 + k r²) moves each end by its own r² (Brown 1971)."""
    lens, mm_per_px = Lens((2000.0, 1500.0), 2500.0), 0.05
    kappa_u = 0.015
    part = np.zeros((9, 9))
    part[8, 8] = kappa_u**2
    surface = SurfaceMap(
        h=np.diag([mm_per_px, mm_per_px, 1.0]),
        covariance={"lens": part},
        reference="card",
        reference_px=np.array([[1900.0, 1400.0], [2100.0, 1600.0]]),
        lens=lens,
    )

    def expected(a, b):
        moved = [(p - lens.centre) * ((p - lens.centre) @ (p - lens.centre)) for p in (a, b)]
        along = (b - a) / np.hypot(*(b - a))
        return abs(along @ (moved[1] - moved[0])) / lens.radius_px**2 * mm_per_px * kappa_u

    fixed = np.array([2000.0, 1500.0])
    found = []
    for other in ([2300.0, 1500.0], [2900.0, 1700.0], [3700.0, 2800.0], [400.0, 300.0]):
        b = np.array(other)
        for a in (fixed, np.array([3500.0, 2500.0])):
            u = surface.distance_u(a, b)["lens"]
            assert u == pytest.approx(expected(a, b), rel=1e-9)
            found.append(u / np.hypot(*(b - a)))
    # Per length it is none amid the picture and several times as much at its corner.
    assert max(found) > 20 * min(found)
