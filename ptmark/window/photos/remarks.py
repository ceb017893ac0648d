"""What the engine says of the photo: cautions with their mend, and the haze as a line."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.bits import Notice, quiet
from ptmark.window.session import Session
from ptmark.window.words import from_core, tr
from ptmark.window.workers import Token

__all__ = ["PhotoRemarks"]


class PhotoRemarks(QWidget):
    """Asks in a worker, once for each photo, scale, area, criteria, haze and outlines."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._of: tuple[object, ...] = ()
        self.notices: list[Notice] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self.haze = quiet()
        self._column.addWidget(self.haze)
        session.changed.connect(self.refresh)
        session.judged.connect(self.refresh)

    def refresh(self) -> None:
        """Ask anew where something that matters has changed."""
        inspection = self._session.inspection
        if inspection is None or inspection.photo is None:
            self._show(())
            self.haze.setText("")
            return
        state = inspection.state
        what = (id(inspection.photo), id(inspection.surface))
        outlines = tuple((one.id, id(one.outline_px)) for one in inspection.counted)
        seen = (*what, state.area_px, state.profile, state.mode, inspection.haze, outlines)
        if seen == self._of:
            return
        self._of = seen
        haze = inspection.haze
        self.haze.setText(
            ""
            if haze is None
            else tr("Haze of the background: {0:.0f} % of full dye or light.", 100 * haze)
        )
        twin = inspection.twin()

        def work(token: Token) -> tuple[str, ...]:
            token.check()
            try:
                return tuple(one.says for one in twin.remarks())
            except PtmarkError as exc:  # such as a profile that cannot be loaded
                return (str(exc),)

        self._session.workers.start("", work, self._show, key="remarks")

    def _show(self, remarks: tuple[str, ...]) -> None:
        while len(self.notices) < len(remarks):
            notice = Notice()
            self.notices.append(notice)
            self._column.insertWidget(self._column.count() - 1, notice)
        for at, notice in enumerate(self.notices):
            notice.say(from_core(remarks[at]) if at < len(remarks) else "")
