"""From the inspection to what the photo view paints: outlines, area and reference."""

from typing import Any

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPolygonF

from ptmark.window.marks import Mark
from ptmark.window.session import Session

__all__ = ["Shown"]


class Shown:
    """Keeps the polygons of outlines that have not changed."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._kept: dict[int, tuple[Any, QPolygonF]] = {}

    def marks(self, *, left_out: bool, hidden: str = "") -> list[Mark]:
        """The outlines to paint; ``hidden`` is the one that a tool paints itself."""
        inspection = self._session.inspection
        if inspection is None:
            return []
        fresh: dict[int, tuple[Any, QPolygonF]] = {}
        made = [
            Mark(one.id, self._polygon(one.outline_px, fresh), one.standing)
            for one in inspection.state.marked
            if one.id != hidden
        ]
        if left_out:
            made += [
                Mark(f"left {number}", self._polygon(blob.outline_px, fresh), "left out")
                for number, blob in enumerate(inspection.left_out)
            ]
        self._kept = fresh
        return made

    def _polygon(self, outline: Any, fresh: dict[int, tuple[Any, QPolygonF]]) -> QPolygonF:  # noqa: ANN401
        kept = self._kept.get(id(outline))
        if kept is None:
            kept = (outline, QPolygonF([QPointF(x, y) for x, y in outline.tolist()]))
        fresh[id(outline)] = kept
        return kept[1]

    def area(self) -> QPolygonF | None:
        state = self._session.state
        if state is None or state.area_px is None:
            return None
        return QPolygonF([QPointF(x, y) for x, y in state.area_px])

    def sketch(self, points_mm: tuple[tuple[float, float], ...]) -> QPolygonF | None:
        """What shows a finding (a line, a window), from mm on the surface to photo px."""
        inspection = self._session.inspection
        if inspection is None or inspection.surface is None or len(points_mm) < 2:
            return None
        import numpy as np

        points = inspection.surface.to_px(np.array(points_mm, float))
        return QPolygonF([QPointF(x, y) for x, y in points.tolist()])

    def reference(self) -> list[QPolygonF]:
        """The scale reference as polygons: corners in fours, ends in pairs."""
        inspection = self._session.inspection
        if inspection is None or inspection.surface is None:
            return []
        points = [QPointF(x, y) for x, y in inspection.surface.reference_px.tolist()]
        size = 2 if inspection.surface.reference in {"line", "two lines"} else 4
        return [QPolygonF(points[i : i + size]) for i in range(0, len(points), size)]
