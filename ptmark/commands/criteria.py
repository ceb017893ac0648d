"""``ptmark criteria``: list, show and check acceptance profiles."""

import argparse
from dataclasses import fields
from typing import Any

from ptmark.criteria import Profile, list_profiles, load_profile
from ptmark.criteria.limits import Limit
from ptmark.criteria.rules import Rule
from ptmark.errors import UsageError

__all__ = ["add_to", "run"]

_COMMON = {"id", "clause", "sure", "note"}


def add_to(subparsers: Any) -> None:  # noqa: ANN401 - argparse keeps its class private
    """Add the verb to the command line."""
    parser = subparsers.add_parser(
        "criteria",
        help="list, show or check acceptance profiles",
        description="List the acceptance profiles, show the rules of one with its cautions, or "
        "check a profile file of your own.",
    )
    parser.add_argument("action", nargs="?", choices=("list", "show", "check"), default="list")
    parser.add_argument("profile", nargs="?", metavar="NAME|FILE.toml")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Print what was asked for."""
    if args.action == "list":
        for name in list_profiles():
            print(f"{name:44}{load_profile(name).title}")
        return 0
    if args.profile is None:
        raise UsageError(
            f"`criteria {args.action}` needs a profile",
            where="criteria",
            mend="give a name that `ptmark criteria` lists, or a file ending in .toml",
        )
    profile = load_profile(args.profile)
    if args.action == "show":
        print(_shown(profile))
    else:
        print(f"{args.profile}: a usable profile with {len(profile.rules)} rules")
        print(f"SHA-256 of its content: {profile.checksum}")
    return 0


def _shown(profile: Profile) -> str:
    lines = [
        profile.title,
        f"Edition: {profile.edition}",
        f"Unit: {profile.unit}",
        f"Source: {profile.source}",
        f"SHA-256 of its content: {profile.checksum}",
        "",
        *(
            f"{rule.id} ({rule.clause}; {rule.sure}): {_amounts(rule)}"
            for rule in profile.all_rules
        ),
        "",
        *(f"Caution: {caution}" for caution in profile.cautions),
    ]
    return "\n".join(lines)


def _amounts(rule: Rule) -> str:
    told = []
    for field in fields(rule):
        value = getattr(rule, field.name)
        if field.name not in _COMMON and value is not None:
            told.append(f"{field.name.replace('_', ' ')} {_written(value)}")
    return ", ".join(told) + (f"; {rule.note}" if rule.note else "")


def _written(value: object) -> str:
    if isinstance(value, Limit):
        unit = "" if value.unit == "1" else f" {value.unit}"
        return f"{value.operator} {value.value:g}{unit}"
    if isinstance(value, tuple):
        return " x ".join(_written(part) for part in value)
    return f"{value:g}" if isinstance(value, float) else str(value)
