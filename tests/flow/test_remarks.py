"""What is said of a photo reaches the record, the command line and the window's hand."""

import importlib
import json
from dataclasses import replace

import cv2
import numpy as np
import pillow_heif
import pytest
from PIL import Image

from ptmark.__main__ import main
from ptmark.criteria import load_profile
from ptmark.dye import EdgeQuality, LeftOut, Suggestions
from ptmark.dye.haze import DENSE_HAZE, UNEVEN
from ptmark.errors import OutlineError, PhotoError
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_of_record, draft_to_json, restore_draft
from ptmark.inspection.looking_over import smallest_that_counts
from ptmark.least import Least
from ptmark.record import evaluated_again, load_record
from ptmark.record.check import check_document
from ptmark.scale import CardReference, LineReference

suggest_room = importlib.import_module(
    "ptmark.dye.suggest"
)  # in the package the function has its name


@pytest.fixture
def dark_file(tmp_path):
    """Green-yellow light on dark: a bar of 200 px and a square of 30 px."""
    light = np.full((600, 900, 3), (20, 12, 38))
    light[200:212, 150:350] = light[400:430, 600:630] = (175, 230, 85)
    target = tmp_path / "dark.png"
    Image.fromarray(light.astype(np.uint8)).save(target)
    return target


def measured(inspection):
    return sorted(inspection.measurement(one).length.value for one in inspection.counted)


def test_remarks_become_cautions_of_the_record(photo_file):
    inspection = Inspection()
    assert inspection.remarks() == ()
    inspection.open(photo_file)
    inspection.set_reference(CardReference())
    inspection.set_suggestions(inspection.look())
    before = [one.says for one in inspection.remarks()]
    inspection.haze = 0.2  # as a pink background gives it
    said = [one.says for one in inspection.remarks() if one.says not in before]
    assert len(said) == 1
    assert said[0] in inspection.to_record().cautions


def test_transparent_parts_of_the_examined_area_are_told(photo_file, tmp_path):
    # PNG (W3C REC-PNG, 12.1) leaves to the viewer what stands behind; here it is white
    with Image.open(photo_file) as picture:
        opaque = picture.convert("RGBA")
    width, height = opaque.size
    alpha = Image.new("L", opaque.size, 255)
    whole, holed = tmp_path / "whole.png", tmp_path / "holed.png"
    opaque.save(whole, compress_level=1)
    alpha.paste(0, (0, 0, width // 4, height // 2))
    opaque.putalpha(alpha)
    opaque.save(holed, compress_level=1)

    def told(path, area_px=None):
        inspection = Inspection()
        inspection.open(path)
        if area_px is not None:
            inspection.change("mark the area", area_px=area_px)
        return [one for one in inspection.to_record().cautions if "transparent" in one]

    right = ((width / 2, 0.0), (width - 1.0, 0.0), (width - 1.0, height - 1.0))
    across = ((0.0, 0.0), (width / 2, 0.0), (width / 2, height - 1.0), (0.0, height - 1.0))
    assert told(whole) == told(holed, right) == []
    assert "in some 12 % of the examined area" in told(holed)[0]  # an eighth
    assert "in some 25 % of the examined area" in told(holed, across)[0]


def test_a_reference_on_the_weld_is_told(photo_file):
    # similar triangles: 3 mm nearer of 200 mm is 1.5 % larger, and lengths as much shorter
    inspection = Inspection()
    inspection.open(photo_file)

    def told(reference, *, y=400.0, relief=None):
        inspection.change("mark", weld_px=((300.0, y), (900.0, y)), relief_mm=relief)
        inspection.set_reference(reference)
        return any("lies on the weld" in one for one in inspection.to_record().cautions)

    along = ((350.0, 402.0), (850.0, 402.0))
    assert told(LineReference(ends_px=along, length_mm=50.0))
    assert told(LineReference(ends_px=along, length_mm=50.0), relief=2.0)
    assert not told(LineReference(ends_px=along, length_mm=50.0), relief=0.0)
    assert not told(LineReference(ends_px=along, length_mm=50.0, offset_mm=2.0))
    assert not told(LineReference(ends_px=along, length_mm=50.0), y=500.0)
    inspection.change("mark", weld_px=None)
    assert not any("on the weld" in one for one in inspection.to_record().cautions)


def test_a_weld_of_unknown_height_is_told_until_its_height_is_given(photo_file):
    inspection = Inspection()
    inspection.open(photo_file)
    inspection.set_reference(CardReference())
    assert not [one for one in inspection.remarks() if "crown" in one.says]
    inspection.change("mark the weld", weld_px=((300.0, 400.0), (900.0, 400.0)))
    told = [one.says for one in inspection.remarks() if "crown" in one.says]
    assert len(told) == 1
    assert told[0] in inspection.to_record().cautions
    inspection.change("set the height", relief_mm=0.0)
    assert not [one for one in inspection.remarks() if "crown" in one.says]


def test_fluorescent_photo_is_measured_and_its_lighting_told(dark_file, capsys, tmp_path):
    out = tmp_path / "record.json"
    line = ["--line", "100,500,300,500=20mm"]
    assert main(["measure", str(dark_file), *line, "--json", str(out)]) == 0
    record = json.loads(out.read_text())
    lengths = sorted(one["length_mm"] for one in record["indications"])
    # drawn at 10 px a mm: the square's and the bar's diagonals by Pythagoras
    assert lengths == pytest.approx([np.hypot(3, 3), np.hypot(20, 1.2)], abs=0.2)
    told = capsys.readouterr().out
    assert "UV-A" in told
    assert "Too dark" not in told


def test_type_given_on_the_command_line_goes_before_what_is_recognised(dark_file, tmp_path):
    out = tmp_path / "record.json"
    line = ["--line", "100,500,300,500=20mm", "--json", str(out)]
    assert main(["measure", str(dark_file), *line, "--type", "colour-contrast"]) == 0
    assert json.loads(out.read_text())["indications"] == []
    assert main(["measure", str(dark_file), *line, "--type", "fluorescent"]) == 0
    assert len(json.loads(out.read_text())["indications"]) == 2


@pytest.mark.parametrize(
    ("chosen", "verdict"), [("", "undecided"), ("fluorescent", "rejectable")]
)
def test_a_photo_that_does_not_tell_its_kind_holds_the_verdict_open(tmp_path, chosen, verdict):
    """Glow beside paper that glows too, in a white balance that makes the paper white."""
    light = np.full((600, 900, 3), (20, 14, 30), np.uint8)
    light[200:212, 150:350] = (180, 235, 110)  # 20 mm long
    light[450:560, 300:800] = (200, 200, 200)  # paper
    file = tmp_path / "cast.png"
    Image.fromarray(light).save(file)
    inspection = Inspection()
    inspection.open(file)
    ends = ((100.0, 500.0), (300.0, 500.0))
    inspection.set_reference(LineReference(ends_px=ends, length_mm=20.0))
    inspection.change("choose", profile="iso-23277-3", mode=chosen)
    inspection.set_suggestions(inspection.look())
    record = inspection.to_record()
    assert len(record.indications) == (1 if chosen else 0)
    assert record.verdict == verdict
    assert record.conditions.get("unknown_kind", False) is not bool(chosen)
    assert any("does not tell whether" in one for one in record.cautions) is not bool(chosen)
    ((_, _, again),) = evaluated_again(record, load_profile("asme-viii-1-app-8"))
    assert again.verdict == verdict
    check_document(record.to_json(), where="record")


def test_mode_is_kept_in_the_draft_and_for_the_next_photo(dark_file, photo_file):
    inspection = Inspection()
    inspection.open(dark_file)
    inspection.change("choose", mode="fluorescent")
    again = Inspection()
    restore_draft(again, json.loads(json.dumps(draft_to_json(inspection))))
    assert again.state.mode == "fluorescent"
    again.open(photo_file)
    assert again.state.mode == "fluorescent"


def test_blob_taken_back_in_a_fluorescent_photo_follows_its_light(dark_file):
    inspection = Inspection()
    inspection.open(dark_file)
    ends = ((100.0, 500.0), (300.0, 500.0))
    inspection.set_reference(LineReference(ends_px=ends, length_mm=20.0))
    seen = inspection.look()
    inspection.left_out = tuple(  # as if they had been left out
        LeftOut(outline_px=one.outline_px, edge=one.edge, reason="too pale")
        for one in seen.found
    )
    name = inspection.take_left_out(0)
    assert inspection.marked(name).edge.source == "snapped"
    assert measured(inspection) == pytest.approx([np.hypot(20, 1.2)], abs=0.2)


def test_the_whole_area_is_never_taken_back_as_an_indication(photo_file):
    inspection = Inspection()
    inspection.open(photo_file)
    frame = np.array([[0, 0], [300, 0], [300, 200], [0, 200]], float)
    edge = EdgeQuality(shift_px=0.0, noise_px=0.0)
    inspection.left_out = (LeftOut(outline_px=frame, edge=edge, reason=UNEVEN),)
    before = inspection.state
    with pytest.raises(OutlineError, match="trace the indication by hand"):
        inspection.take_left_out(0)
    assert inspection.state is before
    assert inspection.taken_back() == {}


@pytest.mark.parametrize(
    ("profile", "mm"),
    [
        ("asme-viii-1-app-8", 1.5),  # relevance: over 1.5 mm, facts of App. 8
        ("asme-viii-1-app-8-us", 25.4 / 16),  # over 1/16 in
        ("iso-23277-1", 2.0),  # no relevance; the least limit is that of linear ones
    ],
)
def test_smallest_size_that_counts_comes_from_the_profile(profile, mm):
    assert smallest_that_counts(load_profile(profile)) == pytest.approx(mm)
    assert smallest_that_counts(None) == 1.5


@pytest.mark.parametrize("mode", ["", "fluorescent"])
def test_a_photo_without_colour_is_not_looked_at_and_this_is_said(photo_file, tmp_path, mode):
    # the three channels of a grey picture are one (ITU-R BT.601: Cb = Cr = 128)
    grey = tmp_path / "grey.jpg"
    Image.open(photo_file).convert("L").save(grey, quality=90)
    inspection = Inspection()
    inspection.open(grey)
    inspection.change("choose the kind", mode=mode)
    with pytest.raises(PhotoError, match=r"grey\.jpg: the photo holds no colour"):
        inspection.look()
    assert any("holds no colour" in one.what for one in inspection.remarks())
    inspection.set_reference(CardReference())
    inspection.change("choose", profile="iso-23277-2")
    record = inspection.to_record()
    assert record.verdict == "undecided"  # nothing is marked, and nothing could have been seen
    before = without_findings_of_its_own(record)
    for one in (record, before):
        ((_, _, again),) = evaluated_again(one, load_profile("asme-viii-1-app-8"))
        assert again.verdict == "undecided"
        assert [f.rule for f in again.findings if f.verdict == "undecided"] == ["colour"]
    inspection.change("choose none", profile="")
    ((_, _, again),) = evaluated_again(
        inspection.to_record(), load_profile("asme-viii-1-app-8")
    )
    assert again.verdict == "undecided"


def without_findings_of_its_own(record):
    """As records were when a caution alone told it: the words are those written then."""
    says = (
        "The photo holds no colour, so that nothing is marked in it tells nothing. Take it in "
        "colour, or trace what is there by hand. Until then it is not acceptable."
    )
    evaluation = dict(record.evaluation)
    (colour,) = evaluation["findings"]
    none = {"rule": "none", "verdict": "acceptable", "says": "There are no indications."}
    evaluation["findings"] = [colour | none]
    evaluation["cautions"] = [*evaluation["cautions"], says]
    conditions = {name: record.conditions[name] for name in ("relief_mm", "haze")}
    return replace(record, evaluation=evaluation, conditions=conditions)


def test_places_too_many_to_look_at_hold_the_verdict_open(photo_file, monkeypatch):
    monkeypatch.setattr(suggest_room, "MOST_LOOKS", 1)
    inspection = Inspection()
    inspection.open(photo_file)
    inspection.set_reference(CardReference())
    inspection.change("choose", profile="iso-23277-3")
    inspection.set_suggestions(inspection.look())
    for one in inspection.state.marked:
        inspection.edit(one.id, "drop", standing="dropped")
    record = inspection.to_record()
    assert record.verdict == "undecided"
    (told,) = (f for f in record.evaluation["findings"] if f["rule"] == "searched")
    unseen = record.conditions["unseen"]
    assert f"{unseen} of them were not looked at closely" in told["says"]
    ((_, _, again),) = evaluated_again(record, load_profile("asme-viii-1-app-8"))
    assert "searched" in {f.rule for f in again.findings if f.verdict == "undecided"}
    check_document(record.to_json(), where="record")


def test_haze_as_dense_as_an_indication_holds_the_verdict_open(photo_file):
    # practice of the trade, from memory: a background that may mask indications is cleaned off
    # and the test repeated, since nothing found there tells that nothing is there
    inspection = Inspection()
    inspection.open(photo_file)
    inspection.set_reference(CardReference())
    inspection.change("choose", profile="iso-23277-3")
    box = np.array([[40.0, 40.0], [90.0, 40.0], [90.0, 70.0], [40.0, 70.0]])
    haze = LeftOut(
        outline_px=box, edge=EdgeQuality(shift_px=1.0, noise_px=1.0), reason=DENSE_HAZE
    )
    inspection.set_suggestions(Suggestions(found=(), left_out=(haze, haze), haze=0.1))
    record = inspection.to_record()
    assert record.verdict == "undecided"
    assert record.conditions["dense_haze"] == 2
    ((_, _, again),) = evaluated_again(record, load_profile("asme-viii-1-app-8"))
    assert "searched" in {f.rule for f in again.findings if f.verdict == "undecided"}
    assert any("may hide one or be one: 2." in one.what for one in inspection.remarks())
    check_document(record.to_json(), where="record")


def test_on_overexposed_developer_sizes_are_the_least_and_nothing_passes(photo_file, tmp_path):
    bright = tmp_path / "bright.png"
    light = np.asarray(Image.open(photo_file), float) * 1.35
    Image.fromarray(np.clip(light, 0, 255).astype(np.uint8)).save(bright)
    inspection = Inspection()
    inspection.open(bright)
    inspection.set_reference(
        LineReference(ends_px=((240.0, 300.0), (480.0, 300.0)), length_mm=20)
    )
    inspection.change("choose", profile="asme-viii-1-app-8")
    inspection.set_suggestions(inspection.look())
    record = inspection.to_record()
    assert all(one["overexposed"] for one in record.indications)
    assert all(one.least == {Least.OVEREXPOSED} for one in inspection.scene().indications)
    check_document(record.to_json(), where="record")
    small = min(inspection.counted, key=lambda one: inspection.measurement(one).length.value)
    inspection.change("keep the small one", marked=(small,))
    for taken in ((small,), ()):
        inspection.change("keep", marked=taken)
        record = inspection.to_record()
        assert record.verdict == "undecided"
        told = [f for f in record.evaluation["findings"] if f["rule"] == "exposure"]
        assert len(told) == 1 + len(taken)  # the area, and what lies in it
        ((_, _, again),) = evaluated_again(record, load_profile("iso-23277-3"))
        assert again.verdict == "undecided"
    back = Inspection()
    restore_draft(back, draft_to_json(inspection))
    assert back.evaluation().verdict == "undecided"
    inspection.change("no criteria", marked=(small,), profile="")
    assert any("On overexposed" in one for one in inspection.to_record().cautions)


@pytest.fixture
def covered_file(tmp_path):
    """A line of 200 x 8 px, 60 px of it beneath a grey bar; another one of 60 px, all seen."""
    light = np.full((600, 900, 3), (226, 221, 220))
    light[200:208, 150:350] = light[420:428, 600:660] = (180, 50, 70)
    light[120:290, 290:360] = (178, 180, 184)  # steel beside developer
    soft = cv2.GaussianBlur(light.astype(np.float32), (0, 0), 1.2)
    target = tmp_path / "covered.png"
    Image.fromarray(np.round(soft).astype(np.uint8)).save(target)
    return target


def test_what_may_go_on_beneath_a_cover_holds_the_verdict_open(covered_file, capsys, tmp_path):
    out = tmp_path / "record.json"
    line = ["--line", "100,500,300,500=5mm", "--criteria", "iso-23277-3"]
    assert main(["measure", str(covered_file), *line, "--json", str(out)]) == 0
    told = capsys.readouterr().out
    assert "length  ≥ 3." in told
    record = json.loads(out.read_text())
    assert [one.get("covered") for one in record["indications"]] == [True, None]
    assert record["evaluation"]["verdict"] == "undecided"
    ((_, _, again),) = evaluated_again(load_record(out), load_profile("asme-b31.1"))
    assert [f.indications for f in again.findings if f.rule == "whole"] == [("A",)]


def test_who_traces_an_end_anew_says_that_it_ends_there(covered_file):
    inspection = Inspection()
    inspection.open(covered_file)
    ends = ((100.0, 500.0), (300.0, 500.0))
    inspection.set_reference(LineReference(ends_px=ends, length_mm=5.0))
    inspection.change("choose", profile="iso-23277-3")
    inspection.set_suggestions(inspection.look())
    first = inspection.state.marked[0]

    def told():
        rules = [f.rule for f in inspection.evaluation().findings]
        return rules.count("whole"), sum("Ends where" in r.what for r in inspection.remarks())

    assert told() == (1, 0)
    back = Inspection()
    restore_draft(back, draft_to_json(inspection))
    assert back.measurement(back.marked(first.id)).least == {Least.COVERED}
    smooth = replace(first.edge, source="hand")  # as smoothing leaves it
    inspection.edit(first.id, "smooth", outline_px=first.outline_px + 0.1, edge=smooth)
    assert told() == (1, 0)
    inspection.edit(first.id, "drop", standing="dropped", reason="traced anew")
    assert told() == (0, 0)
    inspection.add(first.outline_px + 0.2, smooth)
    assert told() == (0, 1)  # a caution, and the sizes are what was traced


@pytest.fixture
def rusty_file(tmp_path):
    """A line of 100 x 5 px in rust that shows through, and one of 60 px on white."""
    rows, columns = np.mgrid[:600, :900].astype(float)
    rust = np.clip((90 - np.hypot(columns - 300, 1.3 * (rows - 200))) / 10, 0, 1)
    dye = np.zeros((600, 900))
    dye[198:203, 250:350] = dye[420:425, 600:660] = 0.9
    dye = cv2.GaussianBlur(dye, (0, 0), 1.2)
    light = np.array([0.78, 0.74, 0.72]) * (1 - rust[..., None] * [0.38, 0.58, 0.75])
    light = light * (1 - dye[..., None] * [0.38, 0.95, 0.91])
    light = light + np.random.RandomState(7).normal(0, 0.004, light.shape)  # any seed will do
    target = tmp_path / "rusty.png"
    Image.fromarray(np.round(255 * light.clip(0, 1) ** (1 / 2.2)).astype(np.uint8)).save(target)
    return target


def test_what_stands_in_rust_holds_the_verdict_open(rusty_file, capsys, tmp_path):
    out = tmp_path / "record.json"
    line = ["--line", "100,500,300,500=5mm", "--criteria", "iso-23277-3"]
    assert main(["measure", str(rusty_file), *line, "--json", str(out)]) == 0
    told = capsys.readouterr().out
    assert "length  ≥ 2." in told
    record = json.loads(out.read_text())
    assert [one.get("ends_unsure") for one in record["indications"]] == [True, None]
    assert record["evaluation"]["verdict"] == "undecided"
    ((_, _, again),) = evaluated_again(load_record(out), load_profile("asme-b31.1"))
    (finding,) = (one for one in again.findings if one.rule == "whole")
    assert finding.indications == ("A",)
    where = "in haze, rust, grain, a red reflection, beside paint or where the file lost"
    assert where in finding.says
    further = Inspection()
    restore_draft(further, draft_of_record(load_record(out), [rusty_file]))
    marked = further.state.marked
    assert [further.measurement(one).least for one in marked] == [{Least.ENDS_UNSURE}, set()]
    further.change("no criteria", profile="")
    assert sum(where in one for one in further.to_record().cautions) == 1
    back = Inspection()
    restore_draft(back, draft_to_json(further))
    first = back.marked("A")
    by_hand = replace(
        first.edge, source="hand", ends_unsure=False
    )  # as an edited point leaves it
    back.edit("A", "edit", outline_px=first.outline_px + 0.1, edge=by_hand)
    assert Least.ENDS_UNSURE in back.measurement(back.marked("A")).least
    back.edit("A", "drop", standing="dropped", reason="traced anew")
    name = back.add(first.outline_px + 0.2, by_hand)
    assert not back.measurement(back.marked(name)).least


def test_a_photo_in_colour_is_looked_at(photo_file):
    inspection = Inspection()
    inspection.open(photo_file)
    assert inspection.look().found
    assert not any("no colour" in one.what for one in inspection.remarks())


@pytest.mark.parametrize(("quality", "said"), [(35, True), (60, False), (92, False)])
def test_a_file_of_little_colour_is_told(photo_file, tmp_path, quality, said):
    small = tmp_path / "sent.jpg"
    Image.open(photo_file).convert("RGB").save(small, quality=quality)
    inspection = Inspection()
    inspection.open(small)
    told = [one.says for one in inspection.remarks() if "compressed strongly" in one.says]
    assert bool(told) is said
    assert all(f"quality {quality}" in one for one in told)


@pytest.mark.parametrize(
    ("name", "quality", "verdict"),
    [
        ("sent.heic", 10, "undecided"),
        ("sent.webp", 10, "undecided"),
        ("sent.avif", 10, "undecided"),
        ("sent.jpg", 35, "undecided"),
        ("taken.heic", 95, "acceptable"),
        ("taken.jpg", 92, "acceptable"),
    ],
)
def test_a_file_of_few_bits_holds_the_verdict_open(
    photo_file, tmp_path, name, quality, verdict
):
    """Noise of one code is in each pixel: a file of 0.1 bits for it holds none of it."""
    file = tmp_path / name
    heif = pillow_heif.from_pillow if name.endswith("heic") else (lambda picture: picture)
    heif(Image.open(photo_file).convert("RGB")).save(file, quality=quality)
    inspection = Inspection()
    inspection.open(file)
    inspection.set_reference(CardReference())
    inspection.change("choose", profile="iso-23277-3")
    inspection.set_suggestions(Suggestions(found=(), left_out=(), haze=0.0))
    record = inspection.to_record()
    assert record.verdict == verdict
    assert record.conditions.get("compressed", False) is (verdict == "undecided")
    told = [one for one in record.cautions if "compressed strongly" in one]
    assert bool(told) is (verdict == "undecided")
    ((_, _, again),) = evaluated_again(record, load_profile("asme-viii-1-app-8"))
    assert again.verdict == verdict
    check_document(record.to_json(), where="record")


@pytest.mark.parametrize(("share", "verdict"), [(0.6, "acceptable"), (0.5, "undecided")])
def test_a_photo_of_few_pixels_holds_the_verdict_open(photo_file, tmp_path, share, verdict):
    """12 px a mm, reduced to 7.2 and 6: 1.5 mm is 10.8 and 9 px of the 10 asked for."""
    small = tmp_path / "small.png"
    picture = cv2.imread(str(photo_file))
    cv2.imwrite(
        str(small), cv2.resize(picture, None, fx=share, fy=share, interpolation=cv2.INTER_AREA)
    )
    inspection = Inspection()
    inspection.open(small)
    inspection.set_reference(CardReference())
    inspection.change("choose", profile="iso-23277-3")
    inspection.set_suggestions(Suggestions(found=(), left_out=(), haze=0.0))
    record = inspection.to_record()
    assert record.verdict == verdict
    assert record.conditions.get("coarse", False) is (verdict == "undecided")
    ((_, _, again),) = evaluated_again(record, load_profile("asme-viii-1-app-8"))
    assert again.verdict == verdict
    check_document(record.to_json(), where="record")


def test_a_smoothed_photo_holds_the_verdict_open_by_its_card(photo_file, tmp_path):
    """A median of 7 px takes lines 3 px wide: less than half of its window is theirs."""
    smooth = tmp_path / "smooth.png"
    cv2.imwrite(str(smooth), cv2.medianBlur(cv2.imread(str(photo_file)), 7))
    for file, verdict in ((photo_file, "acceptable"), (smooth, "undecided")):
        inspection = Inspection()
        inspection.open(file)
        inspection.set_reference(CardReference())
        inspection.change("choose", profile="iso-23277-3")
        inspection.set_suggestions(Suggestions(found=(), left_out=(), haze=0.0))
        record = inspection.to_record()
        assert record.verdict == verdict
        assert record.conditions.get("smoothed", False) is (file == smooth)
        ((_, _, again),) = evaluated_again(record, load_profile("asme-viii-1-app-8"))
        assert again.verdict == verdict
        check_document(record.to_json(), where="record")
    inspection.change("under UV-A", mode="fluorescent")  # where the card is hardly lit
    assert "smoothed" not in inspection.to_record().conditions
