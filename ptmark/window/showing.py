"""From the inspection to what the photo view paints: outlines, area and reference."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPolygonF

from ptmark.window.session import Session
from ptmark.window.view.marks import Mark
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.view.surface_grid import SurfaceGrid
from ptmark.window.words import format_length, tr

__all__ = ["Shown"]


class Shown:
    """Keeps the polygons of outlines that have not changed."""

    def __init__(self, session: Session, view: PhotoView) -> None:
        self._session, self._view = session, view
        self._kept: dict[int, tuple[Any, QPolygonF]] = {}
        self.grid = False

    def put_on(
        self, tool: str, left_out: Sequence[int], sketch: tuple[tuple[float, float], ...]
    ) -> None:
        """Give the view what there is to paint.

        ``tool`` is the name of the tool at work, ``left_out`` the numbers of the blobs to
        show, ``sketch`` what shows a finding, mm on the surface.
        """
        session, view, guides = self._session, self._view, self._view.guides
        surface = session.inspection.surface if session.inspection else None
        guides.area = self.area()
        shows_reference = session.step in {"Photo", "Scale"} and tool != "pick"
        guides.reference = self.reference() if shows_reference else []
        guides.sketch = self.sketch(sketch)
        guides.weld, guides.weld_says = self.weld()
        guides.edges = self.edges()
        guides.grid = None
        if self.grid and surface is not None:
            guides.grid = SurfaceGrid(surface, session.unit)
        hidden = tool.removeprefix("edit ") if tool.startswith("edit ") else ""
        marks = self.marks(left_out=left_out, hidden=hidden)
        view.show_marks(marks, frozenset(session.selected))

    def weld(self) -> tuple[QPolygonF | None, str]:
        """The marked course of the weld and its length in words."""
        inspection = self._session.inspection
        if inspection is None or inspection.state.weld_px is None:
            return None, ""
        from ptmark.inspection.handing_on import weld_of

        line = QPolygonF([QPointF(x, y) for x, y in inspection.state.weld_px])
        marked = replace(inspection.state, weld_length_mm=None)
        length, _ = weld_of(marked, inspection.surface)
        said = (
            tr("no scale yet") if length is None else format_length(length, self._session.unit)
        )
        return line, tr("weld, {0}", said)

    def edges(self) -> list[tuple[QPolygonF, str]]:
        """The marked lines of the part, each with its name."""
        state = self._session.state
        return [
            (QPolygonF([QPointF(x, y) for x, y in points]), name)
            for name, points in (state.edges_px if state else ())
        ]

    def marks(self, *, left_out: Sequence[int], hidden: str = "") -> list[Mark]:
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
        blobs = inspection.left_out
        made += [
            Mark(
                f"left {number}",
                self._polygon(blobs[number].outline_px, fresh),
                "area" if inspection.is_whole_area(blobs[number]) else "left out",
            )
            for number in left_out
            if number < len(blobs)
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
        surface, beside = inspection.surface, inspection.surface.beside
        shown = _polygons(surface.reference, surface.reference_px.tolist())
        if beside is not None:
            shown += _polygons(beside.reference, beside.reference_px.tolist())
        return shown


def _polygons(reference: str, points_px: list[list[float]]) -> list[QPolygonF]:
    points = [QPointF(x, y) for x, y in points_px]
    size = 2 if reference in {"line", "two lines", "pipe", "line on a pipe"} else 4
    return [QPolygonF(points[i : i + size]) for i in range(0, len(points), size)]
