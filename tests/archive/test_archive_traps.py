"""What a keeper may do by mistake, and damage in several places: nothing is lost by it."""

import errno
import json
import sqlite3
import zipfile
from dataclasses import replace
from datetime import date
from threading import Lock

import pytest

from ptmark.__main__ import main
from ptmark.archive import (
    Query,
    add_record,
    apply_rules,
    back_up,
    copying,
    export,
    keep_for,
    keeping,
    open_archive,
    place_record,
    placements,
    record_bytes,
    repair,
    take_bundles,
    verify,
    verifying,
)
from ptmark.archive.checking import FileCheck
from ptmark.archive.findings import Notes
from ptmark.archive.keeping import _years_before
from ptmark.archive.store import key_for
from ptmark.errors import ArchiveError
from ptmark.record import load_record, save_record


def photo_file(archive, path):
    sha256 = load_record(path).photo["sha256"]
    return archive.store.path(key_for(sha256, "jpg"))


def test_a_copy_takes_no_other_archives_place(tmp_path, make, ids):
    with open_archive(tmp_path / "one") as one, open_archive(tmp_path / "other") as other:
        add_record(one, make("r-1"))
        add_record(other, make("r-2"))
        with pytest.raises(ArchiveError, match="holds another archive"):
            back_up(one, tmp_path / "other")
        assert ids(other) == ["r-2"]
        assert not (tmp_path / "other" / "archive.sqlite.part").exists()
        back_up(one, tmp_path / "copy")
        add_record(one, make("r-3"))
        back_up(one, tmp_path / "copy")  # its own earlier copy is replaced
    with open_archive(tmp_path / "copy") as copy:
        assert ids(copy) == ["r-1", "r-3"]
        add_record(copy, make("r-4"))  # somebody went on in the copy
    with open_archive(tmp_path / "one") as one:
        with pytest.raises(ArchiveError, match="a copy that was written to since"):
            back_up(one, tmp_path / "copy")
        (tmp_path / "text").mkdir()
        (tmp_path / "text" / "archive.sqlite").write_text("no database, invented")
        with pytest.raises(ArchiveError, match="cannot be read"):
            back_up(one, tmp_path / "text")
    with open_archive(tmp_path / "copy") as copy:
        assert ids(copy) == ["r-1", "r-3", "r-4"]


def test_a_copy_onto_itself_by_another_name_is_refused(tmp_path, make):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        (tmp_path / "link").symlink_to(tmp_path / "one")
        before = one.file.stat().st_ino
        for folder in ("link", "one/photos", "link/photos/copy"):
            with pytest.raises(ArchiveError, match="is the archive itself"):
                back_up(one, tmp_path / folder)
        assert verify(one).problems == []
        assert one.file.stat().st_ino == before  # who has it open writes into the same file


@pytest.mark.parametrize("error", ["database", "file"])
def test_a_full_disk_of_the_copy_is_told_of_the_copy(tmp_path, make, monkeypatch, error, ids):
    def full(*_given, **_more):
        if error == "file":
            raise OSError(errno.ENOSPC, "No space left on device")
        # SQLite's own words; its number is set by the driver only where it met the fault
        found = sqlite3.OperationalError("database or disk is full")
        found.sqlite_errorcode = sqlite3.SQLITE_FULL
        raise found

    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        back_up(one, tmp_path / "copy")
        add_record(one, make("r-2"))
        monkeypatch.setattr("ptmark.archive.copying.FolderStore.put", full)
        with pytest.raises(ArchiveError, match="no room for the copy") as told:
            back_up(one, tmp_path / "copy")
        assert told.value.where == str(tmp_path / "copy")
    with open_archive(tmp_path / "copy", read_only=True) as copy:
        assert ids(copy) == ["r-1"]


def test_a_copy_during_a_deletion_by_rule_is_made_whole(tmp_path, make, monkeypatch, ids):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("old", day="2001-01-01"))
        add_record(one, make("new"))
        keep_for(one, "ten", Query(), 10, "invented contract")

        def meanwhile(*given):
            monkeypatch.undo()
            with open_archive(tmp_path / "one") as other:
                assert len(apply_rules(other, date(2026, 6, 1))) == 1
            return copying._whole(*given)

        monkeypatch.setattr(copying, "_whole", meanwhile)
        assert back_up(one, tmp_path / "copy") == 1
    with open_archive(tmp_path / "copy") as copy:
        assert ids(copy) == ["new"]
        assert verify(copy).whole


def test_a_check_while_another_writes_raises_no_alarm(tmp_path, make, monkeypatch):
    check = verifying.check_words

    def meanwhile(*given):
        with open_archive(tmp_path / "one") as other:
            add_record(other, make("r-2"))
        return check(*given)

    monkeypatch.setattr(verifying, "check_words", meanwhile)
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        assert verify(one).problems == []


@pytest.mark.parametrize("step", ["_photo", "_file"])
def test_a_check_during_a_deletion_by_rule_raises_no_alarm(tmp_path, make, monkeypatch, step):
    read = getattr(FileCheck, step)

    def meanwhile(self, given):
        with lock:
            if not gone:
                with open_archive(tmp_path / "one") as other:
                    gone.extend(apply_rules(other, date(2026, 6, 1)))
        return read(self, given)

    gone, lock = [], Lock()
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("old", day="2001-01-01"))
        lost = make("new")
        add_record(one, lost)
        keep_for(one, "ten", Query(), 10, "invented contract")
        photo_file(one, lost).unlink()
        monkeypatch.setattr(FileCheck, step, meanwhile)
        found = verify(one)
    assert len(gone) == 1
    told = [(one.kind, one.subject) for one in found.problems if one.kind != "orphaned"]
    assert told == [("missing", load_record(lost).photo["sha256"])]


def test_what_one_damaged_copy_lacks_keeps_the_rest_from_no_mending(tmp_path, make, raw):
    paths = {name: make(name) for name in ("r-1", "r-2", "r-3")}
    with open_archive(tmp_path / "one") as one:
        for path in paths.values():
            add_record(one, path)
        back_up(one, tmp_path / "copy")
        raw(one, "DELETE FROM document WHERE inspection_id = 1")
        for name in ("r-1", "r-2"):
            photo_file(one, paths[name]).unlink()
        with open_archive(tmp_path / "copy") as copy:
            harmed = photo_file(copy, paths["r-1"])
            harmed.chmod(0o644)
            harmed.write_bytes(b"another picture, invented")
        _, found = repair(one, tmp_path / "copy")
        assert [(one.kind, one.subject) for one in found.problems] == [
            ("missing", load_record(paths["r-1"]).photo["sha256"])
        ]
        assert not photo_file(one, paths["r-1"]).exists()  # no other bytes in its place
        assert record_bytes(one, "r-1") == paths["r-1"].read_bytes()


def test_what_repair_cannot_mend_is_made_again_from_the_store(tmp_path, make, capsys, ids, raw):
    path = make("r-1")
    at = ("archive", "--at", str(tmp_path / "one"))
    with open_archive(tmp_path / "one") as one:
        add_record(one, path)
        add_record(one, make("r-2"))
        back_up(one, tmp_path / "copy")
        raw(one, "UPDATE audit SET detail = 'no JSON' WHERE seq = 2")
        photo_file(one, path).unlink()
    assert main([*at, "repair", "--from", str(tmp_path / "copy")]) == 1
    said = capsys.readouterr().out
    assert f"mended: {load_record(path).photo['sha256']}" in said  # though the log is broken
    assert "ptmark archive rebuild" in said
    assert main([*at, "rebuild"]) == 0
    assert main([*at, "verify"]) == 0
    with open_archive(tmp_path / "one") as one:
        assert ids(one) == ["r-1", "r-2"]


def test_a_record_has_one_bundle_whatever_its_number_was(tmp_path, make):
    path, out = make("r-1", part="P-17"), tmp_path / "out"
    with open_archive(tmp_path / "one") as one:
        first = add_record(one, path)
        add_record(one, make("x_r-1", part="P-17"))  # whose name ends alike
        export(one, Query(), out)
        (out / "other_r-1.zip").write_bytes(b"no bundle, somebody else's")
        record = load_record(path)
        save_record(path, replace(record, fields={**record.fields, "part_number": "P-18"}))
        add_record(one, path, replaces=first.sha256)
        export(one, Query(), out)
    names = sorted(one.name for one in out.iterdir())
    assert names == ["P-17_S-1_x_r-1.zip", "P-18_S-1_r-1.zip", "other_r-1.zip"]


def test_where_a_record_lies_goes_with_it_and_comes_back_the_same(tmp_path, make, capsys):
    with open_archive(tmp_path / "one") as one:
        for name in ("r-1", "r-2"):
            add_record(one, make(name))
        place_record(one, "r-1", (0.1, -1, 2.5, 1, 0.1, 1 / 3), "two holes (invented)")
        export(one, Query(), tmp_path / "out")
    with open_archive(tmp_path / "two") as two:
        for states in (["new", "new"], ["there", "there"]):
            assert [one.state for one in take_bundles(two, tmp_path / "out")] == states
        assert placements(two) == {"r-1": (0.1, -1, 2.5, 1, 0.1, 1 / 3)}
        export(two, Query(), tmp_path / "back")
        place_record(two, "r-1", (1, 0, 0, 0, 1, 0), "measured again (invented)")
        told = [one.placed_otherwise for one in take_bundles(two, tmp_path / "out")]
        assert told == [True, False]
        assert placements(two) == {"r-1": (1, 0, 0, 0, 1, 0)}  # nobody's work is overwritten
    assert (
        main(["archive", "--at", str(tmp_path / "two"), "import", str(tmp_path / "out")]) == 0
    )
    assert capsys.readouterr().out.count("this archive's own place is kept") == 1
    for bundle in (tmp_path / "out").iterdir():
        assert (tmp_path / "back" / bundle.name).read_bytes() == bundle.read_bytes()
    with zipfile.ZipFile(tmp_path / "out" / "P-17_S-1_r-1.zip") as made:
        assert json.loads(made.read("placement.json"))["why"] == "two holes (invented)"


def test_a_bundle_that_is_refused_stops_no_other(tmp_path, make, capsys, ids):
    with open_archive(tmp_path / "one") as one:
        for name in ("r-1", "r-2", "r-3"):
            add_record(one, make(name))
        export(one, Query(), tmp_path / "out")
    broken = tmp_path / "out" / "P-17_S-1_r-2.zip"
    broken.write_bytes(broken.read_bytes()[:900])
    at = ("archive", "--at", str(tmp_path / "two"))
    assert main([*at, "import", str(tmp_path / "out")]) == 1
    told = capsys.readouterr()
    assert told.out == "r-1 revision 1: new\nr-3 revision 1: new\n"
    assert broken.name in told.err
    with open_archive(tmp_path / "two") as two:
        assert ids(two) == ["r-1", "r-3"]
        assert verify(two).problems == []


REFUSED = (
    ("keep --delete --part P-18", "no filter narrows it"),
    ("keep --due --until 2010-01-01", "no filter narrows it"),
    ("keep --rule ten --years 10 --hold case", "not allowed with"),
    ("keep --hold case --reason invented --delete", "not allowed with"),
    ("keep --part P-17 --reason nameless", "reason and a filter changes nothing alone"),
    ("keep --years 9", "changes nothing alone"),
    ("keep --release all --part P-18 --reason x", "a filter changes nothing with --release"),
    ("keep --hold case --years 9 --reason x", "years changes nothing"),
    ("keep --hold case --verdict rejected --reason x", "invalid choice"),
    ("keep --hold case --since 2026-01-02 --until 2026-01-01 --reason x", "nothing fits"),
    ("keep --hold all --reason x", "there is a rule of this name"),
    ("keep --rule all --part P --years 9 --reason x", "there is a rule of this name"),
    ("keep --rule ever --years inf --reason x", "is no rule"),
    ("keep --delete --on 9999-12-31", "yet to come"),
    ("find --list --save mine", "changes nothing"),
    ("find --list --part P-17", "changes nothing"),
    ("find --count --format json", "changes nothing"),
    ("find --count --limit 3", "changes nothing"),
    ("find --shortest 5mm --longest 2mm", "nothing fits"),
)


def test_what_is_asked_is_done_whole_or_refused(tmp_path, make, capsys, ids):
    at = ("archive", "--at", str(tmp_path / "one"))
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1", day="2010-05-01"))
    assert main([*at, "keep", "--rule", "all", "--years", "5", "--reason", "invented"]) == 0
    assert "it fits 1 records now" in capsys.readouterr().out
    for given, says in REFUSED:
        try:
            code = main([*at, *given.split()])
        except SystemExit as end:
            code = end.code
        assert code, given
        assert says in capsys.readouterr().err, given
    with open_archive(tmp_path / "one") as one:
        assert ids(one) == ["r-1"]
        assert [len(rows) for rows in keeping(one).values()] == [1, 0]


def test_a_day_before_a_leap_day_of_no_year_is_the_first():
    assert _years_before(date(2028, 2, 29), 5000) == "0001-02-28"
    assert _years_before(date(2028, 2, 29), 10) == "2018-02-28"


@pytest.mark.parametrize(
    "given",
    [
        ("verify",),
        ("repair",),
        ("keep", "--hold", "case", "--reason", "invented"),
        ("place", "r-1", "--map", "1,0,0,0,1,0"),
        ("find",),
    ],
)
def test_a_folder_misspelled_is_no_whole_archive(tmp_path, capsys, given):
    assert main(["archive", "--at", str(tmp_path / "typo"), *given]) == 1
    assert "there is no archive" in capsys.readouterr().err
    assert not (tmp_path / "typo").exists()


@pytest.mark.parametrize("noted", ["", "[]", '{"found": {"records": 1}}', '{"found": 3}'])
def test_notes_of_a_stopped_check_that_cannot_be_read_begin_it_anew(tmp_path, make, noted):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        place = Notes(one, resume=False)._path
        place.parent.mkdir(parents=True)
        place.write_text(noted)
        found = verify(one, resume=True)
    assert (found.records, found.photos, found.problems) == (1, 1, [])
