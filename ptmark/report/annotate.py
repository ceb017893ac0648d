"""The annotated image: header, marked photo, table, verdict and cautions in one picture."""

from collections.abc import Iterable
from pathlib import Path

import numpy as np
import numpy.typing as npt

from ptmark.errors import ReportError
from ptmark.photo import Photo
from ptmark.record import Record, refuse_original
from ptmark.report.bands import head_band, table_band, verdict_band
from ptmark.report.encoding import ENDINGS, encoded
from ptmark.report.plate import draw_plate
from ptmark.report.set_words import numbered
from ptmark.report.table import save

__all__ = ["annotated_image", "write_image", "write_images"]

Picture = npt.NDArray[np.uint8]


def annotated_image(record: Record, rgb: Picture, number: int = 0) -> Picture:
    """Draw the whole report picture.

    Parameters
    ----------
    record : Record
    rgb : ndarray of shape (H, W, 3), uint8
        The upright photo of the record; not written to.
    number : int
        Which photo of the set it is, from 0.

    Returns
    -------
    ndarray of shape (H', W', 3), uint8
        A new picture; text is sized to read when the whole is shown 1600 px wide. The photo
        stands in it pixel by pixel, enlarged by a whole number where it is small and reduced
        where a side is longer than 6000 px.

    Raises
    ------
    ReportError
        If the picture is not that of the record.
    """
    view = record.views()[number]
    plate = draw_plate(view, rgb)
    width = plate.rgb.shape[1]
    bands = [head_band(record, width, plate.unit, number), plate.rgb]
    bands.append(table_band(view, width, plate.unit))
    bands.append(verdict_band(record, width, plate.unit, number))
    return np.concatenate(bands)


def write_images(path: Path, record: Record, photos: Iterable[Photo]) -> list[Path]:
    """Write `annotated_image` of each photo: FILE, FILE-2 …; the paths written.

    ``photos`` are the record's own, in its order; one at a time is held.

    Raises
    ------
    ReportError
        As `annotated_image` and `write_image` do.
    RecordError
        If one of the record's photos lies at one of these places.
    """
    written = [numbered(path, number) for number in range(len(record.views()))]
    for one in written:
        refuse_original(one, record)
    for number, photo in enumerate(photos):
        write_image(written[number], annotated_image(record, photo.rgb, number))
    return written


def write_image(path: Path, rgb: Picture) -> None:
    """Write a picture as PNG or JPEG, by the name's ending.

    Raises
    ------
    ReportError
        If the ending is another, or the file cannot be written.
    """
    ending = path.suffix.lower()
    if ending not in ENDINGS:
        raise ReportError(
            f"'{path.suffix}' is not a kind of picture the report is written as",
            where=str(path),
            mend="end the name in .png, .jpg or .jpeg",
        )
    save(path, encoded(rgb, ending))
