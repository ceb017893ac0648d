"""What of a folder of photos with known truth is found, called falsely, and within its U.

    python tests/benchmarks/unseen_score.py FOLDER [--keep FOLDER] [--list]

Runs `ptmark measure` on each NAME.jpg beside NAME.json as a user would, with the rectangle and
the examined area told. A call and a truth are one where they share 30 % of the smaller one's
area. Printed for each level: photos; those of 1.5 mm and longer found, and the faint of them
(below 55 % of full dye); false calls in all and in the worst photo; lengths within U, and how
many are short by more than U. ``--keep`` holds what was measured, and takes what it holds.
"""

import argparse
import json
import subprocess
import sys
import tempfile
from itertools import chain
from pathlib import Path

import shapely

LEAST_MM, FAINT, SHARED = 1.5, 0.55, 0.3


def measured(photo, truth, out):
    """The record of a photo, measured unless it is there."""
    if not out.exists():
        told = ",".join(f"{v:g}" for point in truth["rectangle"]["points"] for v in point)
        wide, high = truth["rectangle"]["mm"]
        area = ",".join(f"{v:g}" for point in truth["area"] for v in point)
        command = [sys.executable, "-m", "ptmark", "measure", str(photo), "--json", str(out)]
        command += ["--rectangle", f"{told}={wide:g}x{high:g}mm", "--area", area]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        if done.returncode:
            sys.exit(f"{photo}: {done.stderr.strip() or done.stdout.strip()}")
    return json.loads(out.read_text(encoding="utf-8"))


def shape(one):
    return shapely.make_valid(shapely.Polygon(one["outline_px"]))


def matched(truths, calls):
    """Each truth with its call or None, and the calls that are left."""
    free = [(shape(call), call) for call in calls]
    pairs = []
    for truth in truths:
        own = shape(truth)
        shared = [own.intersection(s).area / min(own.area, s.area) for s, _ in free]
        best = max(range(len(free)), key=shared.__getitem__, default=None)
        if best is None or shared[best] <= SHARED:
            pairs.append((truth, None))
        else:
            pairs.append((truth, free.pop(best)[1]))
    return pairs, [call for _, call in free]


def row(photos, *, listed):
    """Figures of the photos: (name, pairs, false calls) each."""
    pairs = [(name, *pair) for name, both, _ in photos for pair in both]
    due = [(t, c) for _, t, c in pairs if t["length_mm"] >= LEAST_MM]
    faint = [(t, c) for t, c in due if t["strength"] < FAINT]
    off = [
        (name, t, c["length_mm"] - t["length_mm"], c["length_u_mm"])
        for name, t, c in pairs
        if c
    ]
    false = [len(calls) for *_, calls in photos]
    if listed:
        for name, t, c in pairs:
            if c is None and t["length_mm"] >= LEAST_MM:
                print(
                    f"  {name} missed: {t['kind']} {t['length_mm']:.2f} mm, {t['strength']:.2f}"
                )
        for name, t, by, u in off:
            if abs(by) > u:
                print(
                    f"  {name} {t['kind']} {t['length_mm']:.2f} mm: {by:+.2f} mm, U {u:.2f} mm"
                )
        for name, _, calls in photos:
            for call in calls:
                x, y = shape(call).centroid.coords[0]
                print(f"  {name} false: {call['length_mm']:.2f} mm at {x:.0f}, {y:.0f} px")
    found = [sum(c is not None for _, c in some) for some in (due, faint)]
    within = sum(abs(by) <= u for *_, by, u in off) / max(len(off), 1)
    short = sum(by < -u for *_, by, u in off)
    shares = f"{found[0]} of {len(due)} | {found[1]} of {len(faint)}"
    return f"{len(photos)} | {shares} | {sum(false)} | {max(false)} | {within:.3f} | {short}"


def main():
    ap = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    ap.add_argument("folder", type=Path)
    ap.add_argument("--keep", type=Path)
    ap.add_argument(
        "--list", action="store_true", help="each miss, false call and wrong length"
    )
    told = ap.parse_args()
    keep = told.keep or Path(tempfile.mkdtemp())
    keep.mkdir(parents=True, exist_ok=True)
    levels = {}
    for path in sorted(told.folder.glob("*.json")):
        truth = json.loads(path.read_text(encoding="utf-8"))
        record = measured(path.with_suffix(".jpg"), truth, keep / path.name)
        both, false = matched(truth["indications"], record["indications"])
        levels.setdefault(truth["level"], []).append((path.stem, both, false))
    print("level | photos | found | faint | false | worst | covered | short")
    for level, photos in levels.items():
        print(level, "|", row(photos, listed=told.list))
    print("all |", row(list(chain.from_iterable(levels.values())), listed=False))


if __name__ == "__main__":
    main()
