"""The line over the photo that tells of the record at hand, and leads on."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from ptmark.window.bits import Notice, key_button, plain
from ptmark.window.edges import ListOf
from ptmark.window.review.case import ReviewCase
from ptmark.window.review.work import Opened
from ptmark.window.words import tr
from ptmark.window.wrapped import wrap

__all__ = ["HINTS", "ReviewBar"]

# At the foot of the window while the review's page is shown, by phase.
HINTS = {
    "blind": tr(
        "‹Ctrl+M› marks the place of a remark, ‹Ctrl+D› ends measuring and shows both."
    ),
    "beside": tr("‹Ctrl+M› marks the place of a remark; ‹Alt+S› signs, ‹Alt+R› returns it."),
    "decided": "",
}
_WAITS = {
    "to review": tr("waits for a review."),
    "not signed": tr("is not signed by its examiner yet, so it cannot be reviewed."),
    "signed": tr("was reviewed and signed."),
    "returned": tr(
        "was returned. Do what the remarks say, save it over the record with the "
        "reason, and sign it again; it is then reviewed anew."
    ),
    "needs photo": tr(
        "needs a new photo. Take it as the remarks say, go on with the record, add "
        "the photo, measure, take the old one out, save with the reason, and sign again."
    ),
}
_NOW = {
    "blind": tr("under review. Measure it yourself; the first numbers are hidden."),
    "beside": tr("under review. Both stand side by side in step 5; sign, return or ask there."),
}


class ReviewBar(QFrame):
    """Signals: ``told_at(int)`` a remark, numbered from 0, was chosen."""

    told_at = Signal(int)

    def __init__(
        self, case: ReviewCase, window: QWidget, ways: dict[str, Callable[[], None]]
    ) -> None:
        super().__init__()
        self._case, self.listed = case, False
        self._done, self._left = "", ""
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self._column = column = QVBoxLayout(self)
        self.says = plain()
        column.addWidget(self.says)
        self.told = ListOf()
        wrap(self.told)
        self.told.setAccessibleName(tr("Remarks of the reviewer"))
        self.told.setFixedHeight(64)
        self.told.currentRowChanged.connect(self.told_at.emit)
        column.addWidget(self.told)
        self.notice = Notice()
        column.addWidget(self.notice)
        row = QHBoxLayout()
        self.buttons = {
            name: key_button(tr(name), key, ways[name], window=window)
            for name, key in (
                ("Review it blind", "Ctrl+B"),
                ("Go on with it as its examiner", ""),
                ("Done measuring", "Ctrl+D"),
                ("Earlier record", "Alt+PgUp"),
                ("Next record", "Alt+PgDown"),
                ("Records", "Ctrl+L"),
                ("Leave", ""),
            )
        }
        for button in self.buttons.values():
            row.addWidget(button)
        row.addStretch(1)
        column.addLayout(row)
        case.changed.connect(self.refresh)
        self.be_brief(brief=False)
        self.refresh()

    def be_brief(self, brief: bool) -> None:  # noqa: FBT001 - on or off
        """Keys in the tips alone, and less air."""
        for button in self.buttons.values():
            button.be_brief(brief)
        self._column.setContentsMargins(12, 2 if brief else 6, 12, 2 if brief else 6)

    def say_done(self, said: str) -> None:
        """Tell what came of the review, where its page may be scrolled away."""
        self._done = said
        self.refresh()

    def say_left(self, left: int, of: int) -> None:
        """Tell how many records of the folder wait for a review."""
        self._left = tr("{0} of {1} wait for a review.", left, of)
        self.refresh()

    def refresh(self) -> None:
        """Show what can be done with the record at hand."""
        phase, opened = self._case.phase, self._case.opened
        waits = phase == "told" and opened is not None
        to_do = opened is not None and phase in {"told", "mending"}
        standing = opened.standing if opened is not None else ""
        shows = {
            "Review it blind": waits and standing == "to review",
            "Go on with it as its examiner": waits,
            "Done measuring": phase == "blind",
            "Earlier record": self.listed,
            "Next record": self.listed,
            "Records": self.listed,
            "Leave": True,
        }
        for name, button in self.buttons.items():
            button.setVisible(shows[name])
            button.setEnabled(shows[name])
        self._tell(opened if to_do else None)
        if opened is None:
            self.says.setText(tr("Choose a record to review.") if self.listed else "")
        else:
            part = tr(" (part {0})", opened.part) if opened.part else ""
            said = _WAITS.get(standing, "") if to_do else _NOW.get(phase, "")
            if phase == "mending" and standing == "not signed":
                said = tr("is open as its examiner left it; sign it when it is done.")
            told = self._done if phase == "decided" else f"{opened.path.name}{part} {said}"
            self.says.setText(f"{told} – {self._left}" if self.listed else told)
        self.setVisible(opened is not None or self.listed or self.notice.isVisibleTo(self))

    def _tell(self, opened: Opened | None) -> None:
        told = opened.told if opened is not None else ()
        self.told.setVisible(bool(told))
        texts = [
            f"{number}  {text}" + (tr("  (photo {0}, marked there)", photo + 1) if at else "")
            for number, (text, photo, at) in enumerate(told, start=1)
        ]
        if texts != [self.told.item(row).text() for row in range(self.told.count())]:
            self.told.clear()
            self.told.addItems(texts)
