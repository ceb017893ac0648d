"""Shapes with known answers, as outlines of shape (N, 2)."""

import numpy as np
import pytest

from ptmark.scale import SurfaceMap


def ellipse(a, b, n=240):
    t = np.linspace(0, 2 * np.pi, n, endpoint=False)
    return np.column_stack([a * np.cos(t), b * np.sin(t)])


def box(w, h):
    return np.array([[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]])


def band(line, width):
    """A line of shape (N, 2) made ``width`` wide, with round ends."""
    step = np.gradient(line, axis=0)
    normal = np.column_stack([-step[:, 1], step[:, 0]]) / np.hypot(*step.T)[:, None]
    half = width / 2

    def cap(at, towards):
        start = np.arctan2(*towards[::-1])
        t = start + np.linspace(0, np.pi, 17)[1:-1]
        return at + half * np.column_stack([np.cos(t), np.sin(t)])

    left, right = line - half * normal, line + half * normal
    return np.vstack([left, cap(line[-1], -normal[-1]), right[::-1], cap(line[0], normal[0])])


def arc(radius, degrees, width, n=120):
    t = np.radians(np.linspace(0, degrees, n))
    return band(radius * np.column_stack([np.cos(t), np.sin(t)]), width)


def wobbly(rng, points=60, size=5.0):
    """A star-shaped random outline."""
    t = np.linspace(0, 2 * np.pi, points, endpoint=False)
    r = size * (
        1 + 0.3 * sum(rng.normal() * np.cos(k * t + rng.uniform(0, 6)) / k for k in (2, 3, 5))
    )
    r = np.maximum(np.abs(r), 0.2 * size)
    return np.column_stack([r * np.cos(t), 0.6 * r * np.sin(t)])


@pytest.fixture
def shapes():
    """The makers above by name."""
    return {"ellipse": ellipse, "box": box, "band": band, "arc": arc, "wobbly": wobbly}


@pytest.fixture
def flat_map():
    """A map of 0.05 mm per px, square on, 200 mm away, without uncertainty of its own."""

    def made(covariance=None, camera_mm=(50.0, 40.0, 200.0)):
        return SurfaceMap(
            h=np.diag([0.05, 0.05, 1.0]),
            covariance=covariance or {},
            reference="card",
            reference_px=np.array([[0.0, 0.0], [2000.0, 1600.0]]),
            camera_mm=np.array(camera_mm),
            camera_height_rel_u=0.0,
        )

    return made
