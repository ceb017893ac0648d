"""``ptmark evaluate``: judge outlines that need not come from a photo.

It exits with 0 whatever the verdict, which stands in the JSON and on the screen, with 1 where
it could not judge, and with 2 where the command line is wrong.
"""

import argparse
import gc
import json
import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

from ptmark.criteria import (
    Evaluation,
    Scene,
    evaluate,
    evaluation_to_json,
    load_profile,
    scene_from_json,
)
from ptmark.errors import CriteriaError
from ptmark.files import write_whole
from ptmark.report.sketch import finding_svg

__all__ = ["add_to", "run"]

_LARGEST_FILE = 268_435_456  # bytes


def add_to(subparsers: Any) -> None:  # noqa: ANN401 - argparse keeps its class private
    """Add the verb to the command line."""
    parser = subparsers.add_parser(
        "evaluate",
        description="Judge indications given as outlines in mm by an acceptance profile. The "
        "verdict is an aid: the contract's edition and the certified inspector decide.",
        epilog="Exit code 0 whatever the verdict, 1 where it could not judge, 2 where the "
        "command line is wrong.",
    )
    parser.add_argument(
        "file", type=Path, metavar="FILE.json", help="as `measure --json` writes"
    )
    parser.add_argument(
        "--criteria", required=True, metavar="PROFILE", help="a name, or a file ending in .toml"
    )
    parser.add_argument(
        "--decision",
        choices=("guarded", "simple"),
        default="guarded",
        help="whether the measurement uncertainty may make the verdict stricter (guarded)",
    )
    parser.add_argument("--json", type=Path, metavar="FILE", help="write the evaluation here")
    parser.add_argument(
        "--sketches",
        type=Path,
        metavar="FOLDER",
        help="write an SVG sketch of each finding here",
    )
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Judge and print; 0 whatever the verdict."""
    with _uncollected():
        return _run(args)


@contextmanager
def _uncollected() -> Iterator[None]:
    """Spare the search for unused circles of objects, which walks over all outlines each time.

    There are none in a parsed file, and of many indications it took a sixth of all.
    """
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def _run(args: argparse.Namespace) -> int:
    document = _read(args.file)
    if document.get("more_photos"):  # judged by one photo alone it would seem better than it is
        raise CriteriaError(
            "a record of several photos",
            where=str(args.file),
            mend="judge each of them with `ptmark rejudge`",
        )
    profile = load_profile(args.criteria)
    scene = _scene(document, str(args.file))
    result = evaluate(profile, scene, args.decision)
    result = replace(result, cautions=(*_of_missing_u(document), *result.cautions))
    if args.sketches is not None:
        _write_sketches(args.sketches, result, scene)
    if args.json is not None:
        written = json.dumps({"evaluation": evaluation_to_json(result)}, indent=1)
        write_whole(args.json, (written + "\n").encode())
    print(_told(result))
    return 0


def _of_missing_u(document: dict[str, Any]) -> list[str]:
    """What an acceptance is worth that no uncertainty could hold open."""
    listed = [one for one in document["indications"] if one.get("outline_mm") is not None]
    lack = sum(one.get("length_u_mm") is None for one in listed)
    if not lack:
        return []
    return [
        f"No uncertainty is given for {lack} of {len(listed)} indications: their lengths are "
        "taken as exact. Give length_u_mm for each."
    ]


def _write_sketches(folder: Path, result: Evaluation, scene: Scene) -> None:
    """One file for each finding that names indications: its place in the list and its rule."""
    folder.mkdir(parents=True, exist_ok=True)
    for nth, finding in enumerate(result.findings, start=1):
        if finding.indications:
            rule = re.sub(r"[^\w-]", "_", finding.rule)
            drawn = finding_svg(finding, scene.indications)
            write_whole(folder / f"{nth:03}-{rule}.svg", drawn.encode())


def _read(path: Path) -> dict[str, Any]:
    where = str(path)
    try:
        if path.stat().st_size > _LARGEST_FILE:
            raise CriteriaError(
                "larger than 256 MB, so it is no list of outlines",
                where=where,
                mend="name the file that `measure --json` wrote",
            )
        text = path.read_text(encoding="utf-8-sig")
        document = json.loads(text, object_pairs_hook=_once_each)
    except OSError as error:
        raise CriteriaError(
            f"cannot be read: {error.strerror}", where=where, mend="check its name and rights"
        ) from error
    except UnicodeDecodeError as error:
        raise CriteriaError(
            f"is not UTF-8 text (byte {error.start})",
            where=where,
            mend="save it as plain text, encoded in UTF-8",
        ) from error
    except (ValueError, RecursionError) as error:
        raise CriteriaError(
            f"is not valid JSON: {error}", where=where, mend="correct it there"
        ) from error
    if not isinstance(document, dict):
        raise CriteriaError(
            "must hold a JSON object", where=where, mend='begin it with {"indications": ['
        )
    return document


def _once_each(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """The object of these pairs; of a key that stands twice the first would go unseen."""
    made = dict(pairs)
    if len(made) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise ValueError(f"the key '{twice}' stands twice in one object")
    return made


def _scene(document: dict[str, Any], where: str) -> Scene:
    """The scene; an error in it names the file too."""
    try:
        return scene_from_json(document)
    except CriteriaError as error:
        raise CriteriaError(
            error.what, where=f"{where}, {error.where}", mend=error.mend
        ) from error


def _told(result: Evaluation) -> str:
    lines = [
        f"{result.verdict.upper()} by {result.title} ({result.edition}), "
        f"{result.decision_rule} decision rule",
        "",
    ]
    for finding in result.findings:
        clause = f" ({finding.clause})" if finding.clause else ""
        lines.append(f"{finding.verdict:10}  {finding.rule}{clause}: {finding.says}")
    lines += ["", *(f"Caution: {caution}" for caution in result.cautions)]
    return "\n".join(lines)
