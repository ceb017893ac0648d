"""The hash of a record's rows in the log: what verifying may go by, and where it may not."""

import json

import pytest
from sqlalchemy import LargeBinary, String, literal, text, update

from ptmark.archive import add_record, open_archive, rebuild, repair, verify, verifying
from ptmark.archive.proving import hashed
from ptmark.archive.rows import table


@pytest.fixture
def worked_out(monkeypatch):
    """Counts the records whose rows were worked out again from their files."""
    seen = []
    real = verifying.derived_quickly

    def noted(data, judge):
        seen.append(json.loads(data)["id"])
        return real(data, judge)

    monkeypatch.setattr(verifying, "derived_quickly", noted)
    return seen


@pytest.fixture
def kept(tmp_path):
    """On SQLite alone: a server lets nobody change a row without a line."""
    with open_archive(tmp_path / "archive") as one:
        yield one


def _told(archive):
    with archive.reading() as conn:
        return [
            json.loads(row.detail)
            for row in conn.execute(text("SELECT detail FROM audit ORDER BY seq"))
        ]


def test_rows_with_their_hash_are_not_worked_out_again(archive, make, worked_out):
    for name in ("r-1", "r-2"):
        add_record(archive, make(name))
    assert verify(archive).problems == []
    of_file = archive.file is not None  # on a server any writer could note a hash
    assert worked_out == ([] if of_file else ["r-1", "r-2"])
    assert all(("rows" in one) == of_file for one in _told(archive))
    worked_out.clear()
    assert verify(archive).problems == []
    assert worked_out == []  # on a server by what this user worked out


def _unruled(conn):
    """As one who owns the tables can: past the rules that a server keeps."""
    of_file = conn.dialect.name == "sqlite"
    off = (
        "PRAGMA defer_foreign_keys=ON" if of_file else "SET session_replication_role = replica"
    )
    conn.execute(text(off))


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            "UPDATE indication SET length_mm = length_mm + 1e-9 WHERE letter = 'B'",
            "indications",
        ),
        ("UPDATE indication SET length_mm = NULL WHERE letter = 'B'", "indications"),
        ("DELETE FROM indication WHERE letter = 'A'", "indications"),
        ("UPDATE revision SET why = why || ' '", "revisions"),
        ("UPDATE inspection_photo SET name = 'y.jpg'", "photos"),
        ("UPDATE inspection SET verdict = 'acceptable'", "inspection"),
        ("UPDATE part SET number = 'P-18'", "part number"),
        ("UPDATE serial SET \"key\" = 's-2'", "serial number"),
    ],
)
def test_any_other_row_is_worked_out_and_named(archive, make, worked_out, change, says):
    add_record(archive, make())
    assert verify(archive).problems == []
    worked_out.clear()
    with archive.engine.connect() as conn:  # not through the archive, which would log it
        _unruled(conn)
        conn.execute(text(change))
        conn.commit()
        conn.invalidate()  # its rules are off
    told = {(one.subject, one.says) for one in verify(archive).problems}
    assert ("r-1", f"differs from its file in the {says}") in told
    assert worked_out == ["r-1"]


def test_a_value_of_another_type_is_found(kept, make):
    add_record(kept, make())
    with kept.engine.connect() as conn:
        conn.execute(text("UPDATE indication SET kind = CAST(kind AS BLOB)"))
        conn.commit()
    told = {(one.subject, one.says) for one in verify(kept).problems}
    assert ("r-1", "differs from its file in the indications") in told


_NUMBERS_OF_THE_DATABASE = {"id", "part_id", "serial_id", "inspection_id"}


def test_any_value_of_any_column_has_a_part_in_the_hash(archive, make):
    add_record(archive, make(count=1))
    with archive.engine.connect() as conn:
        before = hashed(conn, 1, 1)[1]
        conn.commit()
        assert len(before[0]) == 64
        tried = 0
        for name in (*_ROWS, "part", "serial", "inspection", "document"):
            for column in table(name).c:
                if column.name in _NUMBERS_OF_THE_DATABASE:
                    continue
                _unruled(conn)
                conn.execute(update(table(name)).values({column: _other(column)}))
                changed = hashed(conn, 1, 1)[1]
                assert changed[0] != before[0], column
                conn.rollback()
                assert hashed(conn, 1, 1)[1] == before
                conn.rollback()
                tried += 1
        conn.invalidate()
    assert tried == 50


_ROWS = ("wording", "revision", "inspection_photo", "indication")


def _other(column):
    """A value that is not the one that stands there."""
    if isinstance(column.type, LargeBinary):
        return b"other"
    if isinstance(column.type, String):
        return literal("x")
    return column + 1 if not column.nullable else literal(0.123)


def test_a_hash_that_a_writer_on_a_server_forged_counts_for_nothing(
    postgres, tmp_path, make, monkeypatch
):
    def forged(conn, number):
        conn.execute(text("UPDATE indication SET length_mm = 0.5"))
        return {"rows": hashed(conn, number, number)[number][0]}

    url, store = postgres.cleared(), str(tmp_path / "photos")
    monkeypatch.setattr("ptmark.archive.adding.proof", forged)
    with open_archive(database=url, store=store) as archive:
        add_record(archive, make())
        for _ in range(2):
            found = [one.says for one in verify(archive).problems]
            assert found == ["differs from its file in the indications"]


def test_a_changed_file_in_the_database_is_found(kept, make):
    add_record(kept, make())
    with kept.engine.connect() as conn:
        conn.execute(text("UPDATE document SET data = substr(data, 1, length(data) - 1)"))
        conn.commit()
    assert [one.kind for one in verify(kept).problems] == ["damaged"]


def test_a_log_without_hashes_has_all_worked_out(kept, make, worked_out, monkeypatch):
    monkeypatch.setattr("ptmark.archive.adding.proof", lambda _conn, _number: {})
    add_record(kept, make())  # as versions before did
    monkeypatch.undo()
    assert "rows" not in _told(kept)[0]
    with kept.engine.connect() as conn:
        conn.execute(text("UPDATE indication SET width_mm = 0.5 WHERE letter = 'A'"))
        conn.commit()
    assert [one.says for one in verify(kept).problems] == [
        "differs from its file in the indications"
    ]


def test_what_was_worked_out_once_is_not_again_and_the_archive_gets_no_line(
    tmp_path, make, worked_out, monkeypatch
):
    home = tmp_path / "archive"
    names = ["r-1", "r-2", "r-3"]
    with monkeypatch.context() as patch, open_archive(home) as archive:
        patch.setattr("ptmark.archive.adding.proof", lambda _conn, _number: {})
        for name in names:
            add_record(archive, make(name, part=f"P-{name}"))
    before = (home / "archive.sqlite").read_bytes()
    with open_archive(home, read_only=True) as archive:  # a medium that cannot be written to
        assert verify(archive).problems == []
        assert worked_out == names
        assert verify(archive).problems == []
        assert worked_out == names  # none of them again
    assert (home / "archive.sqlite").read_bytes() == before
    with open_archive(home) as archive:
        with archive.engine.connect() as conn:  # not through the archive, which would log it
            conn.execute(text("UPDATE indication SET x_mm = x_mm + 1 WHERE inspection_id = 2"))
            conn.commit()
        worked_out.clear()
        (found,) = (one for one in verify(archive).problems if one.subject != "database")
        assert (found.subject, found.says) == (
            "r-2",
            "differs from its file in the indications",
        )
        assert worked_out == ["r-2"]
        assert verify(archive).problems != []  # what was found wrong is not noted as right
    (noted,) = (tmp_path / "user" / "verify").glob("*.rows")
    assert len(noted.read_text("ascii").split()) == 3
    noted.write_bytes(noted.read_bytes()[:-9] + b"\xff")  # cut off, or damaged
    with open_archive(home, read_only=True) as archive:
        worked_out.clear()
        assert verify(archive).problems != []
        assert worked_out == names


def test_the_numbers_of_the_database_have_no_part_in_it(tmp_path, make, worked_out):
    home = tmp_path / "archive"
    with open_archive(home) as archive:
        for name in ("r-1", "r-2", "r-3"):
            add_record(archive, make(name, part=f"P-{name}"))
        with archive.reading() as conn:
            before = {one[0] for one in hashed(conn, 1, 3).values()}
    for one in home.glob("archive.*"):
        one.unlink()
    rebuild(home)
    with open_archive(home) as archive:
        with archive.reading() as conn:
            assert {one[0] for one in hashed(conn, 1, 3).values()} == before
        assert verify(archive).problems == []
    assert worked_out == []


def test_what_was_mended_has_its_hash_too(kept, make, worked_out):
    add_record(kept, make())
    with kept.engine.connect() as conn:
        conn.execute(text("DELETE FROM indication"))
        conn.commit()
    assert repair(kept)[1].problems == []
    worked_out.clear()
    assert verify(kept).problems == []
    assert worked_out == []
    assert len(_told(kept)[-1]["rows"]) == 64
