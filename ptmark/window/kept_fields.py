"""What an earlier inspection brought into this one: named, marked, confirmed by a person."""

from PySide6.QtWidgets import QFormLayout, QLabel, QWidget

from ptmark.window.bits import CommitEdit, Notice, key_button
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["KeptNotice", "mark_kept"]

_MOST_NAMED = 6


class KeptNotice(Notice):
    """Says what was carried over, until it is confirmed, emptied or typed anew."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.hold_button = key_button(
            tr("They hold here too"), "", self._hold, tip=tr("Takes the marks away")
        )
        self.empty_button = key_button(
            tr("Empty them"), "", self._empty, tip=tr("Undo brings them back")
        )
        self.offer(self.hold_button, self.empty_button)
        session.changed.connect(self.refresh)

    def refresh(self) -> None:
        """Name what nobody has looked at yet."""
        from ptmark.record import FIELDS

        state = self._session.state
        if state is None or self._session.reviewing or not state.carried:
            self.say("")
            return
        named = [tr(field.label) for field in FIELDS if field.key in state.carried]
        if "profile" in state.carried:
            named.insert(0, tr("Criteria {0}", state.profile))
        if "thickness_mm" in state.carried:
            named.insert(0, tr("Thickness"))
        more = len(named) - _MOST_NAMED
        rest = tr(" and {0} more, marked “kept”", more) if more > 0 else ""
        self.say(
            tr(
                "Kept from an earlier inspection: {0}{1}. Look whether it holds for this part.",
                ", ".join(named[:_MOST_NAMED]),
                rest,
            )
        )

    def _hold(self) -> None:
        self._session.change(tr("confirm what was kept"), carried=frozenset())

    def _empty(self) -> None:
        state = self._session.state
        if state is not None:
            rest = {k: v for k, v in state.fields.items() if k not in state.carried}
            kept = state.carried
            self._session.change(
                tr("empty what was kept"),
                fields=rest,
                carried=frozenset(),
                profile="" if "profile" in kept else state.profile,
                thickness_mm=None if "thickness_mm" in kept else state.thickness_mm,
            )


def mark_kept(form: QFormLayout, edit: CommitEdit, label: str, *, kept: bool) -> None:
    """Mark a field as carried over, for the eye and for a screen reader."""
    shown = form.labelForField(edit)
    if isinstance(shown, QLabel):
        shown.setText(tr("{0} · kept", label) if kept else label)
    edit.setAccessibleDescription(tr("kept from an earlier inspection") if kept else "")
