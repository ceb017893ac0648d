"""How records stand with their reviewer, and their photos found by content."""

import hashlib
from dataclasses import replace

import pytest

from ptmark.errors import RecordError, UsageError
from ptmark.record import Signer, key_of, load_record, save_record, sign_record
from ptmark.review import (
    BlindReview,
    Remark,
    photo_place,
    reviewed,
    sound_record,
    standing_of,
    worklist,
)


def enter(path, second, outcome, keys, remarks=()):
    record = load_record(path)
    compared = BlindReview(record).finish(record, second)
    made = reviewed(record, compared, reviewer="second", outcome=outcome, remarks=remarks)
    record = save_record(path, made, by="second", why="review")
    if outcome == "signed":
        who = Signer(role="reviewer", name="second")
        record = save_record(path, sign_record(record, who, key_of("second", keys)))
    return record


def test_each_standing_follows_from_the_revisions(first, signed, second, tmp_path):
    path, keys = tmp_path / "r.json", tmp_path / "keys"
    assert standing_of(first) == "not signed"
    save_record(path, signed)
    assert standing_of(load_record(path)) == "to review"
    enter(path, second, "returned", keys, (Remark(text="trace A again"),))
    assert standing_of(load_record(path)) == "returned"
    # The examiner mends it: it waits for a signature, then for a review of its own.
    mended = replace(load_record(path), fields={**first.fields, "remarks": "traced again"})
    save_record(path, mended, by="first", why="returned")
    assert standing_of(load_record(path)) == "not signed"
    who = Signer(role="examiner", name="first")
    save_record(path, sign_record(load_record(path), who, key_of("first", keys)))
    assert standing_of(load_record(path)) == "to review"
    enter(path, second, "new photo asked", keys, (Remark(text="blurred"),))
    assert standing_of(load_record(path)) == "needs photo"
    enter(path, second, "signed", keys)
    assert standing_of(load_record(path)) == "signed"


def test_a_review_to_be_signed_without_its_signature_is_still_to_do(signed, second, tmp_path):
    path = tmp_path / "r.json"
    save_record(path, signed)
    record = load_record(path)
    compared = BlindReview(record).finish(record, second)
    save_record(path, reviewed(record, compared, reviewer="second", outcome="signed"))
    assert standing_of(load_record(path)) == "to review"


def test_a_folder_becomes_a_list_that_shows_no_result(signed, tmp_path):
    save_record(tmp_path / "b.json", signed)
    (tmp_path / "a.json").write_text('{"schema": "ptmark-record/3"')
    (tmp_path / "other.json").write_text('{"anything": 1}')
    rows = list(worklist(tmp_path))
    assert [(one.path.name, one.standing) for one in rows] == [
        ("a.json", "not readable"),
        ("b.json", "to review"),
    ]
    assert not {"verdict", "evaluation", "indications"} & set(type(rows[1]).__slots__)


def test_the_list_names_who_signed_where_no_examiner_was_filled_in(first, tmp_path):
    path, keys = tmp_path / "r.json", tmp_path / "keys"
    bare = replace(first, fields={k: v for k, v in first.fields.items() if k != "examiner"})
    for name in ("first", "another"):  # the second after a change
        save_record(path, bare, by=name, why="measured")
        who = Signer(role="examiner", name=name)
        save_record(path, sign_record(load_record(path), who, key_of(name, keys)))
        assert [one.examiner for one in worklist(tmp_path)] == [name]
        bare = replace(load_record(path), fields={**bare.fields, "remarks": "changed"})
    named = replace(load_record(path), fields={**bare.fields, "examiner": "as filled in"})
    save_record(path, named, by="another", why="the examiner was missing")
    assert [one.examiner for one in worklist(tmp_path)] == ["as filled in"]


def test_a_damaged_record_is_refused(signed, tmp_path):
    path = tmp_path / "r.json"
    save_record(path, signed)
    assert sound_record(path).id == signed.id
    path.write_text(path.read_text().replace('"length_mm": 8.0', '"length_mm": 3.0', 1))
    with pytest.raises(UsageError, match="length_mm"):
        sound_record(path)


def test_the_photo_is_known_by_its_content(signed, tmp_path):
    beside, folder = tmp_path / "r.json", tmp_path / "elsewhere"
    folder.mkdir()
    sha256 = hashlib.sha256(b"the photo").hexdigest()
    photo = {**signed.photo, "file": "part.jpg", "sha256": sha256}
    record = replace(signed, photo=photo)
    with pytest.raises(UsageError, match="is not there"):
        photo_place(record, beside)
    (tmp_path / "part.jpg").write_bytes(b"another photo")
    with pytest.raises(UsageError, match="another photo or was changed"):
        photo_place(record, beside)
    (folder / "renamed.jpg").write_bytes(b"the photo")
    assert photo_place(record, beside, folder) == folder / "renamed.jpg"


def test_what_was_not_measured_can_be_returned_but_not_signed(signed):
    nothing = BlindReview(signed).unmeasured()
    with pytest.raises(RecordError, match="nothing was measured"):
        reviewed(signed, nothing, reviewer="second", outcome="signed")
    asked = reviewed(
        signed,
        nothing,
        reviewer="second",
        outcome="new photo asked",
        remarks=(Remark(text="the card is out of focus", at_px=(10.0, 20.0)),),
    )
    (entry,) = asked.reviews
    assert (entry["pairs"], entry["only_first"], entry["scale"]) == ([], [], None)
    assert entry["remarks"][0]["at_px"] == [10.0, 20.0]
