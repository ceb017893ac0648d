"""``ptmark criteria``: list, show, check, compare and start acceptance profiles."""

import argparse
from pathlib import Path
from typing import Any

from ptmark.criteria import (
    Profile,
    compare,
    list_profiles,
    list_templates,
    load_profile,
    new_profile,
)
from ptmark.criteria.compare import amounts_of
from ptmark.criteria.house_folder import house_files
from ptmark.errors import UsageError
from ptmark.files import write_whole

__all__ = ["add_to", "run"]

_TAKES = {
    "list": (),
    "show": ("PROFILE",),
    "check": ("PROFILE",),
    "compare": ("PROFILE", "PROFILE"),
    "new": ("NAME", "FILE.toml"),
}


def add_to(subparsers: Any) -> None:  # noqa: ANN401 - argparse keeps its class private
    """Add the verb to the command line."""
    parser = subparsers.add_parser(
        "criteria",
        description="list the acceptance profiles; show or check PROFILE; compare PROFILE "
        "PROFILE, rule by rule; new NAME FILE.toml, blank or --from a profile or template. "
        "PROFILE is a name, or a file ending in .toml.",
    )
    parser.add_argument("action", nargs="?", choices=tuple(_TAKES), default="list")
    parser.add_argument("words", nargs="*", metavar="WORD")
    start = parser.add_mutually_exclusive_group()
    start.add_argument(
        "--from", dest="start", default="", metavar="NAME", help="new: start from this one"
    )
    start.add_argument("--blank", action="store_true", help="new: every key explained")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Print what was asked for."""
    takes, words = _TAKES[args.action], args.words
    if len(words) != len(takes):
        raise UsageError(
            f"`criteria {args.action}` takes {' '.join(takes) or 'nothing more'}",
            where="criteria",
            mend="give names that `ptmark criteria` lists, or files ending in .toml",
        )
    if args.action == "list":
        _list()
    elif args.action == "new":
        _start(words[0], Path(words[1]), args.start)
    elif args.action == "compare":
        print(_compared(load_profile(words[0]), load_profile(words[1])))
    elif args.action == "show":
        print(_shown(load_profile(words[0])))
    else:
        profile = load_profile(words[0])
        print(f"{words[0]}: a usable profile with {len(profile.rules)} rules")
        print(f"SHA-256 of its content: {profile.checksum}")
    return 0


def _list() -> None:
    for name in list_profiles():
        print(f"{name:44}{load_profile(name).title}")
    for path in house_files():
        print(f"{path.stem:44}your own, {path}")
    print()
    print("To be filled in from the contract first (`ptmark criteria new … --from`):")
    for name in list_templates():
        print(f"{name}")


def _start(name: str, path: Path, start: str) -> None:
    if path.suffix != ".toml":
        raise UsageError(f"'{path}' does not end in .toml", where="criteria new")
    if path.exists():
        raise UsageError("is there already", where=str(path), mend="give another file name")
    write_whole(path, new_profile(name, start).encode())
    print(f"{path}: fill in and check with `ptmark criteria check {path}`")


def _compared(first: Profile, second: Profile) -> str:
    found = compare(first, second)
    lines = [f"1: {first.title} ({first.edition})", f"2: {second.title} ({second.edition})"]
    for one in found:
        lines += ["", one.rule, f"  1: {one.first or 'none'}", f"  2: {one.second or 'none'}"]
    if not found:
        lines += ["", "The rules are the same."]
    return "\n".join(lines)


def _shown(profile: Profile) -> str:
    lines = [
        profile.title,
        f"Edition: {profile.edition}",
        f"Unit: {profile.unit}",
        f"Source: {profile.source}",
        f"SHA-256 of its content: {profile.checksum}",
        "",
        *(
            f"{rule.id} ({rule.clause}; {rule.sure}): {amounts_of(rule)}"
            + (f"; {rule.note}" if rule.note else "")
            for rule in profile.all_rules
        ),
        "",
        *(f"Caution: {caution}" for caution in profile.cautions),
    ]
    return "\n".join(lines)
