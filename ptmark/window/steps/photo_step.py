"""Photo: which picture, what is known of it, and the area that is examined."""

from collections.abc import Callable

from PySide6.QtWidgets import QFormLayout, QVBoxLayout, QWidget

from ptmark.window.bench import Bench
from ptmark.window.bits import heading, key_button, plain, quiet
from ptmark.window.photos.remarks import PhotoRemarks
from ptmark.window.session import Session
from ptmark.window.steps.page import StepPage
from ptmark.window.words import day, tr

__all__ = ["PhotoStep"]


class PhotoStep(StepPage):
    """The first page."""

    def __init__(
        self,
        session: Session,
        bench: Bench,
        window: QWidget,
        ask_open: Callable[[], None],
        next_part: Callable[[], None],
        ask_add: Callable[[], None],
        take_out: Callable[[], None],
    ) -> None:
        super().__init__(session, "Photo", "photo")
        self.open_button = key_button(tr("Open a photo …"), "Ctrl+O", ask_open, window=window)
        self.column.addWidget(self.open_button)
        self.next_part_button = key_button(
            tr("Next part"), "Ctrl+N", next_part, window=window,
            tip=tr("Puts this inspection away as it is and begins one without a photo: "
            "the process can be timed before there is a picture"),
        )  # fmt: skip
        self.column.addWidget(self.next_part_button)
        self.add_button = key_button(
            tr("Add photos …"), "Ctrl+Shift+O", ask_add, window=window,
            tip=tr("Overview and close-ups of the same part: one inspection, one record"),
        )  # fmt: skip
        self.column.addWidget(self.add_button)
        self.column.addWidget(
            quiet(
                tr(
                    "Or drop a photo anywhere on the window, or copy and paste its file; "
                    "several become one inspection."
                )
            )
        )
        self.offers = QVBoxLayout()
        self.column.addLayout(self.offers)
        self.part_place = QVBoxLayout()  # which part it is, asked for here first
        self.column.addLayout(self.part_place)
        self._facts = QFormLayout()
        self._facts.setContentsMargins(0, 4, 0, 4)
        self._values = {}
        for name in (tr("File"), tr("Size"), tr("Camera"), tr("Lens"), tr("Taken"), "SHA-256"):
            self._values[name] = plain("–")
            self._facts.addRow(quiet(name, wraps=False), self._values[name])
        self.column.addLayout(self._facts)
        self.out_button = key_button(
            tr("Take this photo out"), "Ctrl+Backspace", take_out, window=window,
            tip=tr("Out of the inspection, with its outlines; undo brings it back"),
        )  # fmt: skip
        self.column.addWidget(self.out_button)
        self.remarks = PhotoRemarks(session)
        self.column.addWidget(self.remarks)
        self.column.addWidget(heading(tr("Examined area")))
        self._area = plain()
        self.column.addWidget(self._area)
        self.area_button = key_button(
            tr("Mark out the area"), "A", bench.mark_area, window=window,
            tip=tr("What lies outside the examined area is not called"),
        )  # fmt: skip
        self.whole_button = key_button(tr("Examine the whole photo"), "", self._whole)
        self.column.addWidget(self.area_button)
        self.column.addWidget(self.whole_button)
        self.column.addStretch(1)
        self.column.addWidget(
            quiet(
                tr(
                    "The photo's own file is only read, never written. Its "
                    "SHA-256 goes into the record, so that anyone can tell later "
                    "that it is the same picture."
                )
            )
        )
        session.changed.connect(self.refresh)
        self.refresh()

    def put_after_open(self, button: QWidget) -> None:
        """Put another way to open a photo under the first."""
        self.column.insertWidget(self.column.indexOf(self.open_button) + 1, button)

    def _whole(self) -> None:
        self.session.change(tr("examine the whole photo"), area_px=None)

    def refresh(self) -> None:
        """Show what is open."""
        inspection = self.session.inspection
        photo = inspection.photo if inspection else None
        self.area_button.setEnabled(photo is not None)
        self.add_button.setEnabled(photo is not None)
        begun = inspection is not None and inspection.begun
        self.next_part_button.setEnabled(begun and not self.session.reviewing)
        several = inspection is not None and len(inspection.photos) > 1
        self.out_button.setEnabled(several)
        self.out_button.setVisible(several)
        area = inspection.state.area_px if inspection else None
        self.whole_button.setEnabled(area is not None)
        self._area.setText(
            tr("The whole photo.")
            if area is None
            else tr("Marked out, {0} corners.", len(area))
        )
        if photo is None:
            for label in self._values.values():
                label.setText("–")
            return
        info = photo.info
        camera = f"{info.camera.make} {info.camera.model}".strip() or tr("not told by the file")
        self._values[tr("File")].setText(info.path.name)
        size = tr(
            "{0} × {1} px, {2:.1f} megapixels, {3}",
            info.width,
            info.height,
            info.megapixels,
            info.format,
        )
        self._values[tr("Size")].setText(size)
        self._values[tr("Camera")].setText(camera)
        known = info.calibrated
        self._values[tr("Lens")].setText(tr("not calibrated") if known is None else known.name)
        self._values[tr("Taken")].setText(
            day(info.camera.taken.replace("T", " ")) or tr("not told by the file")
        )
        self._values["SHA-256"].setText(f"{info.sha256[:16]} …")
        self._values["SHA-256"].setToolTip(info.sha256)
