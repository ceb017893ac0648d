"""Lengths on pipes of 60 to 600 mm, from the pixels: error, U and coverage by reference.

    python tests/benchmarks/pipe_truth.py [--photos N] [--seed S] [--phones] [--no-exif]

Renders N photos with a renderer of its own (`pipe_scenes`) and measures every dye line that is
found, with the pipe's edges picked roughly, with one line along the pipe, with a rule and with
a rectangle on it. Picks carry 1.2 px of noise, rough ones 4. ``--phones`` draws the focal
length from those of phones' cameras, ``--no-exif`` does not tell it.
"""

import argparse
from collections import defaultdict

import cv2
import numpy as np
from pipe_scenes import Scene

from ptmark.dye import find_indications
from ptmark.errors import ScaleError
from ptmark.measure import Conditions, measure_outline
from ptmark.photo import Photo
from ptmark.scale import LineReference, PipeReference, RectangleReference, solve

FLAT = Conditions(relief_mm=0.0)


def references(scene):
    """What a user would give, by name: picks with their noise, the diameter as typed."""
    rng, size = scene.rng, scene.told_diameter
    edges = scene.edges()
    yield "edges", _pipe(edges + rng.normal(0, 4, (4, 2)), size)
    yield "edges as picked", _pipe(edges + rng.normal(0, 1.2, (4, 2)), size)
    span, radius = scene.span(), scene.diameter / 2
    axis = scene.see(scene.place([[0.1 * radius, -span], [0.1 * radius, span]]))
    yield (
        "axis",
        PipeReference(axis_px=_points(axis + rng.normal(0, 6, (2, 2))), diameter_mm=size),
    )
    # A rule laid on what looks like the crown, and a rectangle that touches along its middle.
    aside = radius * np.radians(rng.uniform(-15, 15))
    long = min(0.5 * span, radius)
    ends = scene.see(scene.place([[aside, -long / 2], [aside, long / 2]]))
    line = LineReference(ends_px=_points(ends + rng.normal(0, 1.2, (2, 2))), length_mm=long)
    yield "rule on it", PipeReference(diameter_mm=size, on=line)
    angle = aside / radius
    middle = scene.place([[aside, 0.0]])[0]
    right = np.cos(angle) * scene.side - np.sin(angle) * scene.near
    wide, high = 0.6 * radius, 0.4 * radius
    corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    card = np.array(
        [middle + x * wide / 2 * right + y * high / 2 * scene.axis for x, y in corners]
    )
    on = RectangleReference(
        corners_px=_points(scene.see(card) + rng.normal(0, 1.2, (4, 2))),
        width_mm=wide,
        height_mm=high,
    )
    off = aside + radius * rng.uniform(-0.06, 0.06)  # where it touches is not seen exactly
    touch = scene.see(scene.place([[off, -high], [off, high]])) + rng.normal(0, 1.2, (2, 2))
    yield "rectangle on it", PipeReference(axis_px=_points(touch), diameter_mm=size, on=on)
    rough = _points(edges + rng.normal(0, 4, (4, 2)))
    yield "rectangle and edges", PipeReference(edges_px=rough, diameter_mm=size, on=on)
    yield "rule and edges", PipeReference(edges_px=rough, diameter_mm=size, on=line)


def _points(array):
    return tuple((float(x), float(y)) for x, y in array)


def _pipe(edges, diameter):
    return PipeReference(edges_px=_points(edges), diameter_mm=diameter)


def measured(scene, photo, reference, found):
    """(relative error, U, turn in degrees, budget) of each line found, by one reference.

    Raises
    ------
    ScaleError
        If the reference is refused.
    """
    surface, told = solve(reference, photo), []
    for line in scene.lines:
        middle = scene.see(scene.place(line.middle))[0]
        for one in found:
            outline = one.outline_px.astype(np.float32).reshape(-1, 1, 2)
            at = (float(middle[0]), float(middle[1]))
            if cv2.pointPolygonTest(outline, at, measureDist=False) < 0:
                continue
            if surface.in_view(one.outline_px):
                got = measure_outline(one.outline_px, surface, one.edge, FLAT)
                turned = float(scene.turned(line.middle)[0])
                error = got.length.value / line.length - 1
                told.append(
                    (error, got.length.expanded / line.length, turned, got.length.budget)
                )
    return told


def photographed(scene, *, exif):
    """The scene as a photo held in memory, after JPEG."""
    pixels = cv2.cvtColor(scene.render(), cv2.COLOR_RGB2BGR)
    coded = cv2.imencode(".jpg", pixels, [cv2.IMWRITE_JPEG_QUALITY, 90])[1]
    rgb = cv2.cvtColor(cv2.imdecode(coded, cv2.IMREAD_COLOR), cv2.COLOR_BGR2RGB)
    return Photo.from_array(rgb, focal_px=scene.told_focal if exif else None)


def summed(rows):
    """Median error, its 95th percentile, coverage and median U, relative."""
    errors, us = (np.array([row[i] for row in rows]) for i in (0, 1))
    size = np.abs(errors)
    return np.median(size), np.percentile(size, 95), np.mean(size <= us), np.median(us)


def main():
    ask = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    ask.add_argument("--photos", type=int, default=20)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--phones", action="store_true")
    ask.add_argument("--no-exif", action="store_true")
    asked = ask.parse_args()
    rows, refused, drawn = defaultdict(list), defaultdict(int), 0
    for number in range(asked.photos):
        scene = Scene(np.random.default_rng([asked.seed, number]), phones=asked.phones)
        scene.draw_lines(6)
        drawn += len(scene.lines)
        photo = photographed(scene, exif=not asked.no_exif)
        found = find_indications(photo, None, None, "colour contrast").found
        for name, reference in references(scene):
            try:
                rows[name] += measured(scene, photo, reference, found)
            except ScaleError:
                refused[name] += 1
    print(f"{asked.photos} photos, {drawn} lines; length in percent of the true one")
    print("| reference | refused | lines | error, median | 95 % | covered | U, median |")
    print("|---|---|---|---|---|---|---|")
    for name, told in rows.items():
        _line(name, refused[name], told)
        _line(f"{name}, past 40°", "", [row for row in told if row[2] > 40])


def _line(name, refused, told):
    if told:
        median, most, covered, u = summed(told)
        sizes = f"{100 * median:.2f} | {100 * most:.2f} | {covered:.3f} | {100 * u:.2f}"
        print(f"| {name} | {refused} | {len(told)} | {sizes} |")


if __name__ == "__main__":
    main()
