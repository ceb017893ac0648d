"""The photos of the inspection in a row: which is at hand, and what each one still lacks."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QModelIndex, QSize, Qt
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QGuiApplication,
    QIcon,
    QPalette,
    QPixmap,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QBoxLayout,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QWidget,
)

from ptmark.window import dialogs
from ptmark.window.bits import key_button
from ptmark.window.drops import photos_of
from ptmark.window.edges import ListOf
from ptmark.window.memory import Memory
from ptmark.window.palette import tone
from ptmark.window.photos.growth_page import GrowthPage
from ptmark.window.session import Session
from ptmark.window.view.turning import Turning
from ptmark.window.words import tr

__all__ = ["PhotosStrip", "photo_lines"]

_THUMB = QSize(72, 54)
_TILE = QSize(208, 60)
_LOW = QSize(208, 30)  # without a picture, where there is little room


class PhotosStrip(QWidget):
    """A quiet row under the photo; there only where the inspection holds several."""

    def __init__(
        self, session: Session, turning: Turning, memory: Memory, window: QWidget
    ) -> None:
        super().__init__()
        self._session, self._turning = session, turning
        self._memory, self._window = memory, window
        self._thumbs: dict[str, QIcon] = {}
        self.list = _Row(turning.add)
        self.list.setAccessibleName(tr("Photos of this inspection"))
        self.list.itemClicked.connect(lambda item: turning.turn_to(self.list.row(item)))
        self.list.itemActivated.connect(lambda item: turning.turn_to(self.list.row(item)))
        self.list.model().rowsMoved.connect(self._moved)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 4, 8, 0)
        row.addWidget(self.list, 1)
        self.buttons = (
            key_button(tr("Before"), "Ctrl+PgUp", lambda: turning.step(-1), window=window,
                       tip=tr("The photo before")),
            key_button(tr("Next"), "Ctrl+PgDown", lambda: turning.step(1), window=window,
                       tip=tr("The next photo")),
            key_button(tr("Growth"), "", self._show_growth,
                       tip=tr("Length and area against minutes since the developer was dry")),
        )  # fmt: skip
        self.growth_page: GrowthPage | None = None
        self._ways = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        for button in self.buttons:
            self._ways.addWidget(button)
        row.addLayout(self._ways)
        self._low = False
        for signal in (session.changed, session.judged, turning.turned):
            signal.connect(self.refresh)
        self.refresh()

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """Low tiles without pictures, the buttons beside each other."""
        self._low, way = brief, QBoxLayout.Direction
        self._ways.setDirection(way.LeftToRight if brief else way.TopToBottom)
        for button in self.buttons:
            button.be_brief(brief)
        self.list.be_low(brief)
        self.refresh()

    def ask(self) -> None:
        """Ask which photos to add to the inspection."""
        self._turning.add(dialogs.ask_for_photos(self._window, self._memory.folder))

    def _show_growth(self) -> None:
        if self.growth_page is None:
            self.growth_page = GrowthPage(self._session, self._window)
        self.growth_page.ask()

    def _moved(self, _a: QModelIndex, start: int, _end: int, _b: QModelIndex, to: int) -> None:
        inspection = self._session.inspection
        if inspection is not None and to != start:
            # Qt counts the place before the row is taken out.
            inspection.photos.move(start, to - 1 if to > start else to)

    def refresh(self) -> None:
        """Show the photos as they stand."""
        inspection = self._session.inspection
        infos = inspection.photos.infos if inspection is not None else []
        self.setVisible(len(infos) > 1)
        self._tint()
        for button in self.buttons:
            button.setEnabled(len(infos) > 1)
        if inspection is None or len(infos) < 2:
            self.list.clear()
            return
        while self.list.count() > len(infos):
            self.list.takeItem(self.list.count() - 1)
        while self.list.count() < len(infos):
            self.list.addItem(QListWidgetItem())
        lines = photo_lines(self._session)
        for number, (info, line) in enumerate(zip(infos, lines, strict=True)):
            item = self.list.item(number)
            item.setSizeHint(_LOW if self._low else _TILE)
            item.setIcon(QIcon() if self._low else self._thumb(info.sha256))
            item.setText(f"{number + 1}  {info.path.name}" + ("" if self._low else f"\n{line}"))
            item.setToolTip(
                tr("Photo {0} of {1}, {2}: {3}", number + 1, len(infos), info.path.name, line)
            )
            item.setData(Qt.ItemDataRole.AccessibleTextRole, item.toolTip())
        self.list.setCurrentRow(inspection.photos.number)
        self.list.scrollToItem(self.list.currentItem())

    def _tint(self) -> None:
        """Give the tile of the photo at hand the contrast of text, on light and dark."""
        palette = QGuiApplication.palette()
        accent = tone("accent", palette)
        if self.list.palette().color(QPalette.ColorRole.Highlight) != accent:
            palette.setColor(QPalette.ColorRole.Highlight, accent)
            ground = palette.color(QPalette.ColorRole.Base)
            palette.setColor(QPalette.ColorRole.HighlightedText, ground)
            self.list.setPalette(palette)

    def _thumb(self, sha256: str) -> QIcon:
        levels = self._turning.previews.get(sha256)
        if sha256 not in self._thumbs and levels is not None:
            small = levels.levels[-1].image.scaled(
                _THUMB,
                Qt.AspectRatioMode.KeepAspectRatio,
                Qt.TransformationMode.SmoothTransformation,
            )
            self._thumbs[sha256] = QIcon(QPixmap.fromImage(small))
        return self._thumbs.get(sha256, QIcon())


class _Row(ListOf):
    """Tiles side by side, put in order by dragging; photos dropped here are added."""

    def __init__(self, add: Callable[[list[Path]], None]) -> None:
        super().__init__()
        self._add = add
        self.setFlow(QListWidget.Flow.LeftToRight)
        self.setWrapping(False)
        self.setIconSize(_THUMB)
        self.be_low(low=False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        self.setWordWrap(True)

    def be_low(self, low: bool) -> None:  # noqa: FBT001 - on or off
        """As high as low tiles, or as tiles with a picture and the bar that scrolls them."""
        self.setFixedHeight(_LOW.height() + 2 if low else _TILE.height() + 22)
        off, usual = Qt.ScrollBarPolicy.ScrollBarAlwaysOff, Qt.ScrollBarPolicy.ScrollBarAsNeeded
        self.setHorizontalScrollBarPolicy(off if low else usual)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: N802 - Qt's name
        self._files(event) or super().dragEnterEvent(event)

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:  # noqa: N802 - Qt's name
        self._files(event) or super().dragMoveEvent(event)

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: N802 - Qt's name
        if self._files(event):
            self._add(photos_of(event))
        else:
            super().dropEvent(event)

    def _files(self, event: QDropEvent) -> bool:
        if not photos_of(event):
            return False
        event.setDropAction(Qt.DropAction.CopyAction)
        event.accept()
        return True


def photo_lines(session: Session) -> list[str]:
    """What each photo of the set lacks, or how it stands, in a few words."""
    inspection = session.inspection
    if inspection is None or inspection.photo is None:
        return []
    verdicts = session.judgement.by_photo
    made = []
    for number, state in enumerate(inspection.state.photos):
        unseen = sum(m.standing == "suggested" for m in state.marked)
        taken = sum(m.standing == "taken" for m in state.marked)
        verdict = verdicts[number] if number < len(verdicts) else None
        if state.reference is None:
            made.append(
                tr("scale missing") if taken or unseen else tr("no scale, nothing marked")
            )
        elif unseen:
            made.append(tr("{0} to look at, {1} taken", unseen, taken))
        else:
            made.append(tr("{0} taken", taken) + (f", {tr(verdict)}" if verdict else ""))
    return made
