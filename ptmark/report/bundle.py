"""The exchange bundle: one ZIP with record, photos, reports, schema and checksums.

It opens with any ZIP program, ``sha256sum -c checksums.sha256`` checks it without this one,
and taking it in again gives back every byte.
"""

import hashlib
import io
import re
import zipfile
import zlib
from collections.abc import Callable, Iterable
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

import numpy as np
import numpy.typing as npt

from ptmark.errors import ReportError
from ptmark.photo import Photo
from ptmark.places import resource
from ptmark.record import (
    Record,
    find_photo,
    load_record,
    record_text,
    revision_hash,
    revisions,
    verify_file,
)
from ptmark.record.signing import photo_hashes
from ptmark.report.annotate import annotated_image
from ptmark.report.encoding import encoded
from ptmark.report.pages.whole import report_pdf
from ptmark.report.set_words import numbered
from ptmark.report.sheet import sheet_bytes
from ptmark.report.table import csv_bytes, save

__all__ = ["take_in", "write_bundle"]

_SUMS = "checksums.sha256"
_EPOCH = (1980, 1, 1, 0, 0, 0)
_MOST_FILES = 200
_MOST_BYTES = 2 * 2**30
_ABOUT = """\
record.json        the inspection record: the file that counts
photos/            the photos it was measured in, byte for byte
report.pdf, report.jpg, indications.csv, indications.xlsx
                   made from the record; its numbers, for reading
schema/            the JSON Schema of the record
checksums.sha256   sha256sum -c checksums.sha256 checks every file

Signatures: Ed25519 over canonical JSON (RFC 8785), as the schema says.
The verdict is an aid: the contract's own edition of the code and the certified inspector
decide.
"""


def write_bundle(
    path: Path,
    record: Record,
    rgb: npt.NDArray[np.uint8],
    photo: Path,
    folder: Path,
    more: Callable[[], Iterable[Photo]] = tuple,
) -> None:
    """Write the bundle; the same record gives the same bytes.

    Parameters
    ----------
    path : Path
    record : Record
    rgb : ndarray of shape (H, W, 3), uint8
        The upright photo.
    photo : Path
        Its file.
    folder : Path
        Where further photos, of the set and of reviewers, are looked for.
    more : callable
        Gives the record's further photos, in its order, one at a time.

    Raises
    ------
    ReportError
        If a photo that the record names is not there, or the file cannot be written.
    """
    files = {
        "record.json": record_text(record).encode("utf-8"),
        "about.txt": _ABOUT.encode("utf-8"),
        "report.pdf": report_pdf(record, rgb, photo, more=more()),
        "report.jpg": encoded(annotated_image(record, rgb), ".jpg"),
        **{
            numbered(Path("report.jpg"), number).name: encoded(
                annotated_image(record, one.rgb, number), ".jpg"
            )
            for number, one in enumerate(more(), 1)
        },
        "indications.csv": csv_bytes(record),
        "indications.xlsx": sheet_bytes(record),
    }
    for version in sorted({str(one["schema"]).rpartition("/")[2] for one in revisions(record)}):
        name = f"record-{version}.schema.json"
        files[f"schema/{name}"] = resource("schema", name).read_bytes()
    names = {one.photo["sha256"]: str(one.photo["file"]) for one in record.views()}
    for number, sha256 in enumerate(photo_hashes(record.to_json())):
        there = photo if number == 0 else find_photo(folder, names.get(sha256, ""), sha256)
        if there is None:
            whose = names.get(sha256, "of a review")
            raise ReportError(
                f"the photo {whose}, SHA-256 {sha256[:12]}…, is not there",
                where=str(folder),
                mend="put it beside the others",
            )
        name = f"photos/{_safe(there.name, sha256)}"
        if name in files:  # two folders of one camera count alike
            name = f"photos/{sha256[:16]}{there.suffix[:10]}"
        files[name] = there.read_bytes()
    sums = (f"{hashlib.sha256(data).hexdigest()}  {name}\n" for name, data in files.items())
    files[_SUMS] = "".join(sums).encode("utf-8")
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as made:
        for name, data in files.items():
            info = zipfile.ZipInfo(name, _EPOCH)
            packed = name.endswith((".json", ".csv", ".txt", ".sha256"))
            info.compress_type = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
            made.writestr(info, data)
    save(path, out.getvalue())


def _safe(name: str, sha256: str) -> str:
    """The photo's own name where every system takes it, else one made from its content."""
    plain = re.fullmatch(r"[^\x00-\x1f/\\:*?\"<>|]{1,150}", name) and not name.startswith(".")
    return name if plain else sha256[:16] + Path(name).suffix[:10]


def take_in(path: Path, folder: Path) -> Path:
    """Take a bundle in: checked whole first, then every file written as it was.

    Parameters
    ----------
    path : Path
        The bundle.
    folder : Path
        A folder named after the record is made in it.

    Returns
    -------
    Path
        The record's file. Taking the same bundle in again changes nothing; a later revision
        takes the place of an earlier one.

    Raises
    ------
    ReportError
        If a byte differs from its checksum, a file is missing or too many, a name would leave
        the folder, the record or its signatures do not hold, or another record of the same
        name lies there.
    """
    files = _checked(path)
    record = _record_of(files, path)
    target = folder / record.id
    kept = target / "record.json"
    if kept.is_file():
        _refuse_other(load_record(kept), record, kept)
    names = sorted(files, key=lambda name: name == "record.json")  # the record last
    for name in names:
        place = target / name
        if not (place.is_file() and place.read_bytes() == files[name]):
            save(place, files[name])
    return kept


def _checked(path: Path) -> dict[str, bytes]:
    mend = "ask for the bundle again"
    try:
        with zipfile.ZipFile(path) as made:
            infos = made.infolist()
            if len(infos) > _MOST_FILES or sum(one.file_size for one in infos) > _MOST_BYTES:
                raise ReportError("is too large for a bundle", where=str(path), mend=mend)
            names = [one.filename for one in infos]
            for name in names:
                pure = PurePosixPath(name)
                if (
                    pure.is_absolute()
                    or ".." in pure.parts
                    or re.search(r"[\\:\x00-\x1f]", name)
                ):
                    raise ReportError(f"holds the name {name!r}", where=str(path), mend=mend)
            if len(set(names)) < len(names) or _SUMS not in names:
                raise ReportError("is no bundle of a record", where=str(path), mend=mend)
            files = {name: made.read(name) for name in names}
    except OSError as exc:
        said = f"cannot be read ({exc.strerror or exc})"
        raise ReportError(said, where=str(path), mend="check the name") from exc
    except (zipfile.BadZipFile, zlib.error, ValueError, RuntimeError, EOFError) as exc:
        raise ReportError(f"is no whole ZIP: {exc}", where=str(path), mend=mend) from exc
    told = re.findall(r"^([0-9a-f]{64})  (.+)$", files[_SUMS].decode("utf-8", "replace"), re.M)
    sums = {name: sha256 for sha256, name in told}
    for name in sorted((sums.keys() | files.keys()) - {_SUMS}):
        if name not in files or name not in sums:
            what = "is missing" if name not in files else "has no checksum"
            raise ReportError(what, where=f"{path}, {name}", mend=mend)
        if hashlib.sha256(files[name]).hexdigest() != sums[name]:
            raise ReportError("differs from its checksum", where=f"{path}, {name}", mend=mend)
    return files


def _record_of(files: dict[str, bytes], path: Path) -> Record:
    """The bundle's record, where it, its signatures and its photos hold."""
    if "record.json" not in files:
        raise ReportError("holds no record.json", where=str(path))
    with TemporaryDirectory() as place:
        kept = Path(place) / "record.json"
        kept.write_bytes(files["record.json"])
        wrong = next((one for one in verify_file(kept) if one.holds is False), None)
        if wrong is not None:
            raise ReportError(
                f"{wrong.where} {wrong.says}", where=f"{path}, record.json", mend="refuse it"
            )
        record = load_record(kept)
    photos = {
        hashlib.sha256(data).hexdigest()
        for name, data in files.items()
        if name.startswith("photos/")
    }
    missing = [sha256 for sha256 in photo_hashes(record.to_json()) if sha256 not in photos]
    if missing:
        raise ReportError(f"the photo with SHA-256 {missing[0]} is missing", where=str(path))
    return record


def _refuse_other(there: Record, new: Record, where: Path) -> None:
    """What lies there must be the same revision, or an earlier one of the new record."""
    mine = revision_hash(there.to_json())
    known = [revision_hash(one) for one in revisions(new)]
    if mine not in known:
        raise ReportError(
            f"another state of record {there.id} lies there, revision {there.revision}",
            where=str(where),
            mend="take the bundle into another folder and compare the two",
        )
