"""Does a verdict ever pass what the true outlines reject?

    python tests/benchmarks/verdict_truth.py [--photos N] [--only WORD,WORD] [--truth FOLDER]
                                             [--accepted]

Takes photos of the stress set, or of a folder of NAME.jpg beside NAME.json, the whole way:
reference, suggestions, measurement, verdict. Beside it the same profile judges the true
outlines in mm without U. So that true lengths fall near the limits, each group of neighbours is
judged as a part of its own, its reference told so much larger or smaller that its longest is a
little over one of them; then the whole photo. Printed: what the truth rejects and passes.

``--accepted`` asks the other side: the longest is so much shorter than a limit, and of what the
truth accepts it counts what is accepted, left undecided or rejected, and prints each rejected.

At the end both sides print what held parts open: each reason, in how many, and in how many it
was the only one, so that they would have been accepted without it.
"""

import argparse
import json
import sys
from collections import Counter
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import shapely
from stress import CONDITIONS, match
from stress_shop import render

from ptmark.criteria import evaluate, load_profile, scene_from_json
from ptmark.criteria.touching import TOUCHING
from ptmark.criteria.unjudged import UNJUDGED
from ptmark.dye import dense_places
from ptmark.errors import PtmarkError
from ptmark.hides import Hides
from ptmark.inspection import Inspection
from ptmark.photo import Photo, open_photo
from ptmark.scale import CardReference, LineReference, RectangleReference

PROFILES = (
    *(f"iso-23277-{level}" for level in ("1", "2", "2x", "3", "3x")),
    *("asme-viii-1-app-8", "asme-b31.1", "asme-b31.3", "asme-iii-nb-5350", "api-1104"),
    *(f"en-10228-2-class-{n}" for n in (1, 2, 3, 4)),
)
LIMITS_MM = (1.5, 1.6, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0)
OVER = (1.003, 1.015, 1.06)  # true length over limit, in turns
UNDER = (0.95, 0.78, 0.55)
LEAST_SCALE, MOST_SCALE = 0.4, 2.5
MOST_GROUPS, LIMITS_EACH = 8, 2  # judged of a photo, and of a group
NEAR_MM = 3.0  # indications closer than this are one group
THICKNESS_MM = 25.0
PLAN = ((100.0, 100.0), (2100.0, 100.0), (2100.0, 1600.0), (100.0, 1600.0))

loaded = cache(load_profile)


@dataclass(frozen=True, kw_only=True)
class Shot:
    """A photo with its truth: outlines in px, lengths in mm; ``flat`` mm a px of a plan."""

    name: str
    photo: Photo
    truths: list
    corners: tuple
    size_mm: tuple
    others: dict = field(default_factory=dict)  # references by name, at their true size
    area: tuple | None = None
    crown_mm: float = 0.0
    flat: float = 0.0


def of_stress(photos, words):
    """Photos of the conditions with one of the words in their name."""
    for condition in CONDITIONS:
        if not any(word in condition.name for word in words):
            continue
        for seed in range(photos):
            pixels, truths = render(condition, 1000 + seed)
            mm, name = condition.mm_per_px, f"{condition.name}-{seed}"
            photo, size = Photo.from_array(pixels, name=name), (2000 * mm, 1500 * mm)
            told = {"corners": PLAN, "size_mm": size, "flat": mm}
            yield Shot(name=name, photo=photo, truths=truths, **told)


def of_folder(folder, words):
    """Photos beside their truth: indications, line, rectangle, area and height of the weld."""
    for path in sorted(folder.glob("*.json")):
        if not any(word in path.stem for word in words):
            continue
        told = json.loads(path.read_text())
        ends = tuple(map(tuple, told["line"]["points"]))
        rule = LineReference(ends_px=ends, length_mm=told["line"]["mm"])
        yield Shot(
            name=path.stem,
            photo=open_photo(path.with_suffix(".jpg")),
            truths=[
                SimpleNamespace(outline_px=np.array(o["outline_px"]), length_mm=o["length_mm"])
                for o in told["indications"]
            ],
            corners=tuple(map(tuple, told["rectangle"]["points"])),
            size_mm=told["rectangle"]["mm"],
            others={"card": CardReference(), "rule": rule},
            area=tuple(map(tuple, told["area"])),
            crown_mm=told["crown_mm"],
        )


def true_outlines(shot, surface, scale):
    """Outlines in mm, each of its true length; where it lies is what the map says."""
    if shot.flat:
        return [one.outline_px * shot.flat * scale for one in shot.truths]
    outlines = []
    for one in shot.truths:
        at = surface.to_mm(one.outline_px)
        hull = shapely.get_coordinates(shapely.MultiPoint(at).convex_hull)
        seen = np.linalg.norm(hull[:, None] - hull, axis=-1).max()
        middle = at.mean(axis=0)
        outlines.append(middle + (at - middle) * one.length_mm * scale / seen)
    return outlines


def parts_of(shot, mm_per_px, calls, ratios):
    """Name, truths and calls by their places, reference, scale and ratio of each part judged.

    ``ratios`` of its longest true length to a limit are taken in turns.
    """
    own = [shapely.make_valid(shapely.Polygon(one.outline_px)) for one in shot.truths]
    shapes = shapely.buffer(own, NEAR_MM / 2 / mm_per_px)
    for reference in ("rectangle", *shot.others):
        yield "photo", list(range(len(own))), list(range(len(calls))), reference, 1.0, None
    places = shapely.get_parts(shapely.unary_union(shapes))
    for nth, place in enumerate(places[:MOST_GROUPS]):
        group = [n for n, shape in enumerate(own) if shape.intersects(place)]
        if not group:  # what buffering may leave beside the truths
            continue
        called = [n for n, call in enumerate(calls) if call.intersects(place)]
        longest, tried = max(shot.truths[n].length_mm for n in group), 0
        for k in range(len(LIMITS_MM)):
            limit = LIMITS_MM[(3 * nth + 5 * k) % len(LIMITS_MM)]
            ratio = ratios[(nth + k) % len(ratios)]
            scale = limit * ratio / longest
            if LEAST_SCALE <= scale <= MOST_SCALE and tried < LIMITS_EACH:
                tried += 1
                yield f"group {nth} at {limit:g} mm", group, called, "rectangle", scale, ratio


def rectangle(shot, scale):
    """The shot's rectangle, told so many times its size."""
    wide, high = (scale * side for side in shot.size_mm)
    return RectangleReference(corners_px=shot.corners, width_mm=wide, height_mm=high)


def cases(shot, accepted=False):
    """For each part and profile the truth rejects (or accepts): ratio, verdict, reasons, text.

    The reasons are those that hold it open; the text names the part, the profile and what one
    of the two rejects.
    """
    own = Inspection()
    own.set_photo(shot.photo)
    own.set_reference(rectangle(shot, 1.0))
    own.change("mark the area", area_px=shot.area)
    own.set_suggestions(own.look())
    every = own.state.marked
    calls = [shapely.make_valid(shapely.Polygon(one.outline_px)) for one in every]
    index, _ = match(shot.truths, every)
    asked, ratios = ("acceptable", UNDER) if accepted else ("rejectable", OVER)
    for what, truths, called, name, scale, ratio in parts_of(
        shot, own.surface.mm_per_px(), calls, ratios
    ):
        try:
            own.set_reference(shot.others.get(name) or rectangle(shot, scale))
        except PtmarkError as refused:
            print(f"{shot.name}, {name}: {refused}", file=sys.stderr)
            continue
        relief = None if what == "photo" else shot.crown_mm * scale
        marked = tuple(every[n] for n in called)
        own.change("a part", marked=marked, relief_mm=relief, thickness_mm=THICKNESS_MM)
        outlines = true_outlines(shot, own.surface, scale)
        listed = [{"id": f"{n}", "outline_mm": outlines[n].tolist()} for n in truths]
        true = scene_from_json({"indications": listed, "thickness_mm": THICKNESS_MM})
        seen = own.scene()
        if what != "photo":
            # its pixels are as large as they were, and it was looked over with the rest
            not_so = Hides.COARSE, Hides.UNLOOKED
            hidden = {why: told for why, told in seen.hidden.items() if why not in not_so}
            seen = replace(seen, hidden=hidden)
        for profile in PROFILES:
            told = evaluate(loaded(profile), true)
            if told.verdict == asked:
                got = evaluate(loaded(profile), seen)
                where = f"{shot.name}, {what}, {name}, {profile}"
                why = _held(got) if accepted else _why(told, index, every, seen)
                yield ratio, got.verdict, _open_by(got, seen, own), f"{where}: {why}"


def _open_by(got, seen, own):
    """The reasons that hold a part open."""
    places = {one.reason for one in own.left_out if dense_places([one.reason])}
    hidden = places | {str(why) for why in seen.hidden if why != Hides.DENSE_HAZE}
    least = {one.id: {str(why) for why in one.least} for one in seen.indications}
    found = set()
    for one in got.findings:
        if one.verdict != "undecided":
            continue
        if one.rule not in UNJUDGED:
            found.add("within U")
        elif not one.indications:
            found |= hidden
        else:
            told = set().union(*(least[name] for name in one.indications if name in least))
            found |= {one.rule} if one.rule == TOUCHING or not told else told
    return frozenset(found)


def _held(got):
    """What keeps a part from being accepted."""
    return " ".join(one.says for one in got.findings if one.verdict == got.verdict)


def _why(told, index, every, seen):
    """What the truth rejects, and what was measured of it."""
    sizes = {one.id: f"{one.length:.3f} ± {one.length_u:.3f} mm" for one in seen.indications}
    lines = []
    for one in told.findings:
        if one.verdict == "rejectable":
            ids = [every[index[int(n)]].id for n in one.indications if index[int(n)] >= 0]
            lines.append(
                f"{one.says} Measured: {[sizes.get(name) for name in ids] or 'missed'}"
            )
    return " ".join(lines)


def main():
    """Print what passes and the counts."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("--photos", type=int, default=1, help="for each condition")
    ask.add_argument("--only", default="", help="names with one of these words, by commas")
    ask.add_argument("--truth", type=Path, help="a folder of photos with their truth")
    ask.add_argument("--accepted", action="store_true", help="of what the truth accepts")
    asked = ask.parse_args()
    words, count, held, alone = asked.only.split(","), Counter(), Counter(), Counter()
    wrong = "rejectable" if asked.accepted else "acceptable"
    shots = of_folder(asked.truth, words) if asked.truth else of_stress(asked.photos, words)
    for shot in shots:
        for ratio, verdict, reasons, told in cases(shot, asked.accepted):
            count[f"{ratio or 'photo'} {verdict}" if asked.accepted else verdict] += 1
            if verdict == "undecided":
                held.update(reasons)
                alone.update(reasons if len(reasons) == 1 else ())
            if verdict == wrong:
                print(told, flush=True)
        print(f"{shot.name}: so far {dict(count)}", file=sys.stderr, flush=True)
    for reason, times in held.most_common():
        print(f"held open {times} times, {alone[reason]} times alone: {reason}")


if __name__ == "__main__":
    main()
