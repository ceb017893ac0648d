"""A reference nearer the camera than the surface: projected truth, GTC, sampling."""

import GTC
import numpy as np
import pytest

from ptmark.errors import ScaleError
from ptmark.measure.relief import flattened
from ptmark.scale import LineReference, PipeReference, RectangleReference, SurfaceMap, solve
from ptmark.scale.offset import offset_u_mm, set_back

SIZE_MM = (60.0, 40.0)
ENDS_MM = np.array([[10.0, 60.0], [70.0, 10.0]])
TRUE_MM = np.hypot(60.0, 50.0)


def corners():
    width, height = SIZE_MM
    return np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])


def rectangle(view, height_mm, offset_mm, noise=0.0):
    at = view.project(corners(), height_mm) + noise
    return RectangleReference(
        corners_px=tuple((float(x), float(y)) for x, y in at),
        width_mm=SIZE_MM[0],
        height_mm=SIZE_MM[1],
        offset_mm=offset_mm,
    )


def length(surface, ends_px):
    return float(np.hypot(*np.diff(surface.to_mm(ends_px), axis=0)[0]))


@pytest.mark.parametrize("offset_mm", [1.5, 8.0, -3.0])
def test_lengths_of_the_surface_are_true(camera, offset_mm):
    view = camera(lean_deg=(12.0, -8.0), turn_deg=20.0)
    surface = solve(rectangle(view, offset_mm, offset_mm), view.photo(exif=True))
    ends = view.project(ENDS_MM)
    assert length(surface, ends) == pytest.approx(TRUE_MM, rel=1e-7)
    assert surface.to_px(surface.to_mm(ends)) == pytest.approx(ends, abs=1e-6)
    foot = -view.rotation.T @ view.translation  # the camera in the surface's frame
    assert surface.camera_mm[2] == pytest.approx(abs(foot[2]), rel=1e-6)


def test_without_it_they_read_short_by_its_share_of_the_distance(camera):
    """Similar triangles: (D - d) / D, D the camera's height over the surface."""
    view = camera(lean_deg=(12.0, -8.0))
    surface = solve(rectangle(view, 1.5, 0.0), view.photo(exif=True))
    height = abs((view.rotation.T @ view.translation)[2])
    read = length(surface, view.project(ENDS_MM))
    assert read == pytest.approx(TRUE_MM * (height - 1.5) / height, rel=1e-6)


def test_a_crown_beside_a_thick_card_is_corrected_once(camera):
    """Reference 4 mm, indication 2.5 mm above the surface: each is corrected its own way."""
    view = camera(lean_deg=(12.0, -8.0))
    surface = solve(rectangle(view, 4.0, 4.0), view.photo(exif=True))
    crown = flattened(surface.to_mm(view.project(ENDS_MM, 2.5)), surface, 2.5)
    assert np.hypot(*(crown[1] - crown[0])) == pytest.approx(TRUE_MM, rel=1e-6)
    level = solve(rectangle(view, 2.5, 2.5), view.photo(exif=True))
    # A crown as high as the reference measures as if both lay on the surface.
    at_once = flattened(level.to_mm(view.project(ENDS_MM, 2.5)), level, 2.5)
    plain = solve(rectangle(view, 2.5, 0.0), view.photo(exif=True))
    assert np.hypot(*(at_once[1] - at_once[0])) == pytest.approx(
        length(plain, view.project(ENDS_MM, 2.5)), rel=1e-6
    )


@pytest.mark.truth
def test_its_uncertainty_agrees_with_gtc():
    """X' = foot + (X - foot)(1 + d / D): JCGM 100:2008, 5.1.2, by GTC."""
    h = np.array([[0.052, 0.004, 3.0], [-0.003, 0.049, -2.0], [1.1e-5, -2.3e-5, 1.0]])
    bare = SurfaceMap(
        h=h,
        covariance={"reference": np.zeros((9, 9))},
        reference="card",
        reference_px=np.array([[200.0, 200.0], [1400.0, 900.0]]),
        camera_mm=np.array([40.0, 30.0, 200.0]),
        camera_height_rel_u=0.03,
    )
    ends = np.array([[300.0, 250.0], [1500.0, 1100.0]])
    before = length(bare, ends)
    after = set_back(bare, 6.0)
    d, height = GTC.ureal(6.0, offset_u_mm(6.0)), GTC.ureal(200.0, 0.03 * 200.0)
    model = before * (1 + d / height)
    assert length(after, ends) == pytest.approx(model.x, rel=1e-12)
    assert after.distance_u(*ends)["reference"] == pytest.approx(model.u, rel=1e-6)


@pytest.mark.slow
@pytest.mark.truth
def test_its_uncertainty_by_sampling(camera):
    """JCGM 101:2008, 5.9: picks, focal length and the offset drawn anew each time."""
    rng = np.random.default_rng(5)
    offset, off, trials = 12.0, [], 80
    for _ in range(trials):
        told = camera(lean_deg=(12.0, -8.0))
        view = camera(
            lean_deg=(12.0, -8.0), focal_px=told.focal_px * np.exp(rng.normal(0, 0.03))
        )
        height = offset + rng.normal(0, offset_u_mm(offset))
        noise = rng.normal(0, 1.2, (4, 2))
        surface = solve(rectangle(view, height, offset, noise), told.photo(exif=True))
        ends = view.project(ENDS_MM)
        parts = surface.distance_u(*ends)
        # The rectangle's own size, the lens and the centre were not drawn: take out what the
        # same picks give without an offset.
        alone = solve(rectangle(view, height, 0.0, noise), told.photo(exif=True))
        size = alone.distance_u(*ends)["reference"]
        u = np.sqrt(parts["picking"] ** 2 + parts["reference"] ** 2 - size**2)
        off.append((length(surface, ends) - TRUE_MM) / u)
    # A spread from 80 trials is known to 1 / sqrt(2 * 79) = 8 %.
    assert np.std(off) == pytest.approx(1.0, abs=0.25)


def test_what_is_no_offset(camera):
    view = camera()
    photo = view.photo(exif=True)
    for offset in (90.0, float("nan")):
        with pytest.raises(ScaleError, match="offset"):
            solve(rectangle(view, 0.0, offset), photo)
    line = LineReference(ends_px=((300.0, 700.0), (1500.0, 700.0)), length_mm=60, offset_mm=2.0)
    with pytest.raises(ScaleError, match="flat surfaces"):
        solve(PipeReference(diameter_mm=100.0, on=line), photo)


def test_a_raised_line_too(camera):
    view = camera()  # square to the surface, as one line has to take it
    ends = view.project(np.array([[10.0, 20.0], [70.0, 20.0]]), 5.0)
    line = LineReference(
        ends_px=tuple((float(x), float(y)) for x, y in ends), length_mm=60.0, offset_mm=5.0
    )
    surface = solve(line, view.photo(exif=True))
    assert length(surface, view.project(ENDS_MM)) == pytest.approx(TRUE_MM, rel=1e-6)
