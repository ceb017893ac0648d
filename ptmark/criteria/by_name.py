"""Profiles by name or file: those shipped, templates and the user's own, each over its base."""

import os
import re
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any

from ptmark.criteria.profile import Profile, profile_of
from ptmark.criteria.table import Table
from ptmark.criteria.toml_text import read_toml
from ptmark.errors import CriteriaError
from ptmark.places import resource, user_folder

__all__ = [
    "house_folder",
    "list_profiles",
    "list_templates",
    "load_profile",
    "profile_stamp",
    "read_profile",
]

_NAME = re.compile(r"[\w][\w.-]{0,79}")


def list_profiles() -> list[str]:
    """Names of the shipped profiles, sorted."""
    return sorted(path.stem for path in resource("criteria").glob("*.toml"))


def list_templates() -> list[str]:
    """Names of the shipped templates, whose figures come from the contract; sorted."""
    found = resource("criteria", "templates").glob("*.toml")
    return sorted(path.stem for path in found if path.stem != "blank")


def house_folder() -> Path:
    """Folder of the user's own profiles, ``NAME.toml`` each; not created here."""
    return user_folder() / "criteria"


def load_profile(name_or_path: str | Path) -> Profile:
    """Load a shipped profile or one of the user's own by name, or any file ending in ``.toml``.

    Raises
    ------
    CriteriaError
        With file, line and key, if it cannot be used; if a name is unknown.

    Examples
    --------
    >>> load_profile("iso-23277-2").unit
    'mm'
    """
    text = str(name_or_path)
    if text in list_templates():
        raise CriteriaError(
            f"'{text}' is a template whose figures are to be filled in from the contract",
            where="criteria",
            mend=f"`ptmark criteria new NAME FILE.toml --from {text}` writes one to fill in",
        )
    if text in list_profiles():
        return _shipped(text)
    own = house_folder() / f"{text}.toml"
    if _NAME.fullmatch(text) and own.is_file():
        text = str(own)
    if not text.endswith(".toml"):
        raise CriteriaError(
            f"there is no profile named '{text}'",
            where="criteria",
            mend="`ptmark criteria` lists the names; a file of your own ends in .toml",
        )
    return profile_of(*read_profile(Path(text)), where=str(name_or_path))


@cache
def _shipped(name: str) -> Profile:
    """Load a shipped profile, once: these change with the program alone."""
    return profile_of(*read_profile(resource("criteria", f"{name}.toml")), where=name)


def profile_stamp(name_or_path: str | Path) -> tuple[tuple[str, int, int], ...]:
    """Tell the state of a profile on disk: equal as long as it need not be loaded again.

    Names, times and sizes of the profiles in its folder, since it may be based on another; of
    the user's own where it is a name, with the time of the folder of those shipped, which
    change with the program alone.
    """
    text = str(name_or_path)
    if text.endswith(".toml"):
        return _files_in(Path(text).parent)
    shipped = resource("criteria")
    return ((shipped.name, shipped.stat().st_mtime_ns, 0), *_files_in(house_folder()))


def _files_in(folder: Path) -> tuple[tuple[str, int, int], ...]:
    found = []
    with suppress(OSError), os.scandir(folder) as files:
        for file in files:
            if file.name.endswith(".toml"):
                with suppress(OSError):  # gone since it was listed
                    state = file.stat()
                    found.append((file.name, state.st_mtime_ns, state.st_size))
    return tuple(sorted(found))


def read_profile(path: Path) -> tuple[dict[str, Any], str]:
    """Tables of a file, laid over the one it is based on, and its own text; not yet judged."""
    return _with_base(path, seen=())


def _with_base(path: Path, seen: tuple[Path, ...]) -> tuple[dict[str, Any], str]:
    """Read a file and lay it over the profile named by ``base``, if it names one."""
    data, text = read_toml(path)
    if "base" not in data:
        return data, text
    top = Table(data, where=str(path), text=text)
    name = top.text("base")
    if path.resolve() in seen:
        raise top.wrong(
            "base", "the profiles are based on each other in a circle", "take one base out"
        )
    base = path.with_name(f"{name}.toml") if _NAME.fullmatch(name) else Path()
    if not base.is_file() and name in list_profiles():
        base = resource("criteria", f"{name}.toml")
    if not base.is_file():
        raise top.wrong(
            "base",
            f"there is no profile named '{name}' beside this file, nor among those shipped",
            "`ptmark criteria` lists the names",
        )
    under, _ = _with_base(base, (*seen, path.resolve()))
    return _laid_over(under, data, str(path), text), text


def _laid_over(
    under: dict[str, Any], data: dict[str, Any], where: str, text: str
) -> dict[str, Any]:
    below, own = under.get("rule", []), data.get("rule", [])
    below = below if isinstance(below, list) else []
    if not isinstance(own, list):
        raise Table(data, where=where, text=text).wrong(
            "rule", "must be [[rule]] tables", "begin each with a line [[rule]]"
        )
    rules = {str(rule.get("id")): rule for rule in below if isinstance(rule, dict)}
    named: set[str] = set()
    for nth, rule in enumerate(own):
        table = Table(rule, where=where, text=text, header="[[rule]]", nth=nth)
        if str(rule.get("id")) not in rules:
            raise table.wrong(
                "id",
                "overrides a rule that the base does not have",
                "give the id of one of its rules; `ptmark criteria show` lists them",
            )
        name = str(rule["id"])
        if name in named:
            raise table.wrong("id", f"overrides '{name}' twice", "leave one of the two")
        named.add(name)
        rules[name] |= rule
    merged = under | {key: value for key, value in data.items() if key != "base"}
    return merged | {"rule": list(rules.values())}
