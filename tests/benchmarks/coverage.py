"""Coverage: are 95 % of true lengths and widths within the stated U, in every condition?

    python tests/benchmarks/coverage.py [--photos N] [--only WORD] [--folder FOLDER]
                                        [--rows FILE.csv] [--plot FILE.svg|FILE.png]

Renders N photos for each condition with a renderer of its own (`coverage_scenes`), measures
what is found in them by the card, a rectangle and a rule as the program does, and prints for
each condition and reference the share of errors within U (k = 2), the median U and the 95th
percentile of the errors. ``--folder`` keeps the photos and takes those that lie there already;
``--rows`` writes one line for each indication; ``--plot`` draws coverage and U.

A Monte Carlo check in the sense of JCGM 101:2008, 8: the model of the uncertainty is not the
one that makes the errors.
"""

import argparse
import csv
import json
import sys
from dataclasses import asdict
from pathlib import Path

import numpy as np
from coverage_plot import draw
from coverage_scenes import CARD_MM, Truth, photograph
from coverage_views import AT_RANDOM, TOLD, drawn, views
from stress import match

from ptmark.dye import find_indications
from ptmark.errors import ScaleError
from ptmark.measure import Conditions, measure_outline
from ptmark.photo import open_photo
from ptmark.scale import CardReference, LineReference, RectangleReference, solve

MODES = ("card", "rectangle", "rule")
STEEP_DEG = 20.0  # up to here a rule is to be within twice the card's errors


def made(view, seed, folder):
    """One photo, its truths and its picks, taken from the folder where it is there."""
    stem = f"{view.name.removesuffix(TOLD)}-{seed}".replace(" ", "-").replace(":", "-")
    kept, path = folder / f"{stem}.json", folder / f"{stem}.jpg"
    if not kept.exists():
        blob, truths, corners, ends, mm = photograph(drawn(view, seed), seed)
        path.write_bytes(blob)
        told = [asdict(one) | {"outline_px": one.outline_px.tolist()} for one in truths]
        kept.write_text(json.dumps([told, corners.tolist(), ends.tolist(), mm]))
    told, corners, ends, mm = json.loads(kept.read_text())
    truths = [Truth(**one | {"outline_px": np.array(one["outline_px"])}) for one in told]
    return path, (truths, corners, ends, mm)


def surfaces(photo, corners, ends, mm):
    """The surface by each reference; None where it was refused."""
    asked = {
        "card": CardReference(),
        "rectangle": RectangleReference(
            corners_px=tuple(map(tuple, corners)), width_mm=CARD_MM[0], height_mm=CARD_MM[1]
        ),
        "rule": LineReference(ends_px=tuple(map(tuple, ends)), length_mm=mm),
    }
    for mode, reference in asked.items():
        try:
            yield mode, solve(reference, photo)
        except ScaleError as refused:
            print(f"    {photo.info.path.name} {mode}: {refused}", file=sys.stderr)


def rows_of(view, seed, folder):
    """What came of each indication of one photo under each reference."""
    path, (truths, corners, ends, mm) = made(view, seed, folder)
    photo, seen = open_photo(path), drawn(view, seed)
    given = Conditions(relief_mm=seen.crown_mm if seen.tells_crown else None)
    by_mode = dict(surfaces(photo, corners, ends, mm))
    if not by_mode:
        return
    first = next(iter(by_mode.values()))
    calls = find_indications(photo, first, None, "colour contrast").found
    index, _false = match(truths, calls)
    for number, (truth, call) in enumerate(zip(truths, index, strict=True)):
        if call < 0:
            continue
        for mode, surface in by_mode.items():
            edge = calls[call].edge
            got = measure_outline(calls[call].outline_px, surface, edge, given)
            yield {
                "condition": view.name,
                "photo": seed,
                "number": number,
                "kind": truth.kind,
                "mode": mode,
                "strength": truth.strength,
                "tilt_deg": seen.tilt_deg,
                "length": truth.length_mm,
                "length_error": got.length.value - truth.length_mm,
                "length_u": got.length.expanded,
                "width": truth.width_mm,
                "width_error": got.width.value - truth.width_mm,
                "width_u": got.width.expanded,
                "mm_per_px": surface.mm_per_px(calls[call].outline_px.mean(axis=0)),
                **{f"length_{k}": v for k, v in got.length.budget.items()},
                **{f"width_{k}": v for k, v in got.width.budget.items()},
            }


def figures(rows):
    """Count, then for length and width: coverage, median U, median, 95 % and bias of errors."""
    found = [len(rows)]
    for what in ("length", "width"):
        error = np.array([row[f"{what}_error"] for row in rows])
        u = np.array([row[f"{what}_u"] for row in rows])
        size = np.abs(error)
        found += [np.mean(size <= u), np.median(u), *np.percentile(size, [50, 95])]
        found += [np.median(error)]
    return found


HEAD = (
    "| condition | reference | n | length covered | U | median | 95 % | bias | width covered "
    "| U | median | 95 % | bias |\n" + 13 * "|---" + "|"
)


def table(rows):
    """A line for each condition and reference; then over all, gentle and steep tilts apart."""
    names = list(dict.fromkeys(row["condition"] for row in rows))
    kinds = {name: [row for row in rows if row["condition"] == name] for name in names}
    kinds["all"] = rows
    kinds[f"tilt up to {STEEP_DEG:g}"] = [r for r in rows if r["tilt_deg"] <= STEEP_DEG]
    kinds[f"tilt over {STEEP_DEG:g}"] = [r for r in rows if r["tilt_deg"] > STEEP_DEG]
    lines = [HEAD]
    for name, kind in kinds.items():
        for mode in MODES:
            own = [row for row in kind if row["mode"] == mode]
            if own:
                n, *rest = figures(own)
                told = " | ".join(f"{v:.3f}" for v in rest)
                lines.append(f"| {name} | {mode} | {n} | {told} |")
    return lines


def write_rows(path, rows):
    """One line of CSV for each indication and reference."""
    names = list(dict.fromkeys(key for row in rows for key in row))
    with path.open("w", newline="", encoding="utf-8") as held:
        writer = csv.DictWriter(held, names, restval="")
        writer.writeheader()
        writer.writerows(rows)


def main():
    """Print the table."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("--photos", type=int, default=2, help="for each; of those at random 5 x")
    ask.add_argument("--only", default="", help="conditions with this word in their name")
    ask.add_argument("--folder", type=Path, default=Path("coverage-photos"))
    ask.add_argument("--rows", type=Path, help="CSV with a line for each indication")
    ask.add_argument("--plot", type=Path, help="SVG or PNG of coverage and U")
    asked = ask.parse_args()
    asked.folder.mkdir(parents=True, exist_ok=True)
    rows = []
    for view in views():
        if asked.only not in view.name:
            continue
        photos = asked.photos * (5 if view.name in AT_RANDOM else 1)
        own = [row for n in range(photos) for row in rows_of(view, 100 + n, asked.folder)]
        print("\n".join(table(own)[1 : 1 + len(MODES)]), file=sys.stderr, flush=True)
        rows += own
    print("\n".join(table(rows)))
    if asked.rows:
        write_rows(asked.rows, rows)
    if asked.plot:
        draw(asked.plot, rows, MODES)


if __name__ == "__main__":
    main()
