"""Taking bundles in, each checked whole first; where records lie on their parts comes along."""

import json
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from ptmark.archive.adding import Added, add_record
from ptmark.archive.exchange import PLACEMENT, all_placed
from ptmark.archive.opening import Archive
from ptmark.archive.placing import place_record
from ptmark.errors import ArchiveError, PtmarkError

__all__ = ["take_bundles"]


def take_bundles(
    archive: Archive, given: Path, refused: list[PtmarkError] | None = None
) -> list[Added]:
    """Take in a bundle, or every bundle of a folder, each checked whole first.

    Parameters
    ----------
    archive : Archive
    given : Path
        A bundle, or a folder of them.
    refused : list or None
        Takes the error of each bundle that cannot be taken in, while the others go on.

    Raises
    ------
    ReportError
        If a bundle is damaged or incomplete, and there is no ``refused``.
    ArchiveError
        If the archive keeps another state of a record, and there is no ``refused``.
    """
    bundles = [given]
    if given.is_dir():
        bundles = sorted(one for one in given.iterdir() if one.suffix.lower() == ".zip")
    if not bundles:
        raise ArchiveError(
            "holds no bundle", where=str(given), mend="choose an export's folder"
        )
    added = []
    for bundle in bundles:
        try:
            added.append(_take_one(archive, bundle))
        except PtmarkError as found:
            if refused is None:
                raise
            refused.append(found)
    return added


def _take_one(archive: Archive, bundle: Path) -> Added:
    """Take a bundle in; where its record lies on its part only where that is not known here."""
    from ptmark.report.bundle import take_in

    with TemporaryDirectory() as room:
        record = take_in(bundle, Path(room))
        try:
            added = add_record(archive, record, record.parent / "photos")
        except PtmarkError as found:  # its folder is of this moment only
            found.where = f"{bundle}, {record.parent.name}"
            raise
        told = record.parent / PLACEMENT
        if not told.is_file():
            return added
        place, why = _placement(told.read_bytes(), bundle)
        kept = all_placed(archive).get(added.record_id)
        if kept is None:
            place_record(archive, added.record_id, place, why)
            return added
    return replace(added, placed_otherwise=tuple(kept[key] for key in "abcdef") != place)


def _placement(data: bytes, bundle: Path) -> tuple[tuple[float, ...], str]:
    try:
        told = json.loads(data)
        return tuple(float(told[key]) for key in "abcdef"), str(told["why"])
    except (ValueError, LookupError, TypeError) as found:
        raise ArchiveError(
            f"{PLACEMENT} tells no place ({found!r})",
            where=str(bundle),
            mend="export it again",
        ) from found
