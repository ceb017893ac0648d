"""Two references, and one that lies higher, from the command line to record and report."""

import json

import pytest

from ptmark.__main__ import main
from ptmark.photo import open_photo
from ptmark.record.check import check_document
from ptmark.scale import CardReference, solve

PX_PER_MM = 12.0


def box(width, height, says):
    """A rectangle drawn nowhere, its top left corner 10 and 5 mm from the photo's."""
    left, top = 10 * PX_PER_MM - 0.5, 5 * PX_PER_MM - 0.5
    right, low = left + width * PX_PER_MM, top + height * PX_PER_MM
    return f"{left},{top},{right},{top},{right},{low},{left},{low}={says}"


def line_of(document):
    """The longest indication: 20 x 1.2 mm."""
    return max(document["indications"], key=lambda one: one["length_mm"])


def measured(photo, tmp_path, *words):
    made = tmp_path / "r.json"
    assert main(["measure", str(photo), *words, "--relief", "0", "--json", str(made)]) == 0
    document = json.loads(made.read_text())
    check_document(document, where="record")
    return document


@pytest.mark.slow
def test_card_and_rectangle_are_both_used(photo_file, tmp_path, pages_of):
    pdf = tmp_path / "r.pdf"
    words = ["--card", "--rectangle", box(100, 50, "100x50mm"), "--pdf", str(pdf)]
    document = measured(photo_file, tmp_path, *words)
    (second,) = document["scale"]["references"]
    assert (document["scale"]["reference"], second["reference"]) == ("card", "rectangle")
    assert second["en"] < 1
    assert document["scale"]["given"]["kind"] == "pair"
    found = line_of(document)
    # The diagonal of the drawn box.
    assert abs(found["length_mm"] - (20**2 + 1.2**2) ** 0.5) <= found["length_u_mm"]
    text = " ".join(" ".join(pages_of(pdf)).split())
    assert "fitted with a second reference (rectangle)" in text


def test_a_rectangle_that_contradicts_the_card_is_refused(photo_file, capsys):
    words = ["--card", "--rectangle", box(100, 50, "103x51.5mm")]
    assert main(["measure", str(photo_file), *words]) == 1
    said = capsys.readouterr().err
    assert "contradict each other" in said
    assert "lies off the surface" in said


@pytest.mark.slow
def test_a_card_on_a_step(photo_file, tmp_path):
    flat = line_of(measured(photo_file, tmp_path))
    document = measured(photo_file, tmp_path, "--offset", "5mm")
    raised = line_of(document)
    height = solve(CardReference(), open_photo(photo_file)).camera_mm[2]
    # Similar triangles: the surface lies (D + d) / D as far from the camera as the card.
    assert raised["length_mm"] / flat["length_mm"] == pytest.approx(1 + 5 / height, rel=1e-4)
    assert raised["length_u_mm"] > flat["length_u_mm"]
    assert document["scale"]["given"] == {"kind": "card", "check_mm": None, "offset_mm": 5.0}


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--check", "80mm", "--rectangle", box(100, 50, "100x50mm")], "add --card"),
        (["--card", "--rectangle", box(9, 9, "9x9mm"), "--offset", "1mm"], "one for each"),
        (["--card", "--rectangle", box(9, 9, "9x9mm"), "--line", "0,0,99,0=9mm"], "give two"),
        (["--pipe", "0,0,9,9=60mm", "--offset", "1mm"], "leave out --pipe"),
        (["--offset", "thick"], "--offset"),
    ],
)
def test_bad_words_for_references(photo_file, capsys, words, says):
    assert main(["measure", str(photo_file), *words]) == 1
    said = capsys.readouterr().err
    assert says in said
    assert len(said.strip().splitlines()) == 1
