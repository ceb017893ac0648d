"""The gallery: each inspection found as its photo made small, verdict sign, lengths ± U."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPalette
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.archive.model import GLANCE, HIT, HitModel, length_text
from ptmark.window.archive.pictures import SIDE, Glance, glance
from ptmark.window.edges import Framed
from ptmark.window.glyphs import draw_glyph
from ptmark.window.palette import tone
from ptmark.window.words import day, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Hit

__all__ = ["Gallery", "read_glances", "told_below"]

_WIDE, _HIGH = SIDE + 24, 282
_PICTURE = 168  # px high
_UNREAD = tr("the photo is missing or cannot be read: see “State of the archive …”")
_LINES = 3  # longest indications that are named


class Gallery(Framed, QListView):
    """A grid of them; arrow keys go on, Enter opens."""

    def __init__(self, model: HitModel) -> None:
        super().__init__()
        self.setModel(model)
        self.setAccessibleName(tr("Inspections found, as pictures; Enter opens"))
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setMovement(QListView.Movement.Static)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setUniformItemSizes(True)
        self.setSpacing(8)
        self.setMouseTracking(True)
        self.setItemDelegate(_Painter(self))


def read_glances(door: ArchiveDoor, model: HitModel, hits: "list[Hit]") -> None:
    """Read pictures and lengths of these hits beside the window; each shows when read."""

    def work(archive: "Archive", token: Token) -> None:
        for hit in hits:
            token.partial(glance(archive, hit))

    door.ask("", work, partial=model.show_glance)


class _Painter(QStyledItemDelegate):
    def sizeHint(  # noqa: N802 - Qt's name
        self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        return QSize(_WIDE, _HIGH)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        model = index.model()
        if isinstance(model, HitModel):
            model.want(index.row())
        hit, seen = index.data(HIT), index.data(GLANCE)
        unit = model.unit if isinstance(model, HitModel) else "mm"
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        palette: QPalette = option.palette
        box: QRect = option.rect.adjusted(2, 2, -2, -2)
        painter.save()
        painter.fillRect(box, palette.color(QPalette.ColorRole.AlternateBase))
        if chosen:
            painter.setPen(tone("accent", palette))
            for grown in range(3):
                painter.drawRect(box.adjusted(grown, grown, -grown - 1, -grown - 1))
        self._picture(
            painter, QRect(box.left() + 10, box.top() + 8, SIDE, _PICTURE), seen, palette
        )
        plain, pale = palette.color(QPalette.ColorRole.Text), tone("quiet", palette)
        metrics = QFontMetrics(painter.font())
        step = metrics.height() + 1
        left, y = box.left() + 10, box.top() + 8 + _PICTURE + 6
        sign = hit.verdict or "nothing"
        draw_glyph(painter, sign, QRectF(left, y, 15, 15), tone(_tone(sign), palette))
        name, more = told_below(hit)
        texts = [(name, plain, 20), (more, pale, 0)]
        texts += [(line, plain, 0) for line in _lengths(seen, unit)]
        for text, color, shift in texts:
            painter.setPen(color)
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, SIDE - shift)
            painter.drawText(QRect(left + shift, y, SIDE - shift, step), 0, shown)
            y += step
        painter.restore()

    def _picture(
        self, painter: QPainter, box: QRect, seen: Glance | None, palette: QPalette
    ) -> None:
        if seen is not None and seen.picture is not None:
            size = seen.picture.size().scaled(box.size(), Qt.AspectRatioMode.KeepAspectRatio)
            place = QRect(
                box.center().x() - size.width() // 2,
                box.center().y() - size.height() // 2,
                size.width(),
                size.height(),
            )
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(place, seen.picture)
            return
        painter.setPen(tone("quiet", palette))
        said = "…" if seen is None else _UNREAD
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(box, int(flags), said)


def _lengths(seen: Glance | None, unit: str) -> list[str]:
    if seen is None:
        return []
    if not seen.lengths:
        return [tr("no indications")]
    made = [
        f"{letter}  {length_text(mm, u, unit, least=least)}"
        for letter, mm, u, least in seen.lengths[:_LINES]
    ]
    if len(seen.lengths) > _LINES:
        made[-1] += tr("   and {0} more", len(seen.lengths) - _LINES)
    return made


def told_below(hit: "Hit") -> tuple[str, str]:
    """The two lines under a picture: what part it is, and how it was judged when."""
    name = (hit.part or tr("no part number")) + (f"  {hit.serial}" if hit.serial else "")
    more = f"{day(hit.examined_on)}  {tr(hit.verdict or 'no verdict')}"
    if hit.retest_of:
        more += tr(", retest")
    if hit.disposition:
        more += f", {tr(hit.disposition)}"
    return name, more


def _tone(verdict: str) -> str:
    return verdict if verdict in {"acceptable", "rejectable", "undecided"} else "quiet"
