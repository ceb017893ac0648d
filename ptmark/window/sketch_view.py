"""A sketch or plot as the report draws it, fitted to the room there is."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from ptmark.window.words import from_core, tr

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    from ptmark.criteria import Finding, Scene

__all__ = ["SketchView"]


class SketchView(QWidget):
    """Shows what the report draws, of a finding or else; hidden where there is nothing."""

    def __init__(self, least: int = 180) -> None:
        super().__init__()
        self._picture: QImage | None = None
        self.setMinimumHeight(least)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.MinimumExpanding)
        self.hide()

    def show_finding(self, finding: "Finding | None", scene: "Scene | None") -> None:
        """Draw a finding over the outlines it was found in; None takes the sketch away."""
        if finding is None or scene is None or not finding.indications:
            self.show_pixels(None, "")
            return
        from ptmark.report.sketch import finding_picture

        pixels = finding_picture(finding, scene.indications, lettering=2.0)
        self.show_pixels(pixels, tr("Sketch: {0}", from_core(finding.says)))

    def show_pixels(self, pixels: "npt.NDArray[np.uint8] | None", name: str) -> None:
        """Show a picture of shape (H, W, 3) under a name that says it; None takes it away."""
        if pixels is None:
            self._picture = None
            self.hide()
            return
        high, wide = pixels.shape[:2]
        image = QImage(pixels.data, wide, high, 3 * wide, QImage.Format.Format_RGB888)
        self._picture = image.copy()  # the array goes, the picture stays
        self.setAccessibleName(name)
        self.show()
        self.update()

    @property
    def picture(self) -> QImage | None:
        return self._picture

    def sizeHint(self) -> QSize:  # noqa: N802 - Qt's name
        return QSize(320, 240)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        if self._picture is None:
            return
        size = self._picture.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        left, top = (self.width() - size.width()) / 2, (self.height() - size.height()) / 2
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(QRectF(left, top, size.width(), size.height()), self._picture)
        painter.end()
