"""The examined area: refused where nothing, or not what was meant, would lie in it."""

from collections.abc import Sequence

from ptmark.errors import UsageError
from ptmark.photo import PhotoInfo

__all__ = ["check_area"]


def check_area(corners_px: Sequence[tuple[float, float]], info: PhotoInfo) -> None:
    """Refuse an area that would leave out what is to be examined, without a word.

    Parameters
    ----------
    corners_px : sequence of (x, y), px
        In order, once round; at least three.
    info : PhotoInfo
        Of the photo it is marked in.

    Raises
    ------
    UsageError
        If its sides cross, so that part of what they go round lies outside, or if nothing of
        the photo lies in it.
    """
    import shapely

    where = "examined area"
    area = shapely.Polygon(corners_px)
    if not area.is_valid:
        raise UsageError(
            "its sides cross or touch",
            where=where,
            mend="give its corners in order, once round what is examined",
        )
    frame = shapely.box(-0.5, -0.5, info.width - 0.5, info.height - 0.5)
    if area.intersection(frame).area < 1.0:
        raise UsageError(
            f"nothing of the photo of {info.width} x {info.height} px lies in it",
            where=where,
            mend="give its corners in pixels of the upright photo",
        )
