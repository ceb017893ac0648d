"""`ptmark archive roles`: who may do what in an archive on a server."""

import argparse
from typing import TYPE_CHECKING

from ptmark.commands.options import Verbs

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_to"]


def add_to(below: Verbs) -> None:
    """Add the work."""
    made = below.add_parser(
        "roles",
        help="who may do what in an archive on a server",
        description="Without options: the logins of each role. A reader sees everything; an "
        "inspector takes records in and revises unsigned ones; a reviewer revises signed ones "
        "too; a keeper sets rules and holds, deletes by rule and repairs. PostgreSQL itself "
        "enforces it. Logins are made with the server's own means, such as createuser.",
    )
    made.add_argument("--set", action="store_true", help="make the roles; by the owner, once")
    made.add_argument("--give", nargs=2, metavar=("ROLE", "LOGIN"), help="give a login a role")
    made.add_argument("--take", nargs=2, metavar=("ROLE", "LOGIN"), help="take it away")
    made.set_defaults(work_run=_run)


def _run(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room

    if args.set:
        room.set_roles(archive)
    if args.give:
        room.give_role(archive, *args.give)
    if args.take:
        room.take_role(archive, *args.take)
    told = room.logins(archive)
    for role, logins in told.items():
        print(f"{role}: {', '.join(logins) or 'nobody'}")
    if not told:
        print("no roles are set: every login with rights on the tables may do everything")
    return 0
