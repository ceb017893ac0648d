"""Numbers found by letters within: their ends stand with them, are checked, and made again."""

import pytest
from sqlalchemy import select, text

from ptmark.archive import Query, add_record, count, find, open_archive, repair, verify
from ptmark.archive.migrating import migrate
from ptmark.archive.rows import table
from ptmark.archive.tails import TAILS

LONG = "ZB-0123456789-0123456789-X7"  # longer than what an end keeps of it


@pytest.fixture
def filled(archive, make):
    """On SQLite and on PostgreSQL."""
    for n, serial in enumerate(("S-0417", "S-1704", LONG, "77-77", "é_%4")):
        add_record(archive, make(f"r-{n}", part=f"P-{n}X{n}", serial=serial))
    return archive


def test_letters_at_the_end_and_in_the_middle_find_a_number(filled):
    told = {
        Query(serial="*0417"): "0",
        Query(serial="*17*"): "01",
        Query(serial="s-*4"): "1",
        Query(serial="*77*"): "3",
        Query(serial="*789-0123456789-x?"): "2",
        Query(serial="*3456789-0123456789-y*"): "",
        Query(serial="*_%*"): "4",
        Query(serial="??-*"): "23",
        Query(serial="*4*", part="*x4"): "4",
        Query(part="*3x*", serial="*-*7"): "3",
    }
    for query, names in told.items():
        found = {hit.record_id for hit in find(filled, query).hits}
        assert found == {f"r-{n}" for n in names}, query
        assert count(filled, query) == len(names)


def _rows(conn):
    return [conn.execute(select(table(name))).all() for name in TAILS]


def test_a_migration_makes_the_ends_that_taking_in_writes(filled):
    with filled.engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin():
            before = [sorted(map(tuple, rows)) for rows in _rows(conn)]
            migrate(conn, "0007")
            migrate(conn)
            assert [sorted(map(tuple, rows)) for rows in _rows(conn)] == before
    assert len(before[1]) == len("".join(("S-0417", "S-1704", LONG, "77-77", "é_%4")))
    assert verify(filled).problems == []


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE serial_tail SET tail = 'x' WHERE tail = '0417'",
        "UPDATE serial_tail SET place = place + 1 WHERE tail = '0417'",
        "DELETE FROM serial_tail WHERE tail = '17'",
        "INSERT INTO serial_tail SELECT tail, owner, 99 FROM serial_tail WHERE tail = '0417'",
    ],
)
def test_an_end_that_was_changed_is_found_and_mended(filled, change):
    with filled.engine.connect() as conn:  # not through the archive, which would log it
        conn.execute(text(change))
        conn.commit()
    assert ("changed", "serial_tail") in {(p.kind, p.subject) for p in verify(filled).problems}
    mended, after = repair(filled)
    assert "serial_tail" in mended
    assert after.problems == []
    assert [hit.record_id for hit in find(filled, Query(serial="*0417")).hits] == ["r-0"]


def test_an_archive_of_the_version_before_is_brought_up_with_its_ends(tmp_path, make):
    home = tmp_path / "archive"
    with open_archive(home) as archive:
        add_record(archive, make(serial="S-0417"))
        with archive.engine.connect() as plain:
            conn = plain.execution_options(write=True)
            with conn.begin():
                migrate(conn, "0007")
    with open_archive(home) as archive:
        assert [hit.serial for hit in find(archive, Query(serial="*17")).hits] == ["S-0417"]
        assert verify(archive).problems == []
