"""How long an evaluation of many indications takes; prints seconds, checks nothing.

Seconds of the processor, not of the clock, so that other work beside it counts little, and the
same over a plain loop of five million additions just before, for slow and busy machines. Dense
scenes end at the first set that is enough; sparse ones must rule every place out; the mixed one
has every shape and many kinds. The last lines time ``ptmark evaluate`` as a whole, the start of
Python included. Give a number of indications and the profiles to time, or ``--worst N`` to hold
the worst window against brute force on N scenes.
"""

import gc
import itertools
import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
import shapely

from ptmark.criteria import (
    Judged,
    Scene,
    evaluate,
    load_profile,
    scene_from_json,
)
from ptmark.criteria.turned import Bounds
from ptmark.criteria.worst import worst_rectangle

_TURN = np.linspace(0, 2 * np.pi, 24, endpoint=False)
_PROFILES = (
    "api-1104",
    "asme-b31.1",
    "aws-d1.1-porosity-other-welds",
    "en-10228-2-class-2",
    "iso-23277-2",
)
_KINDS = ("", "", "", "104", "2017", "401", "301")
_CIRCLE = np.c_[np.cos(_TURN), np.sin(_TURN)] / 2


def scene(count: int, side_mm: float, seed: int, least_mm: float = 1.0) -> Scene:
    """Pores of up to 4 mm spread evenly at random over a square."""
    rng = np.random.default_rng(seed)
    places, sizes = rng.uniform(0, side_mm, (count, 2)), rng.uniform(least_mm, 4.0, count)
    return Scene(
        indications=tuple(
            Judged(
                id=str(k),
                outline_mm=_CIRCLE * sizes[k] + places[k],
                length=sizes[k],
                path=sizes[k],
                width=sizes[k],
                length_u=0.1,
                width_u=0.1,
            )
            for k in range(count)
        )
    )


def mixed(count: int, side_mm: float) -> list[dict[str, object]]:
    """Ellipses and bent, jagged ones, 1 to 12 times as long as wide, named at random."""
    rng = np.random.default_rng(2)
    made: list[dict[str, object]] = []
    for k in range(count):
        points = _CIRCLE * rng.uniform(0.5, 6.0) / [1.0, rng.uniform(1, 12)]
        points[:, 1] += rng.choice([0.0, 0.1]) * points[:, 0] ** 2
        points *= 1 + rng.choice([0.0, 0.02]) * rng.standard_normal((len(points), 1))
        turn = rng.uniform(0, 2 * np.pi)
        spin = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
        outline = points @ spin + rng.uniform(0, side_mm, 2)
        u = {"length_u_mm": 0.1, "width_u_mm": 0.05, "kind": str(rng.choice(_KINDS))}
        made.append({"id": str(k), "outline_mm": outline.tolist(), **u})
    return made


def floor() -> float:
    """Seconds of a plain loop, the least of three."""
    took = []
    for _ in range(3):
        began, total = time.process_time(), 0
        for k in range(5_000_000):
            total += k
        took.append(time.process_time() - began)
    return min(took)


def main() -> None:
    """Time the profiles at three densities and on a mixed scene, then the reading of a file."""
    if sys.argv[1:2] == ["--worst"]:
        hold_against_brute_force(int(sys.argv[2]))
        return
    evaluate(load_profile("iso-23277-2"), scene(40, 100.0, seed=1))  # loads what it needs
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    slowest = 0.0
    listed = mixed(count, 1000.0)
    gc.freeze()  # what this script holds is no part of what it times
    for name in sys.argv[2:] or _PROFILES:
        loop, times = floor(), []
        for side_mm in (300.0, 1000.0, 5000.0):
            times.append(timed(name, scene(count, side_mm, seed=1))[0])
        fresh = scene_from_json({"indications": listed})  # each profile measures what it needs
        began = time.process_time()
        evaluate(load_profile(name), fresh)
        times.append(time.process_time() - began)
        slowest = max(slowest, *times)
        ratios = "".join(f"{took / loop:7.1f}" for took in times)
        print(f"{name:32}" + "".join(f"{took:7.2f}" for took in times) + "  |" + ratios)
    print(f"slowest: {slowest:.2f} s")
    few = count // 10
    sparse = scene(few, 3000.0, seed=1, least_mm=2.5)  # all relevant, no place with enough
    took, verdict = timed("asme-b31.1", sparse)
    print(f"asme-b31.1, {few} on 3000 mm square, all ruled out: {took:.2f} s, {verdict}")
    for name in sys.argv[2:] or _PROFILES:
        time_command(name, listed)


def timed(name: str, made: Scene) -> tuple[float, str]:
    """The less of two runs, so that what else runs counts little."""
    profile = load_profile(name)
    took = []
    for _ in range(2):
        began = time.process_time()
        result = evaluate(profile, made)
        took.append(time.process_time() - began)
    return min(took), result.verdict


def time_command(name: str, listed: list[dict[str, object]]) -> None:
    """Time a whole run of the command on the mixed scene, the least of three."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "scene.json"
        file.write_text(json.dumps({"indications": listed}))
        words = [sys.executable, "-m", "ptmark", "evaluate", str(file), "--criteria", name]
        loop, took = floor(), []
        for _ in range(3):
            began = os.times()
            subprocess.run(words, check=True, stdout=subprocess.DEVNULL)
            ended = os.times()
            took.append(
                ended.children_user
                - began.children_user
                + ended.children_system
                - began.children_system
            )
    print(f"{name:32}whole command {min(took):6.2f}  |{min(took) / loop:7.1f}")


def hold_against_brute_force(scenes: int) -> None:
    """Worst windows of points against the smallest boxes of all subsets; prints the misses."""
    rng = np.random.default_rng(1)
    misses = 0
    for _ in range(scenes):
        count = int(rng.integers(3, 9))
        subsets = [
            c for n in range(2, count + 1) for c in itertools.combinations(range(count), n)
        ]
        sizes = np.array([len(chosen) for chosen in subsets])
        places, area = rng.uniform(0, 40, (count, 2)), rng.uniform(50, 500)
        points = places[np.concatenate(subsets)]
        owner = np.repeat(np.arange(len(subsets)), sizes)
        boxes = shapely.minimum_rotated_rectangle(shapely.multipoints(points, indices=owner))
        best = max([1, *sizes[shapely.area(boxes) <= area]])
        dots = [np.array([[x, y], [x + 1e-9, y], [x, y + 1e-9]]) for x, y in places]
        found = worst_rectangle(dots, np.ones(count), Bounds(200.0, 200.0, area), band=1e-6)
        misses += found.total != best or not found.proven
    print(f"{scenes} scenes, {misses} differ from brute force")


if __name__ == "__main__":
    main()
