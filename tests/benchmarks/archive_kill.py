"""Kill a writing process at random moments; what it acknowledged must be there, and all whole.

    python tests/benchmarks/archive_kill.py 200

The writer is a forked process that tells a record's id only after `add_record` came back. It is
killed (SIGKILL) after it told of 0 to 2 records and a random share of the time that one takes,
so that the moments spread over all that happens while a record is taken in.
"""

import os
import random
import signal
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "archive"))

RECORDS = 120  # then a new archive is begun


def write(folder, paths, told):
    """The writer: tells b"open", then each record's id, in lines; never comes back."""
    from ptmark.archive import add_record, open_archive

    with open_archive(folder / "archive", by="writer") as archive:
        os.write(told, b"open\n")
        for path in paths:
            add_record(archive, path)
            os.write(told, path.stem.encode() + b"\n")
    os._exit(0)


def round_of(folder, paths, draw, took):
    """Fork a writer and kill it; ids it told of, and how long one record took, s."""
    heard, told = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(heard)
        try:
            write(folder, paths, told)
        finally:
            os._exit(1)
    os.close(told)
    with os.fdopen(heard) as out:
        assert out.readline() == "open\n"
        began, said = time.monotonic(), []
        for _ in range(draw.randrange(3)):
            said.append(out.readline().strip())
        if said:
            took = (time.monotonic() - began) / len(said)
        time.sleep(draw.uniform(0, took))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        said += out.read().split()
    return [one for one in said if one], took


def lost(folder, acknowledged):
    """Acknowledged records that are not there, and problems; what is orphaned is no loss."""
    from ptmark.archive import Query, find_all, open_archive, verify

    with open_archive(folder / "archive", by="check") as archive:
        there = {hit.record_id for hit in find_all(archive, Query())}
        found = verify(archive)
    return acknowledged - there, [p for p in found.problems if p.kind != "orphaned"]


def main(times):
    """Kill so many times; ends with 1 where anything was lost."""
    from conftest import made

    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        os.environ["PTMARK_HOME"] = str(folder / "user")
        paths = [made(folder / "records", f"r-{number:05d}") for number in range(RECORDS + 5)]
        acknowledged, bad, total, took = set(), 0, 0, 0.1
        draw = random.Random(7)  # noqa: S311
        for turn in range(times):
            if len(acknowledged) > RECORDS - 5:
                total, acknowledged = total + len(acknowledged), set()
                folder.joinpath("archive").rename(folder / f"full-{turn}")
            said, took = round_of(folder, paths[len(acknowledged) :], draw, took)
            acknowledged |= set(said)
            gone, problems = lost(folder, acknowledged)
            bad += len(gone) + len(problems)
            if gone or problems:
                print(turn, sorted(gone), problems)
            if turn % 10 == 9:
                print(f"{turn + 1} kills, {len(acknowledged)} there, {bad} bad", flush=True)
        total += len(acknowledged)
        print(f"{times} kills, {total} records acknowledged: {bad} lost or damaged")
        return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 200))
