"""Time and memory of suggesting and measuring, against plainly decoding the same file.

    python tests/benchmarks/measure_speed.py [PHOTO ...] [--rounds N] [--no-large] [--busy]

Prints, for each photo, the ratio of suggest + measure in process (the photo open already) to a
plain ``cv2.imread`` of the same file, each the median of alternating rounds, and the same for
the whole way from the file on. Then it does so for pictures of 48 and 108 megapixels enlarged
from them, and states the peak memory of ``ptmark measure`` on one of these. ``--busy`` compares
processor time on one thread, and the least of the rounds, for a machine with other work.
Ratios hold from machine to machine; seconds do not, so none are printed. The bits a pixel are
printed beside: a file with fewer decodes faster, so its ratio is higher (phones write 3 to 5,
the demo photos 0.4).
"""

import argparse
import json
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter, process_time

import cv2
from PIL import Image

from ptmark.folder import Asked, look_over
from ptmark.inspection import Inspection
from ptmark.photo import open_photo
from ptmark.places import sample_images

LARGE = ((8000, 6000), (12000, 9000))
CHILD = "import sys; from ptmark.__main__ import main; sys.exit(main(sys.argv[1:]))"


def seconds(job: Callable[[], object], clock: Callable[[], float] = perf_counter) -> float:
    """How long one run of a job takes."""
    start = clock()
    job()
    return clock() - start


def inspect(photo: object) -> int:
    """Find the card, suggest, and measure everything; the number of indications."""
    inspection = Inspection()
    look_over(inspection, photo, Asked())
    return sum(inspection.measurement(one) is not None for one in inspection.counted)


def ratios(path: Path, rounds: int, *, busy: bool) -> tuple[float, float, int]:
    """Ratio to a plain decode of suggest + measure, of the whole way; indications measured."""
    clock, typical = (process_time, min) if busy else (perf_counter, statistics.median)
    count = inspect(open_photo(path))  # imports and caches are warm from here on
    decode, work, whole = [], [], []
    for _ in range(rounds):
        decode.append(seconds(lambda: cv2.imread(str(path)), clock))
        photo = open_photo(path)
        work.append(seconds(lambda photo=photo: inspect(photo), clock))
        decode.append(seconds(lambda: cv2.imread(str(path)), clock))
        whole.append(seconds(lambda: inspect(open_photo(path)), clock))
    plain = typical(decode)
    return typical(work) / plain, typical(whole) / plain, count


def enlarge(path: Path, folder: Path, size: tuple[int, int]) -> Path:
    """The same picture with more pixels, its EXIF data kept."""
    with Image.open(path) as picture:
        exif = picture.getexif()
        large = picture.resize(size, Image.Resampling.BICUBIC)
    target = folder / f"{path.stem}-{size[0] * size[1] // 1_000_000}.jpg"
    large.save(target, quality=90, subsampling=2, exif=exif)
    return target


def peak_bytes(command: list[str]) -> int:
    """Largest resident memory of a child, bytes; it must end well."""
    program = (
        "import json, resource, subprocess, sys\n"
        "done = subprocess.run(json.loads(sys.argv[1]), capture_output=True, text=True)\n"
        "peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss\n"
        "print(json.dumps([done.returncode, peak, done.stderr[-500:]]))\n"
    )
    asked = [sys.executable, "-c", program, json.dumps(command)]
    out = subprocess.run(asked, check=True, capture_output=True, text=True).stdout
    code, peak, errors = json.loads(out)
    if code != 0:
        raise SystemExit(f"{' '.join(command)} failed: {errors}")
    return int(peak) * (1 if sys.platform == "darwin" else 1024)


def main() -> None:
    """Print the table."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("photos", nargs="*", type=Path)
    ask.add_argument("--rounds", type=int, default=5)
    ask.add_argument("--no-large", action="store_true", help="leave out 48 and 108 megapixels")
    ask.add_argument("--busy", action="store_true", help="compare processor time, one thread")
    asked = ask.parse_args()
    if asked.busy:
        cv2.setNumThreads(1)
    photos = asked.photos or sorted(sample_images().glob("*.jpg"))
    head = f"{'photo':<24}{'bits/px':>8}{'indications':>12}"
    print(f"{head}{'suggest+measure':>17}{'from the file':>15}")
    with tempfile.TemporaryDirectory() as folder:
        large = (
            []
            if asked.no_large
            else [enlarge(p, Path(folder), size) for size in LARGE for p in photos]
        )
        for path in [*photos, *large]:
            work, whole, count = ratios(path, asked.rounds, busy=asked.busy)
            with Image.open(path) as picture:
                bits = path.stat().st_size * 8 / (picture.width * picture.height)
            print(f"{path.name:<24}{bits:>8.1f}{count:>12}{work:>15.2f} x{whole:>13.2f} x")
        for path in large[:1]:
            out = Path(folder) / "record.json"
            command = [sys.executable, "-c", CHILD, "measure", str(path), "--json", str(out)]
            print(f"peak memory of measure, {path.name}: {peak_bytes(command) / 1e6:.0f} MB")
            plain = "import cv2, sys; cv2.imread(sys.argv[1])"
            alone = peak_bytes([sys.executable, "-c", plain, str(path)])
            print(f"peak memory of a plain decode of it: {alone / 1e6:.0f} MB")


if __name__ == "__main__":
    main()
