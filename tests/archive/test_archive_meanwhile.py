"""What others do while the archive is mended, copied, made again or emptied."""

import shutil
from dataclasses import replace

import pytest

from ptmark.__main__ import main
from ptmark.archive import (
    Query,
    add_record,
    apply_rules,
    back_up,
    copying,
    exchange,
    export,
    find_all,
    hold,
    keep_for,
    keeping,
    lines,
    mending,
    open_archive,
    rebuild,
    record_bytes,
    repair,
    take_bundles,
    verify,
)
from ptmark.archive.beside import file_key, line_bytes, line_key, seq_of
from ptmark.errors import ArchiveError
from ptmark.record import load_record, save_record


def revised(path, **fields):
    """The record's file with other fields."""
    record = load_record(path)
    save_record(path, replace(record, fields={**record.fields, **fields}))
    return path


def test_repair_puts_no_older_state_over_one_that_comes_meanwhile(
    tmp_path, make, monkeypatch, raw
):
    path = make("r-1")
    with open_archive(tmp_path / "one") as one, open_archive(tmp_path / "one") as other:
        before = add_record(one, path)
        raw(one, "UPDATE inspection SET verdict = 'acceptable'")
        plain = mending.derived

        def slow(document, data):
            add_record(other, revised(path, remarks="invented"), replaces=before.sha256)
            return plain(document, data)

        monkeypatch.setattr(mending, "derived", slow)
        mended, found = repair(one)
        assert (mended, found.problems) == ([], [])
        assert record_bytes(one, "r-1") == path.read_bytes()


def test_a_broken_log_changes_no_hold_that_is_whole(tmp_path, make, raw):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        hold(one, "claim", Query(part="P-17"), "invented")
        raw(one, "UPDATE audit SET detail = replace(detail, 'P-17', 'P-99') WHERE seq = 2")
        repair(one)
        assert keeping(one)["hold"][0]["query"] == '{"part": "P-17"}'
        assert not verify(one).whole


@pytest.mark.parametrize("how", ["moved", "replaced", "deleted"])
def test_nothing_is_taken_in_by_a_file_that_went_elsewhere(tmp_path, make, how, ids):
    folder = tmp_path / "one"
    with open_archive(folder) as one:
        add_record(one, make("r-1"))
        if how == "moved":
            folder.rename(tmp_path / "other")
        elif how == "replaced":
            shutil.copy(one.file, tmp_path / "copied")
            (tmp_path / "copied").replace(one.file)
        else:
            shutil.rmtree(folder)
        with pytest.raises(ArchiveError, match="moved, replaced or taken away"):
            add_record(one, make("r-2"))
        assert ids(one) == ["r-1"]


def test_photos_whose_disk_is_away_take_nothing_in(tmp_path, make, ids):
    with open_archive(tmp_path / "one", store=str(tmp_path / "disk" / "photos")) as one:
        add_record(one, make("r-1"))
        (tmp_path / "disk").rename(tmp_path / "away")
        (tmp_path / "disk").mkdir()  # where it is mounted
        with pytest.raises(ArchiveError, match="see that the disk of the photos is there"):
            add_record(one, make("r-2"))
        assert ids(one) == ["r-1"]
        shutil.rmtree(tmp_path / "disk")
        (tmp_path / "away").rename(tmp_path / "disk")
        add_record(one, make("r-2"))
        assert verify(one).whole


def test_a_copy_mixes_no_photos_and_logs_of_two_archives(tmp_path, make):
    with open_archive(tmp_path / "one", store=str(tmp_path / "far" / "photos")) as one:
        add_record(one, make("r-1"))
        with open_archive(tmp_path / "other") as other:
            add_record(other, make("r-2"))
            other.file.unlink()  # what is lost is made again from the lines beside the photos
        with pytest.raises(ArchiveError, match="holds another archive"):
            back_up(one, tmp_path / "other")
        with pytest.raises(ArchiveError, match="holds the archive's own photos"):
            back_up(one, tmp_path / "far")
        back_up(one, tmp_path / "copy")
        (tmp_path / "copy" / "archive.sqlite").unlink()  # as one that was cut off leaves it
        assert back_up(one, tmp_path / "copy") == 1


def test_a_database_made_again_takes_from_the_one_before_what_the_store_lost(
    tmp_path, make, raw
):
    path = make("r-1")
    with open_archive(tmp_path / "one") as one:
        own = one.store.path(file_key(add_record(one, path).sha256))
        hold(one, "claim", Query(), "invented")
        raw(one, "DELETE FROM hold")
        own.unlink()
    found = rebuild(tmp_path / "one")
    assert (found.lost, found.broken, found.records) == ([], [], 1)
    assert own.read_bytes() == path.read_bytes()


def test_a_line_that_is_lost_is_told_where_a_database_is_made_again(tmp_path, make, capsys):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        hold(one, "claim", Query(), "invented")
        add_record(one, make("r-2"))
        (lost,) = (key for key in one.store.names("log") if seq_of(key) == 2)
        one.store.path(lost).unlink()
        one.file.unlink()
    assert main(["archive", "--at", str(tmp_path / "one"), "rebuild"]) == 1
    assert "changed: log: line 3 does not fit the chain" in capsys.readouterr().out


def harm(store, key):
    place = store.path(key)
    place.chmod(0o644)
    place.write_bytes(place.read_bytes()[:40] + b"\0invented")
    return place


@pytest.mark.parametrize("numbers", [(2,), (3, 4)], ids=["amid", "end"])
def test_damaged_lines_keep_nothing_else_from_being_made_again(
    tmp_path, make, capsys, ids, numbers
):
    folder = tmp_path / "one"
    with open_archive(folder) as one:
        names = [add_record(one, make(f"r-{n}")).sha256 for n in (1, 2, 3, 4)]
        keys = [key for key in one.store.names("log") if seq_of(key) in numbers]
        harmed = {harm(one.store, key): key for key in keys}
        before = {place: place.read_bytes() for place in harmed}
        one.file.unlink()
    assert main(["archive", "--at", str(folder), "rebuild"]) == 1
    said = capsys.readouterr().out
    for number, key in zip(numbers, keys, strict=True):
        assert f"damaged: log: {key} cannot be read" in said
        assert f"orphaned: {file_key(names[number - 1])}" in said
    assert {place: place.read_bytes() for place in harmed} == before
    with open_archive(folder) as one:
        assert ids(one) == [f"r-{n}" for n in (1, 2, 3, 4) if n not in numbers]
        assert add_record(one, make("r-5")).state == "new"
        assert {p.kind for p in verify(one).problems} <= {"orphaned", "changed"}
        for number in numbers:  # the photo is where it was: the record's file goes in as it is
            assert add_record(one, make(f"r-{number}")).sha256 == names[number - 1]


def test_a_damaged_line_is_taken_from_the_database_that_was_there(tmp_path, make):
    with open_archive(tmp_path / "one") as one:
        for name in ("r-1", "r-2", "r-3"):
            add_record(one, make(name))
        files = [line_bytes(line) for line in told(one)]
        keys = [line_key(line) for line in told(one)]
        harm(one.store, keys[2])
        one.store.path(keys[0]).unlink()
    found = rebuild(tmp_path / "one")
    assert (found.damaged, found.untold, found.broken, found.records) == ([], [], [], 3)
    with open_archive(tmp_path / "one") as one:
        assert [one.store.read(key) for key in keys] == files
        assert verify(one).whole


def told(archive):
    with archive.reading() as conn:
        return list(lines(conn))


def test_of_two_copies_at_once_into_one_folder_one_is_refused(tmp_path, make, monkeypatch, ids):
    plain = copying._whole

    def meanwhile(*given):
        monkeypatch.undo()
        with open_archive(tmp_path / "one") as other:
            add_record(other, make("r-2"))
            with pytest.raises(ArchiveError, match="another copy is being made there"):
                back_up(other, tmp_path / "copy")
        return plain(*given)

    monkeypatch.setattr(copying, "_whole", meanwhile)
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        assert back_up(one, tmp_path / "copy") == 1
        with open_archive(tmp_path / "copy", read_only=True) as copy:
            assert ids(copy) == ["r-1"]
        assert back_up(one, tmp_path / "copy") == 2
    with open_archive(tmp_path / "copy") as copy:
        assert verify(copy).whole


@pytest.mark.parametrize("step", ["document_of", "photos_in", "key_for"])
def test_bundles_written_during_a_deletion_are_all_taken_in(
    tmp_path, make, monkeypatch, step, capsys
):
    """Deleted before the record is read, between its file and its photos, or after both."""
    plain = getattr(exchange, step)

    def meanwhile(*given):
        monkeypatch.undo()
        with open_archive(tmp_path / "one") as other:
            assert len(apply_rules(other)) == 1
        return plain(*given)

    at = ["archive", "--at", str(tmp_path / "one")]
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("new"))
        add_record(one, make("old", day="2010-05-01"))
        keep_for(one, "ten", Query(), 10, "invented contract")
    monkeypatch.setattr(exchange, "find_all", lambda *given: reversed(list(find_all(*given))))
    monkeypatch.setattr(exchange, step, meanwhile)
    assert main([*at, "export", "--to", str(tmp_path / "out")]) == 0
    assert "a rule deleted 1 more meanwhile" in capsys.readouterr().out
    with open_archive(tmp_path / "two") as two:
        assert [one.record_id for one in take_bundles(two, tmp_path / "out")] == ["new"]


def test_a_newer_versions_database_is_not_made_again_by_an_older_one(tmp_path, make, raw):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        raw(one, "UPDATE alembic_version SET version_num = '9999'")
        before = one.file.stat().st_ino
    with pytest.raises(ArchiveError, match="is newer than"):
        rebuild(tmp_path / "one")
    assert (tmp_path / "one" / "archive.sqlite").stat().st_ino == before
    assert not list((tmp_path / "one").glob("*broken*"))


def test_a_number_with_a_line_end_breaks_no_line_and_a_day_that_is_none_is_told(
    tmp_path, make, capsys
):
    path = make("r-1", part="P\n17\tB", day="1st of March")
    at = ("archive", "--at", str(tmp_path / "one"))
    doubt = "its examination date, '1st of March', is no day: it is filed under 2026-03-01"
    for words, told in (
        (("add", str(path)), doubt),
        (("show", "r-1"), doubt),
        (("find",), "2026-03-01  P 17 B  S-1  r-1"),
        (("keep", "--hold", "a\nb", "--reason", "c\rd"), "hold"),
        (("keep",), "hold a b: {}; c d"),
        (("log",), "set hold\ta b\t"),
    ):
        assert main([*at, *words]) == 0
        assert any(told in line for line in capsys.readouterr().out.split("\n"))


def test_no_bundle_is_replaced_by_one_that_holds_less(tmp_path, make):
    path, out = make("r-1"), tmp_path / "out"
    with open_archive(tmp_path / "one") as one, open_archive(tmp_path / "two") as two:
        before = add_record(one, path)
        add_record(two, path)
        add_record(one, revised(path, remarks="invented"), replaces=before.sha256)
        export(one, Query(), out)
        (bundle,) = out.iterdir()
        there = bundle.read_bytes()
        for archive, without in ((two, False), (one, True)):
            with pytest.raises(ArchiveError, match="choose another folder"):
                export(archive, Query(), out, leave_out_location=without)
        assert bundle.read_bytes() == there
        with pytest.raises(ArchiveError, match="another state is kept"):  # two went on with it
            take_bundles(two, out)
        export(one, Query(), out)
        assert bundle.read_bytes() == there


def test_words_that_no_search_steps_to_are_told_and_mended(tmp_path, make, raw):
    """SQLite's own check of the index lets its list of pages lack any."""
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1", remarks=" ".join(f"w{n}" for n in range(300))))
        asked = Query(words="w299")
        raw(one, "INSERT INTO words(words, rank) VALUES ('pgsz', 100)")
        raw(one, "INSERT INTO words(words) VALUES ('rebuild')")
        assert [hit.record_id for hit in find_all(one, asked)] == ["r-1"]
        one.file.with_suffix(".seal").unlink(missing_ok=True)
        assert verify(one).problems == []
        raw(
            one,
            "DELETE FROM words_idx",
            "INSERT INTO words(words, rank) VALUES ('integrity-check', 1)",
        )
        assert not list(find_all(one, asked))
        one.file.with_suffix(".seal").unlink()
        assert "searches miss words of its index" in [p.says for p in verify(one).problems]
        assert repair(one)[1].problems == []
        assert [hit.record_id for hit in find_all(one, asked)] == ["r-1"]


def test_what_a_rule_deleted_is_told_where_it_comes_back(tmp_path, make, capsys):
    at = ("archive", "--at", str(tmp_path / "one"))
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1", day="2010-05-01"))
        export(one, Query(), tmp_path / "out")
        keep_for(one, "ten", Query(), 10, "invented contract")
        assert len(apply_rules(one)) == 1
    assert main([*at, "import", str(tmp_path / "out")]) == 0
    assert "a rule deleted it at 2" in capsys.readouterr().out
    assert main([*at, "import", str(tmp_path / "out")]) == 0
    assert "a rule" not in capsys.readouterr().out  # it was there already
