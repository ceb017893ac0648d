"""A steel rule that reads itself: unit, count, plane, and what it refuses."""

from dataclasses import replace

import cv2
import numpy as np
import pytest
from scipy.signal import find_peaks

from ptmark.errors import ScaleError
from ptmark.measure.relief import relief_u_mm
from ptmark.photo import Photo
from ptmark.scale import LineReference, solve
from ptmark.scale.graduations import likely_graduations
from ptmark.scale.rule import read_rule
from ptmark.scale.strip import dips_of, strip_along
from ptmark.scale.strokes import find_strokes

STEP_MM = {
    "mm": 1.0,
    "1/2 mm": 0.5,
    "1/16 in": 1.5875,  # exact: 25.4 / 16
    "1/32 in": 0.79375,
    "1/64 in": 0.396875,
}
VIEWS = [
    {},
    {"lean_deg": (14.0, -9.0), "turn_deg": 25.0},
    {"lean_deg": (-5.0, 18.0), "turn_deg": -160.0},
]


def eye_of(camera, **changes):
    made = camera(
        width=2000, height=1100, focal_px=2600.0, distance_mm=170.0, aim_mm=(42.0, 5.0)
    )
    return replace(made, **changes)


def picks(eye, first_mm, last_mm, seed=1, y_mm=1.0):
    ends = eye.project(np.array([[first_mm, y_mm], [last_mm, y_mm]]))
    return ends + np.random.default_rng(seed).normal(0, 1.2, (2, 2))


def line(ends, mm):
    return LineReference(ends_px=tuple(map(tuple, ends)), length_mm=mm)


def length(surface, ends):
    a, b = surface.to_mm(ends)
    return float(np.hypot(*(b - a)))


@pytest.fixture(scope="module")
def seen():
    """Photos of every rule, taken once."""
    kept = {}

    def taken(rule, eye, kind):
        key = (kind, eye)
        if key not in kept:
            kept[key] = rule(kind=kind, stroke_mm=0.1).photograph(eye, blur_px=0.8)
        return kept[key]

    return taken


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("kind", list(STEP_MM))
def test_unit_is_told_by_the_longer_strokes(camera, rule, seen, kind, view):
    eye = eye_of(camera, **view)
    photo = seen(rule, eye, kind)
    strokes = find_strokes(strip_along(photo, picks(eye, 0.0, 76.2)))
    assert [one.name for one in likely_graduations(strokes)] == [kind]


@pytest.mark.parametrize("kind", list(STEP_MM))
def test_wrong_lengths_are_refused_and_right_ones_taken(camera, rule, seen, kind):
    """Typed half, double, and inches for millimetres; the right length raises no alarm."""
    eye = eye_of(camera, **VIEWS[1])
    photo = seen(rule, eye, kind)
    for seed, (first, last) in enumerate([(3.0, 77.0), (20.0, 52.0)]):
        step = STEP_MM[kind]
        start, count = round(first / step), round((last - first) / step)
        mm = count * step
        ends = picks(eye, start * step, start * step + mm, seed)
        read = read_rule(photo, ends, mm)
        assert read.graduation.name == kind
        assert read.count == pytest.approx(count, abs=0.6)
        for factor in (0.5, 0.8, 1.25, 2.0, 25.4, 1 / 25.4):
            with pytest.raises(ScaleError, match=f"shows {round(read.count)} steps of {kind}"):
                read_rule(photo, ends, mm * factor)


def test_refusal_says_both_lengths(camera, rule):
    eye = eye_of(camera)
    photo = rule().photograph(eye)
    with pytest.raises(ScaleError) as caught:
        solve(line(picks(eye, 10, 50), 50.0), photo)
    assert "50.00 mm given" in str(caught.value)
    assert "40.00 mm" in str(caught.value)
    assert "check the length" in caught.value.mend


@pytest.mark.parametrize("lean", [(0.0, 0.0), (10.0, 0.0), (0.0, 15.0), (-14.0, 14.0)])
def test_strokes_tell_the_whole_plane(camera, rule, lean):
    """The camera here is OpenCV's projection: lengths beside the rule, in either direction."""
    eye = eye_of(camera, lean_deg=lean, turn_deg=8.0)
    photo = rule().photograph(eye, exif=True)
    surface = solve(line(picks(eye, 5, 80), 75.0), photo)
    leaning = np.degrees(np.arccos(eye.rotation[2, 2]))
    assert surface.tilt_deg == pytest.approx(leaning, abs=1.0)
    assert "steps of mm" in surface.reading
    assert surface.cautions == ()
    for a, b in [((20, -20), (50, -20)), ((50, -25), (50, -5)), ((60, 20), (75, 30))]:
        ends = eye.project(np.array([a, b], float))
        off = length(surface, ends) - np.hypot(*np.subtract(b, a))
        assert abs(off) <= 2 * np.hypot.reduce(list(surface.distance_u(*ends).values()))
        assert abs(off) <= 0.006 * np.hypot(*np.subtract(b, a))


def test_origin_is_the_first_pick_and_x_runs_along(camera, rule):
    eye = eye_of(camera, turn_deg=30.0)
    photo = rule().photograph(eye)
    ends = eye.project(np.array([[20.0, 0.0], [70.0, 0.0]]))
    surface = solve(line(ends, 50.0), photo)
    np.testing.assert_allclose(surface.to_mm(ends), [[0, 0], [50, 0]], atol=0.1)


@pytest.mark.slow
def test_stated_uncertainty_covers(camera, rule):
    """Focal lengths that EXIF tells to 3 percent, cameras leaning 9 degrees rms."""
    rng = np.random.default_rng(5)
    inside, total = 0, 0
    for seed in range(8):
        eye = eye_of(
            camera,
            lean_deg=tuple(rng.normal(0, 9, 2)),
            turn_deg=rng.uniform(-20, 20) + rng.choice([0, 180]),
            focal_px=2600 * np.exp(rng.normal(0, 0.03)),
        )
        photo = rule().photograph(eye, seed=seed, noise=0.02)
        told = Photo(replace(photo.info, focal_px=2600.0), photo.rgb)
        surface = solve(line(picks(eye, 5, 80, seed), 75.0), told)
        for a, b in [((20, -20), (50, -20)), ((50, -25), (50, -5)), ((60, 20), (75, 30))]:
            ends = eye.project(np.array([a, b], float))
            off = length(surface, ends) - np.hypot(*np.subtract(b, a))
            u = np.hypot.reduce(list(surface.distance_u(*ends).values()))
            inside += abs(off) <= 2 * u
            total += 1
    assert inside / total >= 0.9


def test_plain_line_is_taken_as_typed_with_a_caution(camera, rule):
    """A blank strip, and surface noise, hold no graduations."""
    eye = eye_of(camera)
    noise = np.random.default_rng(2).normal(150, 12, (eye.height, eye.width, 1))
    rough = cv2.GaussianBlur(noise, (0, 0), 2.0)[..., None] * np.ones(3)
    photo = eye.photo(np.clip(rough, 0, 255).astype(np.uint8))
    surface = solve(line(picks(eye, 5, 80), 75.0), photo)
    assert surface.tilt_deg is None
    assert any("as typed" in caution for caution in surface.cautions)
    assert surface.reading == ""


def test_blocks_of_a_scale_bar_are_no_graduations(camera):
    """Black and white blocks of 5 mm: equal steps, none longer: nothing is refused."""
    eye = eye_of(camera)
    grey = np.full((eye.height, eye.width, 3), 170, np.uint8)
    for x in range(0, 100, 10):
        block = eye.project(np.array([[x, 0], [x + 5, 0], [x + 5, 4], [x, 4]], float))
        cv2.fillPoly(grey, [np.round(block).astype(int)], (20, 20, 20))
    surface = solve(line(picks(eye, 0, 90, y_mm=2.0), 90.0), eye.photo(grey))
    assert surface.tilt_deg is None
    assert surface.mm_per_px() == pytest.approx(170 / 2600, rel=0.01)


def test_rule_at_the_rim_is_read_by_what_is_there(camera, rule):
    eye = eye_of(camera, aim_mm=(88.0, 27.0))
    photo = rule().photograph(eye)
    ends = picks(eye, 40, 95)
    read = read_rule(photo, ends, 55.0)
    assert read.count == pytest.approx(55, abs=0.6)


@pytest.mark.parametrize("kind", ["1/2 mm", "1/32 in"])
def test_rule_that_leaves_the_photo_aslant_reads_all_the_same(camera, rule, kind):
    """The border cuts the strokes at its end, the long ones first."""
    eye = eye_of(camera, turn_deg=25.0)
    ruled = rule(kind=kind, stroke_mm=0.1, length_mm=160.0)
    photo = ruled.photograph(eye, blur_px=0.8)
    border = eye.project(np.array([[113.0, 0.0], [113.0, 5.0]]))
    assert ((border >= 0) & (border < [eye.width, eye.height])).all(axis=1).sum() == 1
    said = solve(line(picks(eye, 25.4, 101.6), 76.2), photo)
    assert f"steps of {kind}" in said.reading
    with pytest.raises(ScaleError, match=f"steps of {kind}"):
        solve(line(picks(eye, 25.4, 101.6), 152.4), photo)


@pytest.mark.parametrize(
    ("focal_px", "aim_mm", "lean_deg", "turn_deg"),
    [
        (1360.0, (20.8, 31.3), (-28.8, -33.5), 328.6),
        (1550.0, (49.1, -40.6), (37.7, 22.5), 155.9),
        (1557.0, (27.5, 1.3), (42.0, -11.9), 48.9),
    ],
)
def test_rule_seen_far_aslant_tells_its_plane(
    camera, rule, focal_px, aim_mm, lean_deg, turn_deg
):
    """From a camera taken to be square the fit stopped short: lengths were 13 to 38 % off."""
    eye = camera(
        focal_px=focal_px,
        distance_mm=170.0,
        aim_mm=aim_mm,
        lean_deg=lean_deg,
        turn_deg=turn_deg,
    )
    photo = rule(stroke_mm=0.2).photograph(eye, blur_px=0.8)
    surface = solve(line(picks(eye, 15, 75), 60.0), photo)
    tilt = np.degrees(np.arccos(eye.rotation[2, 2]))
    assert surface.tilt_deg == pytest.approx(tilt, abs=2.0)
    for a, b in [((40, -25), (40, -5)), ((40, 20), (40, 35))]:
        ends = eye.project(np.array([a, b], float))
        assert length(surface, ends) == pytest.approx(b[1] - a[1], rel=0.03)


@pytest.mark.parametrize("seed", [0, 6])
def test_strokes_at_one_end_alone_do_not_outweigh_the_picks(camera, rule, seed):
    """The rest is rubbed off: 26 strokes told the whole line, up to 1.2 mm of 85 too long."""
    lean = tuple(np.random.default_rng(seed).normal(0, 9, 2))
    eye = eye_of(camera, lean_deg=lean, aim_mm=(47.0, 5.0))
    photo = rule().photograph(eye, blur_px=1.2, noise=0.04, seed=seed)
    rgb = photo.rgb.copy()
    rubbed = eye.project(np.array([[-3, -0.3], [74, -0.3], [74, 7], [-3, 7]], float))
    cv2.fillPoly(rgb, [np.round(rubbed).astype(int)], (110, 110, 110))
    ends = picks(eye, 10, 95, seed)
    surface = solve(line(ends, 85.0), eye.photo(rgb))
    assert surface.tilt_deg is not None
    assert length(surface, ends) == pytest.approx(85.0, abs=0.2)
    u = np.hypot.reduce(list(surface.distance_u(*ends).values()))
    assert u < 0.2


def test_the_thickness_of_a_rule_is_covered_on_ground_told_flat(camera, rule):
    """Strokes 1 mm over the surface: lengths read short by similar triangles."""
    eye = eye_of(camera)
    photo = rule().photograph(eye, exif=True)
    surface = solve(line(picks(eye, 5, 80), 75.0), photo)
    ends = eye.project(np.array([[20.0, -20.0], [70.0, -20.0]]), height_mm=-1.0)
    short = 50.0 - length(surface, ends)
    assert short == pytest.approx(50 / 171, abs=0.1)
    assert 2 * float(relief_u_mm(ends[None], surface, 0.0)[0]) > short
    given = replace(line(picks(eye, 5, 80), 75.0), offset_mm=1.0)
    told = solve(given, photo)
    assert length(told, ends) == pytest.approx(50.0, abs=0.1)
    assert float(relief_u_mm(ends[None], told, 0.0)[0]) == 0.0


def test_level_ground_between_strokes_merges_none():
    """Ground of exactly one grey, as JPEG leaves it; counted by SciPy's find_peaks too."""
    profile = np.full(400, 150.0, np.float32)
    profile[:8] = 120.0  # the rule's rim
    for at in range(20, 390, 17):
        profile[at : at + 2] = 80.0
    peaks, _ = find_peaks(-profile, prominence=30.0)
    dips = dips_of(profile)
    assert len(dips.at) == len(peaks)
    np.testing.assert_allclose(dips.at, np.arange(20, 390, 17) + 0.5, atol=0.05)
