"""A flat developed plate of our own, photographed through known homographies.

Plate frame: mm, x right, y down. The truth of every picture is the homography it was warped
with; nothing of ptmark takes part in making it.
"""

from dataclasses import dataclass, field
from types import SimpleNamespace

import cv2
import numpy as np
import pytest
from skimage.transform import ProjectiveTransform

from ptmark.inspection import Inspection
from ptmark.inspection.several import frame_of
from ptmark.photo import Photo
from ptmark.scale import RectangleReference

PER_MM = 10  # px of the plate's own picture
PLATE_MM = (120, 90)
SIZE = (1200, 900)


def texture(seed):
    """Developer of about 76 % reflectance with mottle of several sizes, shape (H, W)."""
    rng = np.random.RandomState(seed)
    wide, high = (side * PER_MM for side in PLATE_MM)
    light = np.full((high, wide), 0.76, np.float32)
    for size, strength in ((0.25, 0.02), (0.7, 0.02), (2.5, 0.025), (9.0, 0.03)):
        small = (max(4, round(PLATE_MM[0] / size)), max(4, round(PLATE_MM[1] / size)))
        noise = rng.normal(0, strength, small[::-1]).astype(np.float32)
        light += cv2.resize(noise, (wide, high), interpolation=cv2.INTER_CUBIC)
    return light


@dataclass
class Plate:
    """Dye on developer: discs (x, y, radius) and straight lines (x1, y1, x2, y2, width), mm."""

    seed: int = 1
    discs: list = field(default_factory=list)
    lines: list = field(default_factory=list)
    label: tuple | None = None  # place of a printed label's corner
    stamps: list = field(default_factory=list)  # middles of stamped marks, 4 mm high

    def lay_label(self, light):
        """A label of 60 x 14 mm, its print far plainer than the developer's mottle."""
        x, y = (round(v * PER_MM) for v in self.label)
        blocks = np.random.RandomState(12).randint(0, 2, (14, 60)).astype(np.float32)
        size = (60 * PER_MM, 14 * PER_MM)
        printed = cv2.resize(blocks, size, interpolation=cv2.INTER_NEAREST)
        light[y : y + size[1], x : x + size[0]] = 0.1 + 0.7 * printed

    def picture(self):
        """Linear light, shape (H, W, 3); the first pixel's corner is the plate's origin."""
        light = texture(self.seed)
        if self.label is not None:
            self.lay_label(light)
        mask = np.zeros(light.shape, np.uint8)  # OpenCV letters 8 bit only
        for number, place in enumerate(self.stamps):
            at = tuple(round(v * PER_MM) for v in place)
            cv2.putText(mask, "AKRWX"[number], at, cv2.FONT_HERSHEY_SIMPLEX, 1.3, 1, 4)
        light[mask > 0] = 0.35
        high, wide = light.shape
        y, x = (np.mgrid[:high, :wide].astype(np.float32) + 0.5) / PER_MM
        distance = np.full(light.shape, np.inf, np.float32)  # outside positive
        for cx, cy, radius in self.discs:
            distance = np.minimum(distance, np.hypot(x - cx, y - cy) - radius)
        for x1, y1, x2, y2, width in self.lines:
            length = np.hypot(x2 - x1, y2 - y1)
            ux, uy = (x2 - x1) / length, (y2 - y1) / length
            along = (x - x1) * ux + (y - y1) * uy
            across = np.abs((y - y1) * ux - (x - x1) * uy) - width / 2
            distance = np.minimum(
                distance, np.maximum(across, np.maximum(-along, along - length))
            )
        dye = np.clip(0.5 - distance * PER_MM, 0, 1)[..., None]
        return light[..., None] * (1 - dye * np.array([0.35, 0.95, 0.9], np.float32))


def shot(*, scale=9.5, turn=0.0, shift=(0.0, 0.0), lean=(0.0, 0.0)):
    """Truth of a camera: plate mm to px; ``lean`` is the perspective per mm."""
    middle = np.array(PLATE_MM) / 2
    to_middle = np.array([[1, 0, -middle[0]], [0, 1, -middle[1]], [0, 0, 1.0]])
    c, s = scale * np.cos(np.radians(turn)), scale * np.sin(np.radians(turn))
    view = np.array([[c, -s, 0], [s, c, 0], [lean[0], lean[1], 1.0]])
    place = np.array(
        [[1, 0, SIZE[0] / 2 + shift[0]], [0, 1, SIZE[1] / 2 + shift[1]], [0, 0, 1.0]]
    )
    return ProjectiveTransform(matrix=place @ view @ to_middle)


def photograph(plate, camera, *, seed=0, name="photo", quality=90):
    """A photo of a plate: warped, blurred, noisy, JPEG."""
    to_mm = np.array([[1 / PER_MM, 0, 0.5 / PER_MM], [0, 1 / PER_MM, 0.5 / PER_MM], [0, 0, 1]])
    seen = cv2.warpPerspective(
        plate.picture(),
        camera.params @ to_mm,
        SIZE,
        flags=cv2.INTER_AREA,
        borderValue=(0.2,) * 3,
    )
    light = cv2.GaussianBlur(seen, (0, 0), 0.9)
    light += np.random.RandomState(seed).normal(0, 0.004, light.shape)
    light = np.clip(light, 0, 1)
    coded = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)
    rgb = np.rint(coded * 255).astype(np.uint8)
    _, data = cv2.imencode(".jpg", rgb[..., ::-1], [cv2.IMWRITE_JPEG_QUALITY, quality])
    return Photo.from_array(cv2.imdecode(data, cv2.IMREAD_COLOR)[..., ::-1], name=name)


RECTANGLE_MM = np.array([[20, 15], [100, 15], [100, 75], [20, 75]], float)


def frame(plate, camera, *, minutes=None, seed=0, name="photo"):
    """A measured photo; its scale is a rectangle on the plate, picked without error."""
    inspection = Inspection()
    inspection.set_photo(photograph(plate, camera, seed=seed, name=name))
    corners = tuple(map(tuple, camera(RECTANGLE_MM)))
    inspection.set_reference(
        RectangleReference(corners_px=corners, width_mm=80.0, height_mm=60.0)
    )
    inspection.change("a flat plate", relief_mm=0.0)
    inspection.set_suggestions(inspection.look())
    return frame_of(inspection, minutes)


@pytest.fixture(scope="session")
def shop():
    """What makes photos here, by name."""
    return SimpleNamespace(
        Plate=Plate,
        frame=frame,
        photograph=photograph,
        plate_mm=PLATE_MM,
        rectangle_mm=RECTANGLE_MM,
        shot=shot,
    )


@pytest.fixture(scope="session")
def cameras():
    """Three views of the plate."""
    return (
        shot(),
        shot(scale=8.9, turn=7, shift=(18, -13), lean=(4e-4, -3e-4)),
        shot(scale=9.9, turn=-11, shift=(-15, 22), lean=(-3e-4, 6e-4)),
    )
