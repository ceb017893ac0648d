"""Open a picture safely: upright sRGB pixels, linear light, metadata, SHA-256, reduced levels.

Never trusts a file: size and format are checked before decoding, and what cannot be opened
gives one clear `PhotoError`. The original bytes are never written.
"""

from ptmark.photo.border import ends_at_border
from ptmark.photo.camera import Camera
from ptmark.photo.camera_profile import (
    CameraProfile,
    load_profiles,
    profiles_folder,
    remove_profile,
    save_profile,
)
from ptmark.photo.color import linear_to_srgb, srgb_to_linear
from ptmark.photo.opening import open_photo, read_info, read_preview
from ptmark.photo.picture import Photo, PhotoInfo

__all__ = [
    "Camera",
    "CameraProfile",
    "Photo",
    "PhotoInfo",
    "ends_at_border",
    "linear_to_srgb",
    "load_profiles",
    "open_photo",
    "profiles_folder",
    "read_info",
    "read_preview",
    "remove_profile",
    "save_profile",
    "srgb_to_linear",
]
