"""Which kind of penetrant a photo shows, where the photo itself does not tell it."""

from ptmark.window.bits import Choice
from ptmark.window.looking import Looking
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["PenetrantKind"]

# As `ptmark.dye.kind.MODES` names them; importing it would load the engine.
_KINDS = (
    ("", tr("Penetrant: as the photo tells")),
    ("colour contrast", tr("Penetrant: colour contrast")),
    ("fluorescent", tr("Penetrant: fluorescent")),
)


class PenetrantKind(Choice):
    """Chooses the kind for this photo and the next ones, and looks again by it."""

    def __init__(self, session: Session, looking: Looking) -> None:
        super().__init__(tr("Kind of penetrant"))
        self._session, self._looking = session, looking
        self.setToolTip(tr("Choose it where the verdict says that the photo does not tell it"))
        for mode, text in _KINDS:
            self.addItem(text, mode)
        self.activated.connect(self._choose)
        session.changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show what is chosen."""
        state = self._session.state
        self.setEnabled(self._session.has_photo)
        self.setCurrentIndex(self.findData(state.mode if state else ""))

    def _choose(self, index: int) -> None:
        inspection, mode = self._session.inspection, self.itemData(index)
        if inspection is None or inspection.state.mode == mode:
            return
        inspection.change(tr("choose the kind of penetrant"), mode=mode)
        self._looking.suggest()
