import json
import subprocess
import sys
import textwrap
from dataclasses import replace

import numpy as np
import pytest

from ptmark.errors import RecordError
from ptmark.record import load_record, record_text, save_record
from ptmark.record.store import MAX_BYTES


def test_round_trip(tmp_path, record):
    path = tmp_path / "new folder" / "one.json"
    save_record(path, record)
    assert load_record(path) == record
    assert path.read_text("utf-8") == record_text(load_record(path))


def test_key_order_and_bytes_do_not_depend_on_how_the_record_was_made(record):
    text = record_text(record)
    keys = list(json.loads(text))
    assert keys[:3] == ["schema", "id", "created"]
    assert record_text(replace(record)) == text
    assert text.endswith("}\n")


def test_what_does_not_fit_is_never_written(tmp_path, record):
    path = tmp_path / "one.json"
    save_record(path, record)
    before = path.read_bytes()
    for bad in (
        replace(record, revision=0),
        replace(record, disposition={"decision": "maybe", "reason": ""}),
        replace(record, conditions={"relief_mm": float("nan"), "haze": None}),
    ):
        with pytest.raises(RecordError):
            save_record(path, bad)
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["one.json"]


@pytest.mark.parametrize(
    ("damage", "says"),
    [
        (lambda b: b"", "not JSON"),
        (lambda b: b[: len(b) // 2], "not JSON"),
        (lambda b: b[:-3], "not JSON"),
        (lambda b: b"\xff\xd8\xff\xe0" + b, "UTF-8"),
        (lambda b: b.replace(b'"revision": 1', b'"revision": NaN'), "NaN"),
        (lambda b: b.replace(b'"revision": 1', b'"revision": 1e999'), "too large"),
        (lambda b: b.replace(b'"haze": 0.0', b'"haze": 1E+400'), "too large"),
        (lambda b: b.replace(b'"haze": 0.0', b'"haze": ' + b"9" * 400 + b".5"), "too large"),
        (lambda b: b.replace(b'"revision": 1', b'"revision": 1, "revision": 2'), "twice"),
        (lambda b: b.replace(b"ptmark-record/3", b"ptmark-record/9"), "unknown version"),
        (lambda b: b"[" * 200_000, "too deeply|not JSON"),
        (lambda b: b'{"a": 1}', "not an inspection record"),
        (lambda b: b" " * (MAX_BYTES + 1), "larger than"),
    ],
)
def test_a_damaged_file_gives_one_clear_error(tmp_path, record, damage, says):
    path = tmp_path / "damaged.json"
    path.write_bytes(damage(record_text(record).encode()))
    with pytest.raises(RecordError, match=says) as caught:
        load_record(path)
    assert str(path) in caught.value.where
    assert caught.value.mend


def test_any_cut_is_told(tmp_path, record):
    path = tmp_path / "cut.json"
    whole = record_text(record).encode()
    for size in np.random.default_rng(5).choice(
        len(whole) - 2, 60, replace=False
    ):  # any will do
        path.write_bytes(whole[:size])
        with pytest.raises(RecordError):
            load_record(path)


def test_a_folder_or_missing_file_is_told(tmp_path):
    for path in (tmp_path, tmp_path / "none.json"):
        with pytest.raises(RecordError, match="cannot be read"):
            load_record(path)


def test_a_file_that_cannot_be_written_is_told(tmp_path, record):
    (tmp_path / "file").write_text("x")
    with pytest.raises(RecordError, match="cannot be written"):
        save_record(tmp_path / "file" / "one.json", record)


KILLER = textwrap.dedent("""
    import dataclasses, itertools, os, pathlib, random, signal, sys, time
    from ptmark.record import load_record, save_record

    path = pathlib.Path(sys.argv[1])
    chance = random.Random(11)
    first = last = load_record(path)
    for turn in range(25):
        child = os.fork()
        if child == 0:
            for revision in itertools.count(last.revision + 1):
                save_record(path, dataclasses.replace(last, revision=revision))
        before, until = path.stat().st_mtime_ns, time.monotonic() + 20
        while path.stat().st_mtime_ns == before and time.monotonic() < until:
            time.sleep(0.002)  # the first save is through, however busy the machine
        if turn % 2:  # half of them just as a file is being written
            count = len(list(path.parent.glob(".*.part")))
            while len(list(path.parent.glob(".*.part"))) == count and time.monotonic() < until:
                pass
        else:
            time.sleep(chance.uniform(0, 0.1))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        now = load_record(path)
        assert now.revision >= last.revision
        assert dataclasses.replace(now, revision=1) == first
        last = now
    print(last.revision)
""")


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="kill -9 is a POSIX matter")
def test_a_kill_while_saving_leaves_a_whole_file(tmp_path, record):
    """25 kills at random moments; after each, the file opens whole, as the old or the new."""
    path = tmp_path / "one.json"
    rows = record.indications[0]["outline_px"] * 200  # long to write: easily caught half-way
    save_record(
        path, replace(record, indications=[{**record.indications[0], "outline_px": rows}])
    )
    done = subprocess.run(
        [sys.executable, "-c", KILLER, str(path)],
        check=False,
        capture_output=True,
        text=True,
        timeout=600,
    )
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) >= 25  # the kills did fall among saves
    litter = [p.name for p in tmp_path.iterdir() if p.name != path.name]
    assert litter  # some did fall half-way through one
    assert all(name.endswith(".part") and name.startswith(".") for name in litter)
    save_record(path, record)  # what lies about does not stop the next start
    assert load_record(path) == record
