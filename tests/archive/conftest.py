import hashlib
import importlib.util
import json
import sqlite3
import sys
from contextlib import closing
from pathlib import Path

import pytest

from ptmark.archive import Query, find_all, open_archive
from ptmark.record import Record, save_record


def made(folder, name="r-1", *, part="P-17", serial="S-1", day="2026-03-01", count=2, **more):
    """An invented record and its photo (bytes that stand for one), as files."""
    folder.mkdir(parents=True, exist_ok=True)
    photo = more.pop("photo", None) or hashlib.shake_256(name.encode()).digest(5000)
    (folder / f"{name}.jpg").write_bytes(photo)
    indications = [indication(chr(65 + n), 2.0 + n, 10.0 * n) for n in range(count)]
    verdict = more.pop("verdict", "rejectable")
    fields = {
        "part_number": part,
        "serial_number": serial,
        "examination_date": day,
        "examiner": more.pop("examiner", "Examiner One"),
        "procedure": more.pop("procedure", "PT-1"),
        "remarks": more.pop("remarks", "invented weld"),
        **more.pop("fields", {}),
    }
    record = Record(
        id=name,
        created="2026-03-01T08:00:00Z",
        fields={key: text for key, text in fields.items() if text},
        photo={
            "file": f"{name}.jpg",
            "sha256": hashlib.sha256(photo).hexdigest(),
            "width": 2000,
            "height": 1500,
        },
        scale={
            "reference": "card",
            "mm_per_px": 0.05,
            "tilt_deg": 1.0,
            "working_distance_mm": 200.0,
            "residual_px": 0.2,
            "focal_px": None,
            "reference_px": None,
            "homography": None,
            "given": None,
            "cautions": [],
        },
        conditions={"relief_mm": None, "haze": 0.0},
        area_px=None,
        indications=indications,
        left_out=[],
        evaluation={
            "profile": "invented-1",
            "title": "Invented criteria",
            "edition": "2026, invented",
            "decision_rule": "guarded",
            "verdict": verdict,
            "findings": [],
            "relevance": {},
            "shape": {},
            "cautions": [],
            "checksum": "cd" * 32,
        },
        disposition={"decision": more.pop("decision", "reject"), "reason": ""},
        **more,
    )
    path = folder / f"{name}.json"
    save_record(path, record)
    return path


def indication(letter, length, x):
    ring = [[x + dx, 20.0 + dy] for dx, dy in ((0, 0), (length, 0), (length, 0.4), (0, 0.4))]
    return {
        "id": letter,
        "outline_px": [[20 * a, 20 * b] for a, b in ring],
        "outline_mm": ring,
        **dict.fromkeys(("length_mm", "path_mm"), length),
        **dict.fromkeys(("length_u_mm", "path_u_mm", "width_u_mm", "ratio_u"), 0.1),
        "width_mm": 0.4,
        "area_mm2": length * 0.4,
        "area_u_mm2": 0.05,
        "ratio": length / 0.4,
        "shape": "linear",
        "shape_sure": True,
        "centre_mm": [x + length / 2, 20.2],
        "centre_px": [20 * x, 404.0],
        "ends_mm": [[x, 20.0], [x + length, 20.4]],
        "ends_px": [[20 * x, 400.0], [20 * (x + length), 408.0]],
        "budget": {"edge": 0.03},
        "width_budget": {"edge": 0.02},
        "edge": {"shift_px": 0.4, "noise_px": 0.1},
        "source": "suggested",
        "standing": "taken",
        "confidence": 0.9,
        "kind": "crack" if letter == "A" else "pore",
        "note": "",
        "relevance": "",
        "reason": "",
    }


@pytest.fixture(autouse=True)
def _own_home(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "user"))


@pytest.fixture
def make(tmp_path):
    def one(*args, **more):
        return made(tmp_path / "records", *args, **more)

    return one


@pytest.fixture(scope="session")
def make_in():
    """Makes a record in a folder; for what lives longer than one test."""
    return made


@pytest.fixture
def archive(request, tmp_path):
    """On SQLite, and on PostgreSQL where `pytest_generate_tests` asks for it."""
    if getattr(request, "param", "file") == "file":
        with open_archive(tmp_path / "archive", by="keeper") as one:
            yield one
        return
    url = request.getfixturevalue("postgres").cleared()
    with open_archive(database=url, store=str(tmp_path / "photos"), by="keeper") as one:
        yield one


@pytest.fixture(scope="session")
def postgres():
    """A running PostgreSQL with a template database of an empty archive."""
    if importlib.util.find_spec("psycopg") is None:
        pytest.skip("psycopg is not installed (ptmark[server])")
    sys.path.insert(0, str(Path(__file__).parents[1] / "benchmarks"))
    try:
        import postgres_server
    finally:
        sys.path.pop(0)
    if postgres_server.programs() is None:
        pytest.skip("there is no PostgreSQL in /usr/lib/postgresql (Debian's postgresql)")
    with postgres_server.Server("fsync=off") as server:  # kills are of clients, not of power
        yield server


_OF_FILES = {  # these look into the database's file, or copy it
    "test_a_changed_row_is_found_and_mended_from_its_record",
    "test_lines_of_the_log_cannot_be_changed_or_cut_off_unseen",
    "test_a_photo_is_mended_from_a_second_copy",
    "test_a_record_that_went_is_mended_from_a_second_copy",
    "test_a_backup_cut_off_leaves_the_last_one",
    "test_a_file_has_no_roles",
    "test_a_copy_can_be_made_again_too",
    "test_names_and_texts_that_cannot_be_read_are_said_in_one_error",
}


def pytest_generate_tests(metafunc):
    if "archive" in metafunc.fixturenames and metafunc.function.__name__ not in _OF_FILES:
        metafunc.parametrize("archive", ["file", "server"], indirect=True)


@pytest.fixture
def ids():
    return lambda archive: sorted(hit.record_id for hit in find_all(archive, Query()))


@pytest.fixture
def raw():
    """Runs statements on the database's file, past the archive."""

    def run(archive, *statements):
        with closing(sqlite3.connect(archive.file)) as conn:
            for one in statements:
                conn.execute(one)
            conn.commit()

    return run


@pytest.fixture
def document():
    return lambda path: json.loads(path.read_text("utf-8"))
