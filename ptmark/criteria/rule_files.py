"""Where rule files outside the user's folder lie, so that work that goes on finds them again.

A record names its rules by name and checksum, never by a place on somebody's machine. So the
place of a file that a record was judged by is noted in the user's folder, under its checksum.
"""

import json
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from ptmark.criteria.again import is_stale
from ptmark.criteria.by_name import load_profile
from ptmark.criteria.profile import Profile
from ptmark.errors import CriteriaError
from ptmark.files import write_whole
from ptmark.places import user_folder

__all__ = ["note_place", "rules_again", "why_stale"]


def note_place(named: str, profile: Profile) -> None:
    """Note where the file lies that ``profile`` was loaded from; nothing for a mere name.

    A note that cannot be written costs no more than choosing the file again.
    """
    if not named.endswith(".toml"):
        return
    note, place = _note(profile.checksum), Path(named).absolute()
    if _noted(profile.checksum) != place:
        with suppress(OSError):
            note.parent.mkdir(parents=True, exist_ok=True)
            write_whole(note, (json.dumps({"path": str(place)}) + "\n").encode())


def rules_again(evaluation: Mapping[str, Any]) -> str:
    """By what name or path the rules of a record's evaluation are loaded again.

    The name where that gives the same rules, else the file that was noted, where it still
    holds them. Where neither does, the name if there are rules of that name, else the file.
    """
    name, checksum = str(evaluation.get("profile", "")), str(evaluation.get("checksum", ""))
    place = _noted(checksum)
    if place is None:
        return name
    by_name, there = _loaded(name), _loaded(str(place))
    if by_name is None:
        return str(place)
    kept = there is not None and there.checksum == checksum != by_name.checksum
    return str(place) if kept else name


def why_stale(evaluation: Mapping[str, Any] | None) -> str:
    """Say that the rules of a record's verdict have changed or are gone; "" if not.

    Rules of a name that is not known on this machine, and never was a file here, say nothing:
    what the record was judged by stands in its checksum.
    """
    if evaluation is None:
        return ""
    name, named = str(evaluation.get("profile", "")), rules_again(evaluation)
    lay = f" in {named}" if named != name else ""
    now = _loaded(named)
    if now is None:
        return (
            f"the rules '{name}' lay{lay} and are not to be had from there now; put the file "
            f"back or choose the rules again"
            if lay
            else ""
        )
    if now.name != name or not is_stale(evaluation, now):
        return ""
    return (
        f"the rules '{name}'{lay} have changed since this verdict was made, so it is stale; "
        f"`ptmark rejudge` judges again"
    )


def _note(checksum: str) -> Path:
    return user_folder() / "rule-files" / f"{checksum}.json"


def _noted(checksum: str) -> Path | None:
    """The place noted for rules of this checksum; None where there is no note of use."""
    if not checksum.isalnum():  # a record's text is no part of a path
        return None
    try:
        return Path(json.loads(_note(checksum).read_text(encoding="utf-8"))["path"])
    except (OSError, ValueError, KeyError, TypeError):
        return None


def _loaded(name: str) -> Profile | None:
    try:
        return load_profile(name)
    except CriteriaError:
        return None
