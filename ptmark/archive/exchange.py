"""Parts of an archive as exchange bundles, one for each record, and taking bundles in.

Each is a ZIP that `ptmark import` reads too: the record's file and its photos byte for byte,
the schemas and checksums; the same record gives the same bytes. Taking a folder of them in
again changes nothing.
"""

import io
import json
import zipfile
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from unicodedata import normalize

from ptmark.archive.adding import Added, add_record
from ptmark.archive.finding import Hit, find_all, photos_of, record_bytes
from ptmark.archive.opening import Archive
from ptmark.archive.query import Query
from ptmark.archive.rereading import sha256_of
from ptmark.archive.store import key_for
from ptmark.errors import ArchiveError
from ptmark.files import write_or_say
from ptmark.photo.location import without_location
from ptmark.places import resource

__all__ = ["Exported", "bundle_name", "export", "take_bundles"]

_MOST_NAMED = 60  # bytes of a number; a name has 255 on the usual systems
_EPOCH = (1980, 1, 1, 0, 0, 0)
_ABOUT = """\
record.json        the inspection record: the file that counts
photos/            the photos it was measured in, byte for byte
schema/            the JSON Schema of the record
checksums.sha256   sha256sum -c checksums.sha256 checks every file
"""
_WITHOUT = """\
record.json             the inspection record: the file that counts
without-location/       COPIES of its photos from which the place and makers' own notes, which
                        may hold one, were taken out; their picture is the same, their bytes are
                        not those that the record names
schema/                 the JSON Schema of the record
checksums.sha256        sha256sum -c checksums.sha256 checks every file

The originals stay in the archive. An archive takes this bundle in only where it has them.
"""


@dataclass(frozen=True, slots=True)
class Exported:
    """What was written: records, photos, and copies from which a place or note was taken."""

    records: int
    photos: int
    places_left_out: int


def export(
    archive: Archive, query: Query, folder: Path, *, leave_out_location: bool = False
) -> Exported:
    """Write a bundle for every inspection that fits, named by `bundle_name`.

    Parameters
    ----------
    archive : Archive
    query : Query
    folder : Path
        Made if missing; bundles of the same name are replaced.
    leave_out_location : bool
        Write copies of the photos without the place where they were taken, and say so.

    Raises
    ------
    ArchiveError
        If a photo is missing or changed, its place cannot be taken out, or a bundle cannot be
        written; those written before it are whole.
    """
    records = photos = copies = 0
    for hit in find_all(archive, query):
        files, taken_out = _files(archive, hit.record_id, leave_out_location)
        write_or_say(folder / bundle_name(hit), _zipped(files), ArchiveError)
        records += 1
        photos += sum(name.startswith(("photos/", "without-location/")) for name in files)
        copies += taken_out
    return Exported(records, photos, copies)


def bundle_name(hit: Hit) -> str:
    """Part and serial number for a person, then the record's id, which nothing else has.

    Other signs than letters, digits, dot, dash and underscore become dashes, and long numbers
    are cut, so that every system takes the name.
    """
    pieces = (_plain(hit.part), _plain(hit.serial), hit.record_id)
    return "_".join(filter(None, pieces)) + ".zip"


def _plain(number: str) -> str:
    kept = "".join(c if c.isalnum() or c in "._-" else "-" for c in normalize("NFC", number))
    return kept.encode()[:_MOST_NAMED].decode(errors="ignore").strip(".-_")


def _files(archive: Archive, record_id: str, without: bool) -> tuple[dict[str, bytes], int]:  # noqa: FBT001
    data = record_bytes(archive, record_id)
    document = json.loads(data)
    about = _WITHOUT if without else _ABOUT
    files = {"record.json": data, "about.txt": about.encode()}
    for one in sorted({str(r["schema"]) for r in [*document.get("history", ()), document]}):
        name = f"record-{one.rpartition('/')[2]}.schema.json"
        files[f"schema/{name}"] = resource("schema", name).read_bytes()
    taken_out = 0
    for photo in photos_of(archive, record_id):
        key = key_for(photo["sha256"], photo["suffix"])
        with archive.guarded():
            whole = archive.store.read(key)
        if sha256_of(whole) != photo["sha256"]:
            raise ArchiveError("a photo was changed", where=key, mend="repair the archive")
        name = f"{photo['sha256'][:16]}.{photo['suffix']}"
        if without:
            copy = without_location(whole, where=photo["name"] or name)
            taken_out += copy != whole
            files[f"without-location/{name}"] = copy
        else:
            files[f"photos/{name}"] = whole
    sums = (f"{sha256_of(one)}  {name}\n" for name, one in files.items())
    files["checksums.sha256"] = "".join(sums).encode()
    return files, taken_out


def _zipped(files: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as made:
        for name, data in files.items():
            info = zipfile.ZipInfo(name, _EPOCH)
            packed = not name.startswith(("photos/", "without-location/"))
            info.compress_type = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
            made.writestr(info, data)
    return out.getvalue()


def take_bundles(archive: Archive, given: Path) -> list[Added]:
    """Take in a bundle, or every bundle of a folder, each checked whole first.

    Raises
    ------
    ReportError
        If a bundle is damaged or incomplete.
    ArchiveError
        If the archive keeps another state of a record.
    """
    from ptmark.report.bundle import take_in

    bundles = sorted(given.glob("*.zip")) if given.is_dir() else [given]
    if not bundles:
        raise ArchiveError(
            "holds no bundle", where=str(given), mend="choose an export's folder"
        )
    added = []
    for bundle in bundles:
        with TemporaryDirectory() as place:
            record = take_in(bundle, Path(place))
            added.append(add_record(archive, record, record.parent / "photos"))
    return added
