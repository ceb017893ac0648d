"""Blobs that lie on one sheet are measured as each alone; rings are smoothed as by SciPy."""

import importlib
import importlib.util
import tracemalloc
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.ndimage import uniform_filter1d
from shapely import Polygon
from skimage.draw import polygon2mask

from ptmark.dye.contour import contours
from ptmark.dye.fine import look_closely
from ptmark.dye.mask import part_within
from ptmark.dye.quick import pixels_at
from ptmark.dye.rings import Rings, without_crossings
from ptmark.dye.sheet import Crop, lay_out

suggest_room, sheet_room, coarse_room, closeup_room = (
    importlib.import_module(f"ptmark.dye.{name}")
    for name in ("suggest", "sheet", "coarse", "closeup")
)  # the package gives the names of its functions
_SPEC = importlib.util.spec_from_file_location(
    "sheet_scenes", Path(__file__).with_name("scenes.py")
)
scenes = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(scenes)

SIZES = [(90, 100), (80, 120), (120, 80), (100, 100), (400, 90)]


def crop(number):
    """A disc of its own size and amount of dye in a box of its own."""
    height, width = shape = SIZES[number]
    disc = scenes.disc(shape, width / 2 + 0.3, height / 2, 12 + 2 * number)
    photo = scenes.photo(shape, [(disc, scenes.DYE)], seed=number)
    y, x = np.mgrid[:height, :width]
    away = np.hypot(x - width / 2, y - height / 2)
    near, around, seeds = (
        mask.astype(np.uint8)
        for mask in (away < 24 + 2 * number, away > 26 + 2 * number, away < 5)
    )
    return Crop(rgb=photo.rgb, near=near, around=around, seeds=seeds, origin=(1000 * number, 7))


def outlines(crops):
    found = [one for sheet in lay_out(crops) for one in contours(look_closely(sheet), 1.0, 4.0)]
    return sorted(found, key=lambda one: one.outline_px[0, 0])


def test_a_sheet_of_blobs_gives_what_each_alone_gives():
    crops = [crop(number) for number in range(len(SIZES))]
    together, alone = outlines(crops), [outlines([one])[0] for one in crops]
    assert len(together) == len(SIZES)
    for one, other in zip(together, alone, strict=True):
        assert one.outline_px == pytest.approx(other.outline_px, abs=1e-4)  # px
        assert one.contrast == pytest.approx(other.contrast, abs=1e-5)
        assert one.taken_light == pytest.approx(other.taken_light, abs=1e-5)
        assert one.noise_px == pytest.approx(other.noise_px, rel=1e-5)


def test_a_blob_that_fills_its_crop_knows_nothing_of_its_neighbour():
    """Dye up to the crops' borders, as where the photo ends: side by side and alone."""
    disc = crop(0)
    ends = [replace(disc, near=np.ones_like(disc.near), origin=(200 * i, 0)) for i in range(3)]
    dark = replace(ends[1], rgb=(disc.rgb * [1.0, 0.9, 0.9]).astype(np.uint8))
    alone = outlines([ends[0]])[0]
    assert outlines([ends[0], dark, ends[2]])[0].outline_px == pytest.approx(
        alone.outline_px, abs=1e-4
    )


def test_discs_on_a_sheet_have_their_own_size_and_place():
    # a circle's area by its formula; the lens blurs both flanks alike
    for number, one in enumerate(outlines([crop(n) for n in range(len(SIZES))])):
        height, width = SIZES[number]
        radius = np.sqrt(Polygon(one.outline_px).area / np.pi)
        assert radius == pytest.approx(12 + 2 * number, abs=0.35)
        centre = Polygon(one.outline_px).centroid
        assert centre.x == pytest.approx(1000 * number + width / 2 + 0.3, abs=0.2)
        assert centre.y == pytest.approx(7 + height / 2, abs=0.2)


def test_a_photo_moved_by_whole_coarse_pixels_shows_the_same_outlines():
    """The same discs 16 px farther on have the same outlines 16 px farther on."""
    side, by = 400, 16
    picture = scenes.photo(
        (side, side), [(scenes.disc((side, side), x, 150, 9), scenes.DYE) for x in (120, 240)]
    )
    moved = np.roll(picture.rgb, (by, by), axis=(0, 1))
    found = [
        suggest_room.suggest(one).found
        for one in (picture, scenes.Photo(picture.info, np.ascontiguousarray(moved)))
    ]
    assert len(found[0]) == len(found[1]) == 2
    for one, other in zip(*found, strict=True):
        assert one.outline_px + by == pytest.approx(other.outline_px, abs=1e-3)
        assert one.edge.noise_px == pytest.approx(other.edge.noise_px, rel=1e-3)


def test_every_crop_lies_alone_on_its_sheet():
    crops = [crop(number) for number in range(len(SIZES))] * 3
    sheets = lay_out(crops)
    assert sum(len(sheet.crops) for sheet in sheets) == len(crops)
    for sheet in sheets:
        for i, (one, place, room) in enumerate(
            zip(sheet.crops, sheet.places, sheet.rooms, strict=True)
        ):
            assert np.array_equal(sheet.rgb[place], one.rgb)
            assert np.array_equal(sheet.near[place], one.near)
            assert (sheet.number[room] == i).all()


def many_discs():
    """60 discs on a photo."""
    side = 250
    one = scenes.photo((side, side), [(scenes.disc((side, side), 125, 125, 11), scenes.DYE)])
    info = replace(one.info, width=10 * side, height=6 * side)
    return scenes.Photo(info, np.ascontiguousarray(np.tile(one.rgb, (6, 10, 1))))


def test_close_looks_that_are_let_go_and_taken_again_give_the_same(monkeypatch):
    photo, found = many_discs(), []
    for held in (10**9, 0):
        monkeypatch.setattr(suggest_room, "_HELD_PIXELS", held)
        found.append(suggest_room.suggest(photo).found)
    assert len(found[0]) == len(found[1]) == 60
    for one, other in zip(*found, strict=True):
        assert np.array_equal(one.outline_px, other.outline_px)
        assert (one.edge, one.confidence) == (other.edge, other.confidence)


def test_looking_takes_no_more_memory_for_more_blobs(monkeypatch):
    crops, peaks = crops_of(many_discs()), []
    monkeypatch.setattr(sheet_room, "_MOST_PIXELS", 5_000)
    pixels = sum(one.rgb[..., 0].size for one in crops)
    for count, held in ((len(crops) // 3, 0), (len(crops), 0), (len(crops), 10**9)):
        tracemalloc.start()
        suggest_room.CloseLooks(crops[:count], held)
        peaks.append(tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    some, all_of_them, all_held = peaks
    assert all_of_them < 1.2 * some
    assert all_held > all_of_them + 15 * pixels  # a look holds some 30 bytes a px


def crops_of(photo):
    look = coarse_room.look_coarsely(photo, None)
    return [closeup_room.close_up(photo, look, blob) for blob in look.blobs]


def test_rings_are_smoothed_round_their_ends_as_by_scipy():
    values = np.random.default_rng(3).normal(size=50)
    rings = Rings([20, 30])
    expected = [uniform_filter1d(one, 7, mode="wrap") for one in (values[:20], values[20:])]
    assert rings.smooth(values, 3) == pytest.approx(np.concatenate(expected))
    assert rings.mean(values) == pytest.approx([values[:20].mean(), values[20:].mean()])
    index, half = rings.every_second()
    assert index.tolist() == [*range(0, 20, 2), *range(20, 50, 2)]
    assert half.counts.tolist() == [10, 15]


def test_a_short_ring_keeps_its_values():
    values = np.arange(7.0)
    assert Rings([7]).smooth(values, 3).tolist() == values.tolist()


def test_an_outline_that_crosses_itself_keeps_its_parts_but_for_scraps():
    # a bow tie of two triangles that meet in (2, 0), the smaller one, which reaches to x = 3,
    # goes round the other way: its flanks crossed there, and are a hair thick
    tie = np.array([[0.0, -2.0], [3.0, 1.0], [3.0, -1.0], [0.0, 2.0]])
    square = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    flat = np.array([[0.0, 0.0], [1.0, 0.0], [2.0, 0.0], [1.0, 0.0]])
    # two squares of 10 and 20, the flanks of the way between them crossed in its middle
    neck = [[10, 0], [10, 4], [15, 6], [20, 4], [20, -5], [40, -5], [40, 15], [20, 15], [20, 6]]
    neck += [[15, 4], [10, 6], [10, 10], [0, 10], [0, 0]]
    outlines = [tie, square, flat, square[:3], np.array(neck, float)]
    numbers, kept, shares = zip(*without_crossings(outlines), strict=True)
    assert numbers == (0, 1, 3, 4, 4)  # nothing of the flat one
    assert Polygon(kept[0]).bounds == pytest.approx((0, -2, 3, 2), abs=0.3)
    assert kept[1].tolist() == square.tolist()
    assert len(kept[2]) == 3
    # flanks 2 apart at both ends of 5 and none at 2.5: each side has a triangle of 2.5
    assert [Polygon(one).area for one in kept[3:]] == pytest.approx([402.5, 102.5])
    assert shares == pytest.approx((1, 1, 1, 402.5 / 505, 102.5 / 505))


def test_a_tip_as_thin_as_a_hair_stays_with_its_line():
    # 40 x 4, and 20 more on which the flanks have changed sides, as noise leaves them, twice
    line = [[0, 0], [40, 0], [45, 2.2], [50, 1.8], [60, 2], [50, 2.2], [45, 1.8], [40, 4]]
    way = np.array([*line, [0, 4]], float)
    assert not Polygon(way).is_valid
    [(_, kept, share)] = without_crossings([way])
    seen = Polygon(kept)
    assert seen.is_valid
    assert share == 1.0
    assert seen.bounds == pytest.approx((0, 0, 60, 4), abs=0.3)
    assert 160 <= seen.area < 160 + 20 * 1.5  # of the tip hardly more than its length


def test_a_line_that_hangs_on_something_large_is_no_scrap():
    # a line of 60 x 2 and a square of 100, the flanks of the way between them crossed
    way = [[-50, 4], [10, 4], [15, 6], [20, 4], [20, -45], [120, -45], [120, 55], [20, 55]]
    way += [[20, 6], [15, 4], [10, 6], [-50, 6]]
    kept = without_crossings([np.array(way, float)])
    assert [Polygon(one).area for _, one, _ in kept] == pytest.approx([10002.5, 122.5])


def test_each_of_several_parts_has_the_contrast_of_its_own_pixels():
    # else a stain that touches a line's tip would be as sure as the line
    close = look_closely(lay_out([crop(0)])[0])
    corner = np.array([place.start for place in close.sheet.places[0]][::-1])
    x0, y0 = corner + np.array(SIZES[0][::-1]) / 2
    core = [[x0 - 6, y0 - 6], [x0 + 6, y0 - 6], [x0 + 6, y0 + 6], [x0 - 6, y0 + 6]]
    rim = [[x0 + 9, y0 - 5], [x0 + 21, y0 - 5], [x0 + 21, y0 + 5], [x0 + 9, y0 + 5]]
    for outline in (core, rim):
        part = part_within(close, 0, np.array(outline))
        rows, columns = polygon2mask(
            close.amount.shape, np.round(outline)[:, ::-1]
        ).nonzero()  # scikit-image as the reference for what lies within
        inside = close.amount[rows, columns]
        assert part.contrast == pytest.approx(np.percentile(inside, 90), abs=0.05)
        assert part.pixels == pytest.approx(len(inside), rel=0.2)
    beyond = np.array(core) - [x0, y0]  # across the sheet's corner
    assert part_within(close, 0, beyond).pixels > 0


@pytest.mark.parametrize(("kind", "channels"), [(np.uint8, 3), (np.float32, 4)])
def test_pixels_taken_whole_are_those_that_numpy_indexes(kind, channels):
    rng = np.random.default_rng(1)
    values = rng.uniform(0, 255, (40, 50, channels)).astype(kind)[3:30, 5:45]  # of a larger one
    rows, columns = rng.integers(0, 27, 60), rng.integers(0, 40, 60)
    assert np.array_equal(pixels_at(values, rows, columns), values[rows, columns])
    assert pixels_at(values, rows[:0], columns[:0]).shape == (0, channels)
