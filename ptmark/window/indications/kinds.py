"""Kinds of imperfection in the language of the window; records keep the English names.

The names are those of ISO 6520-1. Rules know them by the English ones, so a German name that is
typed is kept as the English one. What is none of them stays as it was typed.
"""

from functools import cache

from ptmark.window.words import from_core, language

__all__ = ["KINDS", "kind_kept", "kind_shown"]

# What is offered; what rules need of them stands in the criteria.
KINDS = ("crack", "crater crack", "surface pore", "crater pipe", "lack of fusion",
         "lack of penetration", "undercut", "overlap")  # fmt: skip


def kind_shown(kept: str) -> str:
    """The name of a kind as the window shows it.

    Examples
    --------
    >>> kind_shown("crater crack"), kind_shown("scratch")
    ('crater crack', 'scratch')
    """
    if language == "en":
        return kept
    return _shown().get(" ".join(kept.lower().split()), kept)


def kind_kept(typed: str) -> str:
    """The name of a kind as the record keeps it.

    Examples
    --------
    >>> kind_kept("lack of fusion")
    'lack of fusion'
    """
    typed = typed.strip()
    return typed if language == "en" else _kept().get(" ".join(typed.lower().split()), typed)


@cache
def _shown() -> dict[str, str]:
    from ptmark.criteria.kinds import NAMES

    return {name: from_core(name) for name in NAMES}


@cache
def _kept() -> dict[str, str]:
    """By the shown name; of two English ones with the same German one the first holds."""
    return {shown.lower(): name for name, shown in reversed(_shown().items())}
