"""How many records with photos a second one server bears, in a folder and in an S3 store.

    python tests/benchmarks/archive_load.py FOLDER [RECORDS [WRITERS [MEGABYTES]]]

So many invented records (80 if not told) with a photo of so many megabytes (4) each are taken
in by so many processes (4) on one PostgreSQL, fsync on: first with the photos in a folder, then
in moto's S3 server on the same machine. Told are records and megabytes a second by the clock,
and what the processor spent in the writers: other work on the machine adds to the former only.
"""

import os
import random
import socket
import subprocess
import sys
import tempfile
import time
from contextlib import contextmanager
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent / "archive"), str(HERE)]

CHILD = """
import sys, time
from pathlib import Path
from ptmark.archive import add_record, open_archive
database, store, folder = sys.argv[1:4]
turn, writers = map(int, sys.argv[4:])
with open_archive(database=database, store=store, by=f"writer {turn}") as archive:
    print("open", flush=True)
    sys.stdin.readline()
    began = time.process_time()
    for path in sorted(Path(folder).glob("*.json"))[turn::writers]:
        add_record(archive, path)
    print(time.process_time() - began, flush=True)
"""


@contextmanager
def s3_store():
    """URL of a bucket on moto's server, which runs in a process of its own."""
    import fsspec

    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    os.environ |= {
        "AWS_ACCESS_KEY_ID": "invented",
        "AWS_SECRET_ACCESS_KEY": "invented",
        "AWS_ENDPOINT_URL": f"http://127.0.0.1:{port}",
        "AWS_DEFAULT_REGION": "us-east-1",
    }
    command = [sys.executable, "-m", "moto.server", "-p", str(port)]
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
    server = subprocess.Popen(command, **quiet)
    try:
        for _ in range(600):
            try:
                socket.create_connection(("127.0.0.1", port)).close()
                break
            except OSError:
                time.sleep(0.1)
        fsspec.filesystem("s3").mkdir("photos")
        yield "s3://photos/store"
    finally:
        server.terminate()
        server.wait()


def taken_in(url, store, folder, writers):
    """Seconds by the clock until all are taken in, and of the processor in the writers."""
    from ptmark.archive import open_archive

    open_archive(database=url, store=store).close()
    command = [sys.executable, "-c", CHILD, url, store, str(folder)]
    turns = [[str(turn), str(writers)] for turn in range(writers)]
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE, "text": True}
    children = [subprocess.Popen([*command, *turn], **pipes) for turn in turns]
    for one in children:
        one.stdout.readline()
    began = time.monotonic()
    for one in children:
        one.stdin.write("go\n")
        one.stdin.flush()
    own = sum(float(one.communicate()[0]) for one in children)
    clock = time.monotonic() - began
    assert all(one.returncode == 0 for one in children)
    return clock, own


def main(folder, records=80, writers=4, megabytes=4):
    """Ends with 1 where verifying finds a problem."""
    from conftest import made
    from postgres_server import Server

    from ptmark.archive import open_archive, verify

    draw, bad = random.Random(3), 0  # noqa: S311
    with tempfile.TemporaryDirectory(dir=folder) as place, Server() as server:
        at = Path(place)
        os.environ["PTMARK_HOME"] = str(at / "user")
        for n in range(records):
            photo = draw.randbytes(megabytes * 2**20)
            made(at / "records", f"r-{n:04d}", serial=f"S-{n}", count=8, photo=photo)
        with s3_store() as bucket:
            for what, store in (("folder", str(at / "photos")), ("S3 of moto", bucket)):
                url = server.database()
                clock, own = taken_in(url, store, at / "records", writers)
                with open_archive(database=url, store=store) as archive:
                    found = verify(archive)
                bad += not (found.whole and found.photos == records)
                print(
                    f"{what}: {records} records of {megabytes} MB by {writers} writers in "
                    f"{clock:.1f} s: {records / clock:.1f} a second, "
                    f"{records * megabytes / clock:.0f} MB/s; in the writers "
                    f"{1e3 * own / records:.0f} ms of the processor a record; "
                    f"{len(found.problems)} problems",
                    flush=True,
                )
    return int(bad > 0)


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), *map(int, sys.argv[2:])))
