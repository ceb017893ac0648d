"""The flow: what a hand does, what follows from it, and the way back."""

import json
from dataclasses import replace

import numpy as np
import pytest
import shapely
from PIL import Image

from ptmark.criteria import evaluate, scene_from_json
from ptmark.dye import EdgeQuality, Suggestions
from ptmark.errors import CriteriaError, OutlineError, ScaleError, UsageError
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_of_record, draft_to_json, restore_draft
from ptmark.inspection.state import letter
from ptmark.photo import open_photo
from ptmark.record import record_text
from ptmark.scale import CardReference, LineReference

PX_PER_MM = 12.0
AREA = ((180.0, 240.0), (1100.0, 240.0), (1100.0, 600.0), (180.0, 600.0))


@pytest.fixture
def inspection(photo_file):
    made = Inspection()
    made.open(photo_file)
    return made


@pytest.fixture
def looked(inspection):
    inspection.set_reference(CardReference())
    inspection.set_suggestions(inspection.look())
    return inspection


def test_an_outline_that_cannot_be_measured_spoils_none_beside_it(looked):
    first, *others = looked.state.marked
    bad = replace(first, id="Z", outline_px=np.array([[1.0, 1.0], [2.0, 2.0], [3.0, 3.0]]))
    surface, beside = looked.surface, (bad, first, *others)
    photo = lambda: looked.photo  # noqa: E731
    found = looked.workings.measurement(first, surface, None, photo, beside)
    assert found.length.value == pytest.approx(looked.measurement(first).length.value)
    with pytest.raises(OutlineError, match="no area"):
        looked.workings.measurement(bad, surface, None, photo, beside)
    kept = [looked.workings.measurement(one, surface, None, photo) for one in others]
    assert kept == [looked.measurement(one) for one in others]  # the very same


def test_lengths_come_out_as_they_were_drawn(looked):
    measured = {m.id: looked.measurement(m) for m in looked.state.marked}
    lengths = sorted(m.length.value for m in measured.values())
    # drawn: discs of 1 and 4 mm, a bar of 20 x 1.2 mm (diagonal by Pythagoras: 20.036)
    assert lengths == pytest.approx([1.0, 4.0, 20.036], abs=0.12)
    for m in measured.values():
        assert 0 < m.length.expanded < 0.6
    shapes = {round(m.length.value): m.shape for m in measured.values()}
    assert shapes == {1: "rounded", 4: "rounded", 20: "linear"}


def test_the_photo_file_is_never_written(photo_file, looked):
    before = photo_file.read_bytes()
    looked.change("choose", profile="iso-23277-2")
    looked.to_record()
    assert photo_file.read_bytes() == before


def test_verdict_follows_the_profile_and_what_was_dropped(looked):
    assert looked.evaluation() is None
    looked.change("choose", profile="iso-23277-2")
    assert looked.evaluation().verdict == "rejectable"  # 20 mm linear against 4 mm
    long_one = max(looked.counted, key=lambda m: looked.measurement(m).length.value)
    looked.edit(long_one.id, "drop", standing="dropped")
    assert looked.evaluation().verdict == "acceptable"  # 4 mm non-linear against 6 mm
    looked.undo()
    assert looked.evaluation().verdict == "rejectable"


def test_what_counts_outside_the_examined_area_is_told(looked):
    first, second = looked.state.marked[:2]
    around = shapely.Polygon(first.outline_px).buffer(9)
    corners = tuple(map(tuple, shapely.get_coordinates(around.simplify(1))[:-1].tolist()))

    def told():
        lines = looked.to_record().cautions
        return [one.split(": ")[1] for one in lines if one.startswith("Outside the examined")]

    assert told() == []
    looked.change("mark out", area_px=corners)
    away = [
        one.id
        for one in looked.counted
        if not around.intersects(shapely.Polygon(one.outline_px))
    ]
    assert second.id in away
    assert told()[0].startswith(", ".join(away) + ".")
    looked.edit(second.id, "drop", standing="dropped")
    assert second.id not in (told() or [""])[0].split(".")[0]
    looked.set_suggestions(looked.look())
    assert told() == []


def test_every_change_can_be_undone_and_done_again(looked):
    looked.change("mark the examined area", area_px=AREA)
    outline = np.array([[300.0, 450.0], [340.0, 450.0], [340.0, 470.0]])
    name = looked.add(outline, EdgeQuality(shift_px=1, noise_px=1, source="hand"))
    looked.edit(name, "name the kind of", kind="100")
    looked.remove(name)
    states = [looked.state]
    while looked.undo_name:
        looked.undo()
        states.append(looked.state)
    assert looked.state.reference is None
    assert looked.surface is None
    for state in reversed(states[:-1]):
        looked.redo()
        assert looked.state is state
    assert looked.redo_name == ""


def test_a_new_change_ends_the_way_forward(looked):
    looked.change("set", relief_mm=1.0)
    looked.undo()
    looked.change("set", relief_mm=2.0)
    assert looked.redo_name == ""
    looked.redo()
    assert looked.state.relief_mm == 2.0


def test_looking_again_keeps_what_a_person_touched(looked):
    first = looked.state.marked[0]
    looked.edit(first.id, "take", standing="taken")
    looked.set_suggestions(looked.look())
    assert len(looked.state.marked) == 3
    assert looked.marked(first.id).standing == "taken"
    assert len({m.id for m in looked.state.marked}) == 3


def test_a_refused_reference_changes_nothing(inspection):
    point = (100.0, 100.0)
    with pytest.raises(ScaleError):
        inspection.set_reference(LineReference(ends_px=(point, point), length_mm=10.0))
    assert inspection.state.reference is None
    assert inspection.undo_name == ""


def test_a_line_gives_the_scale_with_a_wider_uncertainty(inspection):
    line = LineReference(ends_px=((180.0, 840.0), (1207.2, 840.0)), length_mm=85.6)
    inspection.set_reference(line)
    inspection.set_suggestions(inspection.look())
    long_one = max(
        (inspection.measurement(m) for m in inspection.counted), key=lambda m: m.length.value
    )
    assert abs(long_one.length.value - 20.036) <= long_one.length.expanded
    assert long_one.length.budget["tilt"] > 0


def test_what_is_no_outline_is_refused(looked):
    edge = EdgeQuality(shift_px=1, noise_px=1)
    with pytest.raises(OutlineError, match="at least 3 points"):
        looked.add(np.zeros((2, 2)), edge)
    with pytest.raises(OutlineError, match="not a number"):
        looked.add(np.array([[0, 0], [1, np.nan], [1, 1]]), edge)
    with pytest.raises(UsageError, match="no indication Q"):
        looked.remove("Q")


def test_an_unknown_profile_is_refused(looked):
    looked.change("choose", profile="no-such-profile")
    with pytest.raises(CriteriaError, match="no-such-profile"):
        looked.evaluation()


def test_listeners_hear_every_change(inspection):
    heard = []
    inspection.listen(lambda: heard.append(inspection.undo_name))
    inspection.change("set the relief", relief_mm=1.0)
    inspection.undo()
    assert heard == ["set the relief", ""]


@pytest.mark.parametrize(("number", "name"), [(0, "A"), (25, "Z"), (26, "AA"), (51, "AZ")])
def test_letters_go_on_after_z(number, name):
    assert letter(number) == name


def test_an_area_that_grows_past_the_last_look_passes_no_part(inspection, photo_file):
    # As for a photo that was not looked over at all: common practice, no source.
    inspection.change("choose", profile="iso-23277-2")
    inspection.set_reference(CardReference())
    small = ((300.0, 300.0), (500.0, 300.0), (500.0, 500.0), (300.0, 500.0))
    inspection.change("mark", area_px=small)
    inspection.set_suggestions(Suggestions(found=(), left_out=(), haze=None))
    edge = EdgeQuality(shift_px=0.5, noise_px=0.2, source="hand")
    drawn = inspection.add(np.array([[400.0, 400.0], [412.0, 400.0], [406.0, 410.0]]), edge)
    inspection.edit(drawn, relevance="false", reason="fibre")
    assert inspection.evaluation().verdict == "acceptable"
    inspection.change("narrow", area_px=((310.0, 310.0), (490.0, 310.0), (490.0, 490.0)))
    assert inspection.evaluation().verdict == "acceptable"
    inspection.change("examine the whole photo", area_px=None)

    def gone_on(document):
        again = Inspection()
        restore_draft(again, json.loads(json.dumps(document)))
        return again

    drafted = gone_on(draft_to_json(inspection))
    opened = gone_on(draft_of_record(inspection.to_record(), [photo_file]))
    for one in (inspection, drafted, opened):
        assert one.evaluation().verdict == "undecided"
        document = json.loads(record_text(one.to_record()))  # fits the schema
        assert evaluate(one.profile, scene_from_json(document)).verdict == "undecided"
    inspection.set_suggestions(Suggestions(found=(), left_out=(), haze=None))
    assert inspection.evaluation().verdict == "acceptable"


def test_a_photo_that_nobody_looked_over_passes_no_part(inspection, photo_file):
    # Nothing seen is a result of looking only: common practice, no source.
    inspection.change("choose", profile="iso-23277-2")
    inspection.set_reference(CardReference())

    def gone_on(document):
        again = Inspection()
        restore_draft(again, document)
        return again

    drafted = gone_on(draft_to_json(inspection))
    opened = gone_on(draft_of_record(inspection.to_record(), [photo_file]))
    for one in (inspection, drafted, opened):
        assert one.evaluation().verdict == "undecided"
        document = json.loads(record_text(one.to_record()))  # fits the schema
        assert document["conditions"]["unlooked"] is True
        assert evaluate(one.profile, scene_from_json(document)).verdict == "undecided"
    inspection.set_suggestions(Suggestions(found=(), left_out=(), haze=None))
    assert inspection.evaluation().verdict == "acceptable"
    assert "unlooked" not in inspection.to_record().conditions
    assert gone_on(draft_to_json(inspection)).evaluation().verdict == "acceptable"
    # a second photo of the set, with its scale but not looked over, holds the whole open
    other = photo_file.with_name("second.png")
    Image.open(photo_file).transpose(Image.Transpose.ROTATE_180).save(other)
    inspection.photos.add(open_photo(other))
    inspection.set_reference(CardReference())
    assert inspection.to_record().verdict == "undecided"


def test_a_look_undone_or_of_another_area_passes_no_part(looked):
    """One undo too many after a look that called some must not read as none found."""
    looked.change("choose", profile="iso-23277-2")
    assert looked.state.marked
    called = looked.evaluation().verdict
    looked.undo()
    looked.undo()
    assert not looked.state.marked
    looked.change("choose", profile="iso-23277-2")
    again = Inspection()
    restore_draft(again, draft_to_json(looked))
    for one in (looked, again):
        assert one.evaluation().verdict == "undecided"
    looked.set_suggestions(looked.look())
    assert looked.evaluation().verdict == called
    # none in a corner without any; then the whole photo is examined
    looked.undo()
    looked.change("mark out", area_px=((180.0, 240.0), (200.0, 240.0), (200.0, 260.0)))
    looked.set_suggestions(Suggestions(found=(), left_out=(), haze=None))
    assert looked.evaluation().verdict == "acceptable"
    looked.change("examine the whole photo", area_px=None)
    assert looked.evaluation().verdict == "undecided"
    # none in the whole photo: none in a part of it either
    looked.set_suggestions(Suggestions(found=(), left_out=(), haze=None))
    looked.change("mark out", area_px=AREA)
    assert looked.evaluation().verdict == "acceptable"


def test_record_counts_what_the_verdict_counts(looked):
    looked.change("choose", profile="iso-23277-2")
    dropped = looked.state.marked[0].id
    looked.edit(dropped, "drop", standing="dropped")
    record = looked.to_record(record_id="0" * 32, created="2026-01-01T00:00:00Z")
    assert dropped not in [one["id"] for one in record.indications]
    assert record.evaluation["verdict"] == looked.evaluation().verdict
    # each indication is accounted for (B31.3, 344.4.2: relevant, nonrelevant or false)
    (said,) = (one for one in record.cautions if one.startswith("Dropped"))
    assert f"not judged: {dropped}. Give the reason." in said
    looked.edit(dropped, reason=" a scratch " + 19_900 * "x")
    (said,) = (one for one in looked.to_record().cautions if one.startswith("Dropped"))
    assert f"not judged: {dropped}. Reason: a scratch xx" in said
    assert record_text(looked.to_record())  # fits the schema


def test_neighbours_as_one_are_as_sure_as_one_traced_over_both(inspection):
    # By a line alone, tilt unknown: what is a share of a length is that share of any length
    # (simple scaling, JCGM 100:2008, 5.1.3), so a cut and its whole must have about one U.
    inspection.set_reference(
        LineReference(ends_px=((180.0, 240.0), (1100.0, 240.0)), length_mm=76.7)
    )
    middles, half = ((840.0, 480.0), (872.0, 480.0), (904.0, 480.0)), (14.0, 2.5)
    edge = EdgeQuality(shift_px=0.5, noise_px=0.1, source="snapped", operator_px=0.0)
    box = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]], dtype=float)
    for middle in middles:
        inspection.add(box * half + middle, edge)
    inspection.change("choose", profile="iso-23277-3")
    parts = inspection.scene().indications
    (found,) = (f for f in inspection.evaluation().findings if len(f.indications) == 3)
    for name in ("A", "B", "C"):
        inspection.remove(name)
    whole = inspection.add(box * (46.0, 2.5) + (872.0, 480.0), edge)
    length = inspection.measurement(inspection.marked(whole)).length
    assert found.value == pytest.approx(length.value, rel=0.001)
    assert found.u == pytest.approx(length.expanded, rel=0.2)
    assert found.u > 0.95 * length.expanded  # never surer
    assert all(found.u > 2 * one.length_u for one in parts)
    again = inspection.to_record().indications[0]
    assert again["near_u"][0] == pytest.approx(found.u / found.value, rel=0.2)
    assert again["far_u"] == 0.0
