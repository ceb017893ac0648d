"""What an earlier inspection brought into this one: named, marked, confirmed by a person."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFormLayout, QLabel, QWidget

from ptmark.window.bits import CommitEdit, Notice, key_button
from ptmark.window.session import Session
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.inspection import State

__all__ = ["COUNTED", "KeptNotice", "mark_kept"]

_MOST_NAMED = 6
COUNTED = "serial_number"  # the one field that is not kept, but counted on


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
        state = self._session.state
        if state is None or self._session.reviewing:
            self.say("")
            return
        said, kept = [], _kept_names(state)
        if COUNTED in state.carried:
            serial = state.fields.get(COUNTED, "")
            said.append(
                tr(
                    "Serial {0} was counted on from the part before: read it on the part.",
                    serial,
                )
            )
        if kept:
            more = len(kept) - _MOST_NAMED
            rest = tr(" and {0} more, marked “kept”", more) if more > 0 else ""
            said.append(
                tr(
                    "Kept from an earlier inspection: {0}{1}. Look whether it holds for this "
                    "part.",
                    ", ".join(kept[:_MOST_NAMED]),
                    rest,
                )
            )
        self.say(" ".join(said))

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


def _kept_names(state: "State") -> list[str]:
    """What came from an earlier inspection as it was, in words."""
    from ptmark.record import FIELDS

    carried = state.carried - {COUNTED}
    named = [tr(field.label) for field in FIELDS if field.key in carried]
    if "profile" in carried:
        named.insert(0, tr("Criteria {0}", state.profile))
    if "thickness_mm" in carried:
        named.insert(0, tr("Thickness"))
    return named


def mark_kept(
    form: QFormLayout, edit: CommitEdit, label: str, *, kept: bool, counted: bool = False
) -> None:
    """Mark a field as carried over, or ``counted`` on, for the eye and for a screen reader."""
    marked = tr("{0} · counted on", label) if counted else tr("{0} · kept", label)
    said = tr("counted on from the part before: read it on the part")
    if not counted:
        said = tr("kept from an earlier inspection")
    shown = form.labelForField(edit)
    if isinstance(shown, QLabel):
        shown.setText(marked if kept else label)
    edit.setAccessibleDescription(said if kept else "")
