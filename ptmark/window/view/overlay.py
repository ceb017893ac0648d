"""Marks and guides as tiles of picture that panning only moves.

A tile is painted once for each scale. Those round the view are painted ahead, a little in each
frame, so that panning seldom comes upon one that is not there. One that is not is painted over
the next frames, so that no frame waits for it; what changes or zooms is there at once.
"""

from collections.abc import Callable, Iterator
from math import ceil, floor, inf
from time import thread_time

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPixmap

from ptmark.window.view.guides import Guides
from ptmark.window.view.marks import Mark
from ptmark.window.view.rings import Rings
from ptmark.window.view.spread import Spread
from ptmark.window.view.viewport import Viewport

__all__ = ["Overlay"]

_SIDE = 256  # widget px of a tile
_ROUND = 1  # tiles round the view that are painted ahead
_KEPT = 3  # tiles round the view beyond which they are let go of
_SHARE_S = 0.004  # of a frame's time for tiles ahead
_IN_SIGHT_S = 0.006  # of a frame's time for tiles that panning brought into sight
_TOWARD = 20  # frames of the same step that tiles ahead are chosen for

_Pieces = Iterator[None]
Place = tuple[int, int]  # of a tile, counted in tiles from the photo's origin


class _Tile:
    """One tile, painted piece by piece; ``picture`` is None where nothing shows in it."""

    def __init__(self, ratio: float, font: QFont, pieces: _Pieces | None) -> None:
        self.picture: QPixmap | None = None
        self.done = pieces is None
        if pieces is not None:
            self.picture = QPixmap(round(_SIDE * ratio), round(_SIDE * ratio))
            self.picture.setDevicePixelRatio(ratio)
            self.picture.fill(Qt.GlobalColor.transparent)
            self._rest, self._font = pieces, font

    def go_on(self, painter: QPainter, until: float) -> bool:
        """Paint on until a time of this thread; tells whether it is done."""
        if not self.done and self.picture is not None:
            painter.begin(self.picture)
            painter.setFont(self._font)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            try:
                self.done = all(thread_time() < until for _ in self._rest)
            finally:
                painter.end()
        return self.done


class Overlay:
    """Paints anew only where marks, guides, selection or zoom call for it.

    ``painted`` counts the frames that had to paint a tile in sight, ``ahead`` the tiles that
    were ready before they came into sight; ``rests`` is whether some are still to be painted.
    """

    def __init__(self) -> None:
        self._rings = Rings()
        # At work only within `_Tile.go_on`: Qt wants a painter ended before its picture goes.
        self._painter = QPainter()
        self._tiles: dict[Place, _Tile] = {}
        self._spread: Spread | None = None
        self._key: tuple[object, ...] = ()
        self._marks: list[Mark] = []
        self._origin = QPointF()  # of the photo, in the frame before
        self.painted = self.ahead = 0
        self.rests = False

    def draw(
        self,
        painter: QPainter,
        port: Viewport,
        marks: list[Mark],
        selected: frozenset[str],
        ratio: float,
        guides: Guides | None = None,
    ) -> None:
        """Draw the marks, and the guides under them, where the photo lies now."""
        below = guides.content if guides else ()
        self.rests = False
        if not marks and not any(below):
            return
        key = (selected, port.scale, ratio, port.turn, port.bend, *below)
        until = thread_time() + _IN_SIGHT_S
        if marks is not self._marks or key != self._key:
            until, self._key = inf, key
            self._lay_anew(port, marks, selected, painter.font())
        step, self._origin = port.origin - self._origin, QPointF(port.origin)
        # on whole px of the screen, so that no seam shows between tiles
        x, y = (round(v * ratio) / ratio for v in (port.origin.x(), port.origin.y()))
        origin, view = QPointF(x, y), QRectF(QPointF(-x, -y), port.widget)

        def tile(at: Place) -> _Tile:
            if at not in self._tiles:
                pieces = self._pieces(_area(at), port, guides)
                self._tiles[at] = _Tile(ratio, painter.font(), pieces)
            return self._tiles[at]

        in_sight = _places(view, 0)
        missing = [at for at in in_sight if at not in self._tiles or not self._tiles[at].done]
        self.painted += bool(missing)
        self._paint_missing(tile, missing, until)
        for at in in_sight:
            if at in self._tiles and (picture := self._tiles[at].picture) is not None:
                painter.drawPixmap(origin + _area(at).topLeft(), picture)
        if not self.rests:
            self._paint_ahead(tile, view, step)

    def _paint_missing(
        self, tile: Callable[[Place], _Tile], missing: list[Place], until: float
    ) -> None:
        """Paint on in sight for as long as a frame may take."""
        for at in missing:
            self.rests = not tile(at).go_on(self._painter, until) or thread_time() > until
            if self.rests:
                break

    def _lay_anew(
        self, port: Viewport, marks: list[Mark], selected: frozenset[str], font: QFont
    ) -> None:
        """Begin with other marks, or with the same at another scale."""
        if marks is not self._marks:
            self._rings.keep_only(mark.outline for mark in marks)
        self._marks, self._tiles = marks, {}
        way = port.shifted(-port.origin, port.widget).transform()
        self._spread = Spread(marks, selected, way, self._rings, font)

    def _pieces(self, area: QRectF, port: Viewport, guides: Guides | None) -> _Pieces | None:
        """What paints a tile; None where nothing is to be seen in it."""
        spread = self._spread
        below = guides is not None and any(guides.content)
        if spread is None or (spread.empty(area) and not below):
            return None

        def made() -> _Pieces:
            if guides is not None and below:
                guides.paint(
                    self._painter, port.shifted(-port.origin - area.topLeft(), area.size())
                )
                yield
            yield from spread.pieces(self._painter, area)

        return made()

    def _paint_ahead(self, tile: Callable[[Place], _Tile], view: QRectF, step: QPointF) -> None:
        """Paint on at what comes into sight next, and let go of what lies far off."""
        until, toward = thread_time() + _SHARE_S, view.center() - step * _TOWARD
        wanted = set(_places(view, _ROUND)) - set(_places(view, 0))
        for at in sorted(
            wanted, key=lambda one: (_area(one).center() - toward).manhattanLength()
        ):
            if at in self._tiles and self._tiles[at].done:
                continue
            self.rests = thread_time() > until or not tile(at).go_on(self._painter, until)
            if self.rests:
                break
            self.ahead += 1
        kept = set(_places(view, _KEPT))
        for at in self._tiles.keys() - kept:
            del self._tiles[at]


def _area(at: Place) -> QRectF:
    """Where a tile lies, widget px from the photo's origin."""
    return QRectF(at[0] * _SIDE, at[1] * _SIDE, _SIDE, _SIDE)


def _places(view: QRectF, more: int) -> list[Place]:
    """Tiles that a view touches, and so many more on each side."""
    xs = range(floor(view.left() / _SIDE) - more, ceil(view.right() / _SIDE) + more)
    ys = range(floor(view.top() / _SIDE) - more, ceil(view.bottom() / _SIDE) + more)
    return [(x, y) for y in ys for x in xs]
