"""The picture of the place map: its cells over the newest record's photo, or over a drawing."""

import math
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtGui import QImage

from ptmark.errors import ArchiveError, PtmarkError
from ptmark.window.archive.pictures import photo_files, to_image
from ptmark.window.words import day, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, PlaceMap, Seen

__all__ = [
    "DRAWING",
    "NOTHING",
    "PHOTO",
    "Ground",
    "Made",
    "corner_of",
    "drawn",
    "saved",
    "why_empty",
]

PHOTO, NOTHING, DRAWING = "photo", "nothing", "drawing"
_WIDE = 1200  # px of the picture


class Ground(NamedTuple):
    """What lies under the cells; a drawing's place and width on the part in mm."""

    kind: str
    path: Path | None = None
    left_mm: float = 0.0
    top_mm: float = 0.0
    width_mm: float = 0.0


class Made(NamedTuple):
    """A map and its picture; no picture where nothing was seen."""

    places: "PlaceMap"
    cells: "dict[tuple[int, int], list[Seen]]"
    picture: QImage
    says: str  # what lies under it
    under: Any = None  # of shape (H, W, 3), uint8; None for nothing


def why_empty(left_out: int) -> str:
    """Why a map shows nothing, and what would make it show something."""
    if not left_out:
        return tr(
            "No record of this part number holds an indication with a place in millimetres: "
            "that takes a scale in the photo."
        )
    said = (
        tr("The one record does not say where it lies on the part.")
        if left_out == 1
        else tr("None of the {0} records says where it lies on the part.", left_out)
    )
    mend = tr(
        "Give the same location datum (at the Record step, such as “corner at hole A, x along "
        "the weld”) in each of them, and choose it here; or lay them by hand: ptmark archive "
        "place."
    )
    return f"{said} {mend}"


def corner_of(said: str, where: str) -> tuple[float, float]:
    """Two typed numbers, mm; ArchiveError where they are none.

    Examples
    --------
    >>> corner_of("10, 2.5", "corner"), corner_of("10,5; -2", "corner")
    ((10.0, 2.5), (10.5, -2.0))
    """
    pieces = said.replace(";", " ").replace(", ", " ").split()
    try:
        left, top = (float(one.replace(",", ".")) for one in pieces)
    except ValueError:
        what, mend = tr("“{0}” is no corner", said), tr("write it as 0, 0")
        raise ArchiveError(what, where=where, mend=mend) from None
    return left, top


def drawn(
    archive: "Archive", token: Token, part: str, datum: str, cell: float, ground: Ground
) -> Made:
    """The map of a part number and its picture."""
    from ptmark.archive import place_map, seen_by_cell, shaded

    places = place_map(archive, part, datum=datum, cell_mm=cell)
    token.check()
    if not places.seen:
        return Made(places, {}, QImage(), "")
    if ground.kind != NOTHING:
        box = _wider(places.box_mm, cell)
        places = place_map(archive, part, datum=datum, cell_mm=cell, box_mm=box)
    under, says = _under(archive, places, ground, part)
    token.check()
    picture = to_image(shaded(places, _WIDE, under))
    return Made(places, seen_by_cell(places), picture, says, under)


def _wider(
    box: tuple[float, float, float, float], cell: float
) -> tuple[float, float, float, float]:
    """The box and some of the part around it, in whole cells, so that one sees where it is."""
    x0, y0, x1, y1 = box
    more = max(0.15 * max(x1 - x0, y1 - y0), 5.0)
    more = math.ceil(more / cell) * cell
    return x0 - more, y0 - more, x1 + more, y1 + more


def _under(
    archive: "Archive", places: "PlaceMap", ground: Ground, part: str
) -> tuple[Any, str]:
    """What lies under the map, as its box shows it, and a word on it."""
    from ptmark.archive import laid_out
    from ptmark.photo import open_photo

    if ground.kind == DRAWING and ground.path is not None:
        rgb = open_photo(ground.path).rgb
        step = ground.width_mm / rgb.shape[1]
        matrix = [[step, 0, ground.left_mm + step / 2], [0, step, ground.top_mm + step / 2]]
        return laid_out(rgb, [*matrix, [0, 0, 1]], places, width=_WIDE), ""
    if ground.kind == NOTHING:
        return None, ""
    return _photo_under(archive, places, part)


def _photo_under(archive: "Archive", places: "PlaceMap", part: str) -> tuple[Any, str]:
    """The photo of the record examined last whose surface is known."""
    import numpy as np

    from ptmark.archive import Query, find_all, laid_out, photos_of, placements, record_of
    from ptmark.photo import open_photo

    placed, on_map = placements(archive), {one.record_id for one in places.seen}
    for hit in find_all(archive, Query(part=part)):
        if (name := hit.record_id) not in on_map:
            continue
        record = record_of(archive, name)
        matrix = record.scale["homography"]
        if matrix is None:
            continue
        a, b, c, d, e, f = placed.get(name, (1, 0, 0, 0, 1, 0))
        to_part = np.array([[a, b, c], [d, e, f], [0, 0, 1]]) @ np.asarray(matrix, float)
        own = [
            one for one in photos_of(archive, name) if one["sha256"] == record.photo["sha256"]
        ]
        told = f"{tr('serial {0}', hit.serial or tr('not given'))}, {day(hit.examined_on)}"
        try:
            with photo_files(archive, own[:1]) as paths:
                rgb = open_photo(paths[0]).rgb
        except (PtmarkError, OSError, IndexError):
            return None, tr("The photo of {0} cannot be read: check the archive.", told)
        says = tr("Under it: the photo of {0}, laid flat by its scale.", told)
        return laid_out(rgb, to_part, places, width=_WIDE), says
    return None, tr("No record on the map has a photo with a flat scale to lay under it.")


def saved(made: Made, path: Path) -> None:
    """Write the map with its scale and what lies under it as a picture."""
    from ptmark.archive import density_picture
    from ptmark.report.encoding import encoded
    from ptmark.report.table import save

    save(path, encoded(density_picture(made.places, width=_WIDE, ground=made.under), ".png"))
