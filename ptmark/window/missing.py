"""What a record still lacks, and the way to each field of it."""

from collections.abc import Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from ptmark.window.bits import CommitEdit, Notice, key_button
from ptmark.window.reading_order import reveal
from ptmark.window.words import tr

__all__ = ["Missing"]


class Missing(Notice):
    """Names what is missing and leads from one such field to the next.

    ``fields`` holds the lines by their key, in the order of the page; it may fill later.
    """

    def __init__(self, fields: Mapping[str, CommitEdit], window: QWidget) -> None:
        super().__init__()
        self._fields, self._lacks = fields, list[str]()
        self.button = key_button(tr("Next missing field"), "F8", self.lead, window=window)
        self.put_under(self.button)

    def show_missing(self, filled: Mapping[str, str], unsaid: list[str]) -> None:
        """Say which needed fields are empty, and what lies outside the limits unexplained."""
        from ptmark.record import FIELDS

        lacks = [f for f in FIELDS if f.needed and not filled.get(f.key, "").strip()]
        self._lacks = [f.key for f in lacks]
        said = []
        if lacks:
            said.append(tr("Still missing: {0}.", ", ".join(tr(f.label) for f in lacks)))
        if unsaid:
            said.append(tr("Outside the limits, and not said why: {0}.", ", ".join(unsaid)))
        if said:
            said.append(tr("It can be saved all the same."))
        self.button.setVisible(bool(lacks))
        self.say(" ".join(said))

    def lead(self) -> None:
        """Give the keyboard to the next empty one after where it is, else to the first."""
        keys = list(self._fields)
        at = next((n for n, key in enumerate(keys) if self._fields[key].hasFocus()), -1)
        if at >= 0:
            self._fields[keys[at]].commit()
        lacks = [key for key in (*keys[at + 1 :], *keys[: at + 1]) if key in self._lacks]
        if lacks:
            self._fields[lacks[0]].setFocus(Qt.FocusReason.TabFocusReason)
            reveal(self._fields[lacks[0]])
