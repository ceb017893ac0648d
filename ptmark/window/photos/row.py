"""The row under the photo: undo and redo, and how the photo is shown."""

from collections.abc import Callable

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from ptmark.window.bits import key_button
from ptmark.window.keys import KEYS, KeyButton
from ptmark.window.keys_page import keys_button
from ptmark.window.session import Session
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.view.seeing import Seeing
from ptmark.window.words import from_core, tr

__all__ = ["PhotoRow"]


class PhotoRow(QWidget):
    """Buttons that are of use in every step."""

    def __init__(
        self, session: Session, view: PhotoView, seeing: Seeing, window: QWidget
    ) -> None:
        super().__init__()
        self._session, self._seeing = session, seeing
        self._more: list[QPushButton] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 4, 8, 4)
        column.setSpacing(4)
        row = QHBoxLayout()
        self._row_of_ways = self._ways(window)
        self._all_ways = QWidget()
        self._all_ways.setLayout(self._row_of_ways)
        self.more_button = key_button(tr("More"), "", self._turn_ways, tip=tr("Ways of seeing"))
        self.more_button.setCheckable(True)
        self.more_button.hide()
        column.addWidget(self._all_ways)
        column.addLayout(row)
        self.undo_button = key_button(tr("Undo"), "Ctrl+Z", session.undo, window=window)
        self.redo_button = key_button(tr("Redo"), "Ctrl+Shift+Z", session.redo, window=window)
        self._view_buttons = [
            key_button(tr("Fit"), "F", view.fit),
            key_button("1:1", "1", view.pixel_for_pixel),
            key_button(tr("Nearer"), "+", lambda: view.zoom(1.25)),
            key_button(tr("Farther"), "-", lambda: view.zoom(0.8)),
        ]
        self.unit_button = key_button(
            tr("mm / in"),
            "U",
            session.turn_unit,
            window=window,
            tip=tr("Show lengths in the other unit"),
        )
        row.addWidget(self.undo_button)
        row.addWidget(self.redo_button)
        row.addStretch(1)
        row.addWidget(self.unit_button)
        for button in self._view_buttons:
            row.addWidget(button)
        row.addWidget(self.more_button)
        session.changed.connect(self.refresh)
        seeing.changed.connect(self.refresh)
        session.photo_shown.connect(lambda _: self.refresh())
        self.refresh()

    def add_way(
        self, text: str, key: str, call: Callable[[], object], tip: str, window: QWidget
    ) -> None:
        """One more way of seeing, for any photo."""
        button = key_button(text, key, call, tip=tip, window=window)
        self._row_of_ways.insertWidget(self._row_of_ways.count() - 2, button)
        self._more.append(button)
        self.refresh()

    def _ways(self, window: QWidget) -> QHBoxLayout:
        """Ways of seeing the photo, one key each."""
        seeing = self._seeing
        self.ways = {}
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 0)
        for name, text, key, call, tip in (
            (
                "grid",
                tr("Grid"),
                "G",
                seeing.turn_grid,
                tr("Grid and scale bar on the surface"),
            ),
            ("turn", tr("Turn"), "R", seeing.turn, tr("Turn the view by a quarter, clockwise")),
            (
                "above",
                tr("From above"),
                "V",
                seeing.turn_above,
                tr("The surface seen from above"),
            ),
            ("dye", tr("Dye contrast"), "C", seeing.turn_dye, tr("The dye's contrast alone")),
        ):
            button = key_button(text, key, call, tip=tip, window=window)
            button.setCheckable(name != "turn")
            self.ways[name] = button
            row.addWidget(button)
        row.addStretch(1)
        self.keys_button = keys_button(self._session, window)
        row.addWidget(self.keys_button)
        return row

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """One row, keys in the tips alone; the ways of seeing come by "More"."""
        for button in self.findChildren(KeyButton):
            button.be_brief(brief)
        self.more_button.setVisible(brief)
        self._turn_ways()

    def _turn_ways(self) -> None:
        shows = self.more_button.isHidden() or self.more_button.isChecked()
        self._all_ways.setVisible(shows)

    def refresh(self) -> None:
        """Show what undo and redo would do, and only what is of use."""
        inspection = self._session.inspection
        undo = from_core(inspection.undo_name) if inspection else ""
        redo = from_core(inspection.redo_name) if inspection else ""
        self.undo_button.setEnabled(bool(undo))
        self.redo_button.setEnabled(bool(redo))
        self.undo_button.setToolTip(
            tr("Undo: {0} ({1})", undo, KEYS.shown("Ctrl+Z")) if undo else tr("Nothing to undo")
        )
        self.redo_button.setToolTip(
            tr("Redo: {0} ({1})", redo, KEYS.shown("Ctrl+Shift+Z"))
            if redo
            else tr("Nothing to redo")
        )
        for button in self._view_buttons:
            button.setEnabled(self._session.levels is not None)
        there = self._session.has_photo
        for more in self._more:
            more.setEnabled(there)
        for name, button in self.ways.items():
            flat = self._seeing.has_plane if name == "above" else self._seeing.has_surface
            scaled = name in {"turn", "dye"} or flat
            button.setEnabled(there and scaled)
            if button.isCheckable():
                button.setChecked(getattr(self._seeing, name))
