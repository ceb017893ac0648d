"""`ptmark measure FOLDER`: many photos, in worker processes, to JSON lines and CSV."""

import argparse
import os
from pathlib import Path

from ptmark.commands.progress import Bar, shown
from ptmark.errors import UsageError
from ptmark.folder import Asked, Book, Outcome, Pool, folders_below, pictures_in
from ptmark.folder.job import content_key

__all__ = ["add_options", "check_options", "measure_folder", "say_below", "take"]

_SINGLE = ("json", "image", "pdf", "csv")


def add_options(made: argparse.ArgumentParser) -> None:
    """Add the options of a folder."""
    many = made.add_argument_group("a folder of photos")
    many.add_argument(
        "--out",
        type=Path,
        metavar="FOLDER",
        help="where results.jsonl, table.csv and the list of finished photos go",
    )
    many.add_argument(
        "--jobs", type=int, metavar="N", help="processes at once (one for each core)"
    )
    many.add_argument(
        "--retry", action="store_true", help="measure again what failed; its last line counts"
    )


def check_options(args: argparse.Namespace) -> None:
    """Refuse what does not fit a folder, or a single photo (UsageError)."""
    if args.photo.is_dir():
        for name in _SINGLE:
            if getattr(args, name):
                raise UsageError(
                    "is for one photo", where=f"--{name}", mend="for a folder give --out FOLDER"
                )
        if args.out is None:
            raise UsageError(
                "is a folder", where=str(args.photo), mend="say with --out where results go"
            )
        if args.jobs is not None and not 1 <= args.jobs <= 256:
            raise UsageError(f"{args.jobs} is no number of processes", where="--jobs")
    elif args.photo.exists() and (args.out or args.jobs is not None or args.retry):
        raise UsageError(
            "--out, --jobs and --retry are for a folder of photos",
            where=str(args.photo),
            mend="give a folder, or --json, --image, --pdf or --csv",
        )


def measure_folder(args: argparse.Namespace, asked: Asked) -> int:
    """Measure what is not finished yet; 0, or 1 where a photo failed, 130 after Ctrl-C."""
    photos = pictures_in(args.photo)
    if not photos:
        below = [shown(args.photo / name) for name in folders_below(args.photo)]
        mend = (
            f"name a folder below: {', '.join(below[:3])}" if below else "name another folder"
        )
        raise UsageError("holds no picture", where=str(args.photo), mend=mend)
    jobs = args.jobs or os.cpu_count() or 1
    failures = 0
    with Book(args.out, asked.key(), retry=args.retry) as book:
        left, failed = _unfinished(photos, book)
        told = _told(len(photos), len(photos) - len(left), failed)
        with Bar(len(photos), len(photos) - len(left)) as bar:
            say_below(args.photo, bar)
            try:
                with Pool(min(jobs, max(1, len(left))), asked) as pool:
                    pool.give(left)
                    while pool.in_work:
                        for outcome in pool.collect():
                            failures += bool(outcome.error)
                            take(outcome, book, bar)
            except KeyboardInterrupt:
                bar.say("stopped; the same command goes on where it was")
                return 130
        print(f"{book.results}: {told}, {failures} failed now")
    return 1 if failures else 0


def say_below(folder: Path, bar: Bar) -> None:
    """Say that pictures in folders below are left alone: their names are told nowhere else."""
    for name in folders_below(folder):
        bar.say(
            f"{shown(folder / name)}: a folder of its own, left alone; name it to measure it"
        )


def take(outcome: Outcome, book: Book, bar: Bar) -> None:
    """Put an outcome into the book and tell of what went wrong."""
    if not book.write(outcome):
        bar.say(f"{shown(outcome.path)}: the same content stands in the results already")
    elif outcome.error:
        bar.say(f"{shown(outcome.path)}: {outcome.error}")
    bar.step()


def _unfinished(photos: list[Path], book: Book) -> tuple[list[Path], int]:
    """Which photos are to be measured, and how many could not be in a run before."""
    if not len(book):
        return photos, 0
    keys = [content_key(photo) for photo in photos]
    left = [photo for photo, key in zip(photos, keys, strict=True) if not book.has(key)]
    return left, sum(book.failed(key) for key in keys)


def _told(count: int, finished: int, failed: int) -> str:
    """What runs before have done.

    Examples
    --------
    >>> _told(62, 40, 0)
    '62 photos, 40 finished before'
    >>> _told(62, 40, 1)
    '62 photos, 40 finished before (1 of them failed: --retry measures again)'
    """
    told = f"{count} photos, {finished} finished before"
    return f"{told} ({failed} of them failed: --retry measures again)" if failed else told
