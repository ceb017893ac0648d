"""Records of versions 1 and 2, with demo photos that decode, through the archive and back."""

import hashlib
import json
import zipfile
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from ptmark.__main__ import main
from ptmark.archive import Query, find, find_all, open_archive, record_bytes
from ptmark.archive.exchange import bundle_name
from ptmark.photo import open_photo
from ptmark.places import sample_images
from ptmark.record import (
    Signer,
    load_record,
    record_schema,
    save_record,
    sign_record,
    verify_file,
)
from ptmark.record.store import set_out

WRITTEN = Path(__file__).parents[1] / "record" / "written"  # by those versions


def photographed(photo, name, folder):
    """The members of a demo photo, copied beside the record under a name."""
    data = (sample_images() / name).read_bytes()
    (folder / name).write_bytes(data)
    height, width = open_photo(folder / name).rgb.shape[:2]
    return {
        **photo,
        "file": name,
        "sha256": hashlib.sha256(data).hexdigest(),
        "width": width,
        "height": height,
        "bytes": len(data),
    }


@pytest.fixture
def old(tmp_path):
    """A folder with a record of version 1, one of version 2 signed twice, and their photos."""
    folder = tmp_path / "old"
    folder.mkdir()
    first = json.loads((WRITTEN / "record-1.json").read_text("utf-8"))
    first["id"] = "of-version-1"
    first["photo"] = photographed(first["photo"], "good.jpg", folder)
    jsonschema.validate(first, record_schema(1))
    (folder / "one.json").write_text(set_out(first), "utf-8")
    second = load_record(WRITTEN / "record-2.json")
    photo = photographed(second.photo, "rejectable.jpg", folder)
    second = replace(
        second,
        id="of-version-2",
        photo=photo,
        reviews=[{**one, "photo": photo["sha256"]} for one in second.reviews],
        revision=1,
        history=[],
        signatures=[],
        previous=None,
        change=None,
    )
    key = Ed25519PrivateKey.generate()
    path = folder / "two.json"
    signed = sign_record(second, Signer(role="examiner", name="first (invented)"), key)
    save_record(path, signed)
    remarks = f"{signed.fields['remarks']}, looked at again (invented)"
    changed = {**signed.fields, "remarks": remarks}
    later = save_record(path, replace(signed, fields=changed), by="first", why="again")
    save_record(path, sign_record(later, Signer(role="examiner", name="first (invented)"), key))
    told = json.loads(path.read_text("utf-8"))
    jsonschema.validate(told, record_schema(2))
    assert told["schema"] == "ptmark-record/2"
    assert [one["revision"] for one in told["history"]] == [1]
    return folder


def said(capsys, *words):
    """What `ptmark archive` prints, once it ends well."""
    assert main(["archive", *words]) == 0
    return capsys.readouterr().out


def test_old_records_go_in_are_found_and_come_out_as_they_were(old, tmp_path, capsys):
    here, there = str(tmp_path / "here"), str(tmp_path / "there")
    said(capsys, "--at", here, "add", str(old))
    found = json.loads(said(capsys, "--at", here, "find", "--format", "json"))
    assert {one["record_id"]: one["signatures"] for one in found} == {
        "of-version-1": 0,
        "of-version-2": 1,
    }
    ids = {one["record_id"] for one in found}
    for options in (
        ["--part", "P-17*"],
        ["--shortest", "7 mm", "--longest", "9 mm"],
        ["--words", "größer"],
        ["--verdict", "rejectable", "--criteria", "invented-1"],
    ):
        more = json.loads(said(capsys, "--at", here, "find", *options, "--format", "json"))
        assert {one["record_id"] for one in more} == ids
    by_words = said(capsys, "--at", here, "find", "--words", "looked again", "--format", "csv")
    assert "of-version-2" in by_words
    assert "of-version-1" not in by_words
    assert "2 records and 2 photos read" in said(capsys, "--at", here, "verify")
    for _ in range(2):  # the second time changes nothing
        said(capsys, "--at", here, "export", "--to", str(tmp_path / "out"))
        said(capsys, "--at", there, "import", str(tmp_path / "out"))
    assert "2 records and 2 photos read" in said(capsys, "--at", there, "verify")
    with open_archive(Path(there), read_only=True) as archive:
        for file, name in (("one.json", "of-version-1"), ("two.json", "of-version-2")):
            assert record_bytes(archive, name) == (old / file).read_bytes()
        for photo in old.glob("*.jpg"):
            sha256 = hashlib.sha256(photo.read_bytes()).hexdigest()
            (hit,) = find(archive, Query(photo=sha256)).hits
            with zipfile.ZipFile(tmp_path / "out" / bundle_name(hit)) as bundle:
                assert photo.read_bytes() in [bundle.read(one) for one in bundle.namelist()]
        assert len(list(find_all(archive, Query()))) == 2


def test_an_old_record_gone_on_with_today_is_its_next_revision(old, tmp_path, capsys):
    here = str(tmp_path / "here")
    said(capsys, "--at", here, "add", str(old))
    path = old / "two.json"
    record = load_record(path)
    changed = {**record.fields, "remarks": "gone on with today (invented)"}
    save_record(path, replace(record, fields=changed), by="first", why="today")
    assert [one for one in verify_file(path) if one.holds is False] == []
    said(capsys, "--at", here, "add", str(path))
    with open_archive(Path(here), read_only=True) as archive:
        (hit,) = find(archive, Query(record_id="of-version-2")).hits
    assert hit.revision == 3
    assert "whole" in said(capsys, "--at", here, "verify")
