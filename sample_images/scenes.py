"""The four demo photos: an invented weld in an invented shop, seen four times.

Indications are given in mm on the plate: x along the weld, y across it, the weld at y = 0.
"""

from dataclasses import dataclass, field

import numpy as np
from optics import Camera
from shapes import Shape, crack, pore

PART = "DEMO-0417-B"  # invented
SHOP = "Example Bay Fabrication"  # invented


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """One photo: camera, light, surface and what the outcome should be under which profile."""

    name: str
    seed: int
    weld: str
    camera: dict[str, float | tuple[float, float]]
    expects: dict[str, str]
    haze: float = 0.03
    light: tuple[float, float] = (0.05, 0.04)  # share of the light lost per 100 mm in x and y
    cast: tuple[float, float, float] = (1.0, 0.985, 0.95)
    blur_px: float = 1.0
    noise: float = 0.010
    stains: tuple[tuple[float, float, float], ...] = ()
    area: tuple[tuple[float, float], ...] = field(
        default=((-118, -36), (118, -36), (118, 36), (-118, 36))
    )


SCENES = (
    Scene(
        name="good",
        seed=11,
        weld="W1",
        camera={"aim": (0, 8), "distance": 205, "tilt": 3, "azimuth": 60, "roll": 1.0},
        expects={"iso-23277-2": "acceptable", "asme-viii-1-app-8": "acceptable"},
    ),
    Scene(
        name="rejectable",
        seed=12,
        weld="W2",
        camera={"aim": (2, 8), "distance": 208, "tilt": 8, "azimuth": 250, "roll": -1.5},
        expects={"iso-23277-2": "rejectable", "asme-viii-1-app-8": "rejectable"},
    ),
    Scene(
        name="undecided",
        seed=13,
        weld="W3",
        camera={"aim": (-3, 12), "distance": 208, "tilt": 6, "azimuth": 150, "roll": 2.0},
        expects={"iso-23277-2": "acceptable", "asme-viii-1-app-8": "undecided"},
    ),
    Scene(
        name="hard",
        seed=14,
        weld="W4",
        camera={"aim": (-8, 16), "distance": 228, "tilt": 22, "azimuth": 118, "roll": -2.0},
        expects={"iso-23277-2": "rejectable", "asme-viii-1-app-8": "rejectable"},
        haze=0.12,
        light=(0.2, -0.08),
        cast=(1.0, 0.95, 0.97),
        blur_px=1.4,
        noise=0.014,
        stains=((-82, 22, 1.6), (12, -27, 1.1), (96, -16, 2.0)),
    ),
)


def shapes(scene: Scene, rng: np.random.Generator) -> list[Shape]:
    """Indications of a scene; the sizes are those a person would call in its photo."""
    if scene.name == "good":
        return [
            pore((-62, 2), 1.1, rng),
            pore((-14, -18), 0.8, rng),
            pore((33, 1), 2.4, rng),
            pore((88, 14), 1.9, rng, aspect=0.7),
        ]
    if scene.name == "rejectable":
        return [
            crack([(28, 6), (36, 7.4), (41, 6.6), (49, 8.2)], 0.36, rng),
            crack([(-58, -5), (-56, -1), (-57.5, 4)], 0.3, rng),
            pore((72, -4), 2.8, rng),
            *(pore((-20 + 2.6 * n, -1 + 0.2 * n), 1.9, rng, aspect=0.9) for n in range(4)),
            pore((96, 20), 1.2, rng),
        ]
    if scene.name == "undecided":
        return [
            pore((66, 1), 4.95, rng, aspect=0.88),
            pore((-40, 3), 2.2, rng),
            pore((8, -16), 1.0, rng),
        ]
    return [
        crack([(30, -1), (38, 1.6), (46, 0.4)], 0.42, rng, strength=0.45),
        crack([(-74, -20), (-70, -14), (-71, -9)], 0.28, rng),
        pore((70, 10), 3.4, rng, strength=0.6),
        pore((-24, 4), 1.8, rng, strength=0.5),
        pore((88, -22), 2.6, rng),
    ]


def camera(scene: Scene, shrink: int = 1) -> Camera:
    """The camera of a scene, its picture ``shrink`` times smaller than the photo."""
    return Camera(**scene.camera, shrink=shrink)  # type: ignore[arg-type]
