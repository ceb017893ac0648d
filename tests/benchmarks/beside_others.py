"""The suggestions beside two plain ways of doing it, on time and on truth.

    python tests/benchmarks/beside_others.py [--photos N] [--rounds N] [--busy]

The first is the ten-line script that everybody writes: red by hue and saturation, contours. The
second is a pipeline of scikit-image: Lab, a background taken away, Otsu's threshold, labels.
Photos and truth are those of the stress set (its own renderer); times are ratios to a plain
``cv2.imread`` of the same file, the picture decoded already.
"""

import argparse
import statistics
import tempfile
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter, process_time

import cv2
import numpy as np
from measure_speed import seconds
from skimage import color, filters, measure
from stress import CONDITIONS, COUNTED_MM, match, surface_of
from stress_shop import render

from ptmark.dye import suggest
from ptmark.photo import Photo

SHOWN = ("easy", "faint 30 %", "light gradient 3:1", "heavy pink haze", "rust", "warm cast")


@dataclass
class Call:
    """An outline as `match` takes it, shape (N, 2), px."""

    outline_px: np.ndarray


def by_hue(rgb):
    """Red by hue and saturation, then contours."""
    hsv = cv2.cvtColor(rgb, cv2.COLOR_RGB2HSV)
    red = cv2.inRange(hsv, (0, 60, 40), (12, 255, 255)) | cv2.inRange(
        hsv, (165, 60, 40), (180, 255, 255)
    )
    red = cv2.morphologyEx(red, cv2.MORPH_OPEN, np.ones((3, 3), np.uint8))
    contours, _ = cv2.findContours(red, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    return [Call(c.reshape(-1, 2).astype(float)) for c in contours if len(c) > 12]


def by_lab(rgb):
    """Red of Lab over its background, Otsu's threshold, labelled regions."""
    red = color.rgb2lab(rgb)[..., 1]
    red = red - filters.gaussian(red[::8, ::8], 20).mean()
    mask = filters.gaussian(red, 1) > max(filters.threshold_otsu(red), 5)
    regions = measure.regionprops(measure.label(mask))
    calls = []
    for one in regions:
        if one.area < 16:
            continue
        found = measure.find_contours(np.pad(one.image, 1).astype(float), 0.5)
        outline = max(found, key=len)[:, ::-1] - 1 + [one.bbox[1], one.bbox[0]]
        if len(outline) > 12:
            calls.append(Call(outline))
    return calls


def ways(pixels, mm_per_px):
    """The three ways by name, each ready to be run on these pixels."""
    photo = Photo.from_array(pixels, name="stress")
    surface = surface_of(photo, mm_per_px)
    return {
        "suggestions": lambda: list(suggest(photo, surface).found),
        "hue and contours": lambda: by_hue(pixels),
        "Lab, labels": lambda: by_lab(pixels),
    }


def decode_time(pixels, clock):
    """Seconds of a plain decode of these pixels as a file."""
    with tempfile.TemporaryDirectory() as folder:
        path = str(Path(folder) / "photo.jpg")
        cv2.imwrite(path, pixels[..., ::-1], [cv2.IMWRITE_JPEG_QUALITY, 90])
        return min(seconds(lambda: cv2.imread(path), clock) for _ in range(5))


def compare(condition, photos, rounds, clock):
    """Print one condition's found, false and time of each way."""
    hits, alarms, times = ({} for _ in range(3))
    for seed in range(photos):
        pixels, truths = render(condition, 7000 + seed)
        decode = decode_time(pixels, clock)
        counted = [truth.length_mm >= COUNTED_MM for truth in truths]
        for name, way in ways(pixels, condition.mm_per_px).items():
            found, false = match(truths, way())
            hit = [at >= 0 for at, counts in zip(found, counted, strict=True) if counts]
            hits.setdefault(name, []).extend(hit)
            alarms.setdefault(name, []).append(len(false))
            taken = min(seconds(way, clock) for _ in range(rounds)) / decode
            times.setdefault(name, []).append(taken)
    for name in hits:
        print(
            f"{condition.name:<24}{name:<20}{np.mean(hits[name]):>8.3f}"
            f"{np.mean(alarms[name]):>8.1f}{statistics.median(times[name]):>8.2f} x",
            flush=True,
        )


def main() -> None:
    """Print the table."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("--photos", type=int, default=1)
    ask.add_argument("--rounds", type=int, default=2)
    ask.add_argument("--busy", action="store_true", help="compare processor time, one thread")
    asked = ask.parse_args()
    clock = process_time if asked.busy else perf_counter
    if asked.busy:
        cv2.setNumThreads(1)
    print(f"{'condition':<24}{'way':<20}{'found':>8}{'false':>8}{'time':>10}")
    for condition in (one for one in CONDITIONS if one.name in SHOWN):
        compare(condition, asked.photos, asked.rounds, clock)


if __name__ == "__main__":
    main()
