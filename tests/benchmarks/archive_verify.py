"""How fast verifying is against only hashing the same files, in time of the processor.

    python tests/benchmarks/archive_verify.py FOLDER [PHOTOS [MEGABYTES [server]]]

Invented photos (random bytes) of so many megabytes (60 of 4 if not told), a record each, of
five indications whose outlines have 200 points, as measured ones do (60 KB a record). The floor
is hashlib.file_digest over all files of the store, photos and records and log. Both are done in
turn three times and the least of each counts, as other work on the machine only adds. Then a
verifying that is stopped half-way is gone on with, and what it reads again is told. With
"server" the database is a PostgreSQL; what works its rows out the first time is told apart.
"""

import hashlib
import math
import os
import random
import sys
import tempfile
import time
from contextlib import ExitStack, suppress
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent / "archive"), str(HERE)]


def spent(work):
    """Processor time and time by the clock, s."""
    began, clock = time.process_time(), time.monotonic()
    work()
    return time.process_time() - began, time.monotonic() - clock


def hashed(paths):
    """The floor."""
    for path in paths:
        with path.open("rb") as file:
            hashlib.file_digest(file, "sha256").hexdigest()


def outlined(path):
    """Give a record's indications outlines of 200 points."""
    from dataclasses import replace

    from ptmark.record import load_record, save_record

    record = load_record(path)
    rows = []
    for one in record.indications:
        x, y = one["centre_mm"]
        turns = [2 * math.pi * n / 200 for n in range(200)]
        half = one["length_mm"] / 2
        ring = [
            [round(x + half * math.cos(a), 4), round(y + 0.2 * math.sin(a), 4)] for a in turns
        ]
        px = [[round(20 * a, 3), round(20 * b, 3)] for a, b in ring]
        rows.append({**one, "outline_mm": ring, "outline_px": px})
    save_record(path, replace(record, indications=rows))
    return path


def resumed(archive):
    """Bytes that a stopped and resumed verifying reads, as a share of all."""
    from ptmark.archive import checking, findings, verify

    findings._NOTED, checking.CHUNK = 0.0, 5
    whole = verify(archive).bytes

    def stop(done, total):
        if done > 0.75 * total:
            raise KeyboardInterrupt

    with suppress(KeyboardInterrupt):
        verify(archive, progress=stop)
    reads, real = [], archive.store.digest

    def counted(key):
        sha256, size = real(key)
        reads.append(size)
        return sha256, size

    archive.store.digest = counted
    found = verify(archive, resume=True)
    archive.store.digest = real
    assert found.whole
    assert found.bytes == whole, "what was read before counts too"
    return sum(reads) / whole


def main(folder, photos=60, megabytes=4, where="file"):
    """Ends with 1 below 80 % of the hash's speed."""
    from conftest import made
    from postgres_server import Server

    from ptmark.archive import add_record, open_archive, verify

    draw = random.Random(2)  # noqa: S311
    with ExitStack() as held:
        at = Path(held.enter_context(tempfile.TemporaryDirectory(dir=folder)))
        os.environ["PTMARK_HOME"] = str(at / "user")
        url = held.enter_context(Server()).database() if where == "server" else ""
        store = str(at / "archive" / "photos")
        archive = held.enter_context(open_archive(at / "archive", database=url, store=store))
        for n in range(photos):
            data = draw.randbytes(megabytes * 2**20)
            path = made(at / "records", f"r-{n:03d}", count=5, photo=data)
            add_record(archive, outlined(path))
        paths = [one for one in Path(store).rglob("*") if one.is_file()]
        size = sum(one.stat().st_size for one in paths)
        hashed(paths)
        first = spent(lambda: verify(archive))
        floors, checks = [], []
        for _ in range(3):
            floors.append(spent(lambda: hashed(paths)))
            checks.append(spent(lambda: verify(archive)))
        floor, check = (min(one)[0] for one in (floors, checks))
        clocks = [min(one[1] for one in some) for some in (floors, checks)]
        again = resumed(archive)
    print(
        f"{photos} photos, {size / 2**20:.0f} MB: hashing {floor:.2f} s, verifying {check:.2f} "
        f"s of the processor: {floor / check:.0%} of the hash's speed; by the clock "
        f"{clocks[0]:.2f} s and {clocks[1]:.2f} s; the first time {first[0]:.2f} s of the "
        f"processor and {first[1]:.2f} s by the clock; stopped once half of the photos "
        f"were read and resumed, it reads {again:.0%} of the bytes"
    )
    return int(floor / check < 0.8)


if __name__ == "__main__":
    given = sys.argv[2:4]
    sys.exit(main(Path(sys.argv[1]), *map(int, given), *sys.argv[4:]))
