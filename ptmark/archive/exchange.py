"""Parts of an archive as exchange bundles, one for each record.

Each is a ZIP that `ptmark import` reads too: the record's file and its photos byte for byte,
where it lies on its part, the schemas and checksums; the same record gives the same bytes.
Taking a folder of them in again changes nothing. Rules, holds and saved searches are an
archive's own and stay with it.
"""

import io
import json
import zipfile
import zlib
from dataclasses import dataclass
from pathlib import Path
from unicodedata import normalize

from ptmark.archive.beside import states
from ptmark.archive.chain import lines
from ptmark.archive.finding import Hit, find, find_all, photos_in
from ptmark.archive.named import all_named
from ptmark.archive.opening import Archive
from ptmark.archive.query import Query
from ptmark.archive.rereading import sha256_of
from ptmark.archive.rows import document_of
from ptmark.archive.store import key_for
from ptmark.errors import ArchiveError
from ptmark.files import write_or_say
from ptmark.photo.location import without_location
from ptmark.places import resource

__all__ = ["PLACEMENT", "Exported", "all_placed", "bundle_name", "export"]

_MOST_NAMED = 60  # bytes of a number; a name has 255 on the usual systems
PLACEMENT = "placement.json"
_EPOCH = (1980, 1, 1, 0, 0, 0)
_ABOUT = """\
record.json        the inspection record: the file that counts
photos/            the photos it was measured in, byte for byte
placement.json     where it lies on its part, if somebody said so
schema/            the JSON Schema of the record
checksums.sha256   sha256sum -c checksums.sha256 checks every file
"""
_WITHOUT = """\
record.json             the inspection record: the file that counts
without-location/       COPIES of its photos from which the place and makers' own notes, which
                        may hold one, were taken out; their picture is the same, their bytes are
                        not those that the record names
placement.json          where it lies on its part, if somebody said so
schema/                 the JSON Schema of the record
checksums.sha256        sha256sum -c checksums.sha256 checks every file

The originals stay in the archive. No archive takes this bundle in, as the record names their
bytes.
"""


@dataclass(frozen=True, slots=True)
class Exported:
    """What was written: records, photos, and copies from which a place or note was taken.

    ``deleted`` records were found, and a rule took them away before they were written.
    """

    records: int
    photos: int
    places_left_out: int
    deleted: int = 0


def export(
    archive: Archive, query: Query, folder: Path, *, leave_out_location: bool = False
) -> Exported:
    """Write a bundle for every inspection that fits, named by `bundle_name`.

    Parameters
    ----------
    archive : Archive
    query : Query
    folder : Path
        Made if missing; a bundle of the same record is replaced, also where it was named by a
        part or serial number that was corrected since.
    leave_out_location : bool
        Write copies of the photos without the place where they were taken, and say so.

    Raises
    ------
    ArchiveError
        If a photo is missing or changed, its place cannot be taken out, or a bundle cannot be
        written or lies there with more than this archive would put in its place; those written
        before it are whole.
    """
    records = photos = copies = deleted = 0
    placed, before = all_placed(archive), _by_ending(folder)
    for hit in find_all(archive, query):
        try:
            files, taken_out = _files(archive, hit.record_id, leave_out_location)
        except ArchiveError:
            if find(archive, Query(record_id=hit.record_id)).hits:
                raise
            deleted += 1
            continue
        if hit.record_id in placed:
            files[PLACEMENT] = json.dumps(placed[hit.record_id], indent=1).encode()
        bundle = folder / bundle_name(hit)
        earlier = _earlier(archive, hit, before, leave_out_location)
        write_or_say(bundle, _zipped(files), ArchiveError)
        for older in earlier:
            if not older.samefile(bundle):
                older.unlink()
        records += 1
        photos += sum(name.startswith(("photos/", "without-location/")) for name in files)
        copies += taken_out
    return Exported(records, photos, copies, deleted)


def bundle_name(hit: Hit) -> str:
    """Part and serial number for a person, then the record's id, which nothing else has.

    Other signs than letters, digits, dot, dash and underscore become dashes, and long numbers
    are cut, so that every system takes the name.
    """
    pieces = (_plain(hit.part), _plain(hit.serial), hit.record_id)
    return "_".join(filter(None, pieces)) + ".zip"


def all_placed(archive: Archive) -> dict[str, dict[str, object]]:
    """What is said of where records lie on their parts: six numbers and why."""
    with archive.reading() as conn:
        rows = all_named(conn, "placement")
    for row in rows.values():
        del row["record_id"]
    return rows


def _by_ending(folder: Path) -> dict[str, list[Path]]:
    """Bundles that lie there, by every ending of their names that may be a record's id."""
    found: dict[str, list[Path]] = {}
    for one in folder.glob("*.zip"):
        pieces = one.name.split("_")
        for first in range(len(pieces)):
            found.setdefault("_".join(pieces[first:]), []).append(one)
    return found


def _earlier(
    archive: Archive,
    hit: Hit,
    before: dict[str, list[Path]],
    without: bool,  # noqa: FBT001
) -> list[Path]:
    """Bundles of the record that lie there, each of which the new one may replace."""
    found = []
    for one in before.get(f"{hit.record_id}.zip", ()):
        record_id, sha256, whole = _content(one)
        if record_id != hit.record_id:
            continue
        with archive.reading() as conn:
            known = states(lines(conn, hit.record_id)).get(hit.record_id, [])
        if sha256 not in known:
            raise ArchiveError(
                "holds a state of this record that this archive has not",
                where=str(one),
                mend="take it in, or choose another folder",
            )
        if without and whole:
            raise ArchiveError(
                "has the photos with their locations and would be replaced by one that no "
                "archive takes in",
                where=str(one),
                mend="choose another folder",
            )
        found.append(one)
    return found


def _content(bundle: Path) -> tuple[object, str, bool]:
    """Which record's bundle it is, its file's SHA-256, whether it has photos as they were."""
    try:
        with zipfile.ZipFile(bundle) as made:
            data = made.read("record.json")
            whole = any(name.startswith("photos/") for name in made.namelist())
            return json.loads(data)["id"], sha256_of(data), whole
    except (OSError, zipfile.BadZipFile, zlib.error, ValueError, LookupError, TypeError):
        return None, "", False


def _plain(number: str) -> str:
    kept = "".join(c if c.isalnum() or c in "._-" else "-" for c in normalize("NFC", number))
    return kept.encode()[:_MOST_NAMED].decode(errors="ignore").strip(".-_")


def _files(archive: Archive, record_id: str, without: bool) -> tuple[dict[str, bytes], int]:  # noqa: FBT001
    with archive.reading() as conn:  # of one moment: a rule may delete it, or one revise it
        data, kept = document_of(conn, record_id), photos_in(conn, record_id)
    document = json.loads(data)
    about = _WITHOUT if without else _ABOUT
    files = {"record.json": data, "about.txt": about.encode()}
    for one in sorted({str(r["schema"]) for r in [*document.get("history", ()), document]}):
        name = f"record-{one.rpartition('/')[2]}.schema.json"
        files[f"schema/{name}"] = resource("schema", name).read_bytes()
    taken_out = 0
    for photo in kept:
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
    return files, taken_out


def _zipped(files: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    sums = (f"{sha256_of(one)}  {name}\n" for name, one in files.items())
    files["checksums.sha256"] = "".join(sums).encode()
    with zipfile.ZipFile(out, "w") as made:
        for name, data in files.items():
            info = zipfile.ZipInfo(name, _EPOCH)
            packed = not name.startswith(("photos/", "without-location/"))
            info.compress_type = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
            made.writestr(info, data)
    return out.getvalue()
