"""What others do while the archive is mended, copied, made again or emptied."""

import sqlite3
from contextlib import closing
from dataclasses import replace

from ptmark.archive import (
    Query,
    add_record,
    find_all,
    hold,
    keeping,
    mending,
    open_archive,
    record_bytes,
    repair,
    verify,
)
from ptmark.record import load_record, save_record


def ids(archive):
    return sorted(hit.record_id for hit in find_all(archive, Query()))


def raw(archive, *statements):
    with closing(sqlite3.connect(archive.file)) as conn:
        for one in statements:
            conn.execute(one)
        conn.commit()


def revised(path, **fields):
    """The record's file with other fields."""
    record = load_record(path)
    save_record(path, replace(record, fields={**record.fields, **fields}))
    return path


def test_repair_puts_no_older_state_over_one_that_comes_meanwhile(tmp_path, make, monkeypatch):
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


def test_a_broken_log_changes_no_hold_that_is_whole(tmp_path, make):
    with open_archive(tmp_path / "one") as one:
        add_record(one, make("r-1"))
        hold(one, "claim", Query(part="P-17"), "invented")
        raw(one, "UPDATE audit SET detail = replace(detail, 'P-17', 'P-99') WHERE seq = 2")
        repair(one)
        assert keeping(one)["hold"][0]["query"] == '{"part": "P-17"}'
        assert not verify(one).whole
