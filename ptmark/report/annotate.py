"""The annotated image: header, marked photo, table, verdict and cautions in one picture."""

from pathlib import Path

import numpy as np
import numpy.typing as npt

from ptmark.errors import ReportError
from ptmark.record import Record
from ptmark.report.bands import head_band, table_band, verdict_band
from ptmark.report.encoding import ENDINGS, encoded
from ptmark.report.plate import draw_plate
from ptmark.report.table import save

__all__ = ["annotated_image", "write_image"]

Picture = npt.NDArray[np.uint8]


def annotated_image(record: Record, rgb: Picture) -> Picture:
    """Draw the whole report picture.

    Parameters
    ----------
    record : Record
    rgb : ndarray of shape (H, W, 3), uint8
        The upright photo of the record; not written to.

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
    plate = draw_plate(record, rgb)
    width = plate.rgb.shape[1]
    bands = [head_band(record, width, plate.unit), plate.rgb]
    bands.append(table_band(record, width, plate.unit))
    bands.append(verdict_band(record, width, plate.unit))
    return np.concatenate(bands)


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
