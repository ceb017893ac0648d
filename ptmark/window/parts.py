"""The parts of the window, as those that work on several of them know it.

The window itself (`main_window`) makes these parts and what stands over them: the
arrangement, the guided pass, the desks of review and archive. Those are given this and never
the window's own type, so that nothing leads back to who makes them.
"""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from ptmark.window.bench import Bench
from ptmark.window.draft_desk import DraftDesk
from ptmark.window.empty_page import EmptyPage
from ptmark.window.foot import Foot
from ptmark.window.indications.hands import Hands
from ptmark.window.keys import KeyButton
from ptmark.window.looking import Looking
from ptmark.window.memory import Memory
from ptmark.window.photos.row import PhotoRow
from ptmark.window.photos.strip import PhotosStrip
from ptmark.window.saving import Saving
from ptmark.window.session import Session
from ptmark.window.step_strip import StepStrip
from ptmark.window.steps.page import StepPage
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.view.turning import Turning

if TYPE_CHECKING:  # made once the window is painted, so not loaded with it
    from ptmark.window.part_form import PartForm
    from ptmark.window.steps.indications_step import IndicationsStep
    from ptmark.window.steps.record_step import RecordStep
    from ptmark.window.steps.scale_step import ScaleStep
    from ptmark.window.steps.verdict_step import VerdictStep

__all__ = ["Parts"]


class Parts(QWidget):
    """A widget that has these parts; who makes them says when."""

    session: Session
    looking: Looking
    hands: Hands
    turning: Turning
    saving: Saving
    memory: Memory
    drafts: DraftDesk
    view: PhotoView
    bench: Bench
    strip: StepStrip
    empty: EmptyPage
    foot: Foot
    photos_strip: PhotosStrip
    photo_row: PhotoRow
    next_button: KeyButton
    next_row: QWidget
    pages: dict[str, StepPage]
    part_form: "PartForm"
    scale_step: "ScaleStep"
    indications_step: "IndicationsStep"
    verdict_step: "VerdictStep"
    record_step: "RecordStep"

    def open(self, path: Path) -> None:
        """Open a photo, a record or a folder of records."""
        raise NotImplementedError

    def show_place(self) -> None:
        """Show the photo, or what stands in its place while there is none."""
        raise NotImplementedError

    def bring(self, widget: QWidget) -> None:
        """Show what holds this widget, where photo and page take turns."""
        raise NotImplementedError
