"""The stress set by way of files as phones and scanners write them, each opened by ptmark.

Pixels go in as sRGB and must come out as such, whatever turn, depth or colours the file has.
"""

import importlib.util
import tempfile
from pathlib import Path

import colour
import numpy as np
import tifffile
from PIL import Image

from ptmark.photo import open_photo

COLOURS = Path(__file__).parents[1] / "photo" / "test_photo_colour.py"


def through(form, pixels):
    """The photo that opens from a file of this form holding the pixels."""
    with tempfile.TemporaryDirectory() as folder:
        return open_photo(FORMS[form](pixels, Path(folder)))


def _upright(pixels, folder):
    """Stored lying on its side, with the orientation (6) that turns it clockwise."""
    stored = Image.fromarray(np.ascontiguousarray(np.rot90(pixels)))
    exif = Image.Exif()
    exif[0x0112] = 6
    stored.save(folder / "upright.jpg", quality=95, exif=exif)
    return folder / "upright.jpg"


def _heic(pixels, folder):
    import pillow_heif

    pillow_heif.from_pillow(Image.fromarray(pixels)).save(folder / "photo.heic", quality=85)
    return folder / "photo.heic"


def _tiff16(pixels, folder):
    tifffile.imwrite(folder / "photo.tif", pixels.astype(np.uint16) * 257, photometric="rgb")
    return folder / "photo.tif"


def _p3(pixels, folder):
    """Colours by colour-science's matrix; the profile is the one that the tests make."""
    spec = importlib.util.spec_from_file_location("colours", COLOURS)
    made = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(made)
    spaces = colour.RGB_COLOURSPACES
    matrix = colour.matrix_RGB_to_RGB(spaces["sRGB"], spaces["Display P3"]).astype(np.float32)
    codes = np.arange(256) / 255
    curve = np.where(codes <= 0.04045, codes / 12.92, ((codes + 0.055) / 1.055) ** 2.4)
    light = (curve.astype(np.float32)[pixels] @ matrix.T).clip(0, 1)
    coded = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)
    picture = Image.fromarray(np.rint(coded * 255).astype(np.uint8))
    picture.save(folder / "p3.jpg", quality=95, icc_profile=made.P3)
    return folder / "p3.jpg"


FORMS = {"upright": _upright, "heic": _heic, "tiff16": _tiff16, "p3": _p3}
