"""The examined area: refused where not what was meant would lie in it; what lies outside."""

from collections.abc import Sequence

import numpy as np

from ptmark.dye import Remark
from ptmark.dye.quick import inside_polygon
from ptmark.errors import UsageError
from ptmark.inspection.state import State
from ptmark.photo import PhotoInfo

__all__ = ["check_area", "outside_area", "outside_remark"]


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


def outside_area(state: State) -> list[str]:
    """Letters of what counts though no point of it lies in the examined area.

    A look calls nothing there (`ptmark.dye.suggest`); an area marked afterwards, or
    a hand, leaves such ones standing.
    """
    if state.area_px is None:
        return []
    area = np.array(state.area_px, float)
    counted = [one for one in state.marked if one.standing != "dropped"]
    return [one.id for one in counted if not inside_polygon(one.outline_px, area).any()]


def outside_remark(state: State) -> Remark | None:
    """What is to be said of those outside the examined area; None where there are none."""
    names = outside_area(state)
    if not names:
        return None
    return Remark(
        f"Outside the examined area, and judged all the same: {', '.join(names)}.",
        "Look again, drop what was not to be examined, or make the area larger.",
    )
