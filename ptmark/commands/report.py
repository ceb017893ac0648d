"""`ptmark report`: the reports of a record made again, and the PDF signed."""

import argparse
import getpass
import sys
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.commands.photos import photos_of
from ptmark.criteria.rule_files import why_stale
from ptmark.errors import UsageError
from ptmark.record import Record, load_record, refuse_original

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "report",
        description="Make the reports of a record again from the record and its photo.",
    )
    made.add_argument("file", type=Path, metavar="FILE.json")
    made.add_argument("--photos", type=Path, metavar="FOLDER", help="where the photo lies")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write the report")
    made.add_argument("--image", type=Path, metavar="FILE", help="write the annotated image")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the table")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    made.add_argument(
        "--sign", type=Path, metavar="CERT.p12", help="sign the PDF with this certificate"
    )
    made.add_argument(
        "--passphrase-file", type=Path, metavar="FILE", help="else it is asked for"
    )
    made.add_argument(
        "--time-stamp",
        metavar="URL",
        help="with --sign: ask this authority (RFC 3161) for the time; only a hash is sent",
    )
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Write what was asked for."""
    if not (args.pdf or args.image or args.csv):
        raise UsageError("nothing to write", mend="give --pdf, --image or --csv")
    if args.sign and not args.pdf:
        raise UsageError("only the PDF is signed", where="--sign", mend="give --pdf")
    if args.time_stamp and not args.sign:
        raise UsageError(
            "a time stamp goes with a signature", where="--time-stamp", mend="give --sign"
        )
    record = load_record(args.file)
    if stale := why_stale(record.evaluation):  # the report stays that of its record
        print(f"{args.file}: {stale}", file=sys.stderr)
    if args.csv:
        from ptmark.report.table import write_csv

        write_csv(args.csv, record)
    if args.image:
        from ptmark.report.annotate import write_images

        write_images(args.image, record, photos_of(record, args.file, args.photos))
    if args.pdf:
        _write_pdf(record, args)
    return 0


def _write_pdf(record: Record, args: argparse.Namespace) -> None:
    from ptmark.inspection.retests import earlier_of
    from ptmark.report.pages.whole import report_pdf
    from ptmark.report.table import save

    refuse_original(args.pdf, record)
    more = photos_of(record, args.file, args.photos)
    photo = next(more)
    earlier = earlier_of(record, args.file, args.photos, photo.info.path)
    pdf = report_pdf(
        record, photo.rgb, photo.info.path, paper=args.paper, earlier=earlier, more=more
    )
    if args.sign:
        reason = f"Inspection report of record {record.id}, revision {record.revision}"
        pdf = _signed(pdf, reason, args)
    save(args.pdf, pdf)


def _signed(pdf: bytes, reason: str, args: argparse.Namespace) -> bytes:
    """Signed and stamped; where no time stamp comes, signed without, which is said."""
    from ptmark.report.pages.sign import signed_pdf
    from ptmark.report.time_stamp import TimeStampError

    passphrase = _passphrase(args)
    try:
        return signed_pdf(pdf, args.sign, passphrase, reason, stamp_from=args.time_stamp)
    except TimeStampError as exc:
        print(f"signed without a time stamp: {exc}", file=sys.stderr)
    return signed_pdf(pdf, args.sign, passphrase, reason)


def _passphrase(args: argparse.Namespace) -> bytes | None:
    if args.passphrase_file is not None:
        return bytes(args.passphrase_file.read_bytes().rstrip(b"\r\n")) or None
    return getpass.getpass(f"Passphrase of {args.sign.name}: ").encode() or None
