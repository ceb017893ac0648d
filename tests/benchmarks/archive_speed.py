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

from archive_fill import fill  # noqa: E402
from conftest import made  # noqa: E402

from ptmark.archive import (  # noqa: E402
    Query,
    add_record,
    find,
    open_archive,
    part_history,
)

SEARCH = """
SELECT i.record_id, p.number, s.number, i.examined_on, i.revision, i.signatures, i.verdict,
 i.disposition, i.indications, i.longest_mm, i.examiner, i.procedure, i.profile, i.retest_of,
 i.sha256, i.id FROM inspection i JOIN part p ON p.id = i.part_id
 JOIN serial s ON s.id = i.serial_id WHERE p.key = ?
 ORDER BY i.examined_on DESC, i.id DESC LIMIT 51
"""
LENGTHS = """
SELECT substr(i.examined_on, 1, 4), count(d.length_mm), sum(d.length_mm) FROM inspection i
 JOIN part p ON p.id = i.part_id JOIN indication d ON d.inspection_id = i.id
 WHERE p.key = ? GROUP BY 1
"""


def timed(what, names, clock=time.perf_counter):
    """Milliseconds of each call: median and 95th percentile."""
    times = []
    for name in names:
        start = clock()
        what(name)
        times.append(1e3 * (clock() - start))
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
    """Taking in a record and its photo: by the clock, and the processor's own work."""
    with tempfile.TemporaryDirectory() as place:
        os.environ["PTMARK_HOME"] = place
        paths = [made(Path(place) / "r", f"r-{n:03d}", count=10) for n in range(120)]
        with open_archive(Path(place) / "archive") as archive:
            add_record(archive, paths[0])
            for clock in (time.perf_counter, time.process_time):
                half = paths[1:60] if clock is time.perf_counter else paths[60:]
                middle, high = timed(lambda path: add_record(archive, path), half, clock)
                name = "insert" if clock is time.perf_counter else "insert, processor"
                print(f"{name:24} median {middle:7.3f} ms   p95 {high:7.3f} ms")


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]))
