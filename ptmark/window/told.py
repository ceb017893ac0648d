"""Says at the foot what was done, where the page that tells it is not shown."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from ptmark.window.session import STEPS
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.window.main_window import MainWindow

__all__ = ["Told"]


class Told(QObject):
    """Follows saving, keeping in the archive and the part that is begun."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._session, self._foot = window.session, window.foot
        self._saved = ""
        window.saving.saved.connect(self._on_saved)
        window.record_step.archive.told.connect(self._on_kept)
        window.part_form.again.taken.connect(self._foot.say)

    def _on_saved(self, paths: list[Path]) -> None:
        names = ", ".join(path.name for path in paths)
        self._saved = tr("Saved {0} in {1}", names, paths[0].parent)
        self._say(self._saved)

    def _on_kept(self, said: str) -> None:
        before = self._foot.hint.text()
        self._say(f"{before}. {said}" if before == self._saved else said)

    def _say(self, said: str) -> None:
        if self._session.step != STEPS[-1]:
            self._foot.say(said)
