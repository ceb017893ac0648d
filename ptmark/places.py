"""Where shipped files and the user's own files lie.

In a checkout `resources` and `sample_images` stand beside the package; in a wheel they
travel inside it. The user's folder follows the platform's custom and PTMARK_HOME.
"""

import os
import sys
from functools import lru_cache
from pathlib import Path

__all__ = ["resource", "sample_images", "user_folder"]

_PACKAGE = Path(__file__).resolve().parent


@lru_cache
def _shipped(name: str) -> Path:
    inside = _PACKAGE / "_shipped" / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def resource(*parts: str) -> Path:
    """Path of a shipped resource, such as ``resource("criteria", "iso-23277-2.toml")``."""
    return _shipped("resources").joinpath(*parts)


def sample_images() -> Path:
    """Folder of the rendered demo photos."""
    return _shipped("sample_images")


def user_folder() -> Path:
    """Folder for autosaves and settings; PTMARK_HOME overrides it. Not created here."""
    if home := os.environ.get("PTMARK_HOME"):
        return Path(home)
    if sys.platform == "win32":
        return Path(os.environ.get("APPDATA", Path.home() / "AppData" / "Roaming")) / "ptmark"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support" / "ptmark"
    return Path(os.environ.get("XDG_DATA_HOME", Path.home() / ".local" / "share")) / "ptmark"
