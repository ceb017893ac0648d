"""Small synthetic photos: dye mixed into white in linear light, blurred, sRGB-coded.

Shares no code with `ptmark.dye`; sRGB by scikit-image's own route (colour-science would do).
"""

from pathlib import Path

import numpy as np
from scipy.ndimage import gaussian_filter

from ptmark.photo import Photo, PhotoInfo

WHITE = np.array([0.78, 0.74, 0.72])
DYE = np.array([0.62, 0.05, 0.09])  # share of the white that full dye leaves
RUST = np.array([0.62, 0.42, 0.25])
BLUE_PEN = np.array([0.15, 0.2, 0.6])
BLACK = np.array([0.06, 0.06, 0.06])


def code(linear):
    """IEC 61966-2-1, written out once more on purpose."""
    light = np.clip(linear, 0, 1)
    return np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)


def disc(shape, x, y, radius):
    """Coverage of a disc, anti-aliased by 8 x 8 samples a pixel; (0, 0) a pixel's centre."""
    step = (np.arange(8) + 0.5) / 8 - 0.5
    rows, columns = np.mgrid[: shape[0], : shape[1]].astype(float)
    total = np.zeros(shape)
    for dy in step:
        for dx in step:
            total += np.hypot(columns + dx - x, rows + dy - y) <= radius
    return total / 64


def bar(shape, x0, x1, y, width):
    """Coverage of a level bar from x0 to x1 about the line y."""
    rows, columns = np.arange(shape[0]), np.arange(shape[1])
    down = np.clip(
        np.minimum(rows + 0.5, y + width / 2) - np.maximum(rows - 0.5, y - width / 2), 0, 1
    )
    across = np.clip(np.minimum(columns + 0.5, x1) - np.maximum(columns - 0.5, x0), 0, 1)
    return down[:, None] * across[None, :]


def photo(shape, layers, *, blur=1.3, grain=0.004, shade=None, seed=7):
    """Mix layers of (coverage, share of the white left) into white; any seed will do."""
    light = np.ones((*shape, 3)) * WHITE
    for coverage, left in layers:
        light = light * (1 - coverage[..., None] * (1 - np.asarray(left)))
    if shade is not None:
        light = light * (shade if shade.ndim == 3 else shade[..., None])
    light = gaussian_filter(light, (blur, blur, 0))
    light = light + np.random.RandomState(seed).normal(0, grain, light.shape)
    rgb = np.round(code(light) * 255).astype(np.uint8)
    info = PhotoInfo(
        path=Path("synthetic.png"),
        sha256="0" * 64,
        bytes=0,
        format="PNG",
        width=shape[1],
        height=shape[0],
    )
    return Photo(info, rgb)
