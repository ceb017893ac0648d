"""Whether the rules have changed since the verdict shown was made."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from ptmark.errors import PtmarkError
from ptmark.window.words import tr

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from typing import Any

    from ptmark.criteria import Evaluation
    from ptmark.inspection import Inspection

__all__ = ["StaleWatch"]

_EVERY_MS = 1500


class StaleWatch(QObject):
    """Looks at the profile's file now and then; ``changed()`` when ``why`` has changed.

    ``at_hand`` gives the inspection and the verdict shown.
    """

    changed = Signal()

    def __init__(
        self,
        parent: QObject,
        at_hand: "Callable[[], tuple[Inspection | None, Evaluation | None]]",
    ) -> None:
        super().__init__(parent)
        self._at_hand = at_hand
        self.why = ""  # in words, "" while the verdict is that of the rules as they are now
        self._seen: object = None
        self._of: Evaluation | None = None
        self._began: tuple[Inspection, str, str] | None = None
        self._timer = QTimer(self, interval=_EVERY_MS)
        self._timer.timeout.connect(self.look)
        self._timer.start()

    def began_with(self, evaluation: "Mapping[str, Any] | None") -> None:
        """Hold the rules against those of the record that the inspection goes on with."""
        inspection, told = self._at_hand()[0], evaluation or {}
        self._began, self._seen = None, None
        if inspection is not None and "checksum" in told:
            self._began = inspection, str(told["profile"]), str(told["checksum"])
        self.look()

    def accept(self) -> None:
        """Take the rules as they are now, whatever a record was judged by."""
        self._began, self._seen = None, None

    def look(self) -> None:
        """Compare now; the file is only read where its time or size has changed."""
        why = self._found()
        if why is not None and why != self.why:
            self.why = why
            self.changed.emit()

    def _found(self) -> str | None:
        """Why the verdict is stale, "" where it is not, None where nothing has moved."""
        inspection, made = self._at_hand()
        if inspection is None or made is None or not inspection.state.profile:
            return ""
        from ptmark.criteria import load_profile, profile_stamp

        name = inspection.state.profile
        stamp = (name, profile_stamp(name))
        if stamp == self._seen and made is self._of:
            return None
        self._seen, self._of = stamp, made
        try:
            now = load_profile(name)
        except PtmarkError as exc:
            return tr(
                "The rules can no longer be used, so this verdict stands on none. {0}", exc
            )
        if now.name == made.profile and now.checksum != made.checksum:
            return tr("The rules have been changed since this verdict was made: it is stale.")
        if self._began is not None and self._began[0] is inspection:
            _, name, checksum = self._began
            if now.name == name and now.checksum != checksum:
                return tr(
                    "The rules have been changed since the record was judged; this verdict is "
                    "by the rules as they are now."
                )
        return ""
