"""Several photos in one inspection: letters over the set, sizes of record, undo, the draft."""

import json
from dataclasses import replace
from math import hypot
from types import SimpleNamespace

import pytest

from ptmark.errors import PhotoError, RecordError, UsageError
from ptmark.hides import Hides
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_to_json, restore_draft
from ptmark.inspection.set_results import Results
from ptmark.inspection.set_sizes import sizes_of
from ptmark.least import Least
from ptmark.measure import Quantity
from ptmark.photo import open_photo
from ptmark.record import load_record, save_record, scenes_of
from ptmark.scale import CardReference
from ptmark.series import timed

TIMES = (5, 12, 25, 75)  # min


@pytest.fixture
def pair(photo_file, overview_file):
    """Overview first, close-up at hand; both with the card, looked at."""
    made = Inspection()
    made.change("choose", profile="iso-23277-2")
    made.open(overview_file)
    made.set_reference(CardReference())
    made.set_suggestions(made.look())
    made.photos.add(open_photo(photo_file))
    made.set_reference(CardReference())
    made.set_suggestions(made.look())
    return made


def by_length(inspection):
    """Letters of the photo at hand, the longest first."""
    size = {m.id: inspection.measurement(m).length.value for m in inspection.counted}
    return sorted(size, key=lambda name: -size[name])


def test_letters_are_unique_over_the_set(pair):
    first, second = pair.state.photos
    assert [one.info.path.name for one in (first, second)] == ["overview.png", "weld photo.png"]
    names = [m.id for one in (first, second) for m in one.marked]
    assert len(first.marked) >= 2
    assert len(second.marked) == 3
    assert len(set(names)) == len(names)
    assert pair.photos.number == 1
    assert first.profile == second.profile == "iso-23277-2"  # shared


def test_one_indication_in_two_photos_takes_the_size_of_the_less_uncertain(pair):
    line = by_length(pair)[0]
    pair.photos.turn_to(0)
    far = by_length(pair)[0]
    assert line in pair.photos.candidates(far)
    pair.photos.same(far, line)
    found = pair.photos.seen_again()[line]
    sizes = dict(found.shown)
    assert found.of_record == 1
    assert not found.chosen
    assert sizes[1].length.expanded < sizes[0].length.expanded
    # drawn: a bar of 20 x 1.2 mm (diagonal by Pythagoras: 20.036)
    assert sizes[1].length.value == pytest.approx(20.036, abs=0.12)
    shown = zip((pair.scene(), *scenes_of(pair.to_record())), (0, 0, 1), strict=True)
    for scene, number in shown:
        judged = next(one for one in scene.indications if one.id == line)
        assert judged.length == pytest.approx(sizes[1].length.value, abs=1e-3)
        # what a close-up makes sure is the size, not where it lies in the overview
        own = sizes[number].length.expanded
        assert (judged.place_u or judged.length_u) == pytest.approx(own, abs=1e-3)
    pair.photos.choose(line, 0)
    assert pair.photos.seen_again()[line].of_record == 0
    assert pair.photos.seen_again()[line].chosen
    pair.undo()
    assert pair.photos.seen_again()[line].of_record == 1
    name = pair.photos.apart(line)
    assert name not in {m.id for m in pair.state.photos[1].marked}
    assert pair.photos.seen_again() == {}


def test_a_photo_that_shows_a_part_gives_no_size_where_another_shows_the_whole(pair, tmp_path):
    line = by_length(pair)[0]
    pair.photos.turn_to(0)
    pair.photos.same(by_length(pair)[0], line)
    pair.photos.turn_to(1)
    out = tuple(
        replace(one, outline_px=one.outline_px - one.outline_px.min(axis=0) * [1, 0])
        if one.id == line
        else one
        for one in pair.state.marked
    )
    pair.change("move it to the left edge", marked=out)
    assert Least.RUNS_OUT in pair.measurement(pair.marked(line)).least
    assert pair.photos.seen_again()[line].of_record == 0
    assert not any(one.least for one in pair.scene().indications)
    name = pair.photos.apart(line)  # now nothing shows the whole of it
    record = pair.to_record()
    save_record(tmp_path / "kept.json", record)
    again = load_record(tmp_path / "kept.json")
    for scene in (pair.scene(), scenes_of(again)[1]):
        assert [one.id for one in scene.indications if Least.RUNS_OUT in one.least] == [name]
    assert any(
        f.rule == "whole" and f.indications == (name,) for f in pair.evaluation().findings
    )
    pair.change("no criteria", profile="")
    assert any("photo's edge" in said for said in pair.to_record().more_photos[0]["cautions"])


def test_the_record_of_a_set_holds_each_photo_and_what_joins_them(pair, tmp_path):
    line = by_length(pair)[0]
    pair.photos.turn_to(0)
    far = by_length(pair)[0]
    pair.photos.same(far, line)
    pair.change("decide", decision="accept")
    record = pair.to_record()
    assert record.photo["file"] == "overview.png"
    assert [one["photo"]["file"] for one in record.more_photos] == ["weld photo.png"]
    assert record.verdict == "rejectable"  # 20 mm linear against 4 mm
    assert record.disposition == {"decision": "accept", "reason": ""}
    told = record.together["cautions"]
    assert any("judged on its own surface" in said for said in told)
    assert any("departs from the verdict" in said for said in told)
    assert not any("departs from the verdict" in said for said in record.cautions)
    (again,) = record.together["seen_again"]
    assert (again["id"], again["of_record"], again["chosen"]) == (line, 2, False)
    one, two = again["sizes"]
    # ISO/IEC 17043: En = |x1 - x2| / sqrt(U1^2 + U2^2), worked out here from the record.
    en = abs(one["length_mm"] - two["length_mm"]) / hypot(
        one["length_u_mm"], two["length_u_mm"]
    )
    assert one["en"] == pytest.approx(en, abs=1e-4)
    assert two["en"] is None
    save_record(tmp_path / "set.json", record)
    assert load_record(tmp_path / "set.json") == record
    views = record.views()
    assert [view.photo["sha256"] for view in views] == [i.sha256 for i in pair.photos.infos]
    assert [len(view.indications) for view in views] == [
        len(one.marked) for one in pair.state.photos
    ]


def test_undo_leads_back_to_the_photo_that_was_changed(pair):
    marked = pair.state.marked
    pair.edit(marked[0].id, "drop", standing="dropped")
    pair.photos.turn_to(0)
    assert pair.undo_name == f"drop {marked[0].id}"
    assert pair.needed[0].path.name == "weld photo.png"
    pair.undo()
    assert pair.photo.info.path.name == "weld photo.png"
    assert pair.state.marked == marked
    pair.redo()
    assert pair.state.marked[0].standing == "dropped"
    while pair.undo_name:
        pair.undo()
    assert len(pair.photos) == 1
    assert pair.photo.info.path.name == "overview.png"
    while pair.redo_name:
        pair.redo()
    assert len(pair.photos) == 2
    assert pair.surface is not None


def test_order_and_removal_can_be_taken_back(pair):
    pair.photos.move(1, 0)
    assert [one.path.name for one in pair.photos.infos] == ["weld photo.png", "overview.png"]
    assert pair.photos.number == 0
    pair.photos.remove(0)
    assert pair.photo.info.path.name == "overview.png"
    with pytest.raises(UsageError, match="keeps one photo"):
        pair.photos.remove(0)
    pair.undo()
    assert pair.photo.info.path.name == "weld photo.png"
    assert len(pair.state.marked) == 3
    assert all(pair.measurement(m) is not None for m in pair.state.marked)


def test_one_content_stands_in_a_set_once(pair, photo_file):
    with pytest.raises(UsageError, match="in the set already"):
        pair.photos.add(open_photo(photo_file))
    with pytest.raises(UsageError, match="no photo 3"):
        pair.photos.turn_to(2)


def test_an_overview_without_a_scale_takes_no_part_where_close_ups_judge(pair):
    near = by_length(pair)
    pair.photos.turn_to(0)
    pair.set_reference(None)
    assert pair.evaluation() is None
    record = pair.to_record()
    assert record.verdict == "rejectable"
    assert any("nothing else judges" in said for said in record.together["cautions"])
    pair.photos.turn_to(1)
    pair.edit(near[0], "drop", standing="dropped")  # what is left is acceptable
    assert pair.to_record().verdict is None
    pair.photos.turn_to(0)
    for mine in [m.id for m in pair.state.marked]:
        pair.remove(mine)
    assert pair.to_record().verdict == "acceptable"
    assert any("kept as a picture" in said for said in pair.to_record().together["cautions"])


def test_a_coarse_overview_holds_nothing_open_where_close_ups_show_what_it_shows(pair):
    def coarse():
        return [bool(view.conditions.get("coarse")) for view in pair.to_record().views()]

    near = by_length(pair)
    pair.photos.turn_to(0)
    far = by_length(pair)
    assert coarse() == [True, False]
    for mine in far[2:]:
        pair.remove(mine)
    pair.photos.same(far[0], near[0])
    assert coarse() == [True, False]  # one of two is seen in the overview alone
    pair.photos.same(far[1], near[1])
    assert coarse() == [False, False]
    assert Hides.COARSE not in pair.scene().hidden
    pair.photos.choose(near[0], 0)
    assert coarse() == [True, False]  # judged by the overview's size
    pair.undo()
    pair.photos.turn_to(1)
    pair.edit(near[0], "drop", standing="dropped")
    assert coarse() == [True, False]
    pair.undo()
    pair.set_reference(None)  # and so close-ups judge nothing
    pair.photos.turn_to(0)
    assert Hides.COARSE in pair.scene().hidden
    for mine in [m.id for m in pair.state.marked]:
        pair.remove(mine)
    assert Hides.COARSE in pair.scene().hidden  # what it does not show may be all that there is


def test_a_photo_that_has_gone_or_changed_stops_the_step_not_the_work(
    pair, tmp_path, photo_file
):
    made = Inspection()
    copy = tmp_path / "copy.png"
    copy.write_bytes(photo_file.read_bytes())
    made.open(copy)
    made.photos.add(open_photo(pair.photos.infos[0].path))
    copy.write_bytes(pair.photos.infos[0].path.read_bytes())
    before = made.state
    with pytest.raises(PhotoError, match="changed since"):
        made.photos.turn_to(0)
    assert made.state is before
    copy.unlink()
    with pytest.raises(PhotoError):
        made.undo()
    assert made.state is before
    assert made.undo_name == "add overview.png"


def test_a_draft_brings_the_set_back(pair):
    line = by_length(pair)[0]
    pair.photos.turn_to(0)
    pair.photos.same(by_length(pair)[0], line)
    pair.photos.choose(line, 0)
    document = json.loads(json.dumps(draft_to_json(pair)))
    other = Inspection()
    restore_draft(other, document)
    assert draft_to_json(other) == document
    assert len(other.photos) == 2
    assert other.photos.number == 0
    assert other.photos.seen_again()[line].chosen
    was, now = pair.to_record(), other.to_record()
    assert now.verdict == was.verdict
    (old,), (new,) = was.together["seen_again"], now.together["seen_again"]
    assert (new["id"], new["of_record"], new["chosen"]) == (line, 1, True)
    for before, after in zip(old["sizes"], new["sizes"], strict=True):
        assert after == pytest.approx(before, abs=2e-3)
    for before, after in zip(was.views(), now.views(), strict=True):
        for a, b in zip(before.indications, after.indications, strict=True):
            assert a["length_mm"] == pytest.approx(b["length_mm"], abs=2e-3)
    document["before"] = [{**document["after"][0], "photo": {"path": "/x", "sha256": "y"}}]
    with pytest.raises(PhotoError):
        restore_draft(Inspection(), document)
    del document["before"][0]["marked"]
    with pytest.raises(RecordError, match="does not fit"):
        restore_draft(Inspection(), document)


def test_only_the_photo_at_hand_is_decoded(pair):
    import gc

    from ptmark.photo import Photo

    first = pair.photos.infos[0]
    pair.photos.turn_to(0)
    pair.photos.turn_to(1)
    pair.photos.evaluations()
    gc.collect()
    held = [one for one in gc.get_objects() if isinstance(one, Photo)]
    assert [one.info.sha256 for one in held if one.info.path == first.path] == []


def test_twins_know_the_set_and_teach_what_they_worked_out(pair):
    twin = pair.twin()
    made = {id(one): twin.measurement(one) for one in twin.counted}
    pair.learn(twin)
    assert all(pair.measurement(one) is made[id(one)] for one in pair.counted)
    verdicts = [one.verdict for one in twin.photos.evaluations()]
    assert verdicts == [one.verdict for one in pair.photos.evaluations()]


def test_where_sizes_contradict_each_other_the_longest_counts(pair):
    """A wrong join must not make a 20 mm line pass for a 4 mm disc."""
    line, disc = by_length(pair)[:2]
    pair.photos.turn_to(0)
    far_line, far_disc = by_length(pair)[:2]
    pair.photos.same(far_line, disc)
    found = pair.photos.seen_again()[disc]
    assert found.of_record == 0  # 20 mm, though the disc's own photo is surer
    assert not found.chosen
    for scene in scenes_of(pair.to_record()):
        judged = [one.length for one in scene.indications if one.id == disc]
        assert judged[0] == pytest.approx(20.036, abs=0.12)
    assert any("look again" in said for said in pair.to_record().together["cautions"])
    pair.photos.choose(disc, 1)
    assert pair.photos.seen_again()[disc].of_record == 1  # the inspector's word counts
    assert line not in pair.photos.seen_again()
    assert far_disc not in pair.photos.seen_again()


def sized(value, u=0.1, least=()):
    """A measurement as far as sizes of record ask: its length, and why it is the least."""
    length = Quantity(value, {"edge": u / 2}, "mm")
    return SimpleNamespace(length=length, least=least)


# ASME BPVC V, T-676.1: evaluated from 10 to 60 min after the developer.
@pytest.mark.parametrize(
    ("lengths", "held", "early"),
    [
        ([5.0, 8.0, 10.0, 11.0], 2, {0, 1}),  # at 5, 12, 25 and 75 min: the last to evaluate
        ([5.0, 8.0, None, 11.0], 1, {0}),  # hidden in that one: of the others in its time
        ([5.0, 10.5, 10.0, 11.0], 1, {0}),  # dye does not go back: the longer one counts
        ([5.0, None, None, 11.0], 3, {0}),  # in none of them: the strict side, as ever
    ],
)
def test_of_a_bleed_out_the_photo_to_be_evaluated_counts(lengths, held, early):
    taken = [(f"{m}", f"2026-01-15T{10 + m // 60}:{m % 60:02d}") for m in TIMES]
    times = timed("10:00", taken, "")
    made = [(n, None if mm is None else sized(mm)) for n, mm in enumerate(lengths)]
    found = sizes_of(made, None, times)
    assert (found.of_record, set(found.early), found.by_time) == (held, early, True)
    assert sizes_of(made, 0, times).of_record == 0  # the inspector's word


def test_a_size_that_is_the_least_in_its_time_is_not_replaced_by_an_earlier_one():
    """A hand over the photo to be evaluated leaves it open; what was whole before has grown."""
    times = timed("10:00", [("a", "2026-01-15T10:05"), ("b", "2026-01-15T10:25")], "")
    assert times.is_series
    found = sizes_of([(0, sized(8.0)), (1, sized(6.0, least=("covered",)))], None, times)
    assert found.of_record == 1


def test_an_overview_and_a_close_up_of_one_evaluation_are_no_series():
    times = timed("10:00", [("a", "2026-01-15T10:25"), ("b", "2026-01-15T10:26")], "")
    assert not times.is_series


def test_an_earlier_photo_that_shows_less_is_no_contradiction(pair):
    """The same sizes are told to look at again where the photos are of one evaluation."""
    disc = by_length(pair)[1]
    pair.photos.turn_to(0)
    pair.photos.same(by_length(pair)[0], disc)  # 20 mm in the overview, the disc close up
    told = {}
    for first, last in (("25", "05"), ("25", "24"), ("05", "25")):
        states = [
            replace(one, info=replace(one.info, camera=replace(one.info.camera, taken=at)))
            for one, at in zip(
                pair.state.photos,
                (f"2026-01-15T10:{first}", f"2026-01-15T10:{last}"),
                strict=True,
            )
        ]
        worked = pair.photos.results().photos
        shot = [replace(one, info=s.info) for one, s in zip(worked, states, strict=True)]
        times = timed("10:00", [("", s.info.camera.taken) for s in states], "")
        record = Results(shot, {}, times).record(pair, None, None)
        told[first, last] = (
            any("look again" in said for said in record.together["cautions"]),
            record.together["seen_again"][0]["of_record"],
        )
    assert told == {
        ("25", "05"): (False, 1),  # close up before the time to evaluate, and smaller
        ("25", "24"): (True, 1),  # within it: one of them is wrong, and the longer one counts
        ("05", "25"): (True, 2),  # longer before: bleed-out does not go back
    }
