"""How long an evaluation of many indications takes; prints seconds, checks nothing.

Seconds of the processor, not of the clock, so that other work beside it counts little. Dense
scenes end at the first set that is enough; sparse ones must rule every place out.
"""

import sys
import time

import numpy as np

from ptmark.criteria import Judged, Scene, evaluate, load_profile, scene_from_json

_TURN = np.linspace(0, 2 * np.pi, 24, endpoint=False)
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


def main() -> None:
    """Time each profile of a family on dense and sparse scenes."""
    evaluate(load_profile("iso-23277-2"), scene(40, 100.0, seed=1))  # loads what it needs
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    for name in (
        "asme-b31.1",
        "en-10228-2-class-2",
        "iso-23277-2",
        "aws-d1.1-porosity-other-welds",
    ):
        for side_mm in (300.0, 1000.0, 5000.0):
            made = scene(count, side_mm, seed=1)
            began = time.process_time()
            result = evaluate(load_profile(name), made)
            took = time.process_time() - began
            print(
                f"{name:32} {count} on {side_mm:.0f} mm square: {took:.2f} s, {result.verdict}"
            )
    few = count // 10
    sparse = scene(few, 3000.0, seed=1, least_mm=2.5)  # all relevant, no place with enough
    began = time.process_time()
    result = evaluate(load_profile("asme-b31.1"), sparse)
    took = time.process_time() - began
    print(f"asme-b31.1, {few} on 3000 mm square, all ruled out: {took:.2f} s, {result.verdict}")
    time_reading(few)


def time_reading(count: int) -> None:
    """Time the reading of outlines, whose widths and paths are measured one by one."""
    made = scene(count, 1000.0, seed=1)
    listed = [{"id": o.id, "outline_mm": o.outline_mm.tolist()} for o in made.indications]
    began = time.process_time()
    scene_from_json({"indications": listed})
    print(f"{count} outlines read: {time.process_time() - began:.2f} s")


if __name__ == "__main__":
    main()
