"""Why a photo shows nothing at a place where another one does."""

from collections.abc import Callable

import numpy as np
import numpy.typing as npt
import shapely

from ptmark.series.frame import Frame
from ptmark.series.hidden import is_hidden, is_washed_out

__all__ = ["missing_words"]

Array = npt.NDArray[np.float64]


def _blob_at(frame: Frame, around_px: Array) -> str:
    """Reason of a blob that was left out at a place of the photo; "" where there is none."""
    place = shapely.make_valid(shapely.Polygon(around_px))
    for blob in frame.left_out:
        if place.intersects(shapely.make_valid(shapely.Polygon(blob.outline_px))):
            return blob.reason
    return ""


def missing_words(
    frame: Frame, around_px: Array, other: Frame, to_other: Callable[[Array], Array]
) -> tuple[str, bool]:
    """What to say of a place of a photo where nothing was called, and whether it is bare.

    Parameters
    ----------
    frame, around_px, other, to_other
        As `is_hidden` takes them.

    Returns
    -------
    (str, bool)
        False where the photo cannot tell whether there is an indication.
    """
    if not frame.shows(around_px):
        return "the photo, or its examined area, does not show the place", False
    reason = _blob_at(frame, around_px)
    if reason:
        return f"a blob there was left out: {reason}", False
    if is_hidden(frame, around_px, other, to_other):
        return "something lies over the place, or it bears no developer", False
    if is_washed_out(frame, around_px):
        return "the place is so bright that dye may not show", False
    return "nothing was called there", True
