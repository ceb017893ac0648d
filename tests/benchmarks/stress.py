"""The stress set: is everything found, and nothing else, under the conditions of the shop?

    python tests/benchmarks/stress.py [--photos N] [--only WORD] [--keep FOLDER] [--pod]

Renders N photos of 12 megapixels for each condition, asks for suggestions, and prints for each
condition what was found of the indications of 1.5 mm and longer and what was called falsely;
then the receiver's curve over all of them. ``--pod`` prints the probability of detection
against length instead. A call and a truth are one where their outlines share 30 % of the
smaller one's area. ``--keep`` saves a crop of every miss and every false call.

Red pen, red threads and dye that dripped cannot be told from dye by their colour: they are
rendered and told of, and not counted.
"""

import argparse
import sys
from dataclasses import dataclass, field, replace
from pathlib import Path

import cv2
import numpy as np
import shapely
from pod import pod_table
from stress_files import through
from stress_scenes import Condition
from stress_shop import render

from ptmark.dye import suggest
from ptmark.photo import Photo
from ptmark.scale import RectangleReference, solve

COUNTED_MM = 1.5
EASY = Condition(name="easy")
FAINT = (0.28, 0.34)
CONDITIONS = [
    EASY,
    replace(EASY, name="light gradient 3:1", gradient=3.0),
    replace(EASY, name="hard shadow edges", shadow=0.4),
    replace(
        EASY, name="hard shadow, warm light", shadow=0.55, cast=(1.0, 0.9, 0.75), grain=0.01
    ),
    replace(EASY, name="warm cast", cast=(1.0, 0.80, 0.52)),
    replace(EASY, name="cool cast", cast=(0.80, 0.95, 1.15)),
    replace(EASY, name="green cast", cast=(0.85, 1.05, 0.80)),
    replace(EASY, name="thin developer, metal", thin=0.15),
    replace(EASY, name="pink haze", haze=0.06),
    replace(EASY, name="heavy pink haze", haze=0.12),
    replace(EASY, name="weld toes", toes=True),
    replace(EASY, name="glare", glare=5),
    replace(EASY, name="grain", grain=0.02, exposure=0.6),
    replace(EASY, name="dark", exposure=0.16, grain=0.012),
    replace(EASY, name="motion blur 7 px", motion_px=7),
    replace(EASY, name="focus blur 3 px", blur_px=3.0),
    replace(EASY, name="JPEG quality 60", quality=60),
    replace(EASY, name="faint 30 %", strength=FAINT),
    replace(EASY, name="faint 30 %, haze", strength=FAINT, haze=0.05),
    replace(EASY, name="faint 30 %, gradient, Q60", strength=FAINT, gradient=3, quality=60),
    replace(EASY, name="hairlines 2-3 px", kinds=("hairline",)),
    replace(EASY, name="broken lines", kinds=("broken",), count=12),
    replace(EASY, name="stars", kinds=("star",)),
    replace(EASY, name="clusters", kinds=("cluster",), count=12),
    replace(EASY, name="pores in line", kinds=("row",), count=12),
    replace(EASY, name="touching bleed-outs", kinds=("touching",)),
    replace(EASY, name="rust", distractors=("rust",)),
    replace(EASY, name="blue and black pen", distractors=("blue pen", "black pen")),
    replace(EASY, name="red pen", distractors=("red pen",)),
    replace(EASY, name="tape", distractors=("tape",)),
    replace(EASY, name="stamped numbers", distractors=("stamp",)),
    replace(EASY, name="heat tint", distractors=("heat tint",)),
    replace(EASY, name="fingers", distractors=("finger",)),
    replace(EASY, name="card and rule", distractors=("reference",)),
    replace(EASY, name="red glove or sleeve", distractors=("red cloth",)),
    replace(EASY, name="red fibres", distractors=("red fibres",)),
    replace(EASY, name="drops and runs of dye", distractors=("dye that ran",)),
    replace(EASY, name="red pen by a weld", distractors=("red pen by a weld",), toes=True),
    replace(EASY, name="held upright (EXIF)", file="upright"),
    replace(EASY, name="HEIC", file="heic"),
    replace(EASY, name="TIFF of 16 bit", file="tiff16"),
    replace(EASY, name="Display P3", file="p3"),
    replace(
        EASY,
        name="much at once",
        gradient=2.5,
        haze=0.04,
        toes=True,
        quality=70,
        grain=0.012,
        shadow=0.6,
        strength=(0.3, 1.0),
        cast=(1.0, 0.9, 0.75),
        distractors=("rust", "blue pen", "stamp"),
    ),
]
UNCOUNTED = {"red pen", "red fibres", "drops and runs of dye", "red pen by a weld"}


@dataclass
class Tally:
    """What came of one condition; ``hits`` and ``alarms`` hold confidences."""

    truths: int = 0
    hits: list[float] = field(default_factory=list)
    alarms: list[float] = field(default_factory=list)
    alarms_by_photo: list[int] = field(default_factory=list)


def look(pixels, mm_per_px, form=""):
    """Suggestions for pixels of a known scale, by way of a file where a form is named."""
    photo = Photo.from_array(pixels, name="stress") if not form else through(form, pixels)
    return suggest(photo, surface_of(photo, mm_per_px))


def surface_of(photo, mm_per_px):
    """The surface of a known scale, by a rectangle."""
    corners = ((100.0, 100.0), (2100.0, 100.0), (2100.0, 1600.0), (100.0, 1600.0))
    rectangle = RectangleReference(
        corners_px=corners, width_mm=2000 * mm_per_px, height_mm=1500 * mm_per_px
    )
    return solve(rectangle, photo)


def match(truths, calls):
    """Index of the call for each truth, -1 where there is none; calls that match none."""
    shapes = [shapely.make_valid(shapely.Polygon(call.outline_px)) for call in calls]
    tree = shapely.STRtree(shapes)
    found, used = [], set()
    for truth in truths:
        own = shapely.make_valid(shapely.Polygon(truth.outline_px))
        near = tree.query(own, predicate="intersects").tolist()
        shares = {
            n: own.intersection(shapes[n]).area / max(min(own.area, shapes[n].area), 1e-9)
            for n in near
        }
        used |= {n for n, share in shares.items() if share > 0.3}
        best = max(shares, key=shares.get, default=-1)
        found.append(best if best >= 0 and shares[best] > 0.3 else -1)
    return found, [n for n in range(len(calls)) if n not in used]


def crop_of(pixels, outline, target):
    """Keep a picture of what went wrong, three times its size around it."""
    low, high = outline.min(axis=0), outline.max(axis=0)
    reach = max(60, int((high - low).max()))
    x, y = ((low + high) / 2).astype(int)
    cut = pixels[max(y - reach, 0) : y + reach, max(x - reach, 0) : x + reach, ::-1].copy()
    at = np.round(outline - [max(x - reach, 0), max(y - reach, 0)]).astype(np.int32)
    beside = cut.copy()
    cv2.polylines(beside, [at.reshape(-1, 1, 2)], isClosed=True, color=(200, 60, 0))
    cv2.imwrite(str(target), np.hstack([cut, beside]))


def run(condition, photos, keep, first_seed):
    """Render, look, compare; the tally and one line for each thing that went wrong."""
    tally, wrong = Tally(), []
    for seed in range(photos):
        pixels, truths = render(condition, first_seed + seed)
        seen = look(pixels, condition.mm_per_px, condition.file)
        index, false = match(truths, seen.found)
        left, _ = match(truths, seen.left_out)
        tally.alarms_by_photo.append(len(false))
        tally.alarms += [seen.found[n].confidence for n in false]
        stem = f"{condition.name}-{seed}".replace(" ", "-").replace(",", "").replace("%", "")
        for number, (truth, call, out) in enumerate(zip(truths, index, left, strict=True)):
            if truth.length_mm < COUNTED_MM:
                continue
            tally.truths += 1
            if call >= 0:
                tally.hits.append(seen.found[call].confidence)
                continue
            why = "not seen" if out < 0 else seen.left_out[out].reason
            wrong.append(
                f"MISS {stem} #{number} {truth.kind} {truth.length_mm:.1f} mm, "
                f"strength {truth.strength:.2f}, at {truth.outline_px.mean(0).round()}: {why}"
            )
            if keep:
                crop_of(pixels, truth.outline_px, keep / f"{stem}-miss-{number}.png")
        for n in false:
            one = seen.found[n]
            wrong.append(
                f"FALSE {stem} at {one.outline_px.mean(0).round()}, "
                f"contrast {one.contrast:.2f}, confidence {one.confidence:.2f}"
            )
            if keep:
                crop_of(pixels, one.outline_px, keep / f"{stem}-false-{n}.png")
    return tally, wrong


def table(tallies):
    """Found and false for each condition, and over all that count."""
    lines = [f"{'condition':<28}{'true':>6}{'found':>8}{'false/photo':>13}{'worst':>7}"]
    for name, one in tallies.items():
        share = len(one.hits) / max(one.truths, 1)
        mean = np.mean(one.alarms_by_photo)
        worst = max(one.alarms_by_photo)
        note = "  (not counted)" if name in UNCOUNTED else ""
        lines.append(f"{name:<28}{one.truths:>6}{share:>8.3f}{mean:>13.2f}{worst:>7}{note}")
    return lines


def receiver(tallies):
    """Found against false calls a photo, as the least confidence asked for rises."""
    counted = [one for name, one in tallies.items() if name not in UNCOUNTED]
    if not counted:
        return []
    hits = np.concatenate([one.hits for one in counted])
    alarms = np.concatenate([one.alarms for one in counted])
    truths = sum(one.truths for one in counted)
    photos = sum(len(one.alarms_by_photo) for one in counted)
    lines = [f"{'least confidence':<18}{'found':>8}{'false/photo':>13}"]
    for least in (0.0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8):
        found, false = (hits >= least).sum() / truths, (alarms >= least).sum() / photos
        lines.append(f"{least:<18.2f}{found:>8.4f}{false:>13.3f}")
    return lines


def main():
    """Print the tables."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("--photos", type=int, default=3, help="for each condition")
    ask.add_argument("--seed", type=int, default=1000, help="of the first photo")
    ask.add_argument("--only", default="", help="conditions with this word in their name")
    ask.add_argument("--keep", type=Path, help="folder for crops of what went wrong")
    ask.add_argument("--pod", action="store_true", help="probability of detection instead")
    asked = ask.parse_args()
    if asked.pod:
        print("\n".join(pod_table(look, match, photos=asked.photos)))
        return
    if asked.keep:
        asked.keep.mkdir(parents=True, exist_ok=True)
    tallies = {}
    for condition in CONDITIONS:
        if asked.only in condition.name:
            tallies[condition.name], wrong = run(
                condition, asked.photos, asked.keep, asked.seed
            )
            print(table({condition.name: tallies[condition.name]})[1], file=sys.stderr)
            print("\n".join(f"    {line}" for line in wrong), file=sys.stderr, flush=True)
    print("\n".join([*table(tallies), "", *receiver(tallies)]))


if __name__ == "__main__":
    main()
