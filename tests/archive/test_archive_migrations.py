"""Steps of the database's shape: the same for ever, and no harm where they are cut off."""

import ast
import json
import subprocess
import sys
import zlib
from importlib import import_module
from pathlib import Path

import pytest
from sqlalchemy import text

import ptmark
from ptmark.archive import Query, add_record, find, find_all, open_archive, record_bytes, verify
from ptmark.archive.migrating import NEWEST, at_version, migrate

NO_DAY = "\uff12\uff10\uff12\uff14-01-01"  # full-width digits
VERSIONS = Path(ptmark.__file__).parent / "archive" / "migrations" / "versions"


def step_to(archive, version):
    with archive.engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin():
            migrate(conn, version)


def test_no_step_rests_on_code_that_may_change():
    steps = sorted(VERSIONS.glob("v*.py"))
    assert len(steps) == int(NEWEST)
    for path in steps:
        named = set()
        for one in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(one, ast.ImportFrom):
                named.add(one.module)
            elif isinstance(one, ast.Import):
                named |= {each.name for each in one.names}
        assert not [name for name in named if name.partition(".")[0] == "ptmark"], path.name


@pytest.mark.parametrize(
    ("changed", "letters"),
    [
        ({}, ["A", "B"]),
        ({"together": {"seen_again": [{"id": "A", "of_record": 2}]}}, ["B"]),
        ({"together": {"seen_again": [{"id": "C", "of_record": 2}]}}, ["A", "C", "B"]),
        ({"more_photos": []}, ["A"]),
        ({"more_photos": [{}]}, []),  # no record: verifying tells
    ],
)
def test_the_least_lengths_of_a_set_are_those_of_the_photo_of_record(changed, letters):
    """By hand: a letter counts as the first photo shows it, or the one named for it."""
    step = import_module("ptmark.archive.migrations.versions.v0010_least")
    one = {"length_mm": 2.0}
    record = {
        "indications": [{"id": "A", "runs_out": True, **one}, {"id": "C", **one}],
        "together": None,
        "more_photos": [
            {
                "indications": [
                    {"id": "A", **one},
                    {"id": "C", **one, "runs_out": True},
                    {"id": "B", **one, "overexposed": True},
                    {"id": "D", "length_mm": None, "runs_out": True},
                ]
            }
        ],
    } | changed
    assert step._letters(zlib.compress(json.dumps(record).encode())) == letters


@pytest.fixture
def written(archive, make):
    """Records examined in another order than they were taken in; the last one's day is none."""
    days = [
        "2024-02-29",
        "2026-01-01",
        "2019-12-31",
        "2024-02-29",
        "\uff12\uff10\uff12\uff14-01-01",
    ]
    paths = [make(f"r-{n}", day=day, serial=f"S-{n}") for n, day in enumerate(days)]
    for path in paths:
        add_record(archive, path)
    return paths


def forget_day(archive, record_id):
    """Note again what was no day; a server's triggers ask for a line in the log."""
    with archive.engine.begin() as conn:
        server = conn.dialect.name != "sqlite"
        if server:
            conn.execute(text("ALTER TABLE inspection DISABLE TRIGGER USER"))
        where = text("UPDATE inspection SET examined_on = :day WHERE record_id = :name")
        conn.execute(where, {"day": NO_DAY, "name": record_id})
        if server:
            conn.execute(text("ALTER TABLE inspection ENABLE TRIGGER USER"))


# The record of the last day was created on 2026-03-01, which counts where no day is told.
ORDER = ["r-4", "r-1", "r-3", "r-0", "r-2"]


def test_words_are_found_in_the_order_of_the_dates_after_the_step_as_before(archive, written):
    for _ in range(2):
        assert [one.record_id for one in find_all(archive, Query(words="weld"))] == ORDER
        assert [one.record_id for one in find_all(archive, Query())] == ORDER
        page = find(archive, Query(words="inv* weld"), limit=2)
        assert [one.record_id for one in page.hits] == ORDER[:2]
        page = find(archive, Query(words="inv* weld"), limit=2, after=page.after)
        assert [one.record_id for one in page.hits] == ORDER[2:4]
        step_to(archive, "0010")
        forget_day(archive, "r-4")  # as it was before
        step_to(archive, NEWEST)
    assert verify(archive).problems == []
    assert [record_bytes(archive, path.stem) for path in written] == [
        path.read_bytes() for path in written
    ]


def test_a_revision_of_another_day_moves_in_the_index_of_words(archive, make):
    """What stood at its earlier place is gone: verifying compares the index with the texts."""
    for n in range(3):
        add_record(archive, make(f"r-{n}", day=f"2024-01-0{n + 1}", serial=f"S-{n}"))
    (before,) = find(archive, Query(record_id="r-0")).hits
    path = make("r-0", day="2025-01-01", remarks="invented seam", serial="S-0")
    add_record(archive, path, replaces=before.sha256)
    told = {"invented": ["r-0", "r-2", "r-1"], "seam": ["r-0"], "weld": ["r-2", "r-1"]}
    for words, names in told.items():
        assert [one.record_id for one in find_all(archive, Query(words=words))] == names
    assert verify(archive).problems == []


_KILLED = """
import os, signal, sys
from pathlib import Path
import ptmark.archive.migrating as room
from ptmark.archive import open_archive
room.guard = lambda *_: os.kill(os.getpid(), signal.SIGKILL)  # all steps done, none durable
open_archive(Path(sys.argv[1]))
"""


def test_a_step_that_was_killed_before_its_end_leaves_the_archive_as_it_was(tmp_path, make):
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        path = make()
        add_record(archive, path)
        step_to(archive, "0010")
    run = [sys.executable, "-c", _KILLED, str(folder)]
    assert subprocess.run(run, check=False).returncode == -9
    with open_archive(folder) as archive:
        with archive.reading() as conn:
            assert at_version(conn) == NEWEST
        assert [one.record_id for one in find(archive, Query(words="weld")).hits] == ["r-1"]
        assert record_bytes(archive, "r-1") == path.read_bytes()
        assert verify(archive).problems == []
