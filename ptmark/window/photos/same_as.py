"""One indication in several photos: which letter it carries, and which photo's size counts."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from ptmark.window.bits import Choice, Notice, heading, key_button, quiet
from ptmark.window.session import Session
from ptmark.window.words import format_length, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection, Marked
    from ptmark.inspection.set_sizes import Sizes

__all__ = ["SameAs"]

_OWN = tr("seen in this photo only")


class SameAs(QWidget):
    """For the selected indication; there only where the inspection holds several photos."""

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__()
        self._session = session
        self._hints: dict[str, str] = {}
        self._hints_of = ""  # SHA-256 of the photo they are of
        self.letter, self.counts = (
            Choice(tr("The same indication as")),
            Choice(tr("Size of record from")),
        )
        self.letter.activated.connect(lambda _: self._join(self.letter.currentData()))
        self.counts.activated.connect(lambda _: self._choose(self.counts.currentData()))
        self.finder = key_button(
            tr("Find by place"), "Y", self.look, window=window,
            tip=tr("Lay the photos over each other and see which indications lie in one place"),
        )  # fmt: skip
        self.notice, self._agrees = Notice(), quiet()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("In other photos")))
        form = QFormLayout()
        row = QHBoxLayout()
        row.addWidget(self.letter, 1)
        row.addWidget(self.finder)
        form.addRow(tr("Same as"), row)
        form.addRow(tr("Size from"), self.counts)
        column.addLayout(form)
        column.addWidget(self._agrees)
        column.addWidget(self.notice)
        for signal in (session.changed, session.judged, session.selection_changed):
            signal.connect(self.refresh)
        self.refresh()

    # -- what a person says -------------------------------------------------------------------
    def _join(self, letter: str) -> None:
        session, one, inspection = self._session, self._session.one_selected, self._inspection
        if one is None or inspection is None or letter == one.id:
            return
        if not letter:
            session.attempt("indications", lambda: session.select(self._part(inspection, one)))
        elif session.attempt("indications", lambda: inspection.photos.same(one.id, letter)):
            session.select(letter)

    def _part(self, inspection: "Inspection", one: "Marked") -> str:
        return inspection.photos.apart(one.id)

    def _choose(self, number: int | None) -> None:
        one, inspection = self._session.one_selected, self._inspection
        if one is not None and inspection is not None:
            session = self._session
            session.attempt("indications", lambda: inspection.photos.choose(one.id, number))

    def look(self) -> None:
        """Match the photo at hand with the others by place; the hints are for a person."""
        session, inspection = self._session, self._inspection
        if inspection is None or inspection.photo is None:
            return
        twin, photo = inspection.twin(), inspection.photo.info.sha256

        def work(_token: Token) -> dict[str, str]:
            from ptmark.inspection.several import same_in_set

            return same_in_set(twin)

        def done(hints: dict[str, str]) -> None:
            self._hints, self._hints_of = hints, photo
            told = ", ".join(tr("{0} and {1}", mine, theirs) for mine, theirs in hints.items())
            self.notice.say(
                tr("In one place: {0}.", told)
                if hints
                else tr("No two lie surely in one place; say it by hand where you see it."),
                "done" if hints else "look",
            )
            self.notice.offer(*([self._all_button(hints)] if hints else []))
            self.refresh()

        session.workers.start(
            tr("Laying the photos over each other"),
            work,
            done,
            failed=lambda exc: session.say_trouble("indications", exc),
            key="match",
        )

    def _all_button(self, hints: dict[str, str]) -> QPushButton:
        """Takes all hints as one step; each can be parted again."""

        def take() -> None:
            session, inspection = self._session, self._inspection
            if inspection is not None and session.attempt(
                "indications", lambda: inspection.photos.join(hints)
            ):
                session.select(*hints.values())
                self.notice.say("")

        return key_button(tr("Each pair is one indication"), "", take)

    # -- showing ------------------------------------------------------------------------------
    @property
    def _inspection(self) -> "Inspection | None":
        return self._session.inspection

    def refresh(self) -> None:
        """Show what is known of the selected indication."""
        inspection, one = self._inspection, self._session.one_selected
        several = inspection is not None and len(inspection.photos) > 1
        self.setVisible(several and one is not None)
        if inspection is None or inspection.photo is None or one is None or not several:
            return
        sha256 = inspection.photo.info.sha256
        if self._hints_of != sha256:
            self._hints, self._hints_of = {}, sha256
            self.notice.say("")
        sizes = self._session.judgement.seen_again.get(one.id)
        self._show_letters(inspection, one, joined=sizes is not None)
        self._show_sizes(sizes)

    def _show_letters(self, inspection: "Inspection", one: "Marked", *, joined: bool) -> None:
        hint, box = self._hints.get(one.id), self.letter
        box.clear()
        box.addItem(_OWN, "")
        names = inspection.photos.candidates(one.id)
        if joined:
            box.addItem(tr("{0}, in other photos too", one.id), one.id)
        for name in sorted(names, key=lambda n: n != hint):
            box.addItem(tr("{0}, lies in the same place", name) if name == hint else name, name)
        box.setCurrentIndex(1 if joined else 0)

    def _show_sizes(self, sizes: "Sizes | None") -> None:
        box, unit = self.counts, self._session.unit
        box.clear()
        box.setEnabled(sizes is not None)
        self._agrees.setText("")
        if sizes is None:
            box.addItem(tr("this photo"), None)
            return
        box.addItem(
            tr("the photo to be evaluated; the longest where they differ")
            if sizes.by_time
            else tr("the surest; the longest where they differ"),
            None,
        )
        for number, made in sizes.shown:
            if made is not None:
                length, u = made.length.value, made.length.expanded
                said = f"{format_length(length, unit)} ± {format_length(u, unit)}"
                box.addItem(tr("photo {0}: {1}", number + 1, said), number)
        box.setCurrentIndex(box.findData(sizes.of_record) if sizes.chosen else 0)
        self._agrees.setText(_agreement(sizes))


def _agreement(sizes: "Sizes") -> str:
    """How well the other photos' lengths agree with the one of record."""
    from ptmark.en import en_number

    held = sizes.size
    if held is None or sizes.of_record is None:
        return tr("None of these photos has a scale.")
    said = [tr("Size of record from photo {0}.", sizes.of_record + 1)]
    for number, made in sizes.shown:
        if number == sizes.of_record or made is None:
            continue
        one, two = made.length, held.length
        en = en_number(one.value, one.expanded, two.value, two.expanded)
        if en is not None:
            verdict = tr("agrees") if en <= 1 else tr("does not agree: look again")
            if en > 1 and number in sizes.early:
                verdict = tr("was taken earlier and shows less")
            said.append(tr("Photo {0} {1} (En {2:.2f}).", number + 1, verdict, en))
    return " ".join(said)
