"""`ptmark review`: measure a record's photo again, blind, and compare."""

import argparse
import json
import re
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs, read_points
from ptmark.commands.photos import photo_of
from ptmark.commands.record import add_signer, refuse_damaged
from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.folder import Asked, inspected
from ptmark.folder.job import content_key
from ptmark.record import (
    Record,
    Signer,
    find_photo,
    fingerprint,
    key_of,
    load_record,
    save_record,
    sign_record,
)

if TYPE_CHECKING:
    from ptmark.review import BlindReview, Compared, Comparison, Remark

__all__ = ["add_to", "run"]

_OUTCOMES = {"signed": "signed", "returned": "returned", "new-photo": "new photo asked"}


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "review",
        description="Measure again with your own scale picks, see nothing of the first numbers "
        "until it is done, then compare both. With --outcome the review goes into the record "
        "as a revision of its own. Outlines found by the program alone check the program's "
        "steadiness, not an eye: look at the part or its photo as well.",
    )
    made.add_argument("file", type=Path, metavar="RECORD")
    made.add_argument(
        "photos_given",
        type=Path,
        nargs="*",
        metavar="PHOTO",
        help="the record's own photos (found beside the record if left out), or new ones",
    )
    add_measuring(made)
    made.add_argument("--json", type=Path, metavar="FILE", help="write the comparison")
    made.add_argument("--outcome", choices=sorted(_OUTCOMES), help="what the reviewer decides")
    made.add_argument(
        "--remark",
        action="append",
        default=[],
        metavar="[X,Y=]TEXT",
        help="a remark, pinned to a place in the photo (px)",
    )
    add_signer(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure, compare, tell; enter the review where an outcome is given."""
    from ptmark.review import BlindReview

    asked = read_asked(args)
    remarks = tuple(_remark(text) for text in args.remark)
    if args.outcome and not args.name.strip():
        raise UsageError("nobody is named", where="--outcome", mend="give --name")
    refuse_damaged(args.file)
    first = load_record(args.file)
    compared = []
    for path, number in _photos(first, args):
        blind = BlindReview(first, number)
        second = inspected(path, _as_told(asked, blind, path)).to_record()
        compared.append(blind.finish(first, second))
        _print(path, compared[-1])
    if args.json:
        told = [one.to_json() for one in compared]
        write_whole(args.json, (json.dumps(told, indent=1) + "\n").encode())
    if args.outcome:
        _enter(args, first, compared, remarks)
    return 0


def _photos(first: Record, args: argparse.Namespace) -> list[tuple[Path, int]]:
    """The photos to measure, each with the number of the record's photo it is held against."""
    views, given = first.views(), args.photos_given
    if not given:
        if len(views) > 1 and (args.line or args.rectangle or args.area or args.weld):
            raise UsageError(
                f"the record has {len(views)} photos",
                where="review",
                mend="name the photo that the pixels are of",
            )
        found = [photo_of(view, args.file, None).info.path for view in views]
        return [(path, number) for number, path in enumerate(found)]
    if args.outcome and len(given) > len(views):
        raise UsageError(
            f"{len(given)} photos given", where="--outcome", mend="review the record's photos"
        )
    if len(views) == 1:
        return [(path, 0) for path in given]
    shas = [view.photo["sha256"] for view in views]
    numbered = [(path, content_key(path)) for path in given]
    for path, sha256 in numbered:
        if sha256 not in shas:
            raise UsageError(
                "is none of the record's photos",
                where=str(path),
                mend="of a record of several photos, review those",
            )
    return [(path, shas.index(sha256)) for path, sha256 in numbered]


def _as_told(asked: Asked, blind: "BlindReview", path: Path) -> Asked:
    """What the record tells of part and rules, where the reviewer gave nothing of their own."""
    same = find_photo(path.parent, path.name, blind.photo_sha256) == path
    area = blind.area_px if same and asked.area_px is None else None
    return replace(
        asked,
        area_px=asked.area_px if area is None else tuple((x, y) for x, y in area),
        profile=asked.profile or blind.profile,
        decision_rule=asked.decision_rule if asked.profile else blind.decision_rule,
        thickness_mm=asked.thickness_mm or blind.thickness_mm,
        diameter_mm=asked.diameter_mm or blind.diameter_mm,
        edges_px=asked.edges_px or (blind.edges_px if same else ()),
    )


def _remark(text: str) -> "Remark":
    from ptmark.review import Remark

    place, sign, said = text.partition("=")
    if sign and re.fullmatch(r"[\d.\s,+-]+", place):
        (at,) = read_points(place, "--remark", least=1, exactly=True)
        return Remark(text=said.strip(), at_px=at)
    return Remark(text=text.strip())


def _print(path: Path, one: "Comparison") -> None:
    where = "in the same photo" if one.frame == "px" else "in a new photo, matched by mm"
    print(f"{path.name}: second measurement {where}, scale from {one.scale}")
    for pair in one.pairs:
        said = f"  {pair.first:>3} = {pair.second:<3} overlap {pair.iou:.2f}"
        print(f"{said}  length {_two(pair.length)}  width {_two(pair.width)}")
    for said in one.disagreements:
        print(f"  look: {said}")
    print(f"  verdicts: {one.verdicts[0] or 'none'}, {one.verdicts[1] or 'none'}")


def _two(two: "Compared | None") -> str:
    if two is None:
        return "not measured"
    en = "" if two.en is None else f", En {two.en:.2f}"
    first, second = (
        f"{two.first:.2f} ± {two.first_u:.2f}",
        f"{two.second:.2f} ± {two.second_u:.2f}",
    )
    return f"{first}, {second} mm ({two.difference:+.2f}{en})"


def _enter(
    args: argparse.Namespace,
    first: Record,
    compared: "list[Comparison]",
    remarks: "tuple[Remark, ...]",
) -> None:
    from ptmark.review import reviewed

    outcome = _OUTCOMES[args.outcome]
    made = reviewed(
        first,
        *compared,
        reviewer=args.name,
        qualification=args.qualification,
        outcome=outcome,
        remarks=remarks,
    )
    record = save_record(args.file, made, by=args.name, why=f"review: {outcome}")
    print(f"{args.file}: revision {record.revision}, review entered: {outcome}")
    if outcome == "signed":
        who = Signer(role="reviewer", name=args.name, qualification=args.qualification)
        record = save_record(args.file, sign_record(record, who, key_of(args.name)))
        print(f"signed by {args.name}; key {fingerprint(record.signatures[-1]['key'])}")
