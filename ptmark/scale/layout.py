"""Where everything lies on the printed scale card.

Card frame: mm, x right and y down from the card's top-left corner. Markers are OpenCV's
DICT_4X4_50, ids 0 to 3 clockwise from the top left; further sets of cards continue the ids, so
that several cards in one photo are told apart.
"""

import numpy as np
import numpy.typing as npt

__all__ = [
    "CARD_HEIGHT_MM",
    "CARD_WIDTH_MM",
    "CHECK_MM",
    "MARKER_IDS",
    "MARKER_INSET_MM",
    "MARKER_MM",
    "SETS",
    "marker_corners_mm",
    "set_ids",
]

CARD_WIDTH_MM = 85.60  # ISO/IEC 7810, ID-1
CARD_HEIGHT_MM = 53.98  # ISO/IEC 7810, ID-1
MARKER_MM = 12.00
MARKER_INSET_MM = 4.00
MARKER_IDS = (0, 1, 2, 3)
SETS = 50 // len(MARKER_IDS)  # the dictionary has 50 markers
CHECK_MM = 80.0  # the printed length that callipers check


def set_ids(number: int) -> tuple[int, ...]:
    """Marker ids of a set of cards, numbered from 1.

    Examples
    --------
    >>> set_ids(2)
    (4, 5, 6, 7)
    """
    return tuple(len(MARKER_IDS) * (number - 1) + i for i in MARKER_IDS)


def marker_corners_mm(marker: int) -> npt.NDArray[np.float64]:
    """Outer corners of one marker, clockwise from its top left, shape (4, 2), card frame.

    Cards of all sets have the same layout.

    Examples
    --------
    >>> marker_corners_mm(2)[2].round(2).tolist()
    [81.6, 49.98]
    """
    corner = marker % len(MARKER_IDS)
    right, low = corner in (1, 2), corner in (2, 3)
    x = CARD_WIDTH_MM - MARKER_INSET_MM - MARKER_MM if right else MARKER_INSET_MM
    y = CARD_HEIGHT_MM - MARKER_INSET_MM - MARKER_MM if low else MARKER_INSET_MM
    square = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    return np.asarray(np.array([x, y]) + MARKER_MM * square)
