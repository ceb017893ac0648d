"""`ptmark watch`: measure pictures as they arrive in a folder."""

import argparse
import signal
import sys
from pathlib import Path
from time import sleep

from ptmark.commands.folder import say_below, take
from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs
from ptmark.commands.progress import Bar, shown
from ptmark.errors import UsageError
from ptmark.folder import Arrivals, Asked, Book, Pool
from ptmark.folder.job import content_key

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "watch",
        description="Measure each picture that arrives in a folder, as from a phone, once it "
        "has stopped changing and opens. Ends with Ctrl-C; started again, it goes on.",
    )
    made.add_argument("folder", type=Path, help="the folder to watch")
    made.add_argument(
        "--out",
        type=Path,
        required=True,
        metavar="FOLDER",
        help="where results.jsonl, table.csv and the list of finished photos go",
    )
    made.add_argument("--jobs", type=int, default=1, metavar="N", help="processes at once (1)")
    made.add_argument(
        "--every", type=float, default=1.0, metavar="SECONDS", help="time between looks (1)"
    )
    add_measuring(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Watch until Ctrl-C or the end of the session; then 0."""
    if not args.folder.is_dir():
        raise UsageError("is no folder", where=str(args.folder), mend="name a folder")
    if not 0.05 <= args.every <= 3600:
        raise UsageError(f"{args.every} s is no time between looks", where="--every")
    if not 1 <= args.jobs <= 256:
        raise UsageError(f"{args.jobs} is no number of processes", where="--jobs")
    asked = read_asked(args)
    stop = _Stop()
    before = {one: signal.signal(one, stop) for one in (signal.SIGINT, signal.SIGTERM)}
    try:
        _watch(args, asked, stop)
    except KeyboardInterrupt:
        pass
    finally:
        for one, handler in before.items():
            signal.signal(one, handler)
        print("ptmark: stopped watching", file=sys.stderr)
    return 0


def _watch(args: argparse.Namespace, asked: Asked, stop: "_Stop") -> None:
    arrivals = Arrivals(args.folder)
    quiet = Bar(0)
    with Book(args.out, asked.key()) as book, Pool(args.jobs, asked) as pool:
        print(f"{args.folder}: watching; Ctrl-C ends it", flush=True)
        say_below(args.folder, quiet)
        away = ""
        while not stop.asked:
            new = [path for path in arrivals.poll() if not book.has(content_key(path))]
            if arrivals.away != away:
                away = arrivals.away
                told = f"cannot be looked into ({away}): waiting for it" if away else "is back"
                quiet.say(f"{shown(args.folder)}: {told}")
            pool.give(new)
            outcomes = pool.collect(args.every)
            for outcome in outcomes:
                take(outcome, book, quiet)
                if outcome.unread:  # a share that went: it may come back with it
                    arrivals.tell_again(outcome.path)
            book.commit()
            for outcome in outcomes:  # said only once it is kept: a stop may come at any moment
                told = "failed" if outcome.error else "measured"
                print(f"{shown(outcome.path)}: {told}", flush=True)
            if not pool.in_work:
                sleep(args.every)


class _Stop:
    """Answers a signal: breaks off what is done, and keeps in mind that it was asked.

    An exception raised while Python clears something away is printed and forgotten.
    """

    def __init__(self) -> None:
        self.asked = False

    def __call__(self, number: int, frame: object) -> None:
        self.asked = True
        raise KeyboardInterrupt
