"""What a found inspection shows in the gallery: its photo made small, letters and lengths.

Small pictures lie in a cache in the user's folder (`ptmark.archive.small`).
"""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtGui import QImage

from ptmark.errors import ArchiveError, PtmarkError
from ptmark.files import write_whole
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit

__all__ = ["SIDE", "Glance", "glance", "photo_files", "read_original", "to_image"]

SIDE = 240  # px, the longer side of a small picture


class Glance(NamedTuple):
    """One inspection at a glance; ``picture`` is None where the photo cannot be read."""

    record_id: str
    picture: QImage | None
    # Letter, mm, ± U mm, and whether it is the least that it can be.
    lengths: tuple[tuple[str, float | None, float | None, bool], ...]
    photos: int


def glance(archive: "Archive", hit: "Hit") -> Glance:
    """Read what the gallery shows of one inspection."""
    from ptmark.archive import indications_of, photos_of

    rows = [
        row for row in indications_of(archive, hit.record_id) if row["relevance"] != "false"
    ]
    rows.sort(key=lambda row: -(row["length_mm"] or 0.0))
    photos = photos_of(archive, hit.record_id)
    picture = None
    if photos:
        try:
            picture = _small(archive, photos[0])
        except (PtmarkError, OSError):
            picture = None  # verify tells of it; the list is worth showing all the same
    lengths = tuple(
        (row["letter"], row["length_mm"], row["length_u_mm"], bool(row["least"]))
        for row in rows
    )
    return Glance(hit.record_id, picture, lengths, len(photos))


def _small(archive: "Archive", photo: dict[str, object]) -> QImage | None:
    from ptmark.archive.small import small_picture
    from ptmark.photo.opening import read_preview

    kept = small_picture(str(photo["sha256"]))
    if kept.is_file():
        image = QImage(str(kept))
        if not image.isNull():
            return image
    with photo_files(archive, [photo]) as paths:
        rgb = read_preview(paths[0], SIDE)
    image = to_image(rgb)
    _keep(image, kept)
    return image


def _keep(image: QImage, path: Path) -> None:
    from PySide6.QtCore import QBuffer, QIODevice

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "JPG", 85)  # type: ignore[call-overload]
    try:
        write_whole(path, bytes(buffer.data().data()))
    except (PtmarkError, OSError):
        return  # only a cache


def to_image(rgb: object) -> QImage:
    """An array of shape (h, w, 3), uint8, as a picture of its own."""
    import numpy as np

    array = np.ascontiguousarray(rgb, np.uint8)
    height, width = array.shape[:2]
    image = QImage(array.data, width, height, 3 * width, QImage.Format.Format_RGB888)
    return image.copy()


def read_original(archive: "Archive", photo: dict[str, object]) -> bytes:
    """A kept photo's bytes, which hash to what its record says.

    Raises
    ------
    ArchiveError
        If it is missing or changed; its mend is in the message.
    """
    import hashlib

    from ptmark.archive import key_for

    sha256 = str(photo["sha256"])
    where = str(photo.get("name") or f"{sha256[:12]}…")
    mend = tr("take it back from a second copy: ptmark archive repair --from FOLDER")
    with archive.guarded():
        try:
            data = archive.store.read(key_for(sha256, str(photo["suffix"])))
        except FileNotFoundError:
            raise ArchiveError(tr("the photo is missing"), where=where, mend=mend) from None
    if hashlib.sha256(data).hexdigest() != sha256:
        raise ArchiveError(tr("the photo was changed"), where=where, mend=mend)
    return data


@contextmanager
def photo_files(
    archive: "Archive", photos: Sequence[dict[str, object]]
) -> Iterator[list[Path]]:
    """The photos as files, to be read only while this lasts; raises as `read_original`."""
    from ptmark.archive import key_for

    with TemporaryDirectory() as place:
        paths = []
        for number, photo in enumerate(photos):
            data = read_original(archive, photo)
            sha256, suffix = str(photo["sha256"]), str(photo["suffix"])
            path = archive.store.path(key_for(sha256, suffix))
            if path is None:
                path = Path(place) / f"{number}.{suffix}"
                path.write_bytes(data)
            paths.append(path)
        yield paths
