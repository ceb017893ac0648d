"""Many writers on one PostgreSQL, their connections cut in the middle; none lost, none doubled.

    python tests/benchmarks/archive_many.py FOLDER 10000 [WRITERS]

Invented records are made in FOLDER where they are not there yet. Each writer is a process of
its own that prints the id of a record once it is taken in, and asks again where it was refused;
two writers meet in every tenth record. Meanwhile connections are cut at random
(pg_terminate_backend), and at a third and two thirds of the way the server is stopped at once
and started again. fsync is on; the store is a folder.
"""

import os
import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent / "archive"), str(HERE)]

CHILD = """
import sys
from pathlib import Path
from ptmark.archive import add_record, open_archive
from ptmark.errors import ArchiveError
database, store, listed = sys.argv[1:4]
turn, writers = map(int, sys.argv[4:])
with open_archive(database=database, store=store, by=f"writer {turn}") as archive:
    for number, path in enumerate(map(Path, Path(listed).read_text().splitlines())):
        shared = number % 10 == 0 and turn == (number + 1) % writers
        if shared or turn == number % writers:
            while True:
                try:
                    add_record(archive, path)
                    break
                except ArchiveError as error:
                    print("refused", str(error).partition("\\n")[0], file=sys.stderr)
            print(path.stem, flush=True)
"""


def records_in(folder, count):
    """Paths of so many invented records, those that are missing made first."""
    from conftest import made

    paths = []
    for number in range(count):
        name = f"r-{number:05d}"
        path = folder / f"{name}.json"
        if not path.is_file():
            part = f"P-{number % 500}"
            made(folder, name, part=part, serial=f"S-{number // 2}", count=number % 10)
        paths.append(path)
    return paths


def disturbed(server, writers, outs, count):
    """Cut and restart until all writers are done; connections cut, and restarts."""
    draw, cuts, restarts = random.Random(5), 0, 0  # noqa: S311
    while any(one.poll() is None for one in writers):
        time.sleep(draw.uniform(0.2, 2.0))
        said = (
            "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity "
            "WHERE application_name = 'ptmark' AND random() < 0.1"
        )
        cuts += server.sql(said)[0][0]
        done = sum(out.read_bytes().count(b"\n") for out in outs)
        if restarts < 2 and done > count * (restarts + 1) / 3:
            server.run("pg_ctl", "stop", "-m", "immediate")
            time.sleep(1.0)
            server.start()
            restarts += 1
    return cuts, restarts


def checked(url, store, acknowledged, names):
    """What was lost, doubled or never taken in, and how many problems verifying finds."""
    from ptmark.archive import Query, find_all, lines, open_archive, verify

    with open_archive(database=url, store=store, by="check") as archive:
        there = Counter(hit.record_id for hit in find_all(archive, Query()))
        with archive.reading() as conn:
            told = Counter(one.subject for one in lines(conn) if one.action == "added")
        found = verify(archive)
    return {
        "lost": len(acknowledged - there.keys()),
        "never taken in": len(names - there.keys()),
        "doubled": sum(n > 1 for n in there.values()) + sum(n > 1 for n in told.values()),
        "problems": sum(p.kind != "orphaned" for p in found.problems),
    }


def run(server, place, paths, writers=8):
    """Let the writers take all in, disturbed; what came of it, and how it went."""
    url, store, listed = server.database(), str(place / "photos"), place / "paths.txt"
    from ptmark.archive import open_archive

    open_archive(database=url, store=store).close()
    listed.write_text("\n".join(map(str, paths)))
    outs = [place / f"writer-{turn}.txt" for turn in range(writers)]
    began = time.monotonic()
    children = []
    for turn, out in enumerate(outs):
        given = [url, store, str(listed), str(turn), str(writers)]
        with out.open("wb") as said, out.with_suffix(".err").open("wb") as errors:
            command = [sys.executable, "-c", CHILD, *given]
            children.append(subprocess.Popen(command, stdout=said, stderr=errors))
    cuts, restarts = disturbed(server, children, outs, len(paths))
    took = time.monotonic() - began
    acknowledged = {name for out in outs for name in out.read_text().split()}
    found = checked(url, store, acknowledged, {path.stem for path in paths})
    found["writers that gave up"] = sum(one.returncode != 0 for one in children)
    errors = [line for out in outs for line in out.with_suffix(".err").open()]
    refused = sum(line.startswith("refused") for line in errors)
    how = f"{cuts} connections cut, {restarts} restarts, {refused} refused, {took:.0f} s"
    return found, how


def main(folder, count, writers=8):
    """Ends with 1 where anything was lost, doubled or damaged, or nothing was cut."""
    from postgres_server import Server

    os.environ["PTMARK_HOME"] = str(folder / "user")
    paths = records_in(folder, count)
    with tempfile.TemporaryDirectory(dir=folder) as place, Server() as server:
        found, how = run(server, Path(place), paths, writers)
    print(f"{writers} writers, {count} records, {how}: {found}")
    return int(any(found.values()))


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), *map(int, sys.argv[2:])))
