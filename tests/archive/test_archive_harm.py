"""A folder that may not be written, a damaged write-ahead log, writers during a backup."""

import os
import shutil
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from ptmark.archive import (
    Query,
    add_record,
    back_up,
    find_all,
    open_archive,
    verify,
)
from ptmark.errors import ArchiveError

# One process asks for all, as starting one costs more than the works do.
ASKS = """
import sys
from ptmark.__main__ import main
folder, record = sys.argv[1:]
for words in (["find"], ["show", "r-1"], ["history", "P-17"], ["log"], ["keep"], ["verify"],
              ["export", "--to", "out"], ["backup", "copy"], ["add", record], ["repair"]):
    print(words[0], main(["archive", "--at", folder, *words]), file=sys.stderr, flush=True)
"""


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="permissions of POSIX")
@pytest.mark.parametrize("with_log", [False, True])
def test_an_archive_that_may_not_be_written_is_read_and_says_so(tmp_path, make, with_log):
    folder, other = tmp_path / "archive", make("r-2")
    with open_archive(folder) as archive:
        add_record(archive, make("r-1"))
        if with_log:
            shutil.copytree(folder, tmp_path / "open")
    if with_log:
        folder = tmp_path / "open"
        assert (folder / "archive.sqlite-wal").stat().st_size > 0
    for one in (folder, *folder.rglob("*")):
        one.chmod(one.stat().st_mode & ~0o222)
    before = {one: one.read_bytes() for one in folder.rglob("*.sqlite")}
    command = [sys.executable, "-c", ASKS, str(folder), str(other)]
    if os.geteuid() == 0:  # who may write everywhere, unless that right is laid down
        if shutil.which("setpriv") is None:
            pytest.skip("there is no setpriv (util-linux)")
        command = ["setpriv", "--bounding-set", "-dac_override,-dac_read_search", *command]
    here = Path(__file__).parents[2]
    done = subprocess.run(
        command, cwd=tmp_path, env=os.environ | {"PYTHONPATH": str(here)}, capture_output=True,
        text=True, check=False,
    )  # fmt: skip
    for one in (folder, *folder.rglob("*")):
        one.chmod(one.stat().st_mode | 0o200)
    said = dict(line.split() for line in done.stderr.splitlines() if len(line.split()) == 2)
    reads = ("find", "show", "history", "log", "keep", "verify", "export", "backup")
    assert said == dict.fromkeys(reads, "0") | {"add": "1", "repair": "1"}, done.stderr
    refused = [line for line in done.stderr.splitlines() if line.startswith("ptmark: ")]
    assert len(refused) == 2
    assert all("ask for permission" in line for line in refused)
    assert "Traceback" not in done.stderr
    assert {one: one.read_bytes() for one in before} == before
    with open_archive(tmp_path / "copy", read_only=True) as copy:
        assert verify(copy).problems == []
    with open_archive(folder) as archive:
        assert [hit.record_id for hit in find_all(archive, Query())] == ["r-1"]


@pytest.mark.parametrize("share", [0.1, 0.5, 0.999])
def test_a_changed_bit_of_the_write_ahead_log_is_found(tmp_path, make, share):
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make("r-1"))
        add_record(archive, make("r-2"))
        shutil.copytree(tmp_path / "archive", tmp_path / "open")
    log = tmp_path / "open" / "archive.sqlite-wal"
    data = bytearray(log.read_bytes())
    data[int(len(data) * share)] ^= 16
    shutil.copytree(tmp_path / "open", tmp_path / "unharmed")
    log.write_bytes(data)
    with open_archive(tmp_path / "unharmed") as archive:
        assert verify(archive).problems == []
    with open_archive(tmp_path / "open") as archive:
        assert not verify(archive).whole


@pytest.mark.slow
def test_a_backup_while_two_write_is_whole_each_time(tmp_path, make):
    paths = [make(f"r-{n:02d}", count=1) for n in range(24)]
    folder = tmp_path / "archive"
    errors, taken, half_copied = [], [], threading.Event()

    def write(turn):
        try:
            with open_archive(folder, by=f"writer {turn}") as archive:
                for number, path in enumerate(paths[turn::2]):
                    if number == 8:  # however slow a copy is, one is made in the middle
                        assert half_copied.wait(600)
                    add_record(archive, path)
                    taken.append(path.stem)
        except Exception as error:  # noqa: BLE001 - told below
            errors.append(error)

    def copied(archive):
        """Records in a copy made now, which is whole."""
        before = set(taken)
        back_up(archive, tmp_path / "copy")
        with open_archive(tmp_path / "copy", read_only=True) as copy:
            assert verify(copy).problems == []
            there = {hit.record_id for hit in find_all(copy, Query())}
        assert before <= there
        return there

    with open_archive(folder) as archive:
        writers = [threading.Thread(target=write, args=(turn,)) for turn in range(2)]
        for one in writers:
            one.start()
        try:
            while any(one.is_alive() for one in writers):
                if 0 < len(copied(archive)) < len(paths):
                    half_copied.set()
        finally:
            half_copied.set()
            for one in writers:
                one.join()
        assert errors == []
        assert len(copied(archive)) == len(paths)
        assert verify(archive).problems == []


def test_names_and_texts_that_cannot_be_read_are_said_in_one_error(tmp_path, make, archive):
    # A bit in a column's name makes SQLite's own message no UTF-8; one in a line, no JSON.
    folder = tmp_path / "archive"
    add_record(archive, make())
    archive.close()
    whole = archive.file.read_bytes()
    name = whole.index(b"CREATE TABLE audit") + len(b"CREATE TABLE ")
    for at in (name, whole.index(b'"replaces": null')):
        file = folder / "archive.sqlite"
        file.write_bytes(whole[:at] + bytes([whole[at] ^ 0x80]) + whole[at + 1 :])
        try:
            with open_archive(folder) as harmed:
                found = verify(harmed)
        except ArchiveError as error:
            assert "malformed" in str(error)  # noqa: PT017
        else:
            assert any(p.kind in {"damaged", "changed"} for p in found.problems)
