"""How fast a folder of photos is measured, against two processes that merely decode it.

    python tests/benchmarks/folder_speed.py [FOLDER] [--photos 48] [--jobs 2]

Without a folder the demo photos are taken, as often as needed, each copy with other bytes at
its end so that none counts as done. Printed is the rate of measuring (open, find the card,
suggest, measure with full budgets, write JSON lines and CSV) as a share of the rate at which as
many processes decode the same files by ``cv2.imread`` on one thread each; by the clock, and by
the processor time of these processes. Both kinds of process live side by side and take turns
of a few photos each, so that other work on the machine disturbs both alike; how long they stood
ready and waited for a core tells how much it did. Then what the start costs, in photos, so that
the share for a folder of 200 can be told. Bits a pixel are printed too: a file with fewer
decodes faster, so its share is lower (phones write 3 to 5, the demo photos 0.4). Linux only.
"""

import argparse
import multiprocessing
import os
import shutil
import statistics
import tempfile
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter

import cv2

from ptmark.folder import Asked, Book, Pool, pictures_in
from ptmark.photo import read_info
from ptmark.places import sample_images

_EACH = 4  # photos a process gets in a turn


def decode(path: Path) -> bool:
    """Decode one photo; whether it could be."""
    return cv2.imread(str(path)) is not None


def one_thread() -> None:
    """Settle a decoding process like a measuring one."""
    cv2.setNumThreads(1)


@dataclass(frozen=True, slots=True)
class Spent:
    """Seconds: by the clock, and of all processes on a core and ready without one."""

    clock: float
    running: float
    waiting: float


class Kind:
    """Processes of one kind, what they do with a batch of photos, and what that took."""

    def __init__(self, pids: Iterable[int | None], job: Callable[[list[Path]], None]) -> None:
        self._pids, self._job, self._clock = list(pids), job, 0.0
        self._before = self._of_processes()

    def turn(self, photos: list[Path]) -> None:
        """Let them work through some photos, to the last."""
        start = perf_counter()
        self._job(photos)
        self._clock += perf_counter() - start

    def spent(self) -> Spent:
        """In all turns."""
        running, waiting = self._of_processes()
        return Spent(self._clock, running - self._before[0], waiting - self._before[1])

    def _of_processes(self) -> tuple[float, float]:
        running = waiting = 0.0
        for pid in self._pids:
            ticks = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[11:13]
            running += sum(map(int, ticks)) / os.sysconf("SC_CLK_TCK")
            waiting += int(Path(f"/proc/{pid}/schedstat").read_text().split()[1]) / 1e9
        return running, waiting


def in_turns(photos: list[Path], jobs: int, asked: Asked, out: Path) -> tuple[Spent, Spent]:
    """What decoding and measuring spent on the photos, in processes that are warm."""
    spawn = multiprocessing.get_context("spawn")
    with (
        spawn.Pool(jobs, one_thread) as decoders,
        Book(out, asked.key()) as book,
        Pool(jobs, asked) as pool,
    ):
        pids = [one.pid for one in multiprocessing.active_children()]

        def decoding(some: list[Path]) -> None:
            decoders.map(decode, some, chunksize=1)

        def measuring(some: list[Path]) -> None:
            pool.give(some)
            while pool.in_work:
                for outcome in pool.collect():
                    if outcome.error:
                        raise SystemExit(f"{outcome.path}: {outcome.error}")
                    book.write(outcome)

        decoding(photos[: 2 * jobs])
        measuring(photos[: 2 * jobs])
        both = Kind(pids, decoding), Kind((hand.process.pid for hand in pool._hands), measuring)
        size = _EACH * jobs
        for first in range(0, len(photos), size):
            for kind in both:
                kind.turn(photos[first : first + size])
        return both[0].spent(), both[1].spent()


def start_of(photos: list[Path], jobs: int, asked: Asked) -> float:
    """Seconds until the first photo is measured, from before any process is started."""
    start = perf_counter()
    with Pool(jobs, asked) as pool:
        pool.give(photos[:jobs])
        while not pool.collect():
            pass
        took = perf_counter() - start
        while pool.in_work:
            pool.collect()
    return took


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
    ask.add_argument("--photos", type=int, default=48)
    ask.add_argument("--jobs", type=int, default=2)
    ask.add_argument("--criteria", default="iso-23277-2")
    asked_for = ask.parse_args()
    asked, jobs = Asked(profile=asked_for.criteria), asked_for.jobs
    with tempfile.TemporaryDirectory() as work:
        folder = Path(work)
        if asked_for.folder is not None:
            photos = pictures_in(asked_for.folder)[: asked_for.photos]
        else:
            photos = copies(asked_for.photos, folder)
        bits, first = bits_a_pixel(photos), start_of(photos, jobs, asked)
        plain, whole = in_turns(photos, jobs, asked, folder / "out")
    share, each = plain.clock / whole.clock, whole.clock / len(photos)
    start = first / each - jobs
    print(f"{len(photos)} photos of {bits:.1f} bits/px, {jobs} processes")
    print(f"{os.cpu_count()} cores, load of the machine {os.getloadavg()[0]:.1f}")
    for name, spent in (("decoding", plain), ("measuring", whole)):
        busy = [one / jobs / spent.clock for one in (spent.running, spent.waiting)]
        print(
            f"{name}: {1000 * spent.running / len(photos):.0f} ms of a core a photo; of the "
            f"time the processes ran {busy[0]:.2f}, waited for a core {busy[1]:.2f}"
        )
    print(f"rate against merely decoding, by the clock: {share:.2f}")
    print(f"by processor time: {plain.running / whole.running:.2f}")
    print(f"the start costs as much as {start:.0f} photos")
    print(f"so for a folder of 200: {share * 200 / (200 + start):.2f}")


if __name__ == "__main__":
    main()
