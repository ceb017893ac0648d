"""The line at the foot: what to do now, where the pointer stands, what runs and its end."""

from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QHBoxLayout, QLabel, QProgressBar, QSizePolicy, QWidget

from ptmark.window.keys import KEYS, key_button
from ptmark.window.words import tr
from ptmark.window.workers import Workers

__all__ = ["Foot"]

_LOOK = tr("Wheel zooms, drag moves the photo, ‹F› fits it.")
_HINTS = {
    "Photo": _LOOK,
    "Scale": tr("Choose a reference, pick its points, type its length. {0}", _LOOK),
    "Indications": tr("‹Return› takes, ‹Del› drops, arrow keys go on. {0}", _LOOK),
    "Verdict": tr("Choose a finding to see it on the photo. {0}", _LOOK),
    "Record": tr(
        "‹Ctrl+S› saves record, image and PDF beside each other. ‹F7› goes to the next heading."
    ),
}


class Foot(QWidget):
    """Shows hints and running jobs; nothing here ever asks."""

    def __init__(self, workers: Workers, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._workers, self._usual = workers, ""
        self.hints = dict(_HINTS)
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(12, 4, 12, 4)
        self.hint = QLabel()
        self.hint.setWordWrap(True)
        self.hint.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._place = QLabel()
        self.drawn = QLabel()
        self.drawn.setAccessibleName(tr("Size of what is being drawn"))
        self.job = QLabel()
        self.bar = QProgressBar()
        self.bar.setFixedWidth(140)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Progress"))
        self.cancel_button = key_button(tr("Cancel"), "Ctrl+.", workers.cancel, window=self)
        row.addWidget(self.hint, 1)
        row.addWidget(self.drawn)
        row.addWidget(self.job)
        row.addWidget(self.bar)
        row.addWidget(self.cancel_button)
        row.addWidget(self._place)
        self.setFixedHeight(40)
        workers.changed.connect(self._refresh)
        self._refresh()

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """Leave out where the pointer stands, and be lower."""
        self._place.setVisible(not brief)
        self._row.setContentsMargins(12, 0 if brief else 4, 12, 0 if brief else 4)
        self.setFixedHeight(34 if brief else 40)

    def say(self, text: str) -> None:
        """Show what to do now; with no text what can be done in this step."""
        self.hint.setText(text or self._usual)

    def show_step(self, step: str) -> None:
        """Another step is shown; "" while there is no photo."""
        self._usual = KEYS.told(self.hints.get(step, ""))
        self.say("")

    def say_size(self, text: str) -> None:
        """Show the size of what is being drawn."""
        self.drawn.setText(text)

    def say_place(self, at: QPointF | None) -> None:
        """Show where the pointer stands, px of the photo; nothing once it has left."""
        self._place.setText("" if at is None else tr("{0:.1f}, {1:.1f} px", at.x(), at.y()))

    def _refresh(self) -> None:
        jobs = self._workers.shown
        for widget in (self.job, self.bar, self.cancel_button):
            widget.setVisible(bool(jobs))
        if jobs:
            self.job.setText(f"{jobs[-1].name} …")
            share = jobs[-1].share
            self.bar.setRange(0, 0 if share is None else 100)
            self.bar.setValue(0 if share is None else round(100 * share))
