"""The user's own profiles: one TOML file each, in a folder of the user's."""

import re
from pathlib import Path

from ptmark.criteria.by_name import house_folder, list_profiles, list_templates
from ptmark.criteria.house_check import Checked
from ptmark.errors import CriteriaError
from ptmark.files import write_whole

__all__ = ["house_files", "save_house"]

_NAME = re.compile(r"[a-z0-9][a-z0-9.-]{0,79}")


def house_files() -> list[Path]:
    """The user's own profiles, sorted by name."""
    return sorted(house_folder().glob("*.toml"))


def save_house(checked: Checked, *, over: Path | None = None) -> Path:
    """Write checked rules as ``NAME.toml``, whole or not at all; returns the file.

    ``over`` is the file that they were read from, the only one that may be replaced.

    Raises
    ------
    CriteriaError
        If there are faults, the name is not plain, is a shipped one's, or is taken.
    """
    if checked.profile is None:
        raise CriteriaError(
            f"{len(checked.faults)} open or wrong, so nothing can be judged by these rules",
            where="house rules",
            mend="mend them first; each says how",
        )
    name = checked.profile.name
    where = "house rules, name"
    if not _NAME.fullmatch(name):
        raise CriteriaError(
            f"'{name}' is no name for a profile",
            where=where,
            mend="use small letters, digits, dots and hyphens",
        )
    path = house_folder() / f"{name}.toml"
    if name in list_profiles() or name in list_templates():
        raise CriteriaError(
            f"'{name}' is the name of a shipped profile", where=where, mend="give your own name"
        )
    if path.exists() and path != over:
        raise CriteriaError(
            f"'{name}' is there already",
            where=where,
            mend="give another name, or open that one",
        )
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, checked.text.encode())
    return path
