"""Indications of exactly known size, laid on the surface without ptmark.measure."""

import math

import numpy as np

from ptmark.criteria import Judged, Scene


def turned(points, deg, x=0.0, y=0.0):
    a = math.radians(deg)
    return points @ np.array([[math.cos(a), math.sin(a)], [-math.sin(a), math.cos(a)]]) + [x, y]


def pore(name, x, y, d, sides=32, **more):
    """A round indication: a regular polygon whose opposite corners lie ``d`` apart."""
    t = np.arange(sides) * 2 * math.pi / sides
    outline = np.c_[np.cos(t), np.sin(t)] * d / 2 + [x, y]
    return Judged(id=name, outline_mm=outline, length=d, path=d, width=d, **more)


def bar(name, x, y, length, width, deg=0.0, **more):
    """A straight indication with round ends, ``length`` from end to end, centred."""
    t = np.arange(32) * 2 * math.pi / 32
    cap = np.c_[np.cos(t), np.sin(t)] * width / 2
    cap[:, 0] += np.sign(np.round(cap[:, 0], 12)) * (length - width) / 2
    outline = turned(cap, deg, x, y)
    return Judged(id=name, outline_mm=outline, length=length, path=length, width=width, **more)


def scene(*indications, **more):
    return Scene(indications=tuple(indications), **more)


def row_of(number, d, gap, deg=0.0, **more):
    """Pores in a straight row, ``gap`` from edge to edge."""
    places = turned(np.c_[np.arange(number) * (d + gap), np.zeros(number)], deg)
    # corners must face each other for the gap to be exact, so the outlines turn with the row
    made = []
    for k, (x, y) in enumerate(places):
        one = pore(f"P{k}", 0, 0, d, **more)
        made.append(
            Judged(
                id=one.id,
                outline_mm=turned(one.outline_mm, deg, x, y),
                length=d,
                path=d,
                width=d,
                **more,
            )
        )
    return scene(*made)


def moved(of, deg=0.0, x=0.0, y=0.0, mirror=False, scale=1.0):
    """The same scene turned, shifted, mirrored or shrunk."""
    flip = np.array([-1.0 if mirror else 1.0, 1.0])
    return Scene(
        indications=tuple(
            Judged(
                id=one.id,
                outline_mm=turned(one.outline_mm * flip * scale, deg, x, y),
                length=one.length * scale,
                path=one.path * scale,
                width=one.width * scale,
                length_u=one.length_u,
                width_u=one.width_u,
                kind=one.kind,
                relevance=one.relevance,
                reason=one.reason,
            )
            for one in of.indications
        ),
        weld_length_mm=of.weld_length_mm,
        thickness_mm=of.thickness_mm,
    )
