"""Odd circumstances: copies that were only read, files that may not be written, odd texts."""

import os
import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import event

from ptmark.archive import add_record, back_up, beside, chain, open_archive, open_store, verify
from ptmark.errors import ArchiveError


def test_a_copy_that_was_verified_by_reading_is_whole_when_it_is_opened_for_writing(
    tmp_path, make
):
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make())
        back_up(archive, tmp_path / "copy")
    with open_archive(tmp_path / "copy", read_only=True) as copy:
        assert verify(copy).problems == []
    for _ in range(2):  # opened for writing, its file gets another mark and then a seal
        with open_archive(tmp_path / "copy") as copy:
            assert verify(copy).problems == []
    assert (tmp_path / "copy" / "archive.seal").is_file()


def test_a_database_file_that_may_only_be_read_is_not_called_damaged(tmp_path, make):
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make())
    with open_archive(tmp_path / "archive") as archive:
        archive.engine.dispose()

        @event.listens_for(archive.engine, "do_connect")
        def _only_read(
            *_given,
        ):  # as of a file without permission, which root writes all the same
            return sqlite3.connect(f"file:{archive.file}?mode=ro", uri=True)

        assert verify(archive).problems == []
        with pytest.raises(ArchiveError, match="readonly"):
            add_record(archive, make("r-2"))
        assert [one.kind for one in verify(archive).problems] == ["orphaned"] * 2
    with open_archive(tmp_path / "archive") as archive:
        assert add_record(archive, make("r-2")).state == "new"
        assert verify(archive).problems == []


LONG = "".join(chr(0x4E00 + 7919 * n % 20_000) for n in range(3000))  # hardly packs


@pytest.mark.parametrize(
    "texts", [{"part": "P\0-1"}, {"remarks": "a\0b"}, {"part": LONG}, {"examiner": LONG}]
)
def test_a_text_that_a_server_cannot_keep_is_said_of_the_record(
    postgres, tmp_path, make, texts
):
    path = make("r-odd", **texts)
    url, store = postgres.cleared(), str(tmp_path / "photos")
    with open_archive(database=url, store=store) as archive:
        with pytest.raises(ArchiveError, match="this server cannot keep") as caught:
            add_record(archive, path)
        assert caught.value.where == str(path)
        assert add_record(archive, make("r-2")).state == "new"
        assert {one.kind for one in verify(archive).problems} == {"orphaned"}
    with open_archive(tmp_path / "file") as archive:  # a file keeps them all
        assert add_record(archive, path).state == "new"
        assert verify(archive).problems == []


@pytest.fixture
def steps(monkeypatch):
    """What was flushed and renamed, in order; a loss of power undoes what is not flushed."""
    done = []
    flush, rename = os.fsync, Path.replace

    def flushed(handle):
        done.append(("flushed", str(Path(f"/proc/self/fd/{handle}").resolve())))
        flush(handle)

    def renamed(path, target):
        done.append(("renamed", str(target)))
        return rename(path, target)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(Path, "replace", renamed)
    return done


proc = pytest.mark.skipif(not Path("/proc/self/fd").is_dir(), reason="names handles by /proc")


@proc
def test_names_of_files_and_folders_are_durable_before_the_commit(tmp_path, make, steps):
    home = tmp_path / "new" / "deep" / "archive"
    path = make()
    with open_archive(home) as archive:
        event.listen(archive.engine, "commit", lambda _conn: steps.append(("commit", "")))
        steps.clear()
        add_record(archive, path)
        files = [archive.store.path(name) for name in archive.store.names()]
    last = max(n for n, one in enumerate(steps) if one[0] == "commit")
    assert len(files) == 3  # the photo, the record's file, the line of the log
    for file in files:
        named = steps.index(("renamed", str(file)))
        assert ("flushed", str(file.parent)) in steps[named:last]
        for folder in file.parents:  # each new folder in the one above
            if folder == home:
                break
            assert ("flushed", str(folder.parent)) in steps[:last]


@proc
def test_the_folders_of_an_archive_and_of_its_copy_are_durable(tmp_path, make, steps):
    home, copy = (tmp_path / name / "deep" / "archive" for name in ("new", "second"))
    with open_archive(home) as archive:
        for folder in (home, *home.parents[:2]):
            assert ("flushed", str(folder.parent)) in steps
        add_record(archive, make())
        back_up(archive, copy)
    for folder in (copy, *copy.parents[:2]):
        assert ("flushed", str(folder.parent)) in steps
    named = steps.index(("renamed", str(copy / "archive.sqlite")))
    assert ("flushed", str(copy)) in steps[named:]


def test_no_other_writer_waits_for_a_look_at_the_store(archive, make, monkeypatch):
    add_record(archive, make("r-1"))
    done = []
    look, append = archive.store.names, chain.append
    monkeypatch.setattr(
        archive.store, "names", lambda *below: done.append("looked") or look(*below)
    )
    monkeypatch.setattr(chain, "append", lambda *given: done.append("turn") or append(*given))
    add_record(archive, make("r-2"))
    assert done == ["looked", "turn"]


def test_later_lines_are_seen_where_the_look_ahead_was_at_another_folder(tmp_path):
    store = open_store(str(tmp_path / "photos"))
    later = chain.Line(100, "at", "who", "did", "it", "{}", chain.FIRST, "ab" * 32)
    store.put(beside.line_key(later), b"{}")
    line = chain.Line(99, "at", "who", "did", "it", "{}", chain.FIRST, "cd" * 32)
    elsewhere = ("log/00000000/00", [])
    with pytest.raises(ArchiveError, match="later lines lie beside"):
        beside.keep_line(store, line, 0, elsewhere)
    assert not store.has(beside.line_key(line))
    store.remove(beside.line_key(later))
    beside.keep_line(store, line, 0, elsewhere)
    assert store.read(beside.line_key(line)) == beside.line_bytes(line)
