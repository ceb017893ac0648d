"""How fast a folder of photos is measured, against two processes that merely decode it.

    python tests/benchmarks/folder_speed.py [FOLDER] [--photos 24] [--rounds 3] [--jobs 2]

Without a folder the demo photos are taken, as often as needed, each copy with other bytes at
its end so that none counts as done. Printed is the rate of measuring (open, find the card,
suggest, measure with full budgets, write JSON lines and CSV) as a share of the rate at which as
many processes decode the same files by ``cv2.imread`` on one thread each; both without the
start of the processes, rounds alternating, medians. Then what the start costs, in photos, so
that the share for a folder of 200 can be told. Other work on the machine disturbs these, so
its load is printed, and beside the share by processor time of one process, which it disturbs
less: decoding alone against the whole way. Bits a pixel are printed too: a file with fewer
decodes faster, so its share is lower (phones write 3 to 5, the demo photos 0.4).
"""

import argparse
import multiprocessing
import os
import resource
import shutil
import statistics
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

import cv2

from ptmark.folder import Asked, Book, Pool, pictures_in
from ptmark.photo import read_info
from ptmark.places import sample_images


def decode(path: Path) -> int:
    """Decode one photo; its number of pixels."""
    return int(cv2.imread(str(path)).size)


def one_thread() -> None:
    """Settle a decoding process like a measuring one."""
    cv2.setNumThreads(1)


def decoding_rate(photos: list[Path], jobs: int, ahead: int = 2) -> float:
    """Photos a second, the processes warm from ``ahead`` photos each."""
    with multiprocessing.get_context("spawn").Pool(jobs, one_thread) as pool:
        pool.map(decode, photos[: ahead * jobs], chunksize=1)
        start = perf_counter()
        for _ in pool.imap_unordered(decode, photos, chunksize=1):
            pass
        rate = len(photos) / (perf_counter() - start)
        pool.close()
        pool.join()
        return rate


def measuring(photos: list[Path], jobs: int, asked: Asked, out: Path) -> tuple[float, float]:
    """Photos a second, from the first finished one on, and seconds until that one."""
    start = perf_counter()
    times = []
    with Book(out, asked.key()) as book, Pool(jobs, asked) as pool:
        pool.give(photos)
        while pool.in_work:
            for outcome in pool.collect():
                if outcome.error:
                    raise SystemExit(f"{outcome.path}: {outcome.error}")
                book.write(outcome)
                times.append(perf_counter() - start)
    warm = jobs  # the first of each process loads its libraries
    return (len(times) - warm) / (times[-1] - times[warm - 1] or 1), times[0]


def by_processor_time(photos: list[Path], asked: Asked, out: Path) -> float:
    """Processor time a photo of decoding over that of measuring, one process each.

    From the first two photos to all of them, so that starting the process cancels out.
    """

    def of_children(job: Callable[[], object]) -> float:
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        job()
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime

    def a_photo(job: Callable[[list[Path]], object]) -> float:
        few = photos[:2]
        more = of_children(lambda: job(photos)) - of_children(lambda: job(few))
        return more / (len(photos) - len(few))

    plain = a_photo(lambda some: decoding_rate(some, 1, ahead=0))
    return plain / a_photo(lambda some: measuring(some, 1, asked, out / str(len(some))))


def bits_a_pixel(photos: list[Path]) -> float:
    """Mean over the photos."""
    infos = [read_info(path) for path in photos]
    return statistics.mean(i.bytes * 8 / (i.width * i.height) for i in infos)


def copies(count: int, folder: Path) -> list[Path]:
    """The demo photos over and over, each copy its own content."""
    demo = sorted(sample_images().glob("*.jpg"))
    made = []
    for number in range(count):
        target = folder / f"{number:04}.jpg"
        shutil.copy(demo[number % len(demo)], target)
        with target.open("ab") as file:
            file.write(number.to_bytes(4, "big"))
        made.append(target)
    return made


def main() -> None:
    """Print the shares."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("folder", nargs="?", type=Path)
    ask.add_argument("--photos", type=int, default=24)
    ask.add_argument("--rounds", type=int, default=3)
    ask.add_argument("--jobs", type=int, default=2)
    ask.add_argument("--criteria", default="iso-23277-2")
    asked_for = ask.parse_args()
    asked = Asked(profile=asked_for.criteria)
    with tempfile.TemporaryDirectory() as work:
        folder = Path(work)
        if asked_for.folder is not None:
            photos = pictures_in(asked_for.folder)[: asked_for.photos]
        else:
            photos = copies(asked_for.photos, folder)
        shares, starts = [], []
        bits, time_share = bits_a_pixel(photos), by_processor_time(photos, asked, folder)
        for number in range(asked_for.rounds):
            plain = decoding_rate(photos, asked_for.jobs)
            rate, first = measuring(photos, asked_for.jobs, asked, folder / f"out{number}")
            shares.append(rate / plain)
            starts.append(first * rate)
    share, start = statistics.median(shares), statistics.median(starts)
    print(f"{len(photos)} photos of {bits:.1f} bits/px, {asked_for.jobs} processes")
    print(f"{os.cpu_count()} cores, load of the machine {os.getloadavg()[0]:.1f}")
    print(f"rate against merely decoding: {share:.2f} ({min(shares):.2f} to {max(shares):.2f})")
    print(f"the start costs as much as {start:.0f} photos")
    print(f"so for a folder of 200: {share * 200 / (200 + start):.2f}")
    print(f"by processor time: {time_share:.2f}")


if __name__ == "__main__":
    main()
