"""The plate under the lens: brushed steel, a weld, developer, dye; reflectance in linear light.

Dye is mixed as absorption: each colour is dimmed by exp(-k d) with the same density d, chosen
so that in green an indication lies at half between the white and its plateau where its
distance function is zero.
"""

from collections.abc import Sequence

import cv2
import numpy as np
import numpy.typing as npt
from prints import PER_MM, Print
from shapes import Shape

Picture = npt.NDArray[np.float32]

DYE = np.array([0.10, 1.0, 0.75], dtype=np.float32)  # absorption for red, green, blue
RUST = np.array([0.35, 0.7, 1.0], dtype=np.float32)
CROWN_HALF_MM, CROWN_MM = 7.0, 1.0
LOW, SPAN = (-240.0, -210.0), (480.0, 400.0)  # where the coarse fields reach, mm
FINE_LOW, FINE_SPAN, FINE = (-125.0, -45.0), (250.0, 90.0), 20  # where dye may lie, px a mm


def crown(y: npt.NDArray[np.floating]) -> npt.NDArray[np.floating]:
    """Height of the weld over the plate at a place across it, mm."""
    inside = np.abs(y) < CROWN_HALF_MM
    return np.where(inside, CROWN_MM / 2 * (1 + np.cos(np.pi * y / CROWN_HALF_MM)), 0)


def cloud(rng: np.random.Generator, size_mm: float, stretch: float = 1.0) -> Picture:
    """Smooth noise over the plate, mean 0 and spread 1, at 2 px a mm."""
    shape = (int(SPAN[1] * 2), int(SPAN[0] * 2))
    field = cv2.GaussianBlur(
        rng.standard_normal(shape, dtype=np.float32),
        (0, 0),
        sigmaX=size_mm * 2 * stretch,
        sigmaY=size_mm * 2,
    )
    return np.asarray((field - field.mean()) / field.std(), dtype=np.float32)


class Plate:
    """What the camera sees of the plate, by place in mm.

    ``haze`` is the mean density of dye left in the background.
    """

    def __init__(
        self,
        *,
        shapes: Sequence[Shape],
        prints: Sequence[Print],
        rng: np.random.Generator,
        haze: float = 0.0,
        stains: Sequence[tuple[float, float, float]] = (),
        mark: tuple[Picture, tuple[float, float]] | None = None,
    ) -> None:
        self.shapes = shapes
        self.prints = prints
        self._dye = _dye_field(shapes)
        self._brush = cloud(rng, 0.3, 30)
        self._mottle = 0.7 * cloud(rng, 6) + 0.5 * cloud(rng, 1.2) + 0.25 * cloud(rng, 0.5)
        self._spray = cloud(rng, 7)
        self._haze = (haze * (1 + 0.5 * cloud(rng, 14))).clip(0).astype(np.float32)
        self._rust = np.zeros_like(self._haze)
        for x, y, radius in stains:
            spot = round((x - LOW[0]) * 2), round((y - LOW[1]) * 2)
            cv2.circle(self._rust, spot, round(radius * 2), 0.7, -1)
        self._rust = np.asarray(cv2.GaussianBlur(self._rust, (0, 0), 1.2), dtype=np.float32)
        self._mark = mark

    def reflect(self, x: Picture, y: Picture) -> Picture:
        """Reflectance with shading at places of one shape, mm; adds a colour axis."""
        coarse = [_look(f, x, y, LOW, 2.0) for f in (self._mottle, self._spray, self._brush)]
        mottle, spray, brush = coarse
        steel = 0.27 * (1 + 0.045 * brush)
        cover = 1 / (1 + np.exp(((np.abs(y) - 40 - 1.5 * spray) / 1.6).clip(-60, 60)))
        white = 0.80 * (1 + 0.018 * mottle)
        density = _look(self._haze, x, y, LOW, 2.0) * cover
        density = density + _look(self._dye, x, y, FINE_LOW, FINE)
        rust = _look(self._rust, x, y, LOW, 2.0)
        base = (steel + (white - steel) * cover) * _shade(x, y)
        if self._mark is not None:
            base = base * (1 - 0.9 * _look(self._mark[0], x, y, self._mark[1], 10.0))
        seen = base[..., np.newaxis] * np.exp(
            -density[..., np.newaxis] * DYE - rust[..., np.newaxis] * RUST
        )
        for one in self.prints:
            _lay(seen, one, x, y)
        return np.asarray(seen)


def _dye_field(shapes: Sequence[Shape]) -> Picture:
    """Density of the dye of every indication at ``FINE`` px a mm."""
    wide, high = (int(s * FINE) for s in FINE_SPAN)
    field = np.zeros((high, wide), dtype=np.float32)
    for shape in shapes:
        low = np.floor((shape.outline.min(axis=0) - 1.5 - FINE_LOW) * FINE).astype(int)
        top = np.ceil((shape.outline.max(axis=0) + 1.5 - FINE_LOW) * FINE).astype(int)
        px, py = np.meshgrid(np.arange(low[0], top[0]), np.arange(low[1], top[1]))
        places = (np.stack([px, py], axis=-1) + 0.5) / FINE + FINE_LOW
        share = 1 / (1 + np.exp((1.702 * shape.distance(places) / shape.soft).clip(-60, 60)))
        window = field[low[1] : top[1], low[0] : top[0]]
        window += -np.log(1 - share * shape.strength * 0.93).astype(np.float32)
    return field


def _shade(x: Picture, y: Picture) -> Picture:
    """Light on the weld's slope and ripples against that on the flat plate."""
    inside = np.abs(y) < CROWN_HALF_MM
    slope = -CROWN_MM / 2 * np.pi / CROWN_HALF_MM * np.sin(np.pi * y / CROWN_HALF_MM)
    ripple = 0.06 * np.cos(2 * np.pi * (x + 0.07 * y * y) / 1.9)
    return np.where(inside, 1 + 0.25 * slope + ripple * np.cos(np.pi * y / 14), 1)


def _look(
    field: Picture, x: Picture, y: Picture, low: Sequence[float], per_mm: float
) -> Picture:
    """Value of a field at places; nothing outside it."""
    at_x = np.asarray((x - low[0]) * per_mm - 0.5, dtype=np.float32)
    at_y = np.asarray((y - low[1]) * per_mm - 0.5, dtype=np.float32)
    return np.asarray(cv2.remap(field, at_x, at_y, cv2.INTER_LINEAR), dtype=np.float32)


def _lay(seen: Picture, one: Print, x: Picture, y: Picture) -> None:
    """Draw a print over what is seen."""
    c, s = np.cos(np.radians(one.turn)), np.sin(np.radians(one.turn))
    u = np.asarray((x - one.at[0]) * c + (y - one.at[1]) * s, dtype=np.float32)
    v = np.asarray((y - one.at[1]) * c - (x - one.at[0]) * s, dtype=np.float32)
    on = (u >= 0) & (u < one.size[0]) & (v >= 0) & (v < one.size[1])
    if on.any():
        seen[on] = _look(one.picture, u, v, (0, 0), PER_MM)[on][:, np.newaxis]
