"""Odd circumstances: copies that were only read, files that may not be written, odd texts."""

import sqlite3

import pytest
from sqlalchemy import event

from ptmark.archive import add_record, back_up, open_archive, verify
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
