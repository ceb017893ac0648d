"""A database made again from the files beside the photos, and older ones found out."""

import hashlib
import importlib
import json
import shutil
from contextlib import suppress
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from sqlalchemy import text

from ptmark.__main__ import main
from ptmark.archive import (
    Query,
    add_record,
    apply_rules,
    back_up,
    find_all,
    hold,
    keep_for,
    keeping,
    lines,
    open_archive,
    photos_of,
    place_record,
    rebuild,
    record_bytes,
    release,
    repair,
    save_search,
    saved_searches,
    verify,
)
from ptmark.archive.beside import file_key, line_bytes, line_key
from ptmark.archive.chain import link
from ptmark.archive.rows import stored, table
from ptmark.archive.small import forget_deleted, small_picture
from ptmark.archive.store import is_content
from ptmark.errors import ArchiveError
from ptmark.record import Signer, key_of, load_record, save_record, sign_record

DAY = date(2026, 6, 1)


def filled(archive, make):
    """Records new, revised, signed and deleted, a search, a rule, a hold and a place."""
    first = add_record(archive, make("r-1"))
    path = make("r-1")
    save_record(
        path, replace(load_record(path), fields={"part_number": "P-17", "remarks": "b"})
    )
    assert add_record(archive, path, replaces=first.sha256).state == "revised"
    signed = make("r-2", serial="S-2")
    who = Signer(role="examiner", name="Examiner One")
    save_record(signed, sign_record(load_record(signed), who, key_of(who.name)))
    add_record(archive, signed)
    add_record(archive, make("r-old", day="2001-01-01", part="OLD"))
    save_search(archive, "cracks", Query(kind="crack"))
    place_record(archive, "r-2", (1, 0, 5, 0, 1, 7), "invented")
    keep_for(archive, "ten", Query(part="OLD"), 10, "invented law")
    hold(archive, "claim", Query(part="P-17"), "invented claim")
    assert [one.hit.record_id for one in apply_rules(archive, DAY)] == ["r-old"]


def content(archive):
    """All that an archive holds, without the numbers the database gives."""
    with archive.reading() as conn:
        numbers = {row.id: row.record_id for row in conn.execute(table("inspection").select())}
        rows = {numbers[key]: one for key, one in stored(conn, list(numbers)).items()}
        told = list(lines(conn))
        photos = sorted(map(tuple, conn.execute(table("photo").select())))
    files = {name: record_bytes(archive, name) for name in rows}
    return rows, files, photos, told, keeping(archive), saved_searches(archive)


@pytest.mark.parametrize("harm", ["gone", "header", "page", "emptied", "older"])
def test_a_lost_or_broken_database_is_made_again(tmp_path, make, harm, capsys):
    folder = tmp_path / "archive"
    with open_archive(folder, by="keeper") as archive:
        add_record(archive, make("r-0"))
    shutil.copy(folder / "archive.sqlite", tmp_path / "older.sqlite")
    with open_archive(folder, by="keeper") as archive:
        filled(archive, make)
        before = content(archive)
    harmed(folder / "archive.sqlite", harm, tmp_path / "older.sqlite")
    assert main(["archive", "--at", str(folder), "rebuild"]) == 0
    said = capsys.readouterr().out
    assert "3 records" in said
    assert ("is kept as" in said) == (harm != "gone")
    with open_archive(folder, by="keeper") as archive:
        after = content(archive)
        assert after[:3] == before[:3]
        assert after[3][:-1] == before[3]
        assert after[3][-1].action == "rebuilt"
        assert after[4:] == before[4:]
        found = verify(archive)
        assert found.problems == []
        assert found.records == 3
    assert main(["archive", "--at", str(folder), "rebuild"]) == 0
    assert "nothing was changed" in capsys.readouterr().out
    with open_archive(folder) as archive:
        assert content(archive) == after


def harmed(file, harm, older):
    data = file.read_bytes()
    if harm == "gone":
        file.unlink()
    elif harm == "header":
        file.write_bytes(b"\0" * 100 + data[100:])
    elif harm == "page":
        noise = hashlib.shake_256(b"harm").digest(4096)
        file.write_bytes(data[:8192] + noise + data[12288:])
    elif harm == "emptied":
        file.write_bytes(b"")
    else:
        shutil.copy(older, file)


def test_a_database_that_is_one_line_older_takes_nothing_in(tmp_path, make):
    """One line beside may be of a writer that was cut off; the note of the end tells."""
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        add_record(archive, make("r-0"))
    shutil.copy(folder / "archive.sqlite", tmp_path / "older.sqlite")
    with open_archive(folder) as archive:
        add_record(archive, make("r-1"))
    shutil.copy(tmp_path / "older.sqlite", folder / "archive.sqlite")
    with (
        open_archive(folder) as archive,
        pytest.raises(ArchiveError, match="later lines lie beside"),
    ):
        add_record(archive, make("r-2"))
    rebuild(folder)
    with open_archive(folder) as archive:
        assert {hit.record_id for hit in find_all(archive, Query())} == {"r-0", "r-1"}
        assert add_record(archive, make("r-2")).state == "new"
        assert not [p for p in verify(archive).problems if p.kind != "orphaned"]


def test_an_older_database_in_its_place_takes_nothing_in(tmp_path, make):
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        add_record(archive, make("r-0"))
    shutil.copy(folder / "archive.sqlite", tmp_path / "older.sqlite")
    with open_archive(folder) as archive:
        add_record(archive, make("r-1"))
        add_record(archive, make("r-2"))
    for name in ("archive.head", "archive.seal"):  # whoever did it left no trace beside it
        (folder / name).unlink()
    shutil.copy(tmp_path / "older.sqlite", folder / "archive.sqlite")
    with open_archive(folder) as archive:
        assert any("2 lines beside" in p.says for p in verify(archive).problems)
        with pytest.raises(ArchiveError, match="later lines lie beside"):
            add_record(archive, make("r-3"))
        with pytest.raises(ArchiveError, match="later lines lie beside"):
            save_search(archive, "all", Query())
    rebuild(folder)
    with open_archive(folder) as archive:
        assert add_record(archive, make("r-3")).state == "new"
        assert verify(archive).problems == []


def test_a_server_s_database_is_made_again(postgres, tmp_path, make, monkeypatch):
    store = str(tmp_path / "photos")
    with open_archive(database=postgres.cleared(), store=store, by="keeper") as archive:
        filled(archive, make)
        before = content(archive)
        assert rebuild(database=archive.engine.url.render_as_string(), store=store) is None
    url = postgres.cleared()
    found = rebuild(database=url, store=store, by="another")
    assert (found.records, found.lost) == (2, [])
    with open_archive(database=url, store=store, by="keeper") as archive:
        after = content(archive)
        assert after[:3] == before[:3]
        assert after[3][:-1] == before[3]
        assert after[4:] == before[4:]
        assert verify(archive).problems == []
        with (
            pytest.raises(ArchiveError, match="the audit log only grows"),
            archive.writing() as c,
        ):
            c.execute(text("UPDATE audit SET who = 'x'"))
        assert rebuild(database=url, store=store) is None
    with open_archive(database=postgres.cleared(), store=str(tmp_path / "other")) as archive:
        add_record(archive, make("r-9"))
        with pytest.raises(ArchiveError, match="not empty"):
            rebuild(database=url, store=store)


def test_without_the_files_it_says_so(tmp_path, make):
    with pytest.raises(ArchiveError, match="no log lies beside"):
        rebuild(tmp_path / "none")
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        sha256 = add_record(archive, make("r-1")).sha256
        add_record(archive, make("r-2"))
        (folder / "photos" / file_key(sha256)).unlink()
        assert [p.subject for p in verify(archive).problems] == ["r-1"]
    (folder / "archive.sqlite").unlink()
    assert rebuild(folder).lost == ["r-1"]
    with open_archive(folder) as archive:
        said = [(p.kind, p.subject) for p in verify(archive).problems if p.kind != "orphaned"]
        assert said == [("missing", "r-1")] * 2  # its rows, and its file
        assert [hit.record_id for hit in find_all(archive, Query())] == ["r-2"]


@pytest.mark.parametrize("what", ["file", "line"])
@pytest.mark.parametrize("harm", ["bit", "gone"])
def test_files_beside_the_photos_are_checked_and_mended(archive, make, tmp_path, what, harm):
    sha256 = add_record(archive, make("r-1")).sha256
    add_record(archive, make("r-2"))
    with archive.reading() as conn:
        first, _ = lines(conn)
    key = file_key(sha256) if what == "file" else line_key(first)
    file = Path(archive.store.url) / key
    whole = file.read_bytes()
    if harm == "gone":
        file.unlink()
    else:
        file.chmod(0o644)
        file.write_bytes(whole[:99] + bytes([whole[99] ^ 4]) + whole[100:])
    found = verify(archive)
    assert not found.whole
    assert {p.subject for p in found.problems} == {"r-1" if what == "file" else "log"}
    mended, found = repair(archive)
    assert mended == ["r-1" if what == "file" else "log"]
    assert found.problems == []
    assert file.read_bytes() == whole


def test_a_line_whose_writer_was_cut_off_harms_nothing(archive, make):
    add_record(archive, make("r-1"))
    with suppress(ZeroDivisionError), archive.writing() as conn:
        archive.log(conn, "noted", "r-1")
        raise ZeroDivisionError  # the line lies beside the photos, the database has it not
    assert [p.kind for p in verify(archive).problems] == ["orphaned"]
    assert add_record(archive, make("r-2")).state == "new"
    assert [p.kind for p in verify(archive).problems] == ["orphaned"]


def test_a_writer_that_learns_late_that_it_was_cut_off_overwrites_no_line(tmp_path, make):
    # Its lock fell with its connection, so the next one takes the same place in the log.
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        add_record(archive, make("r-1"))
        with archive.reading() as conn:
            (first,) = lines(conn)
        add_record(archive, make("r-2"))
        late = replace(first, seq=2, previous=first.sha256, subject="r-9", sha256="")
        late = replace(late, sha256=link(late))
        archive.store.put(line_key(late), line_bytes(late))
        found = verify(archive)
        assert [(p.kind, p.subject) for p in found.problems] == [("orphaned", "log")]
        add_record(archive, make("r-3"))
    (folder / "archive.sqlite").unlink()
    assert rebuild(folder).records == 3
    with open_archive(folder) as archive:
        assert {p.kind for p in verify(archive).problems} == {"orphaned"}
        assert [hit.record_id for hit in find_all(archive, Query())] == ["r-3", "r-2", "r-1"]


def test_two_ends_of_the_log_are_both_kept(tmp_path, make):
    # After the database is lost nobody can tell which of two last lines it had taken.
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        add_record(archive, make("r-1"))
        add_record(archive, make("r-2"))
        third = add_record(archive, make("r-3"))
        with archive.reading() as conn:
            one, two, three = lines(conn)
        late = replace(three, seq=2, previous=one.sha256, sha256="")
        late = replace(late, sha256=link(late))
        archive.store.put(line_key(late), line_bytes(late))
        archive.store.remove(line_key(three))
    assert (two.subject, late.subject) == ("r-2", third.record_id)
    (folder / "archive.sqlite").unlink()
    assert rebuild(folder).records == 3
    assert rebuild(folder) is None
    with open_archive(folder) as archive:
        assert {p.kind for p in verify(archive).problems} <= {"orphaned"}
        assert len(list(find_all(archive, Query()))) == 3


def test_a_copy_can_be_made_again_too(archive, make, tmp_path):
    filled(archive, make)
    back_up(archive, tmp_path / "copy")
    before = content(archive)
    (tmp_path / "copy" / "archive.sqlite").unlink()
    rebuild(tmp_path / "copy")
    with open_archive(tmp_path / "copy") as copy:
        assert content(copy)[:3] == before[:3]
        assert verify(copy).problems == []


def test_what_was_deleted_by_rule_leaves_no_file(archive, make):
    filled(archive, make)
    with archive.reading() as conn:
        (gone,) = (one for one in lines(conn, "r-old") if one.action == "deleted")
    files = json.loads(gone.detail)["files"]
    assert len(files) == 2  # the photo and the record's file
    assert not any(archive.store.has(key) for key in files)
    release(archive, "claim", "settled")
    keep_for(archive, "one", Query(part="P-17"), 0.1, "invented law")
    assert len(apply_rules(archive, DAY)) == 2  # r-1 with both its states, and r-2
    assert not any(is_content(key) for key in archive.store.names())


def test_small_pictures_of_what_was_deleted_by_rule_go_from_every_cache(
    archive, make, tmp_path, monkeypatch
):
    add_record(archive, make("r-old", day="2001-01-01"))
    add_record(archive, make("r-new", day="2026-01-01"))
    old, new = (photos_of(archive, one)[0]["sha256"] for one in ("r-old", "r-new"))
    never = "ab" * 32  # of another archive, which this user looks at too
    caches = [tmp_path / "user", tmp_path / "another"]
    for place in caches:
        monkeypatch.setenv("PTMARK_HOME", str(place))
        for sha256 in (old, new, never):
            small_picture(sha256).parent.mkdir(parents=True, exist_ok=True)
            small_picture(sha256).write_bytes(b"small")
        assert forget_deleted(archive) == 0
    held = {
        place: (place / "thumbnails" / f"{old}.jpg", place / "thumbnails" / f"{new}.jpg")
        for place in caches
    }
    keep_for(archive, "ten", Query(), 10, "invented law")
    monkeypatch.setenv("PTMARK_HOME", str(caches[0]))
    assert [one.hit.record_id for one in apply_rules(archive, DAY)] == ["r-old"]
    assert [one.exists() for one in held[caches[0]]] == [False, True]
    assert [one.exists() for one in held[caches[1]]] == [True, True]  # beyond reach
    monkeypatch.setenv("PTMARK_HOME", str(caches[1]))
    assert verify(archive).problems == []
    assert [one.exists() for one in held[caches[1]]] == [False, True]
    assert small_picture(never).exists()
    add_record(archive, make("r-old", day="2026-02-01"))  # the same photo, taken in again
    small_picture(old).write_bytes(b"small")
    assert forget_deleted(archive) == 0


def test_a_deletion_that_was_cut_off_is_ended_by_the_next(archive, make, monkeypatch):
    add_record(archive, make("r-old", day="2001-01-01"))
    keep_for(archive, "ten", Query(), 10, "invented law")

    def cut_off(_key):
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(archive.store, "remove", cut_off)
        with pytest.raises(KeyboardInterrupt):
            apply_rules(archive, DAY)
    assert {p.kind for p in verify(archive).problems} == {"orphaned"}
    assert apply_rules(archive, DAY) == []
    assert verify(archive).problems == []


def test_a_hold_set_while_a_deletion_runs_is_kept(archive, make, monkeypatch):
    room = importlib.import_module("ptmark.archive.keeping")
    add_record(archive, make("r-1", day="2001-01-01"))
    add_record(archive, make("r-2", day="2001-01-02", part="H-1"))
    keep_for(archive, "ten", Query(), 10, "invented law")
    real = room.due

    def then_held(*given):
        found = real(*given)
        hold(archive, "claim", Query(part="H-1"), "invented claim")
        return found

    with monkeypatch.context() as patch:
        patch.setattr(room, "due", then_held)
        assert apply_rules(archive, DAY) == []  # all that was found is judged again
    assert [one.hit.record_id for one in apply_rules(archive, DAY)] == ["r-1"]
    assert [hit.record_id for hit in find_all(archive, Query())] == ["r-2"]
