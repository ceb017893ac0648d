"""How fast verifying is against only hashing the same files, in time of the processor.

    python tests/benchmarks/archive_verify.py FOLDER [RECORDS [MEGABYTES [PHOTOS [server]]]]

Invented records (60 if not told), each of so many photos (1; random bytes) of so many megabytes
(4) with five indications in each, whose outlines have 200 points, as measured ones do (60 KB a
photo). The floor is hashlib.file_digest over all files of the store, photos and records and
log. The floor, a user's first verifying, which on a server works all rows out, and a later one
are done in turn five times, and the least of each counts, as other work on the machine only
adds. Then a verifying that is stopped half-way is gone on with, and what it reads again is
told. With "server" the database is a PostgreSQL.
"""

import hashlib
import math
import os
import random
import shutil
import sys
import tempfile
import time
from contextlib import ExitStack, suppress
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent / "archive"), str(HERE)]
_ASKED = {"area_px", "weld_length_mm", "thickness_mm", "weld_direction_deg"}  # or null


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


def outlined(path, more=()):
    """Give a record's indications outlines of 200 points, and it ``more`` photos of bytes."""
    from dataclasses import replace

    from ptmark.record import PHOTO_MEMBERS, load_record, save_record

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
    record = replace(record, indications=rows)
    own = {name: getattr(record, name) for name in PHOTO_MEMBERS}
    own = {name: value for name, value in own.items() if value is not None or name in _ASKED}
    others = []
    for n, data in enumerate(more, 2):
        name = f"{path.stem}-{n}.jpg"
        path.with_name(name).write_bytes(data)
        sha256 = hashlib.sha256(data).hexdigest()
        others.append({**own, "photo": {**record.photo, "file": name, "sha256": sha256}})
    save_record(path, replace(record, more_photos=others))
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


def main(folder, records=60, megabytes=4, photos=1, where="file"):
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
        for n in range(records):
            photo, *more = (draw.randbytes(megabytes * 2**20) for _ in range(photos))
            path = made(at / "records", f"r-{n:03d}", count=5, photo=photo)
            add_record(archive, outlined(path, more))
        paths = [one for one in Path(store).rglob("*") if one.is_file()]
        size = sum(one.stat().st_size for one in paths)
        hashed(paths)
        assert verify(archive).whole
        told = {"hashing": [], "first": [], "later": []}
        for _ in range(5):
            told["hashing"].append(spent(lambda: hashed(paths)))
            shutil.rmtree(at / "user" / "verify", ignore_errors=True)
            told["first"].append(spent(lambda: verify(archive)))
            told["later"].append(spent(lambda: verify(archive)))
        again = resumed(archive)
    least = {
        name: [min(one[kind] for one in rounds) for kind in (0, 1)]
        for name, rounds in told.items()
    }
    print(f"{records} records, {records * photos} photos, {size / 2**20:.0f} MB")
    for name, (own, clock) in least.items():
        shares = [a / b for a, b in zip(least["hashing"], (own, clock), strict=True)]
        print(
            f"{name}: {own:.2f} s of the processor ({shares[0]:.0%} of the hash's speed), "
            f"{clock:.2f} s by the clock ({shares[1]:.0%})"
        )
    print(f"stopped once half was read and resumed, it reads {again:.0%} of the bytes")
    return int(least["hashing"][0] / max(least["first"][0], least["later"][0]) < 0.8)


if __name__ == "__main__":
    given = sys.argv[2:5]
    sys.exit(main(Path(sys.argv[1]), *map(int, given), *sys.argv[5:]))
