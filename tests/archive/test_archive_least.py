"""Lengths that are the least that they can be: kept with the rows, told, found, never lost.

What runs out of the photo is of any length from what is seen of it on.
"""

import csv
import io
import json
from dataclasses import replace

import pytest
from sqlalchemy import inspect, text

from ptmark.__main__ import main
from ptmark.archive import (
    Query,
    add_record,
    count,
    find,
    found_csv,
    indications_of,
    open_archive,
    part_history,
    place_map,
    record_bytes,
    verify,
    verifying,
)
from ptmark.archive.migrating import NEWEST, at_version, migrate
from ptmark.record import load_record, save_record


@pytest.fixture
def cut(make):
    """Makes a record whose A, 2 mm of it seen, goes on; B is 3 mm long."""

    def one(name="r-1", why="runs_out", **more):
        path = make(name, fields={"location_datum": "hole A"}, **more)
        record = load_record(path)
        rows = [{**record.indications[0], why: True}, *record.indications[1:]]
        save_record(path, replace(record, indications=rows))
        return path

    return one


def flags(archive, record_id):
    return [one["least"] for one in indications_of(archive, record_id)]


def test_rows_tell_which_are_the_least(archive, make, cut):
    add_record(archive, cut("r-1"))
    add_record(archive, cut("r-2", why="covered", serial="S-2", day="2027-01-01"))
    add_record(archive, make("r-3", serial="S-3", day="2028-01-01"))
    assert [flags(archive, name) for name in ("r-1", "r-2", "r-3")] == [[1, 0], [1, 0], [0, 0]]
    hits = {hit.record_id: hit for hit in find(archive, Query()).hits}
    # B is the longest that is measured, but A may be longer.
    assert [(hits[n].longest_mm, hits[n].longest_least) for n in ("r-1", "r-3")] == [
        (3.0, 1),
        (3.0, 0),
    ]
    rows = list(csv.DictReader(io.StringIO(found_csv(list(hits.values())))))
    assert {one["record_id"]: one["longest_least"] for one in rows} == {
        "r-1": "True",
        "r-2": "True",
        "r-3": "False",
    }
    years = part_history(archive, "P-17").periods
    assert [one.longest_least for one in years] == [True, True, False]
    seen = place_map(archive, "P-17", datum="hole A").seen
    assert {(one.record_id, one.letter): one.least for one in seen} == {
        ("r-1", "A"): True,
        ("r-1", "B"): False,
        ("r-2", "A"): True,
        ("r-2", "B"): False,
    }
    assert verify(archive).problems == []


@pytest.mark.parametrize(
    ("query", "names"),
    [
        (Query(shortest_mm=2.5), {"cut", "cut-too"}),  # whole A is 2 mm
        (Query(shortest_mm=2.5, kind="cr*"), {"cut", "cut-too"}),
        (Query(shortest_mm=40, shape="linear"), {"cut", "cut-too"}),
        (Query(shortest_mm=2.5, longest_mm=3), {"cut", "cut-too"}),
        (Query(longest_mm=3), {"cut", "cut-too", "whole"}),
        (Query(longest_mm=1.5), set()),  # what is seen of it is longer
        (Query(shortest_mm=2.5, kind="pore"), set()),
        (Query(shortest_mm=2.5, part="P-17", since="2026-01-02"), {"cut-too"}),
    ],
)
def test_a_range_finds_what_may_lie_in_it(archive, make, cut, monkeypatch, query, names):
    add_record(archive, cut("cut", count=1, day="2026-01-01"))
    add_record(archive, cut("cut-too", why="overexposed", count=1))
    add_record(archive, make("whole", count=1))
    for few in (2000, 0):
        monkeypatch.setattr("ptmark.archive.asking._FEW", few)
        assert {hit.record_id for hit in find(archive, query).hits} == names
        assert count(archive, query) == len(names)


def test_an_older_archive_is_told_by_its_records_files(archive, make, cut, monkeypatch):
    paths = [cut("r-1"), make("r-2", serial="S-2")]
    for path in paths:
        add_record(archive, path)
    lines = "SELECT seq, sha256, detail FROM audit ORDER BY seq"
    with archive.reading() as conn:
        before = conn.execute(text(lines)).all()
    with archive.engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin():
            migrate(conn, "0009")
            columns = {one["name"] for one in inspect(conn).get_columns("indication")}
            assert "least" not in columns
            migrate(conn)
            assert at_version(conn) == NEWEST
    assert [flags(archive, name) for name in ("r-1", "r-2")] == [[1, 0], [0, 0]]
    hits = {hit.record_id: hit.longest_least for hit in find(archive, Query()).hits}
    assert hits == {"r-1": 1, "r-2": 0}
    assert [record_bytes(archive, path.stem) for path in paths] == [
        path.read_bytes() for path in paths
    ]
    with archive.reading() as conn:
        assert conn.execute(text(lines)).all() == before
    assert verify(archive).problems == []


def test_one_who_only_reads_an_older_archive_is_told_what_brings_it_up(tmp_path, cut, capsys):
    at = ["archive", "--at", str(tmp_path / "archive")]
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, cut())
        with archive.engine.connect() as plain:
            conn = plain.execution_options(write=True)
            with conn.begin():
                migrate(conn, "0009")
    assert main([*at, "find"]) != 0
    assert "`ptmark archive verify`" in capsys.readouterr().err
    assert main([*at, "verify"]) == 0
    assert main([*at, "find"]) == 0
    assert "longest ≥ 3.00" in capsys.readouterr().out


def test_hashes_that_older_lines_tell_stay_right(tmp_path, make, cut, monkeypatch):
    """All rows but those that now tell something more are not worked out again."""
    worked_out = []
    real = verifying.derived_quickly

    def noted(data, judge):
        worked_out.append(json.loads(data)["id"])
        return real(data, judge)

    monkeypatch.setattr(verifying, "derived_quickly", noted)
    monkeypatch.setattr("ptmark.archive.derive.least_of", lambda _: {})  # as it was before
    with open_archive(tmp_path / "archive") as archive:
        for path in (cut("r-1"), make("r-2", serial="S-2")):
            add_record(archive, path)
        monkeypatch.undo()
        monkeypatch.setattr(verifying, "derived_quickly", noted)
        monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "user"))
        with archive.engine.connect() as plain:
            conn = plain.execution_options(write=True)
            with conn.begin():
                migrate(conn, "0009")
                migrate(conn)
        assert verify(archive).problems == []
        assert worked_out == ["r-1"]
        with archive.engine.begin() as conn:
            conn.execute(text("UPDATE indication SET least = 0"))
        assert [one.says for one in verify(archive).problems] != []


def test_commands_tell_it(tmp_path, cut, capsys):
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, cut())

    def said(*words):
        assert main(["archive", "--at", str(tmp_path / "archive"), *words]) == 0
        return capsys.readouterr().out

    shown = [line for line in said("show", "r-1").splitlines() if "linear" in line]
    assert ["≥ 2.00 ± 0.10 mm" in line for line in shown] == [True, False]
    assert "longest ≥ 3.00 ± 0.10 mm" in said("find")
    (found,) = json.loads(said("find", "--format", "json"))
    assert found["longest_least"] is True
    (row,) = csv.DictReader(io.StringIO(said("find", "--format", "csv")))
    assert (row["longest_mm"], row["longest_least"]) == ("3.0", "True")
    assert "longest ≥ 3.00 ± 0.10 mm" in said("history", "P-17")
    told = json.loads(said("history", "P-17", "--json"))
    assert told["years"][0]["longest_least"] is True
    assert said("find", "--shortest", "30 mm", "--count").strip() == "1"
