import json
from dataclasses import replace
from pathlib import Path

import jsonschema
import numpy as np
import pytest

from ptmark.errors import RecordError
from ptmark.record import (
    PHOTO_MEMBERS,
    Record,
    Signer,
    changed_paths,
    follow,
    key_of,
    link_to,
    load_record,
    record_schema,
    record_text,
    revision_hash,
    save_record,
    sign_record,
    verify_file,
)
from ptmark.record.canonical import canonical_json, digest, spelled_once
from ptmark.record.store import set_out

WRITTEN = Path(__file__).parent / "written"


@pytest.mark.truth
def test_canonical_json_follows_the_published_sample():
    # RFC 8785, sections 3.2.2 and 3.2.3: the sample object and its canonical form.
    given = (
        r'{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],'
        r'"string":"\u20ac$\u000F\u000aA\u0027\u0042\u0022\u005c\\\"\/",'
        r'"literals":[null,true,false]}'
    )
    wanted = (
        '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}'
    )
    assert canonical_json(json.loads(given)).decode() == wanted


@pytest.mark.truth
@pytest.mark.parametrize(
    ("bits", "text"),
    [  # RFC 8785, appendix B: doubles by their bits, and how they are written (from memory)
        ("0000000000000000", "0"),
        ("8000000000000000", "0"),
        ("0000000000000001", "5e-324"),
        ("8000000000000001", "-5e-324"),
        ("7fefffffffffffff", "1.7976931348623157e+308"),
        ("4340000000000000", "9007199254740992"),
        ("c340000000000000", "-9007199254740992"),
        ("4430000000000000", "295147905179352830000"),
        ("44b52d02c7e14af5", "9.999999999999997e+22"),
        ("44b52d02c7e14af6", "1e+23"),
        ("44b52d02c7e14af7", "1.0000000000000001e+23"),
        ("444b1ae4d6e2ef4e", "999999999999999700000"),
        ("444b1ae4d6e2ef4f", "999999999999999900000"),
        ("444b1ae4d6e2ef50", "1e+21"),
        ("3eb0c6f7a0b5ed8c", "9.999999999999997e-7"),
        ("3eb0c6f7a0b5ed8d", "0.000001"),
        ("41b3de4355555553", "333333333.3333332"),
        ("becbf647612f3696", "-0.0000033333333333333333"),
    ],
)
def test_canonical_numbers_follow_the_published_table(bits, text):
    value = np.frombuffer(bytes.fromhex(bits), ">f8")[0].item()
    assert canonical_json(value).decode() == text


@pytest.mark.truth
def test_canonical_keys_are_sorted_by_utf_16_units():
    # RFC 8785, section 3.2.3: the sorting sample.
    given = {"€": 1, "\r": 2, "\ufb33": 3, "1": 4, "😀": 5, "\u0080": 6, "ö": 7}
    order = [2, 4, 6, 7, 1, 5, 3]
    assert list(json.loads(canonical_json(given)).values()) == order


def test_lists_of_points_are_spelt_as_their_numbers_alone():
    values = [0.0, -0.0, 1.0, 10.0, -3.0, 0.05, 1e-7, 1e22, 12.05, 123456789012345680.0, 7]
    pairs = [[a, b] for a in values for b in values]
    one = {a: canonical_json(a).decode() for a in values}
    wanted = ",".join(f"[{one[a]},{one[b]}]" for a, b in pairs)
    assert canonical_json(pairs).decode() == f"[{wanted}]"
    for a, b in pairs:
        assert canonical_json([a, b]).decode() == f"[{one[a]},{one[b]}]"


def test_a_list_spelt_for_the_file_and_its_seal_at_once_reads_as_if_spelt_twice():
    rows = [
        {"id": "A", "ring": [[n + 0.5, n * 20.0] for n in range(20)], "last": 1.0},
        {"ring": [[0.1, n] for n in range(17)] + [[-0.0, 1e-7]]},  # not that simple
        {"said": ["a, b", "1.0, 2", "é"] * 9, "none": [], "few": [[1.0, 2.0]]},
        {"odd": [1.0, "a, b", None, True, {"x": [1.0] * 30}] * 5},
    ]
    wanted = digest(rows)
    with spelled_once():
        text = set_out({"rows": rows, "alone": [1.0] * 30})
        assert digest(rows) == wanted
    # Python's own encoder, one row a line
    lines = ",\n  ".join(json.dumps(row, ensure_ascii=False) for row in rows)
    alone = json.dumps([1.0] * 30)
    assert text == f'{{\n "rows": [\n  {lines}\n ],\n "alone": {alone}\n}}\n'
    rows[0]["ring"][0][0] = 0.6
    assert digest(rows) != wanted  # nothing is remembered beyond


@pytest.mark.parametrize("odd", [float("nan"), 2**53, {1: 2}, "\ud800", b"bytes"])
def test_what_json_cannot_hold_has_no_canonical_form(odd):
    with pytest.raises(RecordError, match="no canonical JSON"):
        digest({"value": odd})


def test_a_record_of_version_1_still_opens_and_is_written_as_version_2(tmp_path):
    old = json.loads((WRITTEN / "record-1.json").read_text("utf-8"))
    assert old["schema"] == "ptmark-record/1"
    jsonschema.validate(old, record_schema(1))
    record = load_record(WRITTEN / "record-1.json")
    assert record.history == []
    assert record.signatures == []
    for name in set(old) - {"schema"}:
        assert getattr(record, name) == old[name], name
    save_record(tmp_path / "new.json", record)
    new = json.loads((tmp_path / "new.json").read_text("utf-8"))
    jsonschema.validate(new, record_schema(2))
    assert new["schema"] == "ptmark-record/2"
    assert load_record(tmp_path / "new.json") == record


def test_a_signed_record_of_version_2_opens_and_its_signatures_outlive_a_change(tmp_path):
    path = tmp_path / "record.json"
    path.write_bytes((WRITTEN / "record-2.json").read_bytes())
    old = json.loads(path.read_text("utf-8"))
    jsonschema.validate(old, record_schema(2))
    record = load_record(path)
    assert {**record.to_json(), "seal": old["seal"]} == old
    assert record.views() == [record]
    assert save_record(path, record) == record
    assert path.read_bytes() == (WRITTEN / "record-2.json").read_bytes()
    # Made afresh by this version, with a second photo: version 3, the chain whole.
    second = {name: getattr(record, name) for name in PHOTO_MEMBERS}
    second["photo"] = {**record.photo, "sha256": "cd" * 32}
    told = {"verdict": "rejectable", "seen_again": [], "cautions": []}
    afresh = replace(record, more_photos=[second], together=told, history=[], signatures=[])
    save_record(path, replace(afresh, schema="ptmark-record/3"), by="first", why="close-up")
    new = json.loads(path.read_text("utf-8"))
    jsonschema.validate(new, record_schema(3))
    assert new["schema"] == "ptmark-record/3"
    assert new["revision"] == 3
    assert new["change"]["what"] == ["more_photos", "together"]
    assert [one["schema"] for one in new["history"]] == ["ptmark-record/2"] * 2
    found = verify_file(path)
    assert [one for one in found if one.holds is False] == []
    assert sum("signed by" in one.says for one in found) == 2
    assert [one.photo["sha256"] for one in load_record(path).views()] == ["ab" * 32, "cd" * 32]


def test_a_signed_record_of_version_3_stays_whole_and_is_written_as_it_was(tmp_path):
    """Members added to version 3 later must not touch what was signed without them."""
    path = tmp_path / "record.json"
    path.write_bytes((WRITTEN / "record-3.json").read_bytes())
    jsonschema.validate(json.loads(path.read_text("utf-8")), record_schema(3))
    found = verify_file(path)
    assert [one for one in found if one.holds is not True] == []
    assert sum("signed by" in one.says for one in found) == 2
    record = load_record(path)
    first, second = record.views()
    assert [one["reason"] for one in first.given["dropped"]] == ["a scratch"]
    assert second.given is None
    assert (first.diameter_mm, record.chosen) == (168.3, {"carried": ["procedure"]})
    path.write_text(record_text(record), "utf-8")
    assert path.read_bytes() == (WRITTEN / "record-3.json").read_bytes()


@pytest.fixture
def signed(record, tmp_path):
    key = key_of("examiner", tmp_path / "keys")
    who = Signer(role="examiner", name="examiner", qualification="invented 2")
    return sign_record(record, who, key)


def test_saving_after_signing_makes_a_revision_that_says_what_changed(tmp_path, signed):
    path = tmp_path / "one.json"
    save_record(path, signed)
    rows = [dict(one) for one in signed.indications]
    rows[0]["note"], rows[1]["id"] = "looked at again", "C"
    fields = {**signed.fields, "remarks": "wiped once"}
    # Made afresh, as the window does: it knows nothing of revisions.
    fresh = replace(signed, fields=fields, indications=rows, signatures=[], revision=1)
    written = save_record(path, fresh, by="examiner", why="second look")
    assert written == load_record(path)
    assert (written.revision, written.signatures) == (2, [])
    assert written.change is not None
    assert written.change["by"] == "examiner"
    assert written.change["why"] == "second look"
    assert sorted(written.change["what"]) == [
        "fields.remarks",
        "indications.A.note",
        "indications.B",
        "indications.C",
    ]
    (first,) = written.history
    assert Record.from_json(first) == signed
    # The chain by hand: hash of the canonical JSON without seal.
    plain = {name: value for name, value in first.items() if name != "seal"}
    assert written.previous == digest(plain)
    assert all(one.holds is not False for one in verify_file(path))


def test_an_open_revision_is_replaced_and_keeps_its_chain(tmp_path, signed):
    path = tmp_path / "one.json"
    save_record(path, signed)
    for text in ("first try", "second try"):
        change = replace(signed, signatures=[], fields={**signed.fields, "remarks": text})
        written = save_record(path, change, by="examiner", why="typing")
    assert written.revision == 2
    assert written.fields["remarks"] == "second try"
    assert len(written.history) == 1
    who = Signer(role="examiner", name="examiner")
    again = sign_record(written, who, key_of("examiner", tmp_path / "keys"))
    assert save_record(path, again) == again
    third = save_record(path, replace(again, fields={}, signatures=[]), why="emptied")
    assert [one["revision"] for one in third.history] == [1, 2]
    assert third.revision == 3
    assert all(one.holds is not False for one in verify_file(path))


def test_saving_a_signed_record_unchanged_changes_nothing(tmp_path, signed):
    path = tmp_path / "one.json"
    save_record(path, signed)
    before = path.read_bytes()
    save_record(path, replace(signed, signatures=[]))
    assert path.read_bytes() == before


def test_a_signed_record_of_another_inspection_is_not_overwritten(tmp_path, signed):
    path = tmp_path / "one.json"
    save_record(path, signed)
    before = path.read_bytes()
    with pytest.raises(RecordError, match="another inspection") as caught:
        save_record(path, replace(signed, id="r-2", signatures=[]))
    assert caught.value.where == str(path)
    path.write_bytes(before[:-100])
    with pytest.raises(RecordError, match="not JSON"):
        save_record(path, signed)
    assert path.read_bytes() == before[:-100]


def test_reviews_and_links_outlive_a_record_made_afresh(signed):
    link = link_to(replace(signed, id="r-0"), "r-0.json")
    linked = follow(signed, replace(signed, retest_of=link, signatures=[]))
    assert linked.change is not None
    assert linked.change["what"] == ["retest_of"]
    fresh = replace(signed, disposition={"decision": "accept", "reason": "x"}, signatures=[])
    assert follow(linked, fresh).retest_of == link


def test_paths_of_what_changed_name_each_part_once(record):
    before, after = record.to_json(), record.to_json()
    assert changed_paths(before, after) == []
    after["photo"] = {**after["photo"], "sha256": "0" * 64}
    after["indications"] = [{**one, "length_mm": 1.0} for one in after["indications"]]
    wanted = ["photo.sha256", "indications.A.length_mm", "indications.B.length_mm"]
    assert changed_paths(before, after) == wanted


def test_the_text_carries_a_seal_over_everything_else(record):
    document = json.loads(record_text(record))
    seal = document.pop("seal")
    document.pop("history")
    assert seal["sha256"] == revision_hash(record.to_json()) == digest(document)
    assert seal["parts"]["fields.part_number"] == digest("P-17")[:12]
