import hashlib
import io
import re
import subprocess
from dataclasses import replace
from shutil import which

import cv2
import numpy as np
import pdfplumber
import pytest
from PIL import Image

from ptmark.errors import ReportError
from ptmark.record import FIELDS
from ptmark.report.pages.whole import report_pdf, write_pdf
from ptmark.report.table import write_csv


@pytest.fixture(scope="module")
def written(weld, tmp_path_factory):
    """The weld's report with its original photo: (record, photo's path, PDF's path)."""
    record, rgb = weld
    folder = tmp_path_factory.mktemp("pdf")
    photo = folder / "invented.jpg"
    photo.write_bytes(cv2.imencode(".jpg", rgb[..., ::-1])[1].tobytes())
    digest = hashlib.sha256(photo.read_bytes()).hexdigest()
    record = replace(record, photo={**record.photo, "sha256": digest})
    write_pdf(folder / "report.pdf", record, rgb, photo)
    return record, photo, folder / "report.pdf"


def test_the_text_carries_the_records_numbers(written, pages_of):
    record, _, path = written
    words = " ".join(pages_of(path)).replace("\n", " ")
    for one in record.indications:
        assert f"{one['length_mm']:.2f} ± {one['length_u_mm']:.2f}" in words
        assert f"{one['width_mm']:.2f} ± {one['width_u_mm']:.2f}" in words
        assert f"{one['path_mm']:.2f} ± {one['path_u_mm']:.2f}" in words
        assert f"{one['ratio']:.2f} ± {one['ratio_u']:.2f}" in words
        assert f"{one['length_u_mm']:.4f}" in words  # the budget's table
    for text in (
        "INVENTED-17",
        "S-0042",
        "W21",
        "1150 lx",
        "REJECTABLE",
        "reject (beyond the limit)",
        "wiped off, did not come back",
        "The figures are invented.",
        "too pale",
        record.photo["sha256"],
        record.id,
        "invented table 1",
        "flammable",
        "certified inspector",
        "guarded acceptance",
    ):
        assert text in words, text


def test_page_one_says_what_the_verdict_must_not_be_read_without(weld, tmp_path, pages_of):
    record, rgb = weld
    open_ = [{**one, "standing": "suggested"} for one in record.indications[:2]]
    taken = [{**one, "standing": "taken"} for one in record.indications[2:]]
    rough = replace(record, indications=open_ + taken, cautions=["Too far away.", "Too dark."])
    write_pdf(tmp_path / "r.pdf", rough, rgb, None)
    page = words_of_page(pages_of(tmp_path / "r.pdf")[0])
    count = len(record.indications)
    assert f"2 of {count} outlines are suggestions that nobody has looked at." in page
    assert "2 cautions of this record: see Cautions." in page
    write_pdf(tmp_path / "r.pdf", replace(rough, indications=taken, cautions=[]), rgb, None)
    page = words_of_page(pages_of(tmp_path / "r.pdf")[0])
    assert "suggestions" not in page
    assert "see Cautions" not in page


def words_of_page(text):
    return " ".join(text.split())


def test_the_budget_tells_where_a_hands_share_comes_from(make, tmp_path, pages_of):
    """Degrees of freedom in words: of repeat traces, or that there were none."""
    repeated = {"operator_px": 0.42, "operator_free": 6}
    entries = [
        make["entry"](n, make["ring"](300 + 200 * n, 400, 60, 8), source=source)
        for n, source in enumerate(("hand", "hand", "snapped", "suggested"))
    ]
    entries[0]["edge"] |= repeated
    photo = tmp_path / "invented.jpg"
    rgb = make["picture"](1200, 900, [])
    photo.write_bytes(cv2.imencode(".jpg", rgb)[1].tobytes())
    digest = hashlib.sha256(photo.read_bytes()).hexdigest()
    record = make["record"](1200, 900, entries)
    record = replace(record, photo={**record.photo, "sha256": digest})
    write_pdf(tmp_path / "r.pdf", record, rgb, photo)
    words = " ".join(pages_of(tmp_path / "r.pdf")).replace("\n", " ")
    for told in (
        "picking, A: each end by hand strays by 0.42 px, estimated from repeat traces: 6 deg",
        "picking, B: each end by hand strays by 1.5 px, a stated default: not traced again",
        "picking, C: each end by hand strays by 0.5 px, a stated default: not traced again",
        "all other parts count as known",
    ):
        assert told in words
    assert "picking, D" not in words


def test_every_field_has_its_place_and_empty_ones_show_as_such(written, pages_of):
    record = written[0]
    pages = [words_of_page(page) for page in pages_of(written[2])]
    words = " ".join(pages)
    # the foot of a page may stand between
    empty = " ".join(pages[2:])
    filled, empty = empty.split("Not stated", 1)
    for one in FIELDS:
        stated = bool(record.fields.get(one.key, "").strip())
        where = words if stated else empty
        assert one.label in where, one.label
        if stated:
            assert f"{one.label}," not in empty
    assert "Part number" in filled
    missing = words[words.index("Still missing:") :][:200]
    assert "Procedure" in missing
    assert "Part number," not in missing


def test_page_one_names_the_thickness_that_the_rules_went_by(weld, tmp_path, pages_of):
    record, rgb = weld
    write_pdf(tmp_path / "r.pdf", replace(record, thickness_mm=12.5), rgb, None)
    assert "12.50 mm" in pages_of(tmp_path / "r.pdf")[0]
    own = replace(record, thickness_mm=12.5, fields={**record.fields, "thickness": "1/2 in"})
    write_pdf(tmp_path / "r.pdf", own, rgb, None)
    first = pages_of(tmp_path / "r.pdf")[0]
    assert "1/2 in" in first
    assert "12.50 mm" not in first


def test_no_size_stands_without_its_uncertainty_where_nothing_was_measured(
    weld, tmp_path, pages_of
):
    record, rgb = weld
    nothing = {**record.evaluation["findings"][0], "rule": "none-there", "indications": []}
    nothing |= {"value": 0.0, "u": 0.0, "limit": 1.5, "conformity": None}
    count = {**nothing, "rule": "count-there", "limit": 4.0, "unit": "1"}
    evaluation = {**record.evaluation, "findings": [nothing, count]}
    write_pdf(tmp_path / "r.pdf", replace(record, evaluation=evaluation), rgb, None)
    words = words_of_page(" ".join(pages_of(tmp_path / "r.pdf")))
    _, size, counted = re.split("None-there|Count-there", words)  # each row from its rule on
    # JCGM 100, 7.2.1: a result is given with its uncertainty
    assert "invented table 1 — 1.5 mm ✗" in size
    assert "invented table 1 0 4 ✗" in counted  # of none a count is one


def test_pages_are_numbered_n_of_m(written, pages_of):
    pages = pages_of(written[2])
    assert len(pages) >= 3
    for number, text in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in text.replace("\n", " ")


def test_same_record_same_bytes(written, weld, tmp_path):
    record, photo, path = written
    write_pdf(tmp_path / "again.pdf", record, weld[1], photo)
    assert (tmp_path / "again.pdf").read_bytes() == path.read_bytes()


def test_the_photo_is_left_untouched(weld, tmp_path):
    record, rgb = weld
    before = rgb.copy()
    write_pdf(tmp_path / "r.pdf", record, rgb, None)
    assert np.array_equal(rgb, before)


def test_the_original_jpeg_stands_in_the_file_byte_for_byte(written):
    _, photo, path = written
    assert photo.read_bytes() in path.read_bytes()


def test_a_photo_larger_than_pillow_would_open_stands_in_the_report(written, weld, monkeypatch):
    """As one of 200 megapixels would be: Pillow's own bound is set below this photo's size."""
    record, photo, path = written
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", 100_000)
    assert report_pdf(record, weld[1], photo) == path.read_bytes()


def test_fonts_are_embedded(written):
    with pdfplumber.open(written[2]) as pdf:
        fonts = {char["fontname"] for page in pdf.pages for char in page.chars}
    assert fonts
    assert all("DejaVuSans" in font for font in fonts)
    assert written[2].read_bytes().count(b"/FontFile2") >= 2


@pytest.mark.parametrize("orientation", range(1, 9))
def test_a_turned_original_stands_upright_on_the_page(tmp_path, make, orientation):
    """Pillow turns by EXIF (`ImageOps.exif_transpose`), the PDF by a matrix: same picture."""
    from PIL import ImageOps

    corners = np.zeros((60, 90, 3), np.uint8)
    corners[:30, :45], corners[:30, 45:] = (250, 0, 0), (0, 250, 0)
    corners[30:, :45], corners[30:, 45:] = (0, 0, 250), (250, 250, 0)
    exif = Image.Exif()
    exif[0x0112] = orientation
    stored = tmp_path / "turned.jpg"
    Image.fromarray(corners).save(stored, quality=95, subsampling=0, exif=exif)
    with Image.open(stored) as file:
        upright = np.asarray(ImageOps.exif_transpose(file).convert("RGB"))
    height, width = upright.shape[:2]
    record = make["record"](width, height, [])
    digest = hashlib.sha256(stored.read_bytes()).hexdigest()
    photo = {**record.photo, "sha256": digest, "orientation": orientation}
    path = tmp_path / "r.pdf"
    write_pdf(path, replace(record, photo=photo), upright, stored)
    shown = _last_picture(path)
    zoomed = cv2.resize(upright, (shown.shape[1], shown.shape[0]), interpolation=0)
    for y in (0.25, 0.75):
        for x in (0.25, 0.75):
            at = int(y * shown.shape[0]), int(x * shown.shape[1])
            assert np.abs(shown[at].astype(int) - zoomed[at]).max() < 20, (orientation, x, y)


def _last_picture(path):
    """The last page's picture as a viewer draws it."""
    with pdfplumber.open(path) as pdf:
        page = pdf.pages[-1]
        (image,) = page.images
        box = (image["x0"], image["top"], image["x1"], image["bottom"])
        return np.asarray(page.crop(box).to_image(resolution=50).original.convert("RGB"))


def test_place_and_colours_kept_in_the_original_are_told(tmp_path, weld, jpeg, pages_of):
    record, rgb = weld
    record, photo = jpeg(record, rgb)
    camera = {**record.photo["camera"], "has_location": True}
    record = replace(
        record, photo={**record.photo, "camera": camera, "color_profile": "Display P3"}
    )
    write_pdf(tmp_path / "r.pdf", record, rgb, photo)
    last = pages_of(tmp_path / "r.pdf")[-1]
    assert "place where it was taken" in last
    assert "Display P3" in last


def test_what_is_no_jpeg_goes_in_without_loss(tmp_path, weld):
    record, rgb = weld
    file = io.BytesIO()
    Image.fromarray(rgb).save(file, "PNG")
    original = tmp_path / "photo.png"
    original.write_bytes(file.getvalue())
    digest = hashlib.sha256(file.getvalue()).hexdigest()
    record = replace(record, photo={**record.photo, "file": "photo.png", "sha256": digest})
    write_pdf(tmp_path / "r.pdf", record, rgb, original)
    with pdfplumber.open(tmp_path / "r.pdf") as pdf:
        (image,) = pdf.pages[-1].images
        pixels = np.frombuffer(image["stream"].get_data(), np.uint8).reshape(rgb.shape)
    assert np.array_equal(pixels, rgb)


@pytest.mark.skipif(which("qpdf") is None, reason="qpdf is not installed")
def test_qpdf_finds_no_fault(written):
    done = subprocess.run(
        ["qpdf", "--check", str(written[2])], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.slow
def test_long_texts_wrap_and_long_tables_break(tmp_path, make, pages_of):
    outlines = [
        make["ring"](100 + 140 * (i % 8), 100 + 120 * (i // 8), 12, 10) for i in range(40)
    ]
    entries = [make["entry"](i, outline) for i, outline in enumerate(outlines)]
    record, rgb = make["record"](1200, 900, entries), make["picture"](1200, 900, outlines)
    long = "a long remark with <b>markup</b> & signs " * 130
    fields = {**record.fields, "remarks": long, "part_number": "X" * 400, "odd_key": "kept"}
    findings = [{**f, "says": f["says"] * 4} for f in record.evaluation["findings"][:6]]
    findings[0]["says"] = long
    cautions = [*record.cautions, long[:2000]]
    indications = [{**entries[0], "note": long[:3000]}, *entries[1:]]
    record = replace(
        record,
        fields=fields,
        cautions=cautions,
        indications=indications,
        evaluation={**record.evaluation, "findings": findings},
        disposition={"decision": "refer", "reason": long[:500]},
    )
    write_pdf(tmp_path / "long.pdf", record, rgb, None, paper="Letter")
    pages = pages_of(tmp_path / "long.pdf")
    with pdfplumber.open(tmp_path / "long.pdf") as pdf:
        sizes = {(page.width, page.height) for page in pdf.pages}
        chars = [char for page in pdf.pages for char in page.chars]
    words = " ".join(pages).replace("\n", " ")
    assert words.count("<b>markup</b>") > 2 * 130 + 100
    assert "kept" in words
    assert words.count("X" * 20) >= 20
    assert sum("Length ± U" in text for text in pages) >= 2  # the head repeats
    assert sizes == {(612, 792)}
    assert all(char["x0"] > 20 and char["x1"] < 592 for char in chars)
    assert all(char["top"] > 20 and char["bottom"] < 772 for char in chars)


def test_without_scale_criteria_or_indications(tmp_path, make, pages_of):
    record = make["record"](80, 60, [], area_px=None, evaluation=None, fields={}, left_out=[])
    bare = {**dict.fromkeys(record.scale), "cautions": []}
    record = replace(record, scale=bare, disposition={"decision": "", "reason": ""})
    write_pdf(tmp_path / "r.pdf", record, np.full((60, 80, 3), 200, np.uint8), None)
    words = " ".join(pages_of(tmp_path / "r.pdf"))
    assert "NO VERDICT" in words
    assert "no scale is set" in words
    assert "not decided yet" in words


def test_wrong_photo_paper_or_place_is_refused(tmp_path, weld):
    record, rgb = weld
    other = tmp_path / "other.jpg"
    other.write_bytes(b"\xff\xd8\xff\xe0 not it")
    with pytest.raises(ReportError, match="SHA-256 differs"):
        write_pdf(tmp_path / "r.pdf", record, rgb, other)
    with pytest.raises(ReportError, match="cannot be read"):
        write_pdf(tmp_path / "r.pdf", record, rgb, tmp_path / "gone.jpg")
    with pytest.raises(ReportError, match="paper size"):
        write_pdf(tmp_path / "r.pdf", record, rgb, None, paper="A0")
    with pytest.raises(ReportError, match="cannot be written"):
        write_pdf(other / "r.pdf", record, rgb, None)
    assert [p.name for p in tmp_path.iterdir()] == ["other.jpg"]


def test_csv_holds_the_records_own_numbers(tmp_path, weld):
    import csv

    record, _ = weld
    noted = [{**one, "note": '=1+1, "x"\nline'} for one in record.indications]
    write_csv(tmp_path / "t.csv", replace(record, indications=noted))
    with (tmp_path / "t.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [row["id"] for row in rows] == [one["id"] for one in record.indications]
    for row, one in zip(rows, record.indications, strict=True):
        for name in ("length_mm", "length_u_mm", "path_mm", "width_mm", "area_mm2", "ratio"):
            assert float(row[name]) == one[name]
        assert row["note"] == '\'=1+1, "x"\nline'  # no spreadsheet runs it as a formula
    assert rows[0]["verdict"] == "rejectable"
    assert rows[6]["verdict"] == "non-relevant"
