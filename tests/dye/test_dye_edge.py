"""Where an indication ends: against scikit-image, closed forms and a numeric blur."""

import importlib.util
import threading
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import gaussian_filter1d
from scipy.optimize import brentq
from shapely import LineString, Point, Polygon
from skimage.measure import find_contours

from ptmark.dye import DyeTracer, refine_outline, suggest
from ptmark.dye.contrast import dye_amount, local_white
from ptmark.dye.level import band_width, edge_share, thin_line_table, width_doubt
from ptmark.dye.sheet import Crop, lay_out
from ptmark.errors import OutlineError

_SPEC = importlib.util.spec_from_file_location(
    "edge_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SHAPE = (300, 400)


def test_half_contrast_edge_agrees_with_scikit_image():
    # scikit-image's marching squares on the green channel in linear light, decoded here anew:
    # green is linear in the mixture, so its half level is the half contrast
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 200, 150, 40), scenes.DYE)], grain=0)
    code = photo.rgb[:, :, 1] / 255
    green = np.where(code <= 0.04045, code / 12.92, ((code + 0.055) / 1.055) ** 2.4)
    half = (green.max() + green[150, 200]) / 2
    reference = Polygon(max(find_contours(green, half), key=len)[:, ::-1])
    ours = Polygon(suggest(photo).found[0].outline_px)
    assert ours.symmetric_difference(reference).area / reference.length < 0.12  # px


@pytest.mark.parametrize(
    ("width", "within"), [(3.0, 1.5), (4.0, 1.0), (6.0, 0.6), (10.0, 0.4), (20.0, 0.4)]
)
def test_bar_keeps_its_width_under_blur(width, within):
    photo = scenes.photo(
        SHAPE, [(scenes.bar(SHAPE, 80, 320, 150.3, width), scenes.DYE)], blur=1.5
    )
    outline = suggest(photo).found[0].outline_px
    middle = outline[np.abs(outline[:, 0] - 200) < 60]
    upper = middle[middle[:, 1] < 150.3][:, 1].mean()
    lower = middle[middle[:, 1] > 150.3][:, 1].mean()
    assert lower - upper == pytest.approx(width, abs=within)
    assert np.ptp(outline[:, 0]) == pytest.approx(240, abs=2.0)


@pytest.mark.parametrize("long", [70, 200, 700])
@pytest.mark.parametrize("width", [3.0, 5.0])
def test_a_thin_line_keeps_its_length_however_long_it_is(width, long):
    # drawn as long as that; with fewer vertices round its tips, 700 px came out 3.5 px short
    bar = scenes.bar((60, 820), 60.3, 60.3 + long, 30.2, width)
    (found,) = suggest(scenes.photo((60, 820), [(bar, scenes.DYE)])).found
    assert np.ptp(found.outline_px[:, 0]) == pytest.approx(long, abs=1.0)


@pytest.mark.parametrize("strength", [1.0, 0.6])
def test_a_line_that_fades_out_reaches_to_where_its_dye_ends(strength):
    # drawn to fade linearly to nothing over its last 25 px at both ends, beside sharp ones
    shape, across = (240, 420), np.arange(420)
    ramp = np.clip(np.minimum(across - 40.3, 180.3 - across) / 25, 0, 1)
    fades = scenes.bar(shape, 40.3, 180.3, 30.2, 3.0) * ramp
    upright = scenes.bar(shape[::-1], 20.0, 200.0, 240.2, 3.0).T
    level = scenes.bar(shape, 280.0, 380.0, 60.2, 3.0)
    round_one = scenes.disc(shape, 330, 150, 20)
    layers = [(one * strength, scenes.DYE) for one in (fades, upright, level, round_one)]
    found = suggest(scenes.photo(shape, layers)).found
    (fading,) = [one for one in found if one.outline_px[:, 0].max() < 200]
    # both ends together, rectangular half-widths (JCGM 100:2008, 4.3.7), k = 2
    u = 4 * fading.edge.end_shift_px / np.sqrt(3)
    assert np.ptp(fading.outline_px[:, 0]) == pytest.approx(140, abs=u)
    assert u < 8


@pytest.mark.parametrize(("thread", "strength"), [(1.6, 1.0), (2.0, 1.0)])
def test_a_thread_thinner_than_its_line_counts(thread, strength):
    # a crack opens in its middle: 100 x 5 px, and 14 px more at both ends a third as wide
    shape = (80, 260)
    line = scenes.bar(shape, 60.3, 160.3, 40.2, 5.0)
    whole = np.maximum(line, scenes.bar(shape, 46.3, 174.3, 40.2, thread))
    (found,) = suggest(scenes.photo(shape, [(whole * strength, scenes.DYE)])).found
    u = 4 * found.edge.end_shift_px / np.sqrt(3)
    assert np.ptp(found.outline_px[:, 0]) == pytest.approx(128, abs=max(u, 2.0))
    assert u < 8


@pytest.mark.parametrize("t", [1.0, 2.0, 3.0, 5.0, 12.0])
def test_thin_line_share_against_a_numeric_blur(t):
    # a box of width t blurred by SciPy's Gaussian of standard deviation 1, 200 samples a unit
    fine = 200
    x = np.arange(-20 * fine, 20 * fine + 1) / fine
    blurred = gaussian_filter1d((np.abs(x) <= t / 2).astype(float), fine)
    wide = gaussian_filter1d(blurred, fine)  # the plateau's own smoothing, 1 px at blur 1 px
    seen = 2 * x[blurred > wide.max() / 2].max()
    table_t, table_seen, *_ = thin_line_table(1.0)
    assert np.interp(t, table_t, table_seen) == pytest.approx(seen, abs=0.02)
    expected = min(0.85, np.interp(t / 2, x, blurred) / wide.max())
    flank, tip = edge_share(seen, 1.0)
    assert float(flank) == pytest.approx(expected, abs=0.02)
    assert float(tip) == pytest.approx(blurred.max() / 2 / wide.max(), abs=0.02)


def test_a_width_is_in_doubt_by_what_the_blur_may_be():
    # boxes blurred by SciPy: which of each blur is seen as wide as one of 7 px in 2.4 px
    fine = 20
    x = np.arange(-40 * fine, 40 * fine + 1) / fine

    def seen(width, blur):
        share = np.clip((width / 2 - np.abs(x)) * fine + 0.5, 0, 1)
        blurred = gaussian_filter1d(share, blur * fine)
        half = gaussian_filter1d(blurred, fine)[len(x) // 2] / 2
        return -2 * np.interp(half, blurred[: len(x) // 2], x[: len(x) // 2])

    wide = seen(7.0, 2.4)
    least = brentq(lambda width: seen(width, 3.0) - wide, 1.0, 7.0)

    def doubt(band, by, shift=0.0, wide=wide):
        given = (np.array([one]) for one in (wide, band, 2.7, by, shift))
        return float(width_doubt(*given)[0])

    assert doubt(0.0, 0.3) == pytest.approx((7.0 - least) / 4, abs=0.03)
    assert doubt(0.0, 0.3, 0.5) == pytest.approx(np.hypot(0.5, (7.0 - least) / 4), abs=0.03)
    assert doubt(0.0, 0.0) == 0.0  # seen wide enough to have a width of its own
    assert doubt(7.0, np.nan) == 0.0
    # drawn wider than it may be: U, 4 / sqrt(3) of the shift, reaches down to that, with the
    # pixel by which the mask may have been counted too wide
    wider = seen(8.5, 2.4)
    down = brentq(lambda width: seen(width, 3.0) - wider + 1.0, 1.0, 8.5)
    u = 4 / np.sqrt(3) * doubt(8.9, 0.3, wide=wider)
    assert u == pytest.approx(8.9 - down, abs=0.15)
    assert doubt(9.1, 0.3, wide=wider) == doubt(0.0, 0.3, wide=wider)  # no hairline is so wide


def test_what_is_seen_no_wider_than_its_known_blur_may_be_a_hair():
    hair = 2.0 * 2.355  # a Gaussian of 2 px at half of its height
    by = np.array([0.0, 0.0, np.nan])
    seen = np.array([hair + 0.3, hair + 3.0, hair + 0.3])
    doubt = width_doubt(seen, np.full(3, 5.0), np.full(3, 2.0), by, np.full(3, 0.4))
    assert 4 / np.sqrt(3) * doubt == pytest.approx([5.0, 0.0, 0.0], abs=0.2)


@pytest.mark.parametrize(("long", "wide"), [(12.0, 3.0), (40.0, 8.0), (20.0, 10.0)])
def test_the_width_of_a_band_comes_from_its_area_and_rim(long, wide):
    half = long / 2 - wide / 2
    band = LineString([(20 - half, 30), (20 + half, 30)]).buffer(wide / 2, 64)
    assert band_width(np.array(band.exterior.coords)) == pytest.approx(wide, abs=0.1)
    bent = LineString([(0, 0), (long, 0), (long, long)]).buffer(wide / 4, 64)
    assert band_width(np.array(bent.exterior.coords)) == pytest.approx(wide / 2, rel=0.1)


def test_what_is_round_has_no_width_of_a_band():
    assert band_width(np.array(Point(9, 9).buffer(4).exterior.coords)) == 0.0


@pytest.mark.parametrize("blur", [1.8, 2.5])
def test_hairlines_alone_in_a_blurred_photo_are_within_their_u_and_may_be_linear(blur):
    # across and upright, for edges that all face one way would tell of a motion
    shape = (200, 200)
    lines = {40.3: (1.5, 14), 80.3: (3.0, 14), 120.3: (1.5, 40), 160.3: (3.0, 40)}
    true, layers = {}, []
    for place, (wide, long) in lines.items():
        bar = scenes.bar(shape, 100 - long / 2, 100 + long / 2, place, wide)
        upright = wide > 2
        true[(place, 100.0) if upright else (100.0, place)] = wide
        layers.append((bar.T if upright else bar, scenes.DYE))
    found = suggest(scenes.photo(shape, layers, blur=blur)).found
    assert len(found) == len(true)
    for one in found:
        at = one.outline_px.mean(axis=0)
        wide = true[min(true, key=lambda place: np.hypot(*(at - place)))]
        drawn, u = band_width(one.outline_px), 4 * one.edge.shift_px / np.sqrt(3)
        assert abs(drawn - wide) < u
        assert np.ptp(one.outline_px, axis=0).max() + u > 3 * (drawn - u)


def test_dye_amount_is_linear_in_the_mixture():
    steps = np.repeat(np.linspace(0, 1, 9), 40)[None, :] * np.ones((120, 1))
    photo = scenes.photo(steps.shape, [(steps, scenes.DYE)], blur=0.01, grain=0)
    around = np.zeros(steps.shape, np.uint8)
    around[:, :40] = 1
    crop = Crop(rgb=photo.rgb, near=1 - around, around=around, seeds=around)
    (sheet,) = lay_out([crop])
    amount = dye_amount(sheet, local_white(sheet))[sheet.places[0]]
    middle = amount[60, 20::40]
    assert np.abs(middle / middle[-1] - np.linspace(0, 1, 9)).max() < 0.03


def test_refine_moves_a_rough_outline_to_the_edge():
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 200, 150, 30), scenes.DYE)])
    angle = np.linspace(0, 2 * np.pi, 24, endpoint=False)
    radius = 30 + 5 * np.sin(3 * angle)
    rough = np.column_stack([200 + radius * np.cos(angle), 150 + radius * np.sin(angle)])
    outline, edge = refine_outline(photo, rough)
    assert edge.source == "snapped"
    assert np.abs(np.hypot(*(outline - (200, 150)).T) - 30).max() < 0.5


def test_refine_leaves_an_outline_on_bare_developer():
    photo = scenes.photo(SHAPE, [])
    rough = np.array([[100, 100], [150, 100], [150, 130]], float)
    outline, edge = refine_outline(photo, rough)
    assert edge.source == "hand"
    assert np.array_equal(outline, rough)


def test_traced_line_keeps_to_the_edge():
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 200, 150, 60), scenes.DYE)])
    path = DyeTracer(photo).path((140.0, 150.0), (200.0, 90.0))
    assert tuple(path[0]) == (140.0, 150.0)
    assert tuple(path[-1]) == (200.0, 90.0)
    off = np.abs(np.hypot(*(path - (200, 150)).T) - 60)
    assert np.percentile(off, 90) < 1.6
    assert off.max() < 4
    assert LineString(path).length < 1.35 * 60 * np.pi / 2


def test_snap_finds_the_edge_and_leaves_flat_developer_alone():
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 200, 150, 60), scenes.DYE)])
    tracer = DyeTracer(photo)
    x, y = tracer.snap((267.0, 151.0))
    assert abs(Point(x, y).distance(Point(200, 150)) - 60) < 1.2
    assert tracer.snap((30.0, 30.0)) == (30.0, 30.0)


def test_a_point_made_ready_in_another_thread_gives_the_same_path():
    photo = scenes.photo(SHAPE, [(scenes.disc(SHAPE, 200, 150, 60), scenes.DYE)])
    start, end = (140.0, 150.0), (200.0, 90.0)
    expected, tracer = DyeTracer(photo).path(start, end), DyeTracer(photo)
    assert not tracer.ready(start)
    beside = threading.Thread(target=tracer.prepare, args=(start,))
    beside.start()
    tracer.path((200.0, 90.0), start)  # what is asked meanwhile takes nothing away
    beside.join()
    assert tracer.ready(start)
    assert np.array_equal(tracer.path(start, end), expected)


def test_path_from_outside_the_photo_is_refused():
    with pytest.raises(OutlineError, match="outside the photo"):
        DyeTracer(scenes.photo(SHAPE, [])).path((900.0, 900.0), (100.0, 100.0))


@pytest.mark.parametrize("width", [1.5, 2.5, 4.0])
@pytest.mark.parametrize("strength", [1.0, 0.35])
def test_outlines_of_hairlines_do_not_cross_themselves(width, strength):
    left = 1 - strength * (1 - scenes.DYE)
    bars = [scenes.bar(SHAPE, 60, 340, 80.2 + 60 * n, width + 0.3 * n) for n in range(3)]
    photo = scenes.photo(SHAPE, [(bar, left) for bar in bars], blur=1.5, grain=0.008)
    found = suggest(photo)
    outlines = [one.outline_px for one in (*found.found, *found.left_out)]
    assert outlines
    assert all(Polygon(outline).is_valid for outline in outlines)
