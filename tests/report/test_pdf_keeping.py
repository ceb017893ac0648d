"""The report's head, code, budget, revisions, reviews and the story of a retest."""

import json
from dataclasses import replace

import cv2
import numpy as np
import pdfplumber
import pytest
from PIL import Image

from ptmark.errors import ReportError
from ptmark.record import (
    Signer,
    fingerprint,
    follow,
    key_of,
    link_to,
    revision_hash,
    sign_record,
)
from ptmark.report.closeup import overlays
from ptmark.report.company import company
from ptmark.report.pages.story import Earlier, story
from ptmark.report.pages.whole import write_pdf
from ptmark.report.palette import ink_of
from ptmark.review import Remark, compare_records, reviewed


@pytest.fixture(autouse=True)
def _own_settings(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "settings"))


@pytest.fixture
def words_of(pages_of):
    return lambda path: " ".join(pages_of(path)).replace("\n", " ")


@pytest.fixture
def signed(weld, tmp_path):
    record, _ = weld
    who = Signer(role="examiner", name="first", qualification="invented 2")
    return sign_record(record, who, key_of("first", tmp_path / "keys"))


def test_the_code_on_page_one_names_the_record(signed, weld, tmp_path):
    """Read back by OpenCV's own decoders from the drawn page; each misses some sizes."""
    write_pdf(tmp_path / "r.pdf", signed, weld[1], None)
    said = ""
    with pdfplumber.open(tmp_path / "r.pdf") as pdf:
        for resolution in (300, 400, 350, 250, 500):
            if said:
                break
            drawn = pdf.pages[0].to_image(resolution=resolution).original.convert("L")
            page = np.asarray(drawn)
            corner = np.ascontiguousarray(page[: page.shape[0] // 6, -page.shape[1] // 4 :])
            for decoder in (cv2.QRCodeDetector(), cv2.QRCodeDetectorAruco()):
                said = said or decoder.detectAndDecode(corner)[0]
    assert said == f"ptmark {signed.id} r1 sha256 {revision_hash(signed.to_json())}"


def test_hash_and_signature_stand_in_the_text(signed, weld, tmp_path, pages_of, words_of):
    write_pdf(tmp_path / "r.pdf", signed, weld[1], None)
    pages = pages_of(tmp_path / "r.pdf")
    for page in pages:
        assert f"Record SHA-256 {revision_hash(signed.to_json())}" in page
        assert f"Photo SHA-256 {signed.photo['sha256']}" in page
    said = " ".join(pages)
    assert "signed by examiner first" in said
    assert fingerprint(signed.signatures[0]["key"]) in said
    write_pdf(tmp_path / "u.pdf", weld[0], weld[1], None)
    assert "revision 1, not signed" in words_of(tmp_path / "u.pdf")


def test_nothing_of_the_foot_runs_into_the_page_number(signed, weld, tmp_path):
    write_pdf(tmp_path / "r.pdf", signed, weld[1], None, paper="Letter")
    with pdfplumber.open(tmp_path / "r.pdf") as pdf:
        words = [
            w for w in pdf.pages[0].extract_words() if w["bottom"] > pdf.pages[0].height - 70
        ]
    number = next(w["x0"] for w in words if w["text"] == "page")
    assert max(w["x1"] for w in words if len(w["text"]) > 30) < number


def test_the_firms_name_and_logo_come_from_the_settings(weld, tmp_path, pages_of):
    record, rgb = weld
    folder = tmp_path / "settings"
    folder.mkdir()
    Image.new("RGB", (300, 100), (20, 66, 190)).save(folder / "logo.png")
    told = {"name": "Invented Shop <&>", "lines": ["1 Example Road"], "logo": "logo.png"}
    (folder / "company.json").write_text(json.dumps(told))
    write_pdf(tmp_path / "b.pdf", record, rgb, None)
    write_pdf(tmp_path / "c.pdf", record, rgb, None)
    assert (tmp_path / "b.pdf").read_bytes() == (tmp_path / "c.pdf").read_bytes()
    first = pages_of(tmp_path / "b.pdf")[0]
    assert "Invented Shop <&>" in first
    assert "1 Example Road" in first
    with pdfplumber.open(tmp_path / "b.pdf") as pdf:
        page = pdf.pages[0]
        assert any(abs(i["width"] / i["height"] - 3) < 0.02 for i in page.images)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("no json", "cannot be used"),
        ("[]", "cannot be used"),
        ('{"lines": []}', "cannot be used"),
        ('{"name": 5}', "must be texts"),
        ('{"name": "x", "lines": "y"}', "must be a list"),
        ('{"name": "x", "logo": "none.png"}', "logo cannot be read"),
        ('{"name": "x", "logo": "company.json"}', "no logo"),
    ],
)
def test_settings_that_cannot_be_used_are_told(tmp_path, text, says):
    assert company(tmp_path) is None
    (tmp_path / "company.json").write_text(text)
    with pytest.raises(ReportError, match=says):
        company(tmp_path)


def test_the_budget_chart_says_what_would_help(weld, tmp_path, words_of):
    record, rgb = weld
    rows = [{**one, "budget": {"edge": 0.05, "tilt": 0.01}} for one in record.indications]
    rows[0] = {**rows[0], "budget": {"edge": 0.01, "tilt": 0.2}}
    write_pdf(tmp_path / "r.pdf", replace(record, indications=rows), rgb, None)
    said = words_of(tmp_path / "r.pdf")
    assert f"{rows[0]['id']}: lay the card beside the indications" in said
    assert "sharpen the edge" in said


def test_revisions_and_reviews_stand_in_the_report(signed, weld, tmp_path, words_of):
    other = [{**one, "length_mm": one["length_mm"] + 0.5} for one in signed.indications[1:]]
    found = compare_records(signed, replace(signed, id="r-2", indications=other))
    remark = Remark(text="blurred <here>", at_px=(12.0, 34.0))
    made = reviewed(signed, found, reviewer="second", outcome="returned", remarks=(remark,))
    made = follow(signed, made, by="second", why="double check")
    write_pdf(tmp_path / "r.pdf", made, weld[1], None)
    said = words_of(tmp_path / "r.pdf")
    assert "Review by second" in said
    assert "returned" in said
    assert "blurred <here> (at 12, 34 px)" in said
    assert "double check the reviewer's entries" in said
    assert "not found" in said
    pair = made.reviews[0]["pairs"][0]["length_mm"]
    for name in ("first", "second"):
        assert f"{pair[name]:.2f} ± {pair[f'{name}_u']:.2f}" in said
    # ISO/IEC 17043:2010, B.3.1.3: En is the difference over the two in quadrature
    assert f"+0.50 ± {0.5 / pair['en']:.2f} {pair['en']:.2f}" in said
    assert "Examiner, of revision 1 first, invented 2" in said


def test_overlays_draw_both_outlines_where_they_lie(signed, weld):
    """Each outline's own colour is found along it; the pair that agrees least comes first."""
    moved = [
        {**one, "outline_px": [[x + 6 * n, y] for x, y in one["outline_px"]]}
        for n, one in enumerate(signed.indications)
    ]
    found = compare_records(signed, replace(signed, indications=moved))
    entry = reviewed(signed, found, reviewer="second", outcome="signed").reviews[0]
    shown = overlays(signed, entry, weld[1], 3)
    assert len(shown) == 3
    shares = [int(one.caption.split("overlap ")[1].split(" %")[0]) for one in shown]
    assert shares == sorted(shares)
    for one in shown:
        for ink in (ink_of("rejectable"), ink_of("")):
            near = np.abs(one.rgb.astype(int) - ink.line).max(axis=2) < 30
            assert near.sum() > 100
    other = {**entry, "photo": "0" * 64}
    assert overlays(signed, other, weld[1], 3) == []


def test_a_retest_of_another_part_or_day_is_told(signed, weld):
    """Traceability by part number, serial number and date: ISO 3452-1, clause 9 (memory)."""
    record, rgb = weld
    known = {"part_number": "P-9", "serial_number": "S-4", "examination_date": "2026-03-02"}
    first = replace(signed, fields=known)
    link = {"id": "r-2", "retest_of": link_to(first, "r.json")}

    def looks(**fields):
        last = replace(record, fields={**known, **fields}, **link)
        made = story(last, rgb, [Earlier(record=first, rgb=None)], (500.0, 700.0))[-1]
        (_, right), *_ = made._cellvalues
        return [one.text for one in right if "Look again" in getattr(one, "text", "")]

    assert looks() == []
    assert looks(serial_number="s-4 ", weld_number="W2", examination_date="3 March") == []
    other = looks(part_number="Q-1", serial_number="S-5", examination_date="2026-03-01")
    assert [[word in said for word in ("Q-1", "S-5", "2026-03-01")] for said in other] == [
        [True, False, False],
        [False, True, False],
        [False, False, True],
    ]


def test_a_review_of_ones_own_work_is_told(signed, weld, tmp_path, words_of):
    # A second person's eyes: common practice, no source.
    found = compare_records(signed, replace(signed, id="r-9"))
    for number, name in enumerate(("second", " First ")):
        made = reviewed(signed, found, reviewer=name, outcome="signed")
        made = follow(signed, made, by=name, why="review")
        write_pdf(tmp_path / f"{number}.pdf", made, weld[1], None)
    assert "no review by a second person" not in words_of(tmp_path / "0.pdf")
    assert "no review by a second person" in words_of(tmp_path / "1.pdf")


def test_a_retest_tells_the_story_side_by_side(signed, weld, tmp_path, pages_of, words_of):
    record, rgb = weld
    known = {"part_number": "P-9", "serial_number": "S-4", "examination_date": "2026-03-02"}
    ground = {**signed.fields, **known, "rework": "ground 0.5 mm and blended"}
    first = replace(signed, fields=ground)
    last = replace(
        record, id="r-2", indications=record.indications[:1], retest_of=link_to(first, "r.json")
    )
    write_pdf(
        tmp_path / "r.pdf",
        last,
        rgb,
        None,
        earlier=[Earlier(record=first, rgb=rgb, became=("Gone: B, C.",))],
    )
    pages = pages_of(tmp_path / "r.pdf")
    (number,) = [n for n, page in enumerate(pages) if "The story of this area" in page]
    with pdfplumber.open(tmp_path / "r.pdf") as pdf:
        left, right = sorted(pdf.pages[number].images, key=lambda one: one["x0"])
    said = pages[number].replace("\n", " ")
    assert left["x1"] <= right["x0"]
    assert left["width"] > 200
    for part in (first.id, revision_hash(first.to_json())[:20], "First test", "Retest 1"):
        assert part in said
    assert "This is a retest of P-9, serial S-4, tested on 2026-03-02." in said
    assert "ground 0.5 mm and blended" in said
    assert f"{len(record.indications)} indications" in said
    assert "1 indication," in said
    assert "Rejectable: A" in said
    assert "Non-relevant: G" in said
    assert "Since the test before:" in said
    assert "• Gone: B, C." in said
    write_pdf(tmp_path / "alone.pdf", last, rgb, None)
    assert "r.json) was not at hand" in words_of(tmp_path / "alone.pdf")
    with_gap = story(last, rgb, [Earlier(record=first, rgb=None)], (500.0, 700.0))[-1]
    (left, _), *_ = with_gap._cellvalues
    assert left[0].text == "photo not at hand"
