"""Endings of picture files, and the format that each of them names.

They stand outside `ptmark.photo`, which loads what decodes pixels: an opening window does not.
"""

from pathlib import Path

__all__ = ["PICTURES", "names_a_picture"]

PICTURES = {
    ".jpg": "JPEG",
    ".jpeg": "JPEG",
    ".jpe": "JPEG",
    ".png": "PNG",
    ".tif": "TIFF",
    ".tiff": "TIFF",
    ".webp": "WebP",
    ".heic": "HEIC",
    ".heif": "HEIC",
    ".avif": "AVIF",
}


def names_a_picture(path: Path) -> bool:
    """Whether a file's name ends as a picture's does; what it holds, only its content tells.

    Examples
    --------
    >>> names_a_picture(Path("weld.JPG")), names_a_picture(Path("weld.json"))
    (True, False)
    """
    return path.suffix.lower() in PICTURES
