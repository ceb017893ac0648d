import hashlib
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image
from shapely import Point, Polygon
from skimage.draw import polygon

from ptmark.errors import RecordError, ReportError
from ptmark.report.annotate import annotated_image, write_image, write_images
from ptmark.report.pages.whole import write_pdf
from ptmark.report.palette import CYAN, DEEP_BLUE, NAVY, PALE, contrast, ink_of
from ptmark.report.plate import draw_plate
from ptmark.report.surface_scale import scale_bar
from ptmark.report.table import write_csv


def test_the_given_photo_is_left_untouched(weld):
    record, rgb = weld
    before = rgb.copy()
    rgb.flags.writeable = False
    made = annotated_image(record, rgb)
    assert np.array_equal(rgb, before)
    assert not np.shares_memory(made, rgb)
    assert made.dtype == np.uint8
    assert made.shape[1] > rgb.shape[1]


@pytest.mark.parametrize("which", ["weld", "crowd"])
def test_no_mark_covers_a_pixel_of_an_indication(which, request):
    """Every pixel inside an outline is the photo's own; inside as scikit-image fills it."""
    record, rgb = request.getfixturevalue(which)
    plate = draw_plate(record, rgb)
    left, top = (round(v) for v in plate.offset)
    shown = plate.rgb[top : top + rgb.shape[0], left : left + rgb.shape[1]]
    mask = np.zeros(rgb.shape[:2], np.uint8)
    for one in record.indications:
        x, y = np.array(one["outline_px"]).T
        mask[polygon(y, x, mask.shape)] = 1
    assert mask.sum() > 1000
    assert np.array_equal(shown[mask > 0], rgb[mask > 0])
    assert not np.array_equal(shown, rgb)  # marks were drawn


def test_marks_are_blue_or_cyan_never_red_pink_or_white(weld):
    """Each changed pixel is a mix of photo and marks; full marks show in pure colour."""
    record, rgb = weld
    blank = np.full_like(rgb, 200)
    plate = draw_plate(record, blank)
    left, top = (round(v) for v in plate.offset)
    shown = plate.rgb[top : top + rgb.shape[0], left : left + rgb.shape[1]].astype(int)
    changed = shown[(shown != 200).any(axis=-1)]
    assert len(changed) > 2000
    assert (changed[:, 0] <= changed[:, 2]).all()  # red never above blue
    assert (changed.min(axis=1) <= 200).all()  # nothing lighter than the ground in all three
    for color in (CYAN, DEEP_BLUE, NAVY, PALE):
        assert (changed == color).all(axis=1).any()


@pytest.mark.truth
def test_contrast_follows_wcag():
    # WCAG 2.2, success criterion 1.4.3 note and widely published pairs: #767676 on white is
    # the lightest grey that passes 4.5 : 1 (4.54); #FF0000 on white is 4.00; black on white 21.
    assert contrast((0x76, 0x76, 0x76), (255, 255, 255)) == pytest.approx(4.54, abs=0.005)
    assert contrast((255, 0, 0), (255, 255, 255)) == pytest.approx(4.0, abs=0.005)
    assert contrast((0, 0, 0), (255, 255, 255)) == 21.0


@pytest.mark.parametrize(
    "verdict", ["rejectable", "undecided", "acceptable", "non-relevant", ""]
)
def test_every_mark_stands_out_from_developer_and_from_dark_metal(verdict):
    """WCAG 2.2, 1.4.3 (AA): 4.5 : 1, by line or halo, whatever lies below; 1.4.11: 3 : 1."""
    ink = ink_of(verdict)
    assert contrast(ink.line, ink.halo) >= 4.5
    for ground in ((255, 255, 255), (0, 0, 0), (235, 215, 215), (45, 45, 48), (128, 128, 128)):
        assert max(contrast(ink.line, ground), contrast(ink.halo, ground)) >= 3.0
    for ground in ((255, 255, 255), (0, 0, 0)):
        assert max(contrast(ink.line, ground), contrast(ink.halo, ground)) >= 4.5


def test_line_styles_tell_shape_and_relevance_apart(make):
    """Share of the ring's line that is inked: solid 1, dashed less, dotted least."""
    record, rgb = _three(make)
    plate = draw_plate(record, rgb)
    shares = []
    for ring in plate.rings:
        at = [ring.exterior.interpolate(d) for d in np.linspace(0, ring.exterior.length, 400)]
        ink = [plate.rgb[round(p.y), round(p.x)] for p in at]
        shares.append(np.mean([(np.abs(c.astype(int) - CYAN) < 30).all() for c in ink]))
    solid, dashed, dotted = shares
    assert solid > 0.95
    assert 0.3 < dashed < 0.8
    assert 0.05 < dotted < dashed - 0.1


def test_a_group_that_decided_is_shown_where_it_lies(make):
    """A line through three pores and a window, mapped back from mm; pores stay uncovered."""
    outlines = [make["ring"](300 + 150 * i, 400, 12, 12) for i in range(3)]
    entries = [make["entry"](i, outline) for i, outline in enumerate(outlines)]
    record = make["record"](1200, 900, entries, area_px=None)
    group = {**record.evaluation["findings"][0], "indications": ["A", "B", "C"]}
    line = {**group, "verdict": "rejectable", "sketch_mm": [[15.0, 20.0], [30.0, 20.0]]}
    window = [[10.0, 15.0], [35.0, 15.0], [35.0, 25.0], [10.0, 25.0]]
    findings = [line, {**line, "sketch_mm": window}]
    evaluation = {**record.evaluation, "findings": findings, "verdict": "rejectable"}
    rgb = np.full((900, 1200, 3), 220, np.uint8)
    plate = draw_plate(replace(record, evaluation=evaluation), rgb)

    def inked(x_px, y_px):
        x, y = (round(o + v) for o, v in zip(plate.offset, (x_px, y_px), strict=True))
        around = plate.rgb[y - 3 : y + 4, x - 3 : x + 4].reshape(-1, 3).astype(int)
        return (np.abs(around - DEEP_BLUE) < 60).all(axis=1).any()

    # 1 mm is 20 px here: the line runs at y = 400 px, the window's upper side at y = 300 px.
    assert np.mean([inked(x, 400) for x in range(340, 420, 2)]) > 0.5
    assert np.mean([inked(x, 300) for x in range(220, 680, 5)]) > 0.5
    assert not any(inked(x, 470) for x in range(220, 680, 20))
    acceptable = {**evaluation, "verdict": "acceptable"}
    plain = draw_plate(replace(record, evaluation=acceptable), rgb)
    assert not np.array_equal(plain.rgb, plate.rgb)


def _three(make):
    outlines = [make["ring"](300, 200, 28, 5), make["ring"](600, 200, 30, 26)]
    outlines.append(make["ring"](900, 200, 30, 26))
    entries = [make["entry"](i, outline) for i, outline in enumerate(outlines)]
    entries[2] |= {"relevance": "false", "reason": "fingerprint"}
    rgb = make["picture"](1200, 900, outlines)
    return make["record"](1200, 900, entries), rgb


@pytest.mark.parametrize(
    ("width", "height"), [(4, 3), (40, 30), (1, 900), (2500, 60), (60, 2500), (6400, 200)]
)
def test_odd_sizes(make, width, height):
    outline = np.array([[0, 0], [width - 1, 0], [width - 1, height - 1]]) * 0.5 + 0.1
    entries = [make["entry"](0, outline)] if min(width, height) > 1 else []
    record = make["record"](width, height, entries)
    made = annotated_image(record, np.full((height, width, 3), 180, np.uint8))
    assert made.shape[1] >= 600
    assert max(made.shape) < 20_000


@pytest.mark.parametrize(
    "outline",
    [
        [[5, 5], [60, 5], [30, 5]],  # no area
        [[7, 7], [7, 7], [7, 7]],  # one point
        [[0, 0], [80, 60], [80, 0], [0, 60]],  # crosses itself
        [[-50, -50], [-10, -50], [-10, -10]],  # outside
        [[-900, -900], [9000, -900], [9000, 9000], [-900, 9000]],  # round everything
        [[90, 70], [300000, 70], [90, 71]],  # far beyond
    ],
)
def test_odd_outlines(make, outline):
    entry = make["entry"](0, make["ring"](40, 30, 5, 5))
    other = {**entry, "id": "B", "outline_px": [[float(x), float(y)] for x, y in outline]}
    rgb = np.full((60, 80, 3), 200, np.uint8)
    record = make["record"](80, 60, [entry, other])
    made = annotated_image(record, rgb)
    assert made.shape[1] >= 1000
    assert np.array_equal(made, annotated_image(record, rgb))


def test_a_small_photo_is_enlarged_pixel_by_pixel(make):
    rng = np.random.default_rng(1)
    rgb = rng.integers(0, 255, (30, 40, 3), dtype=np.uint8)
    plate = draw_plate(make["record"](40, 30, [], area_px=None, scale=_no_scale(make)), rgb)
    assert plate.zoom == 25
    x, y = (round(o - (plate.zoom - 1) / 2) for o in plate.offset)
    shown = plate.rgb[y : y + 750, x : x + 1000]
    assert np.array_equal(shown[12::25, 12::25], rgb)


def _no_scale(make):
    scale = make["record"](40, 30, []).scale
    return {**dict.fromkeys(scale), "cautions": []}


def test_the_photo_of_another_record_is_refused(weld):
    record, rgb = weld
    with pytest.raises(ReportError, match="1200 × 900"):
        annotated_image(record, rgb[:-1])
    with pytest.raises(ReportError, match="uint8"):
        annotated_image(record, rgb.astype(float))


def test_same_record_same_picture(weld):
    record, rgb = weld
    assert np.array_equal(annotated_image(record, rgb), annotated_image(record, rgb))


def test_without_scale_or_verdict(weld):
    record, rgb = weld
    bare = [
        {**one, **dict.fromkeys(("length_mm", "length_u_mm", "path_mm", "width_mm", "shape"))}
        for one in record.indications
    ]
    record = replace(
        record,
        indications=bare,
        evaluation=None,
        scale={**dict.fromkeys(record.scale), "cautions": []},
        fields={},
    )
    assert annotated_image(record, rgb).size > 0


@pytest.mark.parametrize("ending", [".png", ".jpg", ".JPEG"])
def test_write_image_by_ending(tmp_path, weld, ending):
    rgb = weld[1]
    path = tmp_path / f"image{ending}"
    write_image(path, rgb)
    with Image.open(path) as back:  # Pillow as the independent reader
        got = np.asarray(back.convert("RGB"))
    worst = np.abs(got.astype(int) - rgb).mean()
    assert worst == 0 if ending == ".png" else worst < 3
    first = path.read_bytes()
    write_image(path, rgb)
    assert path.read_bytes() == first


def test_other_endings_are_refused(tmp_path, weld):
    for name in ("image.bmp", "image", "image.pdf"):
        with pytest.raises(ReportError, match="kind of picture"):
            write_image(tmp_path / name, weld[1])
    assert list(tmp_path.iterdir()) == []
    (tmp_path / "file").write_text("x")
    with pytest.raises(ReportError, match="cannot be written"):
        write_image(tmp_path / "file" / "image.png", weld[1])


def test_a_picture_too_large_for_its_kind_is_told(tmp_path):
    with pytest.raises(ReportError, match="cannot be encoded"):
        write_image(tmp_path / "wide.jpg", np.zeros((1, 70_000, 3), np.uint8))
    assert list(tmp_path.iterdir()) == []


def test_the_scale_bar_is_true_where_it_stands(make):
    """Under perspective: map both ends of the bar at its place, by hand, to its length."""
    h = np.array([[0.05, 0.002, 1.0], [0.001, 0.06, 2.0], [1e-5, 1.2e-4, 1.0]])
    record = make["record"](1200, 900, [])
    record = replace(record, scale={**record.scale, "homography": h.tolist()})
    bar = scale_bar(record, 250.0)
    assert bar.length_mm in {1.0, 2.0, 5.0, 10.0, 20.0, 50.0}
    assert bar.length_px <= 250.0
    # Locally: a hundredth of the bar about its place spans a hundredth of its length.
    step = bar.length_px / 200
    ends = np.array([[bar.at_px[0] + s * step, bar.at_px[1], 1.0] for s in (-1, 1)]) @ h.T
    mm = ends[:, :2] / ends[:, 2:]
    assert np.hypot(*(mm[1] - mm[0])) == pytest.approx(bar.length_mm / 100, rel=1e-4)
    low, high = bar.spread
    assert low < 1 < high


def test_the_bar_keeps_clear_of_indications(make):
    outline = make["ring"](600, 450, 60, 60)
    record = make["record"](1200, 900, [make["entry"](0, outline)])
    bar = scale_bar(record, 250.0)
    assert Polygon(outline).distance(Point(bar.at_px)) > 20


def test_no_file_is_written_over_a_photo_of_the_record(tmp_path, weld):
    record, photo = weld
    lies = tmp_path / "part-2.png"  # where the second picture of a set would go
    Image.fromarray(photo).save(lies)
    content = lies.read_bytes()
    facts = {"sha256": hashlib.sha256(content).hexdigest(), "bytes": len(content)}
    record = replace(record, photo={**record.photo, **facts})
    for write in (
        lambda: write_images(lies, record, []),
        lambda: write_csv(lies, record),
        lambda: write_pdf(lies, record, photo, None),
    ):
        with pytest.raises(RecordError, match="is the photo itself"):
            write()
    assert lies.read_bytes() == content
    write_csv(tmp_path / "table.csv", record)  # beside it, it is
