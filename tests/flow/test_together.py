"""The command line on several photos of one inspection, from the photos to every report."""

import csv
import io
import json
import zipfile
from dataclasses import replace

import jsonschema
import openpyxl
import pdfplumber
import pytest

from ptmark.commands.line import run
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_to_json, restore_draft
from ptmark.photo import open_photo
from ptmark.record import load_record, record_schema, save_record
from ptmark.report.bundle import take_in
from ptmark.report.sheet import sheet_bytes


@pytest.fixture(scope="module")
def folder(photo_file, overview_file, tmp_path_factory):
    """Photos, record and reports of a set, its record changed so that a line is seen twice."""
    place = tmp_path_factory.mktemp("together")
    for path in (overview_file, photo_file):
        (place / path.name).write_bytes(path.read_bytes())
    files = [str(place / name) for name in ("overview.png", "weld photo.png")]
    words = ["measure", *files, "--together", "--criteria", "iso-23277-2"]
    for option, name in (("json", "set.json"), ("image", "set.png"), ("pdf", "set.pdf")):
        words += [f"--{option}", str(place / name)]
    assert run(words) == 0
    return place


def numbers(folder):
    """The number of the photo for each indication of the set."""
    views = load_record(folder / "set.json").views()
    return [number for number, view in enumerate(views, 1) for _ in view.indications]


def test_the_record_holds_both_and_fits_the_schema(folder):
    document = json.loads((folder / "set.json").read_text("utf-8"))
    jsonschema.validate(document, record_schema(3))
    assert document["photo"]["file"] == "overview.png"
    (more,) = document["more_photos"]
    assert more["photo"]["file"] == "weld photo.png"
    # drawn: a bar of 20 x 1.2 mm (diagonal by Pythagoras: 20.036)
    for rows in (document["indications"], more["indications"]):
        longest = max(rows, key=lambda one: one["length_mm"])
        assert abs(longest["length_mm"] - 20.036) < longest["length_u_mm"]
    assert document["together"]["verdict"] == "rejectable"


def test_each_photo_has_an_image_and_a_page(folder, pages_of):
    assert (folder / "set.png").is_file()
    assert (folder / "set-2.png").is_file()
    record = load_record(folder / "set.json")
    pages = pages_of(folder / "set.pdf")
    with pdfplumber.open(folder / "set.pdf") as pdf:
        pictures = [len(page.images) for page in pdf.pages[-2:]]
    count = sum(len(view.indications) for view in record.views())
    assert f"{count} indications in 2 photos; photos 1, 2 rejectable" in pages[0]
    second = next(text for text in pages if "\nPhoto 2 of 2" in text and "± U" in text)
    for one in record.views()[1].indications:
        assert f"{one['length_mm']:.2f} ± {one['length_u_mm']:.2f}" in second
    assert sum("The photo, unmarked" in text for text in pages) == 2
    assert all(pictures)
    assert any("The photos of this inspection" in text for text in pages)


def test_the_report_made_again_is_the_same_to_the_byte(folder, tmp_path):
    again = tmp_path / "again.pdf"
    record = str(folder / "set.json")
    assert run(["report", record, "--pdf", str(again), "--csv", str(tmp_path / "a.csv")]) == 0
    assert again.read_bytes() == (folder / "set.pdf").read_bytes()
    rows = list(csv.DictReader((tmp_path / "a.csv").read_text("utf-8-sig").splitlines()))
    assert [row["photo"] for row in rows] == [str(number) for number in numbers(folder)]


def test_verify_looks_at_every_photo(folder, tmp_path, capsys):
    for name in ("set.json", "overview.png", "weld photo.png"):
        (tmp_path / name).write_bytes((folder / name).read_bytes())
    words = ["verify", str(tmp_path / "set.json"), "--photos", str(tmp_path)]
    assert run(words) == 0
    data = bytearray((tmp_path / "weld photo.png").read_bytes())
    data[2000] ^= 1
    (tmp_path / "weld photo.png").write_bytes(data)
    capsys.readouterr()
    assert run(words) == 1
    assert "photo weld photo.png: is not the one of the record" in capsys.readouterr().out
    text = (tmp_path / "set.json").read_text("utf-8")
    second = json.loads(text)["more_photos"][0]["indications"][0]["length_mm"]
    (tmp_path / "set.json").write_text(text.replace(f'"length_mm": {second}', '"length_mm": 1'))
    assert run(["verify", str(tmp_path / "set.json")]) == 1
    assert "more_photos.0.indications" in capsys.readouterr().out


def test_the_bundle_carries_the_set_and_comes_back_whole(folder, tmp_path):
    record = str(folder / "set.json")
    assert run(["export", record, "--to", str(tmp_path / "set.zip")]) == 0
    names = set(zipfile.ZipFile(tmp_path / "set.zip").namelist())
    assert {"photos/overview.png", "photos/weld photo.png", "report-2.jpg"} <= names
    kept = take_in(tmp_path / "set.zip", tmp_path / "in")
    assert kept.read_bytes() == (folder / "set.json").read_bytes()


def test_outlines_and_spreadsheet_keep_the_photos_apart(folder, tmp_path):
    record = str(folder / "set.json")
    for name in ("o.geojson", "o.coco.json", "o.xlsx"):
        assert run(["export", record, "--to", str(tmp_path / name)]) == 0
    photos = [v.photo["sha256"] for v in load_record(folder / "set.json").views()]
    told = [json.loads((tmp_path / n).read_text("utf-8")) for n in ("o.geojson", "o-2.geojson")]
    assert [one["photo_sha256"] for one in told] == photos
    coco = json.loads((tmp_path / "o.coco.json").read_text("utf-8"))
    assert [one["sha256"] for one in coco["images"]] == photos
    assert [one["image_id"] for one in coco["annotations"]] == numbers(folder)
    book = openpyxl.load_workbook(tmp_path / "o.xlsx")
    assert book.sheetnames == [
        "Indications",
        "Seen again",
        "Findings",
        "Uncertainty photo 1",
        "Uncertainty photo 2",
        "Record",
    ]
    head, *rows = book["Indications"].iter_rows(values_only=True)
    assert head[:2] == ("photo", "id")
    assert [row[0] for row in rows] == numbers(folder)


def test_the_spreadsheet_tells_which_size_seen_again_is_the_least(folder, tmp_path):
    record = load_record(folder / "set.json")
    first, second = record.views()
    name, line = second.indications[0]["id"], first.indications[0]
    sizes = [
        {"photo": number, "length_mm": 5.0, "width_mm": 1.0, "en": None}
        | {"length_u_mm": 0.1, "width_u_mm": 0.1}
        for number in (1, 2)
    ]
    seen = [{"id": name, "of_record": 2, "chosen": False, "sizes": sizes}]
    cut = replace(
        record,
        indications=[{**line, "id": name, "runs_out": True}],
        together={**record.together, "seen_again": seen},
    )
    book = openpyxl.load_workbook(io.BytesIO(sheet_bytes(cut)))
    head, *told = book["Seen again"].iter_rows(values_only=True)
    at = [head.index(name) for name in ("photo", "runs_out", "overexposed")]
    assert [tuple(row[n] for n in at) for row in told] == [(1, True, False), (2, False, False)]


def test_the_size_of_record_is_what_is_judged_again(folder, tmp_path, capsys):
    made = Inspection()
    record = load_record(folder / "set.json")
    first, second = record.views()
    far = max(first.indications, key=lambda one: one["length_mm"])
    near = max(second.indications, key=lambda one: one["length_mm"])
    # The far photo's line under the near one's letter, and there a size that no rule allows.
    rows = [{**one, "id": near["id"]} if one is far else one for one in first.indications]
    sizes = [
        {"photo": n, **{k: one[k] for k in ("length_mm", "length_u_mm")}, "en": None}
        | {k: one[k] for k in ("width_mm", "width_u_mm")}
        for n, one in enumerate((far, near), 1)
    ]
    again = {"id": near["id"], "of_record": 2, "chosen": True, "sizes": sizes}
    short = [
        {**one, "length_mm": 3.0, "path_mm": 3.0, "length_u_mm": 0.1} if one is near else one
        for one in second.indications
    ]
    told = {**record.together, "seen_again": [again]}
    more = [{**record.more_photos[0], "indications": short}]
    changed = replace(record, indications=rows, more_photos=more, together=told)
    save_record(tmp_path / "changed.json", changed)
    assert run(["rejudge", str(tmp_path / "changed.json"), "--criteria", "iso-23277-2"]) == 0
    out = capsys.readouterr().out
    # 3 mm linear against 4 mm; at 4.3 px a mm the far photo cannot show that nothing else is
    assert "photo 1: rejectable -> undecided" in out
    assert made.photo is None


@pytest.mark.slow
def test_one_letter_is_given_where_photos_register_surely(folder, tmp_path, capsys):
    """Two photos of one textured plate, the second a part of the first seen nearer."""
    import cv2

    from ptmark.places import sample_images

    whole = cv2.imread(str(sample_images() / "rejectable.jpg"))
    near = cv2.warpAffine(
        whole,
        cv2.getRotationMatrix2D((whole.shape[1] / 2, whole.shape[0] / 2), 3, 1.1),
        (whole.shape[1], whole.shape[0]),
        borderMode=cv2.BORDER_REPLICATE,
    )
    paths = [str(tmp_path / name) for name in ("far.png", "near.png")]
    for path, picture in zip(paths, (whole, near), strict=True):
        assert cv2.imwrite(path, picture)
    words = ["measure", *paths, "--together", "--match", "--json", str(tmp_path / "m.json")]
    assert run(words) == 0
    record = load_record(tmp_path / "m.json")
    seen = record.together["seen_again"]
    assert len(seen) >= 3
    for one in seen:
        first, second = one["sizes"]
        assert abs(first["length_mm"] - second["length_mm"]) < 0.5
    assert "of record: photo" in capsys.readouterr().out


def test_a_line_belongs_to_a_photo_and_without_a_scale_a_photo_is_a_picture(
    folder, tmp_path, capsys
):
    files = [str(folder / name) for name in ("overview.png", "weld photo.png")]
    assert run(["measure", *files]) == 1
    assert "add --together" in capsys.readouterr().err
    assert run(["measure", *files, "--together", "--line", "10,10,200,10=40mm"]) == 1
    assert "which photo" in capsys.readouterr().err
    assert run(["measure", *files, "--together", "--area", "1,1,2,2,3,1"]) == 1
    assert "one photo" in capsys.readouterr().err
    words = ["measure", *files, "--together", "--json", str(tmp_path / "l.json")]
    assert run([*words, "--line", "1:86,130,173,130=20mm"]) == 0
    first, second = load_record(tmp_path / "l.json").views()
    assert (first.scale["reference"], second.scale["reference"]) == ("line", "card")
    assert run(["measure", str(folder), "--together", "--match", "--out", "x"]) == 1


def test_a_draft_of_version_1_still_opens(photo_file):
    made = Inspection()
    made.set_photo(open_photo(photo_file))
    document = draft_to_json(made)
    for name in ("before", "after", "sizes_from"):
        del document[name]
    document["schema"] = "ptmark-draft/1"
    other = Inspection()
    restore_draft(other, document)
    assert len(other.photos) == 1


def test_a_reviewer_measures_every_photo_of_the_set_or_the_one_named(
    folder, tmp_path, capsys, monkeypatch, pages_of
):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "home"))
    for name in ("set.json", "overview.png", "weld photo.png"):
        (tmp_path / name).write_bytes((folder / name).read_bytes())
    record = str(tmp_path / "set.json")
    assert run(["record", record, "--sign", "examiner", "--name", "first"]) == 0
    words = ["review", record, "--outcome", "signed", "--name", "second"]
    assert run(words) == 0
    made = load_record(tmp_path / "set.json")
    photos = [view.photo["sha256"] for view in made.views()]
    assert [one["photo"] for one in made.reviews] == photos
    assert len({one["of"] for one in made.reviews}) == 1
    counts = [len(view.indications) for view in made.views()]
    assert [len(one["pairs"]) for one in made.reviews] == counts
    assert made.signatures[0]["photos"] == photos
    assert run(["verify", record, "--photos", str(tmp_path)]) == 0
    capsys.readouterr()
    assert run(["review", record, str(tmp_path / "weld photo.png")]) == 0
    assert capsys.readouterr().out.count("overlap") == 3
    assert run(["review", record, "--line", "1,1,9,9=3mm"]) == 1
    assert "name the photo" in capsys.readouterr().err
    odd = tmp_path / "odd.png"
    odd.write_bytes(b"x")
    assert run(["review", record, str(odd)]) == 1
    assert "none of the record's photos" in capsys.readouterr().err
    pdf = tmp_path / "r.pdf"
    assert run(["report", record, "--pdf", str(pdf)]) == 0
    text = "\n".join(pages_of(pdf))
    assert "in photo 1" in text
    assert "in photo 2" in text


def test_a_set_is_not_judged_by_its_first_photo_alone(folder, capsys):
    assert run(["evaluate", str(folder / "set.json"), "--criteria", "iso-23277-2"]) == 1
    assert "ptmark rejudge" in capsys.readouterr().err


def test_the_archive_knows_a_set_by_its_own_verdict_and_all_its_letters(folder):
    from ptmark.archive.derive import derived

    data = (folder / "set.json").read_bytes()
    document = json.loads(data)
    first = document["indications"][0]
    document["evaluation"]["verdict"] = "acceptable"  # the set stays rejectable
    for row in document["more_photos"][0]["indications"][:1]:
        row["id"] = first["id"]
    sizes = [{"photo": n, "en": None} for n in (1, 2)]
    seen = {"id": first["id"], "of_record": 2, "chosen": False, "sizes": sizes}
    document["together"]["seen_again"] = [seen]
    made = derived(document, data)
    assert made.inspection["verdict"] == "rejectable"
    assert [one["name"] for one in made.photos] == ["overview.png", "weld photo.png"]
    letters = {one["letter"]: one for one in made.indications}
    assert len(letters) == len(made.indications) == len(numbers(folder)) - 1
    held = document["more_photos"][0]["indications"][0]
    assert letters[first["id"]]["length_mm"] == held["length_mm"]
    assert letters[first["id"]]["x_mm"] is None  # of another frame
    assert letters[document["indications"][1]["id"]]["x_mm"] is not None
