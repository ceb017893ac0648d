"""Whether a kept record and its photos are the originals, read and worked out anew."""

import json
from typing import TYPE_CHECKING, NamedTuple

from ptmark.errors import ArchiveError
from ptmark.window.archive.pictures import read_original
from ptmark.window.words import day, from_core, tr

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["Original", "Proof", "prove"]


class Original(NamedTuple):
    """A photo of a record and what it tells of where it was taken."""

    name: str
    sha256: str  # as the record names it
    wrong: str  # "" where it is as it was
    place: str = ""
    noted: bool = False  # it holds a note of the camera's maker, which may hold a place


class Proof(NamedTuple):
    """What was read again: the photos, what does not hold of the record, who signed it."""

    photos: tuple[Original, ...]
    wrong: tuple[str, ...]
    signed: tuple[str, ...]

    @property
    def holds(self) -> bool:
        """Whether record and photos are as they were."""
        return not self.wrong and not any(one.wrong for one in self.photos)

    def told(self) -> str:
        """The same in words, with each photo's SHA-256 in groups that wrap."""
        lines = [*self.wrong]
        if not self.wrong:
            if self.signed:
                lines.append(
                    tr("The record is as it was written: {0}.", "; ".join(self.signed))
                )
            else:
                lines.append(tr("The record is as it was written; nobody has signed it."))
        for one in self.photos:
            groups = " ".join(one.sha256[at : at + 8] for at in range(0, 64, 8))
            if one.wrong:
                lines.append(one.wrong)
                lines.append(tr("SHA-256 that the record names: {0}", groups))
            else:
                lines.append(
                    tr("{0} is the original, byte for byte. SHA-256 {1}", one.name, groups)
                )
        return "\n".join(lines)


def prove(archive: "Archive", record_id: str) -> Proof:
    """Read a record and its photos again: seal, chain, signatures and hashes."""
    from ptmark.archive import photos_of, record_bytes
    from ptmark.record import verify_document

    data = record_bytes(archive, record_id)
    document = json.loads(data)
    found = verify_document(document, data)
    wrong = tuple(from_core(f"{one.where}: {one.says}") for one in found if one.holds is False)
    signed = tuple(_signature(one) for one in document.get("signatures", ()))
    photos = tuple(_original(archive, photo) for photo in photos_of(archive, record_id))
    return Proof(photos, wrong, signed)


def _signature(one: dict[str, str]) -> str:
    from ptmark.record import fingerprint

    told = (tr(one["role"]), one["name"], day(one["time"][:10]), fingerprint(one["key"]))
    return tr("signed by {0} {1} on {2}, key {3}", *told)


def _original(archive: "Archive", photo: dict[str, object]) -> Original:
    from ptmark.photo.location import has_makers_note, location_of, places_named

    sha256 = str(photo["sha256"])
    name = str(photo["name"] or f"{sha256[:12]}…")
    try:
        data = read_original(archive, photo)
    except ArchiveError as exc:
        return Original(name, sha256, from_core(exc))
    place = location_of(data)
    told = tr("{0} at {1:.5f}, {2:.5f}", name, place.latitude, place.longitude) if place else ""
    if names := places_named(data):
        told = f"{told or name}, {', '.join(names)}"
    return Original(name, sha256, "", told, has_makers_note(data))
