import json
import os
import sys
from dataclasses import replace

import numpy as np
import pytest

from ptmark.errors import RecordError
from ptmark.record import (
    Signer,
    find_photo,
    fingerprint,
    key_of,
    load_record,
    record_text,
    save_record,
    sign_record,
    verify_file,
)
from ptmark.record.canonical import canonical_json


@pytest.fixture
def keys(tmp_path):
    return tmp_path / "keys"


@pytest.fixture
def kept(tmp_path, record, keys):
    """A small record of two signed revisions, with its photo."""
    photo = np.random.default_rng(3).bytes(20_000)
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "invented weld.jpg").write_bytes(photo)
    import hashlib

    facts = {**record.photo, "sha256": hashlib.sha256(photo).hexdigest()}
    small = replace(record, photo=facts, left_out=[], indications=record.indications[:1])
    rows = [{**small.indications[0], "outline_px": [[1.0, 2.0], [3.5, 2.0], [3.0, 4.0]]}]
    small = replace(small, indications=rows)
    path = tmp_path / "one.json"
    examiner = Signer(role="examiner", name="first", qualification="invented 2")
    first = sign_record(small, examiner, key_of("first", keys))
    save_record(path, first)
    changed = replace(first, disposition={"decision": "accept", "reason": "ground"})
    second = save_record(
        path, replace(changed, signatures=[]), by="first", why="after grinding"
    )
    second = sign_record(second, examiner, key_of("first", keys))
    second = sign_record(second, Signer(role="reviewer", name="second"), key_of("second", keys))
    save_record(path, second)
    return path


def wrong(found):
    return [one for one in found if one.holds is False]


def test_a_whole_record_holds(kept, tmp_path):
    found = verify_file(kept, tmp_path / "photos")
    assert wrong(found) == []
    says = [one.says for one in found]
    assert sum("signed by" in one for one in says) == 3
    assert sum("seal holds" in one for one in says) == 2
    assert sum("follows the one before" in one for one in says) == 1
    assert any(one.where == "photo invented weld.jpg" for one in found)


@pytest.mark.truth
def test_signatures_are_plain_ed25519_over_canonical_json(kept):
    """By hand with the library alone, as any third party would check it (RFC 8032)."""
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    document = json.loads(kept.read_text("utf-8"))
    signatures = document["signatures"]
    body = {k: v for k, v in document.items() if k not in {"history", "seal", "signatures"}}
    for number, one in enumerate(signatures):
        head = {k: v for k, v in one.items() if k != "value"}
        message = {"record": body, "before": signatures[:number], "signed": head}
        key = Ed25519PublicKey.from_public_bytes(bytes.fromhex(one["key"]))
        key.verify(bytes.fromhex(one["value"]), canonical_json(message))  # raises if not


@pytest.mark.slow
def test_any_flipped_byte_is_found(kept):
    """One bit of one byte at a time, through the whole file, in steps of a prime."""
    whole = kept.read_bytes()
    chance = np.random.default_rng(8)
    for at in range(0, len(whole), 97):
        bit = 1 << int(chance.integers(8))
        kept.write_bytes(whole[:at] + bytes([whole[at] ^ bit]) + whole[at + 1 :])
        assert wrong(verify_file(kept)), (at, bit, whole[max(0, at - 20) : at + 20])


def test_a_flipped_byte_of_the_photo_is_found(kept, tmp_path):
    photo = tmp_path / "photos" / "invented weld.jpg"
    whole = photo.read_bytes()
    for at in np.random.default_rng(4).integers(len(whole), size=60):
        photo.write_bytes(whole[:at] + bytes([whole[at] ^ 1]) + whole[at + 1 :])
        (one,) = wrong(verify_file(kept, tmp_path / "photos"))
        assert one.where == "photo invented weld.jpg"
    photo.unlink()
    (one,) = wrong(verify_file(kept, tmp_path / "photos"))
    assert "no file" in one.says
    (tmp_path / "photos" / "renamed.jpg").write_bytes(whole)
    assert wrong(verify_file(kept, tmp_path / "photos")) == []


@pytest.mark.parametrize(
    ("old", "new", "where"),
    [
        (b'"P-17"', b'"P-18"', "revision 1, fields.part_number"),
        (b'"after grinding"', b'"after blending"', "revision 2, change.why"),
        (b'"ground"', b'"blended"', "revision 2, disposition.reason"),
        (b'"name": "first"', b'"name": "fir5t"', "revision 1, signatures.0.name"),
        (b'"name": "second"', b'"name": "sec0nd"', "revision 2, signatures.1.name"),
        (b'"length_mm": 8.0', b'"length_mm": 3.0', "revision 1, indications.A.length_mm"),
    ],
)
def test_the_changed_field_is_named(kept, old, new, where):
    whole = kept.read_bytes()
    at = whole.rindex(old) if where.startswith("revision 1") else whole.index(old)
    kept.write_bytes(whole[:at] + new + whole[at + len(old) :])
    found = wrong(verify_file(kept))
    assert where in [one.where for one in found]
    # The seal is not all: who makes it again leaves a signature or a link that fails.
    assert any("signature" in one.says or "follow" in one.says for one in found)


def test_a_seal_made_again_does_not_hide_a_change(kept):
    record = load_record(kept)
    forged = replace(record, fields={**record.fields, "part_number": "P-99"})
    kept.write_text(record_text(forged), "utf-8")
    found = wrong(verify_file(kept))
    assert [one.where for one in found] == [f"revision 2, signature {n}" for n in (1, 2)]
    dropped = replace(record, history=[])
    kept.write_text(record_text(dropped), "utf-8")
    (one,) = wrong(verify_file(kept))
    assert "missing" in one.says
    shorn = replace(record, signatures=record.signatures[1:])  # the examiner's taken out
    kept.write_text(record_text(shorn), "utf-8")
    assert "does not fit" in wrong(verify_file(kept))[0].says


def test_a_record_signed_again_by_another_is_told_by_its_key(kept, keys):
    record = load_record(kept)
    trusted = fingerprint(record.signatures[0]["key"])
    assert wrong(verify_file(kept, keys=(trusted,))) == []
    assert wrong(verify_file(kept, keys=(trusted.replace(" ", "").upper(),))) == []
    other = sign_record(
        replace(record, signatures=[], history=[], previous=None, change=None),
        Signer(role="examiner", name="first"),
        key_of("somebody else", keys),
    )
    kept.write_text(record_text(other), "utf-8")
    assert wrong(verify_file(kept)) == []
    assert "trusted key" in wrong(verify_file(kept, keys=(trusted,)))[0].says


ODD = [None, 0, -1, 1.5, "", "x", [], {}, [1], {"a": 1}, True, "\ud800", 10**20, [{}], [[]]]


def test_whatever_stands_in_the_place_of_a_member_is_told(kept):
    """Whole members taken out or replaced, of the record and of its history."""
    from ptmark.record.store import set_out

    def places(node, path=()):
        if len(path) < 4 and isinstance(node, dict | list):
            pairs = node.items() if isinstance(node, dict) else enumerate(node)
            for key, value in pairs:
                yield from places(value, (*path, key))
        if path:
            yield path

    whole = json.loads(kept.read_text("utf-8"))
    every = list(places(whole))
    chance = np.random.default_rng(9)
    for _ in range(60):
        changed = json.loads(json.dumps(whole))
        *up, last = every[chance.integers(len(every))]
        node = changed
        for step in up:
            node = node[step]
        if chance.random() < 0.3:
            del node[last]
        else:
            node[last] = ODD[chance.integers(len(ODD))]
        if changed == whole:
            continue
        kept.write_bytes(set_out(changed).encode("utf-8", "surrogatepass"))
        assert wrong(verify_file(kept)), (up, last, node)
        verify_file(kept, kept.parent, ("00",))  # nothing of it stops the check


def test_a_byte_outside_the_content_is_placed(kept):
    whole = kept.read_bytes()
    at = whole.index(b'"conditions":') + len(b'"conditions":')
    kept.write_bytes(whole[:at] + b"\t" + whole[at + 1 :])
    (one,) = wrong(verify_file(kept))
    assert f"byte {at} (conditions)" in one.says
    at = whole.index(b'"standing"')
    kept.write_bytes(whole[:at] + b"\xff" + whole[at + 1 :])
    (one,) = wrong(verify_file(kept))
    assert one.where == f"file, byte {at} (indications, row 1)"


def test_keys_are_kept_private_and_each_signer_has_one(keys, record):
    mine = key_of("First  Person", keys)
    assert key_of("first person", keys).private_bytes_raw() == mine.private_bytes_raw()
    assert key_of("second", keys).private_bytes_raw() != mine.private_bytes_raw()
    if os.name == "posix":
        assert {p.stat().st_mode & 0o777 for p in keys.iterdir()} == {0o600}
        for path in keys.iterdir():
            path.chmod(0o644)
        with pytest.raises(RecordError, match="may read the signing key"):
            key_of("second", keys)
    with pytest.raises(RecordError, match="cannot sign"):
        sign_record(record, Signer(role="owner", name="x"), mine)
    with pytest.raises(RecordError, match="cannot sign"):
        sign_record(record, Signer(role="examiner", name=" "), mine)


@pytest.mark.skipif(sys.platform == "win32", reason="paths of POSIX")
def test_a_damaged_key_is_told(keys):
    key_of("first", keys)
    (path,) = keys.iterdir()
    path.write_bytes(b"none")
    with pytest.raises(RecordError, match="cannot be used"):
        key_of("first", keys)


def test_records_of_version_1_are_not_called_wrong(tmp_path):
    from pathlib import Path

    old = Path(__file__).parent / "written" / "record-1.json"
    found = verify_file(old)
    assert wrong(found) == []
    assert any("no seal" in one.says for one in found)
    assert find_photo(tmp_path / "none", "x.jpg", "0" * 64) is None
