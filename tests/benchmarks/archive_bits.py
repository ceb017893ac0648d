"""Flip single bits all over an archive, one at a time; verifying must find each.

    python tests/benchmarks/archive_bits.py [BITS]

So many bits (4 if not told) of every page of the database, of every 4096 bytes of its
write-ahead log, and of every file in the store: photos, records' files, lines of the log. Each
is flipped in a fresh copy and that verified. Thumbnails are a cache and no part of it.
"""

import os
import random
import shutil
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "archive"))

PAGE = 4096


def found(folder):
    """Whether verifying, or opening already, finds the archive not whole."""
    from ptmark.archive import open_archive, verify
    from ptmark.errors import ArchiveError

    try:
        with open_archive(folder, by="check") as archive:
            return not verify(archive).whole
    except ArchiveError:
        return True


def flipped(folder, file, at, fresh):
    """Flip a bit in a fresh copy of the folder and look."""
    shutil.rmtree(folder)
    shutil.copytree(fresh, folder)
    path = folder / file
    path.chmod(0o644)
    with path.open("r+b") as data:
        data.seek(at // 8)
        (old,) = data.read(1)
        data.seek(at // 8)
        data.write(bytes([old ^ 1 << at % 8]))
    return found(folder)


def tried(fresh, folder, names, bits):
    """Bits tried and those that were missed, of some files."""
    draw, tries, missed = random.Random(11), 0, []  # noqa: S311
    for name in names:
        size = (fresh / name).stat().st_size
        for first in range(0, size, PAGE):
            for _ in range(bits):
                at = draw.randrange(first * 8, min(first + PAGE, size) * 8)
                tries += 1
                if not flipped(folder, name, at, fresh):
                    missed.append((name, at))
    return tries, missed


def main(bits=4):
    """Ends with 1 where a bit was missed."""
    from conftest import made

    from ptmark.archive import add_record, open_archive

    with tempfile.TemporaryDirectory(dir=os.environ.get("TMPDIR")) as place:
        at = Path(place)
        os.environ["PTMARK_HOME"] = str(at / "user")
        with open_archive(at / "archive", by="writer") as archive:
            for n in range(4):
                add_record(archive, made(at / "records", f"r-{n}", count=4))
            shutil.copytree(at / "archive", at / "open")  # with its write-ahead log
        assert not found(at / "archive")
        shutil.copytree(at / "archive", at / "trial")
        bad = 0
        store = sorted(
            str(one.relative_to(at / "archive"))
            for one in (at / "archive" / "photos").rglob("*")
            if one.is_file()
        )
        for said, fresh, names in (
            ("database", at / "archive", ["archive.sqlite"]),
            ("write-ahead log", at / "open", ["archive.sqlite-wal"]),
            ("store", at / "archive", store),
        ):
            tries, missed = tried(fresh, at / "trial", names, bits)
            print(f"{said}: {tries} bits flipped, {len(missed)} missed {missed}", flush=True)
            bad += len(missed)
        return int(bool(bad))


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 4))
