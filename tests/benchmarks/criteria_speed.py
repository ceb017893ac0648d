"""How long an evaluation of many indications takes; prints seconds, checks nothing.

Dense scenes end at the first set that is enough; sparse ones must rule every place out.
"""

import sys
import time

import numpy as np

from ptmark.criteria import Judged, Scene, evaluate, load_profile

_TURN = np.linspace(0, 2 * np.pi, 24, endpoint=False)
_CIRCLE = np.c_[np.cos(_TURN), np.sin(_TURN)] / 2


def scene(count: int, side_mm: float, seed: int) -> Scene:
    """Pores of 1 to 4 mm spread evenly at random over a square."""
    rng = np.random.default_rng(seed)
    places, sizes = rng.uniform(0, side_mm, (count, 2)), rng.uniform(1.0, 4.0, count)
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
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    for name in (
        "asme-b31.1",
        "en-10228-2-class-2",
        "iso-23277-2",
        "aws-d1.1-porosity-other-welds",
    ):
        for side_mm in (300.0, 1000.0, 5000.0):
            made = scene(count, side_mm, seed=1)
            began = time.perf_counter()
            result = evaluate(load_profile(name), made)
            took = time.perf_counter() - began
            print(
                f"{name:32} {count} on {side_mm:.0f} mm square: {took:.2f} s, {result.verdict}"
            )


if __name__ == "__main__":
    main()
