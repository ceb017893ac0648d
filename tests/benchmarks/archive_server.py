"""How fast searches are on PostgreSQL, with the archives that `archive_speed.py` filled.

    python tests/benchmarks/archive_server.py FOLDER 10000 100000

copies the rows of FOLDER/10000 and so on to a server of its own and makes the searches there.
Told are milliseconds by the clock, of each search the quickest of several rounds, and in
brackets those of the processor in the server's process, on average: median and 95th
percentile over the names that are searched for.
"""

import os
import random
import sqlite3
import statistics
import sys
import tempfile
import time
from contextlib import closing
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parent)]

from postgres_server import Server  # noqa: E402
from sqlalchemy import text  # noqa: E402

from ptmark.archive import Query, find, open_archive, part_history  # noqa: E402

_ROUNDS, _NAMES = 7, 60
_TABLES = ["part", "serial", "part_tail", "serial_tail", "inspection", "indication", "wording"]


def copy_over(file, archive):
    """The rows that searches read, as they lie in a file."""
    with closing(sqlite3.connect(f"file:{file}?mode=ro", uri=True)) as plain:
        raw = archive.engine.raw_connection()
        cursor = raw.cursor()
        for name in _TABLES:
            cursor.execute(f"ALTER TABLE {name} DISABLE TRIGGER USER")
            rows = plain.execute(f"SELECT * FROM {name}")  # noqa: S608
            columns = ", ".join(one[0] for one in rows.description)
            with cursor.copy(f"COPY {name} ({columns}) FROM STDIN") as copy:
                for row in rows:
                    copy.write_row(row)
            cursor.execute(f"ALTER TABLE {name} ENABLE TRIGGER USER")
        raw.commit()
        raw.close()
    with archive.engine.connect() as conn:
        conn.execution_options(isolation_level="AUTOCOMMIT").execute(text("VACUUM ANALYZE"))


def searches(names, draw):
    """Each kind of search with the names it is made for."""
    words = [f"invented batch {draw.randrange(1000)}" for _ in names]
    lengths = [(low := draw.uniform(0.5, 8.5), low + 0.3) for _ in names]
    return {
        "part number": [Query(part=one) for one in names],
        "beginning of 10 parts": [Query(part=f"{one[:-1]}*") for one in names],
        "letters within": [Query(part=f"*{one[-3:]}*") for one in names],
        "a word that few have": [Query(words=one) for one in names],
        "three words": [Query(words=one) for one in words],
        "a word that all have": [Query(words="invented")] * 5,
        "beginning of one": [Query(words="inv*")] * 5,
        "two that exclude each other": [Query(words="0000001 0000002")] * 5,
        "a word, verdict and kind": [
            Query(words="invented", verdict="rejectable", kind="crack")
        ]
        * 5,
        "a word and a part": [Query(words="invented", part=one) for one in names],
        "a word and a year": [
            Query(
                words="invented", since=f"{2010 + n % 15}-01-01", until=f"{2010 + n % 15}-12-31"
            )
            for n, _ in enumerate(names)
        ],
        "length from and to": [Query(shortest_mm=a, longest_mm=b) for a, b in lengths],
        "kind and length": [Query(kind="crack", shortest_mm=a) for a, _ in lengths],
        "length that none have": [Query(shortest_mm=12, longest_mm=13)] * 5,
        "disposition": [Query(disposition="reject")] * 5,
    }


def spent(pid):
    """Processor milliseconds of a process so far."""
    fields = Path(f"/proc/{pid}/stat").read_text("ascii").rpartition(")")[2].split()
    return 1e3 * (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def timed(archive, works):
    """Median, 95th percentile and the server's own average, ms; works take no argument."""
    raw = archive.engine.raw_connection()
    pid = raw.cursor().execute("SELECT pg_backend_pid()").fetchone()[0]
    raw.close()  # the pool gives the same one to each search
    best = [float("inf")] * len(works)
    before = spent(pid)
    for _ in range(_ROUNDS):
        for number, work in enumerate(works):
            start = time.perf_counter()
            work()
            best[number] = min(best[number], 1e3 * (time.perf_counter() - start))
    used = (spent(pid) - before) / (_ROUNDS * len(works))
    return statistics.median(best), statistics.quantiles(best, n=20)[-1], used


def measure(server, folder, records):
    """All searches of one archive."""
    with (
        tempfile.TemporaryDirectory() as store,
        open_archive(database=server.database(), store=store, by="fill") as archive,
    ):
        copy_over(folder / str(records) / "archive.sqlite", archive)
        draw = random.Random(5)  # noqa: S311
        parts = max(records // 20, 1)
        names = [f"P-{draw.randrange(parts):05d}" for _ in range(_NAMES)]
        told = {
            "history": timed(archive, [lambda n=n: part_history(archive, n) for n in names])
        }
        for what, queries in searches(names, draw).items():
            works = [lambda q=q: find(archive, q, whole=False) for q in queries]
            told[what] = timed(archive, works)
        return told


def main(folder, sizes):
    """Copy, measure, tell."""
    with Server() as server:
        told = {size: measure(server, folder, size) for size in sizes}
    print(f"{'median, p95 (server), ms':30}" + "".join(f"{10 * one:>28,}" for one in sizes))
    for what in told[sizes[0]]:
        cells = "".join("{:10.2f} {:8.2f} ({:5.1f})".format(*told[one][what]) for one in sizes)
        print(f"{what:30}{cells}")


if __name__ == "__main__":
    main(Path(sys.argv[1]), [int(one) for one in sys.argv[2:]])
