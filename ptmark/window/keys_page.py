"""The list of all keys: where each is shown, and a line to change it; a window that waits."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QHBoxLayout,
    QHeaderView,
    QKeySequenceEdit,
    QLayout,
    QLineEdit,
    QTableWidget,
    QVBoxLayout,
    QWidget,
)

from ptmark.errors import UsageError
from ptmark.window.bits import Notice, as_list, quiet
from ptmark.window.cells import Cell
from ptmark.window.edges import TableOf
from ptmark.window.keys import KEYS, Deed, KeyButton, key_button
from ptmark.window.reading_order import step_focus
from ptmark.window.roles import Role, tell_role
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["KeysPage", "keys_button"]


class KeysPage(QWidget):
    """Changes hold at once and at the next start."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        tell_role(self, Role.Window)
        self.setWindowTitle(tr("Keys – ptmark"))
        self._session = session
        self._rows: list[Deed] = []
        self.table = TableOf(0, 3)
        self.table.setHorizontalHeaderLabels([tr("What it does"), tr("Where"), tr("Key")])
        self.table.setAccessibleName(tr("Keys"))
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.table.setSelectionMode(QTableWidget.SelectionMode.SingleSelection)
        as_list(self.table)
        head = self.table.horizontalHeader()
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        head.setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(2, QHeaderView.ResizeMode.ResizeToContents)
        self.edit = QKeySequenceEdit()
        tell_role(self.edit, Role.Grouping)
        self.edit.setMaximumSequenceLength(1)
        for one in (self.edit, *self.edit.findChildren(QLineEdit)):
            one.setAccessibleName(tr("New key for what is chosen in the list"))
        self.use_button = key_button(tr("Use this key"), "", self.use)
        self.usual_button = key_button(tr("The usual key again"), "", self.back)
        self.all_button = key_button(tr("All usual keys again"), "", self._back_all)
        self.close_button = key_button(tr("Close"), "Escape", self.close)
        self.notice = Notice()
        self._lay_out()
        self.table.itemSelectionChanged.connect(self._on_chosen)
        self.edit.keySequenceChanged.connect(lambda _: self._enable())
        KEYS.changed.connect(self.refresh)
        self.resize(QSize(720, 620).boundedTo(self.screen().availableSize()))
        self.refresh()

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: N802, FBT001 - Qt's
        return step_focus(self, forward=forward) or super().focusNextPrevChild(forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Esc closes, but in the field for a new key, which takes it as one."""
        if event.key() == Qt.Key.Key_Escape:
            self.close()
        else:
            super().keyPressEvent(event)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        column.addWidget(
            quiet(tr("Choose a line, press the new key in the field below, and use it."))
        )
        column.addWidget(self.table, 1)
        row = QHBoxLayout()
        row.addWidget(self.edit, 1)
        for button in (self.use_button, self.usual_button, self.all_button, self.close_button):
            row.addWidget(button)
        column.addLayout(row)
        column.addWidget(self.notice)
        column.addWidget(
            quiet(
                tr(
                    "Arrow keys, Tab and Space keep their places: they steer the pointer, the "
                    "focus and the tool. In a line of text letters are letters."
                )
            )
        )

    @property
    def chosen(self) -> Deed | None:
        """What is chosen in the list."""
        row = self.table.currentRow()
        return self._rows[row] if 0 <= row < len(self._rows) else None

    def use(self) -> None:
        """Use the key that was pressed for what is chosen."""
        if (deed := self.chosen) is not None:
            self._try(deed.usual, self.edit.keySequence().toString())

    def back(self) -> None:
        """The usual key again for what is chosen."""
        if (deed := self.chosen) is not None:
            self._try(deed.usual, deed.usual)

    def _back_all(self) -> None:
        KEYS.reset_all()
        self._keep(tr("All keys are the usual ones."))

    def _try(self, usual: str, key: str) -> None:
        try:
            KEYS.put(usual, key)
        except UsageError as exc:
            self.notice.say_error(exc)
            return
        self._keep(tr("{0} it is.", KEYS.shown(usual)))

    def _keep(self, said: str) -> None:
        self.notice.say(said, "done")
        self._session.workers.start(
            "",
            lambda _token: KEYS.save(),
            failed=lambda exc: self.notice.say(tr("The keys could not be kept: {0}", exc)),
        )

    def refresh(self) -> None:
        """Show every key as it is now."""
        kept = self.chosen
        self._rows = KEYS.deeds()
        self.table.setRowCount(len(self._rows))
        for row, deed in enumerate(self._rows):
            own = tr("{0} (changed)", KEYS.shown(deed.usual))
            key = own if KEYS.is_own(deed.usual) else KEYS.shown(deed.usual)
            for column, text in enumerate((deed.label, deed.where, key)):
                self.table.setItem(row, column, Cell(text))
        at = next((n for n, d in enumerate(self._rows) if d == kept), 0)
        self.table.selectRow(at)
        self._enable()

    def _on_chosen(self) -> None:
        deed = self.chosen
        if deed is not None:
            self.edit.setKeySequence(QKeySequence(KEYS.of(deed.usual)))
        self.notice.say("")
        self._enable()

    def _enable(self) -> None:
        deed = self.chosen
        pressed = self.edit.keySequence()
        self.use_button.setEnabled(
            deed is not None
            and pressed.count() == 1
            and pressed.toString() != KEYS.of(deed.usual)
        )
        self.usual_button.setEnabled(deed is not None and KEYS.is_own(deed.usual))


def _make_all(window: QWidget) -> None:
    """Make the pages that are else made when first looked at: they have keys, too."""
    archive = getattr(window, "archive", None)
    for page in ("found", "record", "history"):
        getattr(archive, page, None)


def keys_button(session: Session, window: QWidget) -> KeyButton:
    """The button that opens the list, which is made when it is first asked for."""
    made: list[KeysPage] = []

    def show() -> None:
        if not made:
            _make_all(window)
            made.append(KeysPage(session, window))
        made[0].refresh()
        made[0].show()
        made[0].activateWindow()

    return key_button(
        tr("Keys"), "F1", show, tip=tr("All keys, and how to change them"), window=window
    )
