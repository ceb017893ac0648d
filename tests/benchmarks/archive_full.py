"""Run the disk full, once with all on it and once the database only; nothing taken in is lost.

    sudo python tests/benchmarks/archive_full.py

mounts a tmpfs of 3 MB, for which Linux asks for root.
"""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "archive"))


def on_full_disk(folder, store, paths):
    """Take in what goes; lost records and what verifying says afterwards."""
    from ptmark.archive import Query, add_record, find_all, open_archive, verify
    from ptmark.errors import ArchiveError

    taken, refused = set(), 0
    with open_archive(folder, store=store, by="full") as archive:
        for path in paths:
            try:
                taken.add(add_record(archive, path).record_id)
            except ArchiveError:
                refused += 1
    with open_archive(folder, store=store, by="check") as archive:
        lost = taken - {hit.record_id for hit in find_all(archive, Query())}
        found = verify(archive)
    print(f"{len(taken)} taken in, {refused} refused, {len(lost)} lost, whole: {found.whole}")
    return bool(lost) or not found.whole or not refused


def main():
    """Both ways; ends with 1 where anything was lost or nothing was refused."""
    from conftest import made

    with tempfile.TemporaryDirectory() as place:
        folder, disk = Path(place), Path(place) / "disk"
        os.environ["PTMARK_HOME"] = str(folder / "user")
        paths = [made(folder / "records", f"r-{n:03d}", count=10) for n in range(80)]
        disk.mkdir()
        bad = []
        for store in ("", str(folder / "photos")):
            subprocess.run(
                ["mount", "-t", "tmpfs", "-o", "size=3m", "none", str(disk)], check=True
            )
            try:
                bad.append(on_full_disk(disk / "archive", store, paths))
            finally:
                subprocess.run(["umount", str(disk)], check=True)
        return int(any(bad))


if __name__ == "__main__":
    sys.exit(main())
