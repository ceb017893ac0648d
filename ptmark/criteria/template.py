"""Starting a profile of one's own: blank with every key explained, or from one that exists.

A figure written as ``?`` is still to be filled in; `ptmark.criteria.load_profile` refuses such
a file and names the lines, so nothing is judged by figures that nobody has looked up.
"""

import re
from collections.abc import Iterator

from ptmark.criteria.by_name import list_profiles, list_templates, load_profile
from ptmark.errors import CriteriaError
from ptmark.places import resource

__all__ = ["new_profile"]

_NAME = re.compile(r"[a-z0-9][a-z0-9.-]{0,79}")


def new_profile(name: str, start: str = "") -> str:
    """TOML text of a new profile, commented.

    Parameters
    ----------
    name : str
        Small letters, digits, dots and hyphens; the file should be called ``NAME.toml``.
    start : str
        A shipped profile or template to start from; "" for a blank one.

    Raises
    ------
    CriteriaError
        If the name is no plain name, or there is nothing of the name to start from.
    """
    if not _NAME.fullmatch(name):
        raise CriteriaError(
            f"'{name}' is no name for a profile",
            where="criteria new",
            mend="use small letters, digits, dots and hyphens",
        )
    text = resource("criteria", "templates", "blank.toml").read_text(encoding="utf-8")
    if not start:
        return "\n".join(_renamed(text, name)) + "\n"
    if start in list_templates():
        path = resource("criteria", "templates", f"{start}.toml")
    elif start in list_profiles():
        load_profile(start)
        path = resource("criteria", f"{start}.toml")
    else:
        raise CriteriaError(
            f"there is no profile or template named '{start}'",
            where="criteria new",
            mend="`ptmark criteria` lists them",
        )
    own = path.read_text(encoding="utf-8")
    head = [line for line in text.splitlines() if line.startswith("#")]
    return "\n".join([*head, "", *_renamed(own, name)]) + "\n"


def _renamed(text: str, name: str) -> Iterator[str]:
    done = False
    for line in text.splitlines():
        if not done and re.match(r"name\s*=", line):
            done = True
            yield f'name = "{name}"'
        else:
            yield line
