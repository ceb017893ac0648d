"""The demo camera and its sensor: where a point of the plate falls, what the file keeps.

Plate frame in mm with z away from the camera; pixel frame with (0, 0) the centre of the
top-left pixel. Pinhole with one radial term: r' = r (1 + k1 r^2) in units of the focal length.
"""

from dataclasses import dataclass, field

import cv2
import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]
Picture = npt.NDArray[np.float32]

WIDTH, HEIGHT = 4032, 3024
FOCAL_35MM = 26  # as the EXIF data say it, rounded by the camera
FOCAL_PX = 3020.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Camera:
    """A camera that looks at ``aim`` (x, y) on the plate from ``distance`` mm.

    ``tilt`` leans it from the plate's normal towards ``azimuth`` (from x to y), ``roll`` turns
    it about its axis, all in degrees. ``shrink`` divides the size of the picture.
    """

    aim: tuple[float, float]
    distance: float
    tilt: float
    azimuth: float
    roll: float
    k1: float = -0.003
    shrink: int = 1
    size: tuple[int, int] = field(init=False)
    focal: float = field(init=False)
    place: Array = field(init=False)
    axes: Array = field(init=False)  # rows: right, down, forward

    def __post_init__(self) -> None:
        tilt, azimuth, roll = np.radians([self.tilt, self.azimuth, self.roll])
        back = np.array(
            [np.sin(tilt) * np.cos(azimuth), np.sin(tilt) * np.sin(azimuth), -np.cos(tilt)]
        )
        forward = -back
        right = np.array([np.cos(roll), np.sin(roll), 0.0])
        right -= forward * (right @ forward)
        right /= np.linalg.norm(right)
        set_ = object.__setattr__
        set_(self, "size", (WIDTH // self.shrink, HEIGHT // self.shrink))
        set_(self, "focal", FOCAL_PX / self.shrink)
        set_(self, "place", np.array([*self.aim, 0.0]) + self.distance * back)
        set_(self, "axes", np.stack([right, np.cross(forward, right), forward]))

    def to_px(self, points: Array) -> Array:
        """Project points of shape (N, 3), mm, to px of shape (N, 2)."""
        seen = (points - self.place) @ self.axes.T
        flat = seen[:, :2] / seen[:, 2:]
        flat = flat * (1 + self.k1 * (flat**2).sum(axis=1, keepdims=True))
        return np.asarray(flat * self.focal + (np.array(self.size) - 1) / 2)

    def rays(self, rows: slice, shift: tuple[float, float]) -> Picture:
        """Direction of the ray through each pixel of some rows, shape (rows, width, 3)."""
        width, height = self.size
        x = (np.arange(width) + shift[0] - (width - 1) / 2) / self.focal
        y = (np.arange(height)[rows] + shift[1] - (height - 1) / 2) / self.focal
        bent_x, bent_y = np.meshgrid(x, y)
        grow = np.ones_like(bent_x)
        for _ in range(4):  # fixed point: the bend is a few parts in a thousand
            grow = 1 / (1 + self.k1 * (bent_x**2 + bent_y**2) * grow**2)
        flat = np.stack([bent_x * grow, bent_y * grow, np.ones_like(bent_x)], axis=-1)
        return np.asarray(flat @ self.axes, dtype=np.float32)


def develop(
    light: Picture, rng: np.random.Generator, *, blur_px: float, noise: float
) -> npt.NDArray[np.uint8]:
    """Blur, add shot and read noise, and code linear light as 8-bit sRGB.

    The curve is that of IEC 61966-2-1.
    """
    seen = cv2.GaussianBlur(light, (0, 0), blur_px)
    spread = noise * np.sqrt(seen.clip(0) * 0.7 + 0.02)
    grain = rng.standard_normal(seen.shape, dtype=np.float32) * spread
    seen = (seen + cv2.GaussianBlur(grain, (0, 0), 0.6)).clip(0, 1)
    coded = np.where(seen <= 0.0031308, 12.92 * seen, 1.055 * seen ** (1 / 2.4) - 0.055)
    return np.asarray(np.rint(coded * 255), dtype=np.uint8)
