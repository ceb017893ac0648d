"""Kill a writing child at random moments; what it acknowledged must be there, and all whole.

    python tests/benchmarks/archive_kill.py 200

The child prints a record's id only after `add_record` came back. Its argument is the folder.
"""

import random
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "archive"))

CHILD = """
import sys
from pathlib import Path
from ptmark.archive import add_record, open_archive
folder, start = Path(sys.argv[1]), int(sys.argv[2])
with open_archive(folder / "archive", by="child") as archive:
    print("open", flush=True)
    for path in sorted((folder / "records").glob("*.json"))[start:]:
        add_record(archive, path)
        print(path.stem, flush=True)
"""


def round_of(folder, start, delay):
    """Run the child, kill it after a delay in s from when it opened; ids it acknowledged."""
    command = [sys.executable, "-c", CHILD, str(folder), str(start)]
    child = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert child.stdout.readline() == "open\n"
    time.sleep(delay)
    child.send_signal(signal.SIGKILL)
    said = child.stdout.read()
    child.wait()
    return [line for line in said.split("\n")[:-1] if line]


def lost(folder, acknowledged):
    """Acknowledged records that are not there, and what verifying says."""
    from ptmark.archive import Query, find_all, open_archive, verify

    with open_archive(folder / "archive", by="check") as archive:
        there = {hit.record_id for hit in find_all(archive, Query())}
        found = verify(archive)
    problems = [p for p in found.problems if p.kind != "orphaned"]
    return acknowledged - there, problems, len(found.problems) - len(problems)


def main(times):
    """Kill so many times; ends with 1 where anything was lost."""
    import os

    from conftest import made

    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        os.environ["PTMARK_HOME"] = str(folder / "user")
        for number in range(600):
            made(folder / "records", f"r-{number:05d}")
        acknowledged, bad, orphans = set(), 0, 0
        draw = random.Random(7)  # noqa: S311
        for turn in range(times):
            if len(acknowledged) > 550:
                acknowledged = set()
                folder.joinpath("archive").rename(folder / f"full-{turn}")
            acknowledged |= set(round_of(folder, len(acknowledged), draw.uniform(0, 1.5)))
            gone, problems, orphans = lost(folder, acknowledged)
            bad += len(gone) + len(problems)
            if gone or problems:
                print(turn, sorted(gone), problems)
            if turn % 10 == 9:
                print(f"{turn + 1} kills, {len(acknowledged)} there, {bad} bad", flush=True)
        print(f"{times} kills: {bad} lost or damaged, {orphans} orphaned photos at the end")
        return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200))
