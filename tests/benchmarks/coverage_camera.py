"""The camera of the coverage set: a pinhole with one radial term over a plate and its weld."""

import cv2
import numpy as np

FILM_MM, FILM_DIAGONAL_MM = 26, 43.27  # a phone's main camera
CROWN_HALF_MM = 7.5


class Eye:
    """A pinhole camera with one radial term, leaning any way, turned any way."""

    def __init__(self, view, rng):
        wide = round((view.megapixels * 1e6 * 4 / 3) ** 0.5 / 16) * 16
        self.size = (wide, wide * 3 // 4)
        diagonal = float(np.hypot(*self.size))
        self.focal = FILM_MM * float(rng.normal(1.0, 0.02)) / FILM_DIAGONAL_MM * diagonal
        self.centre = (np.array(self.size) - 1) / 2 + rng.normal(0, 0.004 * diagonal, 2)
        self.k1 = view.k1
        towards, tilt = rng.uniform(0, 2 * np.pi), np.radians(view.tilt_deg)
        turn = rng.normal(0, 0.12)
        lean = cv2.Rodrigues(tilt * np.array([np.cos(towards), np.sin(towards), 0.0]))[0]
        face = np.diag([1.0, -1.0, -1.0])  # looks down; the picture's y is the plate's -y
        self.turned = lean @ face @ cv2.Rodrigues(np.array([0.0, 0.0, turn]))[0]
        self.place = -self.turned.T @ np.array([0.0, 0.0, view.distance_mm])

    def to_px(self, points):
        """Points of shape (N, 3) in mm to px of shape (N, 2)."""
        seen = (np.asarray(points, float) - self.place) @ self.turned.T
        flat = seen[:, :2] / seen[:, 2:]
        return flat * (1 + self.k1 * (flat**2).sum(1, keepdims=True)) * self.focal + self.centre

    def meet(self, x, y, crown_mm):
        """Where rays through px meet the plate or the weld on it, mm; x, y of one shape."""
        bent = np.stack([x - self.centre[0], y - self.centre[1]], -1) / self.focal
        straight = bent.copy()
        for _ in range(6):
            straight = bent / (1 + self.k1 * (straight**2).sum(-1, keepdims=True))
        ray = np.concatenate([straight, np.ones_like(straight[..., :1])], -1) @ self.turned
        height = np.zeros(x.shape)
        for _ in range(4 if crown_mm else 1):
            reach = (height - self.place[2]) / ray[..., 2]
            at = self.place[:2] + reach[..., None] * ray[..., :2]
            height = crown(at[..., 1], crown_mm)
        return at


def crown(y, height_mm):
    """Height of the weld over the plate, mm."""
    return np.where(
        np.abs(y) < CROWN_HALF_MM, height_mm / 2 * (1 + np.cos(np.pi * y / CROWN_HALF_MM)), 0.0
    )
