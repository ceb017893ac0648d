"""Which part it is, asked first: its number brings what its last inspection had."""

from functools import partial

from PySide6.QtWidgets import QFormLayout, QVBoxLayout, QWidget

from ptmark.window.bits import CommitEdit, heading
from ptmark.window.kept_fields import COUNTED, mark_kept
from ptmark.window.last_of_part import LastOfPart, PartOffer
from ptmark.window.part_again import PartAgain
from ptmark.window.session import Session
from ptmark.window.words import inside, tr

__all__ = ["PartForm"]

_ASKED = (("part_number", tr("Part number")), ("serial_number", tr("Serial number")))


class PartForm(QWidget):
    """The same fields as on the Record page, where the work begins."""

    def __init__(self, session: Session, last: LastOfPart, window: QWidget) -> None:
        super().__init__()
        self._session = session
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Part")))
        self.again = PartAgain(last, window)
        self.again.serial_asked.connect(self._ask_serial)
        column.addWidget(self.again)
        form = self._form = QFormLayout()
        column.addLayout(form)
        self.fields: dict[str, CommitEdit] = {}
        for key, label in _ASKED:
            edit = CommitEdit()
            edit.setAccessibleName(label)
            edit.setPlaceholderText(tr("as marked on the part"))
            edit.committed.connect(partial(self._fill_in, key, label))
            form.addRow(label, edit)
            self.fields[key] = edit
        self.part_offer = PartOffer(session, last)
        column.addWidget(self.part_offer)
        session.changed.connect(self.refresh)

    def refresh(self) -> None:
        """Show what the fields hold."""
        state = self._session.state
        self.setVisible(not self._session.reviewing)
        if state is not None:
            for key, label in _ASKED:
                edit = self.fields[key]
                edit.show_text(state.fields.get(key, ""))
                kept, counted = key in state.carried, key == COUNTED
                mark_kept(self._form, edit, label, kept=kept, counted=counted)

    def _fill_in(self, key: str, label: str, text: str) -> None:
        self._session.fill_in(tr("fill in {0}", inside(label)), {key: text})

    def _ask_serial(self) -> None:
        self._session.go("Photo")
        self.fields["serial_number"].setFocus()
