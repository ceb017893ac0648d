"""The photo in words for a screen reader: which one, its scale, its indications, the chosen."""

from PySide6.QtCore import QEvent, QObject, QTimer

from ptmark.window.parts import Parts
from ptmark.window.step_state import step_states
from ptmark.window.view.view_keys import SAYS
from ptmark.window.words import tr

__all__ = ["PhotoWords"]


class PhotoWords(QObject):
    """Keeps name and description of the photo view.

    While the keyboard is in the photo the description waits: readers speak one that changes
    whole, and each change has been said by itself.
    """

    def __init__(self, window: Parts) -> None:
        super().__init__(window)
        self._session, self._view = window.session, window.view
        self._order = window.indications_step.table.order
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self.tell)
        session = self._session
        for signal in (session.changed, session.judged, session.selection_changed):
            signal.connect(self._soon.start)
        session.photo_shown.connect(lambda _: self._soon.start())
        self._view.installEventFilter(self)
        self.tell()

    def tell(self) -> None:
        """Say what is shown now."""
        inspection = self._session.inspection
        photo = inspection.photo if inspection else None
        name = tr("Photo {0}", photo.info.path.name) if photo else tr("Photo")
        if name != self._view.accessibleName():
            self._view.setAccessibleName(name)
        if not self._view.hasFocus():
            self._view.setAccessibleDescription(" ".join([*self._lines(), SAYS]))

    def _lines(self) -> list[str]:
        if not self._session.has_photo:
            return []
        states = step_states(self._session)
        lines = [
            tr("Indications: {0}.", states["Indications"][1]),
            tr("Scale: {0}.", states["Scale"][1]),
        ]
        chosen = self._session.selected
        if chosen:
            rows = {row.id: row.spoken for row in self._order.model.rows}
            said = rows.get(chosen[0], "") if len(chosen) == 1 else ", ".join(chosen)
            lines.insert(0, tr("Selected: {0}.", said))
        return lines

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.FocusOut:
            self._soon.start()
        return super().eventFilter(watched, event)
