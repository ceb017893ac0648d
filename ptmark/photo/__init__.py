"""Open a picture safely: upright sRGB pixels, linear light, metadata, SHA-256, reduced levels.

Never trusts a file: size and format are checked before decoding, and what cannot be opened
gives one clear `PhotoError`. The original bytes are never written.
"""

from ptmark.photo.color import linear_to_lab, linear_to_srgb, srgb_to_linear
from ptmark.photo.opening import open_photo, read_info, read_preview
from ptmark.photo.picture import Camera, Photo, PhotoInfo

__all__ = [
    "Camera",
    "Photo",
    "PhotoInfo",
    "linear_to_lab",
    "linear_to_srgb",
    "open_photo",
    "read_info",
    "read_preview",
    "srgb_to_linear",
]
