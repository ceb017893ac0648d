"""Example indications to try rules on: outlines of stated length and width at stated places."""

from dataclasses import dataclass

import numpy as np

from ptmark.criteria.scene import Judged, Scene

__all__ = ["EXAMPLES", "Example", "example_scene"]

_STEPS = 24  # points on each round end


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """An invented indication: a stretch with round ends, all in mm; U is expanded, k = 2."""

    id: str
    length: float
    width: float
    x: float
    y: float
    turn_deg: float = 0.0
    u: float = 0.0
    kind: str = ""


EXAMPLES = (
    Example(id="A", length=6.0, width=0.8, x=10.0, y=8.0, turn_deg=20.0),
    Example(id="B", length=2.0, width=2.0, x=6.0, y=24.0),
    Example(id="C", length=2.0, width=2.0, x=9.0, y=24.0),
    Example(id="D", length=2.0, width=2.0, x=12.0, y=24.0),
    Example(id="E", length=2.0, width=2.0, x=15.0, y=24.0),
    Example(id="F", length=5.0, width=4.5, x=30.0, y=14.0),
)


def example_scene(examples: tuple[Example, ...]) -> Scene:
    """The examples as a scene, each with the length and width it states.

    A width above the length is taken as the length: an outline is as long as it is at most.
    """
    return Scene(indications=tuple(_judged(one) for one in examples))


def _judged(one: Example) -> Judged:
    long, wide = max(one.length, one.width), min(one.length, one.width)
    half = (long - wide) / 2
    turns = np.linspace(-np.pi / 2, np.pi / 2, _STEPS)
    right = np.column_stack([half + wide / 2 * np.cos(turns), wide / 2 * np.sin(turns)])
    points = np.concatenate([right, -right])
    turn = np.deg2rad(one.turn_deg)
    spin = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
    return Judged(
        id=one.id,
        outline_mm=points @ spin + (one.x, one.y),
        length=long,
        path=long,
        width=wide,
        length_u=one.u,
        width_u=one.u,
        kind=one.kind,
    )
