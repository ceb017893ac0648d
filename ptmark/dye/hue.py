"""Which light a blob takes from the developer beside it: what tells dye from ink and rust."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.contrast import LocalWhite, log_light
from ptmark.dye.fine import Crop
from ptmark.dye.quick import middle
from ptmark.photo import srgb_to_linear

__all__ = ["bare_ring", "taken_light"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]
Mask = npt.NDArray[np.bool_]

_NEAR_WHITE = 0.2  # log light; the developer's mottle stays within it, a leaf or pen does not
_LEAST_BARE = 40  # pixels
_TWO_LIGHTS = 0.35  # spread of log light, 10 to 90 %: more than mottle, a shadow's edge


def bare_ring(rgb: Bytes, filled: Bytes, crop: Crop) -> Mask:
    """Bare developer close round an outline, 5 to 10 px off; other things left out.

    What is far from the fitted white is another thing, unless nearly all the ring is: then a
    shadow's edge runs here and the plane fits neither side.
    """
    wide = cv2.dilate(filled, np.ones((21, 21), np.uint8))
    ring = (wide > 0) & (cv2.dilate(filled, np.ones((11, 11), np.uint8)) == 0) & crop.around
    near = np.abs(log_light(rgb[ring]) - crop.white.log_light[ring]) < _NEAR_WHITE
    if np.count_nonzero(near) > 0.5 * len(near):
        ring[ring] = near
    return np.asarray(ring, np.bool_)


def taken_light(rgb: Bytes, core: Mask, ring: Mask, white: LocalWhite) -> Array:
    """Share of R, G and B light that the core takes from the developer beside it."""
    bare = rgb[ring]
    if len(bare) < _LEAST_BARE:
        return np.asarray(1 - _middle_light(rgb[core]) / white.color)
    light = np.sort(log_light(bare[:: max(1, len(bare) // 300)]))
    if light[int(0.9 * len(light))] - light[int(0.1 * len(light))] > _TWO_LIGHTS:
        return _taken_in_two_lights(rgb, core, ring)
    return np.asarray(1 - _middle_light(rgb[core]) / np.maximum(_middle_light(bare), 0.01))


def _taken_in_two_lights(rgb: Bytes, core: Mask, ring: Mask) -> Array:
    """The same where a shadow's edge crosses: each pixel against the developer near to it."""
    light = srgb_to_linear(np.ascontiguousarray(rgb)) * ring[..., None]
    reach = max(4.0, 0.1 * max(ring.shape))
    weight = cv2.GaussianBlur(ring.astype(np.float32), (0, 0), reach)[core]
    near = cv2.GaussianBlur(light, (0, 0), reach)[core] / np.maximum(weight, 1e-6)[:, None]
    told = weight > 1e-4
    if not told.any():
        return np.zeros(3)
    share = srgb_to_linear(rgb[core]) / np.maximum(near, 0.01)
    return np.asarray(1 - middle(share[told]), np.float64)


def _middle_light(pixels: Bytes) -> Array:
    """Median linear light of pixels of shape (N, 3), from a thousand of them."""
    some = pixels[:: max(1, len(pixels) // 1000)]
    return np.asarray(middle(srgb_to_linear(some)), np.float64)
