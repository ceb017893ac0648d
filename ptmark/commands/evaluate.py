"""``ptmark evaluate``: judge outlines that need not come from a photo.

It exits with 0 whatever the verdict, which stands in the JSON and on the screen, and with 2
where it could not judge.
"""

import argparse
import json
import re
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
    document = _read(args.file)
    if document.get("more_photos"):  # judged by one photo alone it would seem better than it is
        raise CriteriaError(
            "a record of several photos",
            where=str(args.file),
            mend="judge each of them with `ptmark rejudge`",
        )
    profile = load_profile(args.criteria)
    scene = scene_from_json(document)
    result = evaluate(profile, scene, args.decision)
    if args.sketches is not None:
        _write_sketches(args.sketches, result, scene)
    if args.json is not None:
        written = json.dumps({"evaluation": evaluation_to_json(result)}, indent=1)
        write_whole(args.json, (written + "\n").encode())
    print(_told(result))
    return 0


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
            raise CriteriaError("larger than 256 MB, so it is no list of outlines", where=where)
        document = json.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise CriteriaError(f"cannot be read: {error.strerror}", where=where) from error
    except (ValueError, RecursionError) as error:
        raise CriteriaError(f"is not valid JSON: {error}", where=where) from error
    if not isinstance(document, dict):
        raise CriteriaError("must hold a JSON object", where=where)
    return document


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
