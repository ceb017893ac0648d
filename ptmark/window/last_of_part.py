"""What the last inspection of the same part number had: looked up, offered, never just taken.

Looked for in the archive, where there is one, and among the records saved from this window.
"""

import json
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal

from ptmark.errors import PtmarkError
from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.window.archive.door import ArchiveDoor, has_archive
from ptmark.window.bits import Notice, key_button
from ptmark.window.saving import Saving
from ptmark.window.session import Session
from ptmark.window.words import day, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive
    from ptmark.record import Record

__all__ = ["LastOfPart", "PartOffer"]

_MOST_KEPT = 500  # part numbers whose last record's place is remembered
_MOST_NAMED = 6


@dataclass(frozen=True)
class Found:
    """The last record of a part number, and where it was found."""

    record: "Record"
    where: str


class LastOfPart(QObject):
    """Looks up the last inspection whenever another part number is entered.

    Signals: ``changed()`` when there is something else to offer, or nothing any more.
    """

    changed = Signal()

    def __init__(self, session: Session, saving: Saving, door: ArchiveDoor) -> None:
        super().__init__(session)
        self._session, self._saving, self._door = session, saving, door
        self._asked = ""
        self.found: Found | None = None
        self._before: dict[str, Any] = {}  # fields and thickness of the last part worked on
        session.when_ready(self._remember_last)
        session.changed.connect(self._follow)
        saving.saved.connect(self._note)

    @property
    def offered(self) -> dict[str, Any]:
        """The members of the state that it would change; fields among them, by key."""
        state = self._session.state
        if self.found is None or state is None or self._session.reviewing:
            return {}
        from ptmark.criteria import list_profiles
        from ptmark.inspection.carrying import from_same_part_number

        record = self.found.record
        made: dict[str, Any] = {}
        fields = from_same_part_number(state.fields, state.carried, record.fields)
        if fields:
            made["fields"] = fields
        profile = str((record.evaluation or {}).get("profile", ""))
        open_to = not state.profile or "profile" in state.carried
        if open_to and profile != state.profile and profile in list_profiles():
            made["profile"] = profile
        open_to = state.thickness_mm is None or "thickness_mm" in state.carried
        if open_to and record.thickness_mm not in {None, state.thickness_mm}:
            made["thickness_mm"] = record.thickness_mm
        return made

    def take(self) -> None:
        """Take it all over, as one undoable change; each piece is marked as kept."""
        state, offered = self._session.state, self.offered
        if state is None or not offered:
            return
        new = offered.pop("fields", {})
        carried = state.carried.union(new, {"profile", "thickness_mm"} & offered.keys())
        self._session.change(
            tr("take over the last inspection"),
            fields={**state.fields, **new},
            carried=carried,
            **offered,
        )

    @property
    def again(self) -> tuple[str, str] | None:
        """The part number before and the serial after its; None once there is one here."""
        state = self._session.state
        if state is None or not self._before or self._session.reviewing:
            return None
        if state.fields.get("part_number", "").strip():
            return None
        from ptmark.inspection.carrying import next_serial

        fields = self._before["fields"]
        taken = state.fields.get("serial_number", "").strip()
        return fields["part_number"], "" if taken else next_serial(
            fields.get("serial_number", "")
        )

    def take_again(self, *, count_on: bool) -> None:
        """Begin another part of the number before, as one undoable change."""
        state, again = self._session.state, self.again
        if state is None or again is None:
            return
        from ptmark.inspection.carrying import same_number_again

        fields, thickness_mm = self._before["fields"], self._before["thickness_mm"]
        serial = again[1] if count_on else ""
        made = same_number_again(state.fields, state.carried, fields, serial)
        if state.thickness_mm is None and thickness_mm is not None:
            made["thickness_mm"] = thickness_mm
            made["carried"] |= {"thickness_mm"}
        self._session.change(tr("the same part number again"), **made)

    def _remember_last(self) -> None:
        """What was saved last, for the first part of another day."""

        def done(fields: dict[str, Any]) -> None:
            self._before = self._before or fields
            self.changed.emit()

        self._session.workers.start("", lambda _: _saved_last(), done)

    def _follow(self) -> None:
        state = self._session.state
        part = "" if state is None else state.fields.get("part_number", "").strip()
        if state is not None and part and not self._session.reviewing:
            self._before = {"fields": state.fields, "thickness_mm": state.thickness_mm}
        if part != self._asked:
            self._asked, self.found = part, None
            self._door.cancel("last of part")
            if part and not self._session.reviewing:
                self._look(part)
        self.changed.emit()

    def _look(self, part: str) -> None:
        mine = self._saving.record_id

        def done(found: Found | None) -> None:
            self.found = found
            self.changed.emit()

        def with_archive(archive: "Archive", _token: Token) -> Found | None:
            return _newest(_in_archive(archive, part, mine), _remembered(part, mine))

        def without(_: object) -> Found | None:
            return _remembered(part, mine)

        def archive_failed(_exc: Exception) -> None:  # its own page tells what is wrong
            self._session.workers.start("", without, done, key="last of part")

        if has_archive():
            self._door.ask("", with_archive, done, failed=archive_failed, key="last of part")
        else:
            self._session.workers.start("", without, done, key="last of part")

    def _note(self, paths: list[Path]) -> None:
        """Remember where the last record of this part number was saved."""
        state, part = self._session.state, self._asked
        records = [path for path in paths if path.suffix.lower() == ".json"]
        if state is None or not part or not records:
            return

        def work(_token: Token) -> None:
            kept = _places()
            kept.pop(part.casefold(), None)
            kept[part.casefold()] = str(records[0].absolute())
            last = dict(list(kept.items())[-_MOST_KEPT:])
            write_whole(_file(), json.dumps(last).encode())

        self._session.workers.start("", work)


class PartOffer(Notice):
    """Says what the last inspection of the part number had, with a button to take it over."""

    def __init__(self, session: Session, last: LastOfPart) -> None:
        super().__init__()
        self._session, self._last = session, last
        self.take_button = key_button(tr("Take it over"), "", last.take)
        self.offer(self.take_button)
        last.changed.connect(self.refresh)

    def refresh(self) -> None:
        """Show what there is to take over."""
        from ptmark.record import FIELDS

        found, offered = self._last.found, self._last.offered
        if found is None or not offered:
            self.say("")
            return
        fields = offered.get("fields", {})
        named = [tr(field.label) for field in FIELDS if field.key in fields]
        if "profile" in offered:
            named.insert(0, tr("criteria {0}", offered["profile"]))
        if "thickness_mm" in offered:
            named.insert(0, tr("thickness"))
        more = len(named) - _MOST_NAMED
        rest = tr(" and {0} more", more) if more > 0 else ""
        record = found.record
        serial = record.fields.get("serial_number", "").strip()
        which = tr(", serial {0}", serial) if serial else ""
        self.say(
            tr(
                "This part number was last inspected on {0}{1} ({2}). From there: {3}{4}.",
                day(record.created[:10]),
                which,
                found.where,
                ", ".join(named[:_MOST_NAMED]),
                rest,
            ),
            "",
        )


def _newest(*found: Found | None) -> Found | None:
    there = [one for one in found if one is not None]
    return max(there, key=lambda one: one.record.created, default=None)


def _in_archive(archive: "Archive", part: str, mine: str) -> Found | None:
    """The newest of exactly this part number; a query takes ``*`` and ``?`` for letters."""
    from ptmark.archive import Query, find, record_of

    for hit in find(archive, Query(part=part), limit=50).hits:
        if hit.part.strip().casefold() == part.casefold() and hit.record_id != mine:
            return Found(record_of(archive, hit.record_id), tr("in the archive"))
    return None


def _remembered(part: str, mine: str) -> Found | None:
    from ptmark.record import load_record

    place = _places().get(part.casefold())
    if place is None:
        return None
    try:
        record = load_record(Path(place))
    except (PtmarkError, OSError):  # moved or damaged since: nothing to offer
        return None
    same = record.fields.get("part_number", "").strip().casefold() == part.casefold()
    return (
        Found(record, tr("saved as {0}", Path(place).name))
        if same and record.id != mine
        else None
    )


def _saved_last() -> dict[str, Any]:
    """Fields and thickness of the part whose record was saved last; none where it is gone."""
    for part in list(_places())[-1:]:
        if (found := _remembered(part, "")) is not None:
            return {"fields": found.record.fields, "thickness_mm": found.record.thickness_mm}
    return {}


def _file() -> Path:
    return user_folder() / "parts.json"


def _places() -> dict[str, str]:
    try:
        kept: Any = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return {str(k): str(v) for k, v in kept.items()} if isinstance(kept, dict) else {}
