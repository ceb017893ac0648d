"""The calibration grid: a chessboard to print, and its inner corners found in a photo."""

from pathlib import Path
from typing import TYPE_CHECKING

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.errors import ScaleError
from ptmark.scale.calibrate import View
from ptmark.scale.card import find_card
from ptmark.scale.card_pdf import PAPERS, PT, save_canvas
from ptmark.scale.layout import marker_corners_mm

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["GRID", "find_pattern", "write_grid_pdf"]

Array = npt.NDArray[np.float64]

GRID = (9, 6)  # inner corners along and across
_SQUARE_MM = 25.0
# Found in a picture of this width, then measured in the full one.
_LOOK_WIDTH = 1600
_SAYS = (
    "Calibration grid: print at 100 %, lay it flat (glass, a plate), photograph it 8 to 15"
    " times with one camera at one zoom:",
    "filling the picture, in each corner, and from four sides some 30 degrees aslant. Then:"
    " ptmark camera calibrate PHOTO PHOTO ...",
)


def find_pattern(photo: "Photo", grid: tuple[int, int] = GRID) -> View | None:
    """Points of a calibration grid in a photo, else of a scale card; None where neither is.

    ``grid`` counts the inner corners of the chessboard along and across.
    """
    return _find_grid(photo, grid) or _find_card(photo)


def _find_grid(photo: "Photo", grid: tuple[int, int]) -> View | None:
    step = max(1, round(photo.info.width / _LOOK_WIDTH))
    first = step // 2
    grey = cv2.cvtColor(photo.rgb, cv2.COLOR_RGB2GRAY)
    small = cv2.resize(grey, None, fx=1 / step, fy=1 / step, interpolation=cv2.INTER_AREA)
    found, corners = cv2.findChessboardCornersSB(small, grid, flags=cv2.CALIB_CB_ACCURACY)
    if not found:
        return None
    seen = (np.asarray(corners, np.float64).reshape(-1, 2) + 0.5) * step - 0.5
    if step > 1:
        rows = seen.reshape(grid[1], grid[0], 2)
        side = float(np.hypot(*np.diff(rows, axis=1).reshape(-1, 2).T).min())
        half = int(np.clip(side / 4, 3, 25))
        stop = (cv2.TERM_CRITERIA_EPS + cv2.TERM_CRITERIA_MAX_ITER, 50, 0.005)
        sharp = seen.astype(np.float32).reshape(-1, 1, 2)
        cv2.cornerSubPix(grey, sharp, (half, half), (-1, -1), stop)
        refined = np.asarray(sharp, np.float64).reshape(-1, 2)
        if np.hypot(*(refined - seen).T).max() > 2 * step + first:
            return None
        seen = refined
    x, y = np.meshgrid(np.arange(grid[0]), np.arange(grid[1]))
    plane = np.asarray(np.column_stack([x.ravel(), y.ravel()]) * _SQUARE_MM, np.float64)
    return View(seen, plane)


def _find_card(photo: "Photo") -> View | None:
    found = find_card(photo)
    if found is None or found.mirrored or found.clear.sum() < 8:
        return None
    clear = found.clear.ravel()
    plane = np.vstack([marker_corners_mm(marker) for marker in found.ids])
    return View(found.corners_px.reshape(-1, 2)[clear], plane[clear])


def write_grid_pdf(path: str | Path, paper: str = "A4") -> None:
    """Write the calibration grid to print; the same bytes every time.

    Raises
    ------
    ScaleError
        If the paper is unknown or the file cannot be written.
    """
    if paper not in PAPERS:
        raise ScaleError(
            f"no paper '{paper}'", where="paper", mend=f"choose {' or '.join(PAPERS)}"
        )
    from reportlab.pdfgen.canvas import Canvas

    short, long = PAPERS[paper]
    canvas = Canvas(str(path), pagesize=(long * PT, short * PT), invariant=1, pageCompression=1)
    canvas.setTitle("Calibration grid")
    canvas.setAuthor("ptmark")
    canvas.setFont("Helvetica", 8)
    for i, line in enumerate(_SAYS):
        canvas.drawString(14 * PT, (short - 10 - 5 * i) * PT, line)
    columns, rows = GRID[0] + 1, GRID[1] + 1
    left, low = (long - columns * _SQUARE_MM) / 2, 8.0
    black = canvas.beginPath()
    for row in range(rows):
        for column in range(row % 2, columns, 2):
            black.rect(
                (left + column * _SQUARE_MM) * PT,
                (low + row * _SQUARE_MM) * PT,
                _SQUARE_MM * PT,
                _SQUARE_MM * PT,
            )
    canvas.drawPath(black, stroke=0, fill=1)
    save_canvas(canvas, path, "the grid")
