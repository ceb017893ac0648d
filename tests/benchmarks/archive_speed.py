"""How fast the archive is, as ratios and against hand-written SQL on the same file.

    python tests/benchmarks/archive_speed.py FOLDER 1000 10000 100000

fills FOLDER/1000 and so on with so many records of ten indications and a twentieth as many part
numbers (where they are not filled yet), measures each, and puts them side by side. All is told
by processor time, as other work on the machine takes from the clock's; through the caches it
adds to that too, so each search is made in several rounds and its quickest counts. Median and
95th percentile are those over 200 part numbers. Taking in is told without what flushing files
to the disk takes.
"""

import os
import random
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path[:0] = [
    str(Path(__file__).parent),
    str(Path(__file__).resolve().parents[1] / "archive"),
]

from archive_fill import fill  # noqa: E402
from conftest import made  # noqa: E402

from ptmark.archive import (  # noqa: E402
    Query,
    add_record,
    find,
    open_archive,
    part_history,
)

_ROUNDS = 15
SEARCH = """
SELECT i.record_id, p.number, s.number, i.examined_on, i.revision, i.signatures, i.verdict,
 i.disposition, i.indications, i.longest_mm, i.longest_u_mm, i.longest_least, i.examiner,
 i.procedure, i.profile, i.retest_of, i.sha256, i.id FROM inspection i
 JOIN part p ON p.id = i.part_id
 JOIN serial s ON s.id = i.serial_id WHERE p.key = ?
 ORDER BY i.examined_on DESC, i.id DESC LIMIT 51
"""
LENGTHS = """
SELECT substr(i.examined_on, 1, 4), count(d.length_mm), sum(d.length_mm) FROM inspection i
 JOIN part p ON p.id = i.part_id JOIN indication d ON d.inspection_id = i.id
 WHERE p.key = ? GROUP BY 1
"""


def quickest(works, names):
    """Milliseconds of each work: median and 95th percentile over the names."""
    best = {what: [float("inf")] * len(names) for what in works}
    for _ in range(_ROUNDS):
        for number, name in enumerate(names):
            for what, work in works.items():  # side by side: what disturbs one disturbs all
                start = time.process_time_ns()
                work(name)
                spent = (time.process_time_ns() - start) / 1e6
                best[what][number] = min(best[what][number], spent)
    return {
        what: (statistics.median(times), statistics.quantiles(times, n=20)[-1])
        for what, times in best.items()
    }


def measure(folder, records):
    """Fill where needed; median and 95th percentile of each work."""
    parts = max(records // 20, 1)
    file = folder / "archive.sqlite"
    if not file.exists():
        with open_archive(folder, by="fill") as archive:
            fill(archive, records, parts)
    draw = random.Random(5)  # noqa: S311
    names = [f"P-{draw.randrange(parts):05d}" for _ in range(200)]
    opening = [_opening(folder) for _ in range(5)]
    archive = open_archive(folder, read_only=True)
    raw = sqlite3.connect(f"file:{file}?mode=ro", uri=True)
    raw.execute("PRAGMA cache_size=-65536")  # as much as the archive takes

    def plain_history(name):
        raw.execute(SEARCH, (name.lower(),)).fetchall()
        raw.execute(LENGTHS, (name.lower(),)).fetchall()

    works = {
        "part number": lambda name: find(archive, Query(part=name)),
        "the same, plain SQL": lambda name: raw.execute(SEARCH, (name.lower(),)).fetchall(),
        "history": lambda name: part_history(archive, name),
        "the same, plain SQL ": plain_history,
        "beginning of 10 parts": lambda name: find(archive, Query(part=name[:-1] + "*")),
    }
    told = quickest(works, names)
    others = {
        "beginning of every part": Query(part="P-*"),
        "part and criteria": Query(part=names[0], criteria="invented-1"),
        "part, kind and length": Query(part=names[0], kind="crack", shortest_mm=5),
        "kind and length": Query(kind="crack", shortest_mm=8.5),
        "disposition": Query(disposition="reject"),
        "a word": Query(words=names[0]),
        "beginning of a word": Query(words="inv*"),
    }
    more = {what: lambda _, q=query: find(archive, q) for what, query in others.items()}
    told |= quickest(more, names[:5])
    archive.close()
    return {"opening": (statistics.median(opening), max(opening)), **told}


def _opening(folder):
    """Processor milliseconds that opening takes in a fresh process, SQLAlchemy loaded."""
    code = (
        "import sys, time, pathlib, ptmark.archive as room; start = time.process_time();"
        "room.open_archive(pathlib.Path(sys.argv[1]), read_only=True);"
        "print(1e3 * (time.process_time() - start))"
    )
    run = [sys.executable, "-c", code, str(folder)]
    return float(subprocess.run(run, check=True, capture_output=True, text=True).stdout)


def main(folder, sizes):
    """Fill, measure, tell."""
    told = {size: measure(folder / str(size), size) for size in sizes}
    print(f"{'median and p95, ms':24}" + "".join(f"{10 * size:>18,}" for size in sizes))
    for what in told[sizes[0]]:
        cells = [told[size][what] for size in sizes]
        print(f"{what:24}" + "".join(f"{a:9.2f} {b:8.2f}" for a, b in cells))
    for what, plain in (("part number", ""), ("history", " ")):
        pairs = [
            (told[size][what], told[size][f"the same, plain SQL{plain}"]) for size in sizes
        ]
        ratios = "".join(f"{a[0] / b[0]:9.2f} {a[1] / b[1]:8.2f}" for a, b in pairs)
        print(f"{what + ' / plain SQL':24}{ratios}")
    _insert()


def _insert():
    """Taking in a record and its photo: the processor's own work."""
    with tempfile.TemporaryDirectory() as place:
        os.environ["PTMARK_HOME"] = place
        paths = [made(Path(place) / "r", f"r-{n:03d}", count=10) for n in range(100)]
        flushed, os.fsync = os.fsync, lambda _: None
        try:
            with open_archive(Path(place) / "archive") as archive:
                times = [_taken_in(archive, path) for path in paths][10:]
        finally:
            os.fsync = flushed
    high = statistics.quantiles(times, n=20)[-1]
    print(f"{'taking in':24}{statistics.median(times):9.2f} {high:8.2f} least {min(times):.2f}")


def _taken_in(archive, path):
    start = time.process_time()
    add_record(archive, path)
    return 1e3 * (time.process_time() - start)


if __name__ == "__main__":
    main(Path(sys.argv[1]), [int(one) for one in sys.argv[2:]])
