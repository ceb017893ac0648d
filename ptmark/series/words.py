"""Why a photo shows nothing at a place where another one does."""

import numpy as np
import numpy.typing as npt
import shapely

from ptmark.series.frame import Frame

__all__ = ["blob_at", "missing_words"]

Array = npt.NDArray[np.float64]


def blob_at(frame: Frame, around_px: Array) -> str:
    """Reason of a blob that was left out at a place of the photo; "" where there is none."""
    place = shapely.make_valid(shapely.Polygon(around_px))
    for blob in frame.left_out:
        if place.intersects(shapely.make_valid(shapely.Polygon(blob.outline_px))):
            return blob.reason
    return ""


def missing_words(frame: Frame, around_px: Array) -> str:
    """What to say of a place, shape (N, 2) px of the photo, where nothing was called."""
    if not frame.shows(around_px):
        return "the photo, or its examined area, does not show the place"
    reason = blob_at(frame, around_px)
    return f"a blob there was left out: {reason}" if reason else "nothing was called there"
