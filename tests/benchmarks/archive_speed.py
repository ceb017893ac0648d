"""How fast the archive is, as ratios and against hand-written SQL on the same file.

    python tests/benchmarks/archive_speed.py FOLDER 100000

fills an archive in FOLDER with so many records of ten indications and five thousandths as many
part numbers (where it is not filled yet), then measures.
"""

import os
import random
import sqlite3
import statistics
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [
    str(Path(__file__).parent),
    str(Path(__file__).resolve().parents[1] / "archive"),
]

from archive_fill import fill
from conftest import made

from ptmark.archive import Query, add_record, find, open_archive, part_history

SEARCH = """
SELECT i.record_id, p.number, s.number, i.examined_on, i.revision, i.signatures, i.verdict,
 i.disposition, i.indications, i.longest_mm, i.examiner, i.procedure, i.profile, i.retest_of,
 i.sha256, i.id FROM inspection i JOIN part p ON p.id = i.part_id JOIN serial s ON s.id = i.serial_id
WHERE p.key = ? ORDER BY i.examined_on DESC, i.id DESC LIMIT 51
"""
LENGTHS = """
SELECT i.examined_on, d.length_mm FROM inspection i JOIN part p ON p.id = i.part_id
JOIN indication d ON d.inspection_id = i.id WHERE p.key = ?
"""


def timed(what, names):
    """Milliseconds of each call: median and 95th percentile."""
    times = []
    for name in names:
        start = time.perf_counter()
        what(name)
        times.append(1e3 * (time.perf_counter() - start))
    return statistics.median(times), statistics.quantiles(times, n=20)[-1]


def main(folder, records):
    """Fill, measure, tell."""
    parts = max(records // 20, 1)
    file = folder / "archive.sqlite"
    if not file.exists():
        with open_archive(folder, by="fill") as archive:
            fill(archive, records, parts)
    draw = random.Random(5)  # noqa: S311
    names = [f"P-{draw.randrange(parts):05d}" for _ in range(300)]
    start = time.perf_counter()
    archive = open_archive(folder, read_only=True)
    print(f"opening: {1e3 * (time.perf_counter() - start):.0f} ms; {10 * records} indications")
    raw = sqlite3.connect(f"file:{file}?mode=ro", uri=True)

    def plain_history(name):
        raw.execute(SEARCH, (name.lower(),)).fetchall()
        raw.execute(LENGTHS, (name.lower(),)).fetchall()

    works = {
        "search": lambda name: find(archive, Query(part=name)),
        "search, plain SQL": lambda name: raw.execute(SEARCH, (name.lower(),)).fetchall(),
        "history": lambda name: part_history(archive, name),
        "history, plain SQL": plain_history,
        "prefix of 10 parts": lambda name: find(archive, Query(part=name[:-1] + "*")),
        "prefix of all": lambda _name: find(archive, Query(part="P-*")),
        "part, kind and length": lambda name: find(
            archive, Query(part=name, kind="crack", shortest_mm=5)
        ),
        "kind and length": lambda _name: find(archive, Query(kind="crack", shortest_mm=8.5)),
        "a word": lambda name: find(archive, Query(words=f"{name}")),
    }
    for what, work in works.items():
        timed(work, names[:20])
        middle, high = min(timed(work, names) for _ in range(3))
        print(f"{what:24} median {middle:7.3f} ms   p95 {high:7.3f} ms")
    archive.close()
    _insert()


def _insert():
    """Taking in a record and its photo, with and without the time in fsync."""
    spent = [0.0]
    plain = os.fsync

    def counted(handle):
        start = time.perf_counter()
        plain(handle)
        spent[0] += time.perf_counter() - start

    with tempfile.TemporaryDirectory() as place:
        os.environ["PTMARK_HOME"] = place
        paths = [made(Path(place) / "r", f"r-{n:03d}", count=10) for n in range(120)]
        for off in (False, True):
            os.fsync = counted
            with open_archive(Path(place) / f"a{off}") as archive:
                if off:  # SQLite flushes by itself; without that only our own work is left
                    archive.engine.dispose()
                    _no_flush(archive.engine)
                add_record(archive, paths[0])
                times = []
                for path in paths[1:]:
                    spent[0], start = 0.0, time.perf_counter()
                    add_record(archive, path)
                    times.append(1e3 * (time.perf_counter() - start - (spent[0] if off else 0)))
            os.fsync = plain
            name = "insert, without fsync" if off else "insert, with fsync"
            high = statistics.quantiles(times, n=20)[-1]
            print(f"{name:24} median {statistics.median(times):7.3f} ms   p95 {high:7.3f} ms")


def _no_flush(engine):
    from sqlalchemy import event

    @event.listens_for(engine, "connect")
    def _off(raw, _record):
        raw.execute("PRAGMA synchronous=OFF")


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]))
