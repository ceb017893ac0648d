"""The printable card: places in mm read back from the PDF, text, the same bytes twice."""

import cv2
import numpy as np
import pdfplumber
import pytest

from ptmark.errors import ScaleError
from ptmark.scale import write_card_pdf

MM = 72 / 25.4  # points in a millimetre: ISO 32000-1, 8.3.2.3 (1/72 inch)
PAGES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1


@pytest.fixture(params=PAGES)
def printed(request, tmp_path):
    path = tmp_path / "card.pdf"
    write_card_pdf(path, request.param)
    with pdfplumber.open(path) as pdf:
        yield request.param, pdf.pages[0], len(pdf.pages)


def boxes(page, wide, high):
    """Filled rectangles of one size, as (left, top) in mm, sorted from the top left."""
    return sorted(
        (round(r["x0"] / MM, 3), round(r["top"] / MM, 3))
        for r in page.rects
        if r["fill"]
        and r["width"] / MM == pytest.approx(wide, abs=0.002)
        and r["height"] / MM == pytest.approx(high, abs=0.002)
    )


def outlines(page):
    return sorted(
        (r["x0"] / MM, r["top"] / MM)
        for r in page.rects
        if not r["fill"] and r["width"] / MM == pytest.approx(85.60, abs=0.002)
    )


@pytest.mark.truth
def test_page_and_squares_lie_where_the_design_says(printed):
    paper, page, pages = printed
    assert pages == 1
    assert (page.width / MM, page.height / MM) == pytest.approx(PAGES[paper], abs=0.2)
    cards = outlines(page)
    assert len(cards) >= 4
    squares = np.array(boxes(page, 12.0, 12.0))
    # ISO/IEC 7810 ID-1 (85.60 x 53.98 mm); squares 12.00 mm, 4.00 mm in from the edges.
    inset = [(4.0, 4.0), (69.60, 4.0), (69.60, 37.98), (4.0, 37.98)]
    wanted = np.array(sorted((x + dx, y + dy) for x, y in cards for dx, dy in inset))
    order = np.lexsort(squares.T[::-1].round(1)), np.lexsort(wanted.T[::-1].round(1))
    np.testing.assert_allclose(squares[order[0]], wanted[order[1]], atol=0.005)
    assert (squares >= 4.0).all()
    assert (squares + 12 <= np.array(PAGES[paper]) - 4.0).all()


def test_check_length_is_80_mm_left_edge_to_left_edge(printed):
    _, page, _ = printed
    long_marks = boxes(page, 0.2, 6.0)
    rows = {}
    for x, y in long_marks:
        rows.setdefault(y, []).append(x)
    for xs in rows.values():
        gaps = np.diff(sorted(xs))
        assert gaps[::2] == pytest.approx(80.0, abs=0.002)
    one_card = 8  # marks at 10, 20 … 70 are 4 mm; at 5, 15 … 75 3 mm
    cards = len(outlines(page))
    assert len(long_marks) == 2 * cards
    assert len(boxes(page, 0.2, 4.0)) == 7 * cards
    assert len(boxes(page, 0.2, 3.0)) == one_card * cards
    assert len(boxes(page, 0.2, 2.0)) == 64 * cards


def test_white_about_the_squares_is_kept_free(printed):
    """Nothing but a marker within one module (2 mm) of its square."""
    _, page, _ = printed
    squares = boxes(page, 12.0, 12.0)
    things = [(c["x0"], c["top"], c["x1"], c["bottom"]) for c in page.chars]
    things += [
        (r["x0"], r["top"], r["x1"], r["bottom"])
        for r in page.rects
        if r["width"] / MM < 11.9 or r["height"] / MM < 11.9
    ]
    things = np.array(things) / MM
    for x, y in squares:
        apart = np.maximum(
            np.maximum(x - things[:, 2], things[:, 0] - x - 12),
            np.maximum(y - things[:, 3], things[:, 1] - y - 12),
        )
        outside = apart > -0.5
        assert apart[outside].min() > 2.0


def test_text_tells_how_to_print_check_and_lay_it(printed):
    _, page, _ = printed
    text = page.extract_text()
    for said in ("100 %", "80.00 mm", "callipers", "plane of the indication", "ISO/IEC 7810"):
        assert said in text


def test_same_bytes_every_time(tmp_path):
    one, two = tmp_path / "one.pdf", tmp_path / "two.pdf"
    write_card_pdf(one)
    write_card_pdf(two, "A4")
    assert one.read_bytes() == two.read_bytes()
    assert b"/CreationDate" not in one.read_bytes() or b"20000101" in one.read_bytes()


@pytest.mark.truth
def test_rendered_card_is_read_by_opencv(printed):
    """The page as pixels, through a renderer and OpenCV's own detector."""
    _, page, _ = printed
    grey = np.asarray(page.to_image(resolution=150).original.convert("L"))
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    _, ids, _ = cv2.aruco.ArucoDetector(dictionary).detectMarkers(grey)
    cards = len(outlines(page))
    assert sorted(ids.ravel().tolist()) == sorted([0, 1, 2, 3] * cards)


def test_another_set_continues_the_ids(tmp_path):
    path = tmp_path / "card.pdf"
    write_card_pdf(path, number=2)
    with pdfplumber.open(path) as pdf:
        page = pdf.pages[0]
        assert page.extract_text().count("Set 2.") == len(outlines(page))
        grey = np.asarray(page.to_image(resolution=150).original.convert("L"))
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    _, ids, _ = cv2.aruco.ArucoDetector(dictionary).detectMarkers(grey)
    assert set(ids.ravel().tolist()) == {4, 5, 6, 7}
    for number in (0, 13):  # 12 sets of four in a dictionary of 50
        with pytest.raises(ScaleError, match="choose 1 to 12"):
            write_card_pdf(path, number=number)


def test_unknown_paper_and_unwritable_file_are_refused(tmp_path):
    with pytest.raises(ScaleError, match=r"no paper 'A5'.*A4 or Letter"):
        write_card_pdf(tmp_path / "card.pdf", "A5")
    with pytest.raises(ScaleError, match="cannot write the card"):
        write_card_pdf(tmp_path / "nowhere" / "card.pdf")
