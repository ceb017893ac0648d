"""A ring round what has the keyboard, wherever in the application that is.

Qt's own style marks a button that has the focus by another grey of its edge, and a list not at
all. A mark of the focus needs 3 : 1 against what is there without it (WCAG 2.2, 1.4.11 and
2.4.13), so there is one ring, in our own tone, that goes along with the focus.
"""

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QGuiApplication, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QApplication, QSplitter, QWidget
from shiboken6 import isValid

from ptmark.window.palette import tone

__all__ = ["FocusRing", "paint_ring"]


def paint_ring(
    painter: QPainter, box: QRectF, palette: QPalette, *, on_picture: bool = False
) -> None:
    """Paint two px of our tone along the inside of a box.

    With ``on_picture`` a line of the ground within them, as a picture may have any colour.
    """
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if on_picture:
        painter.setPen(QPen(palette.color(QPalette.ColorRole.Base), 2))
        painter.drawRect(box.adjusted(3, 3, -3, -3))
    painter.setPen(QPen(tone("accent", palette), 2))
    painter.drawRect(box.adjusted(1, 1, -1, -1))


class FocusRing(QObject):
    """Follows the focus of an application.

    What paints a ring of its own says so by a member ``own_ring``. A click brings no ring: who
    points at something knows where it is.
    """

    def __init__(self, app: QApplication) -> None:
        super().__init__(app)
        self.frame: _Frame | None = None
        app.focusChanged.connect(self._follow)

    def _follow(self, _: QWidget | None, now: QWidget | None) -> None:
        if self.frame is not None and isValid(self.frame):  # else gone with its page
            self.frame.leave()
        self.frame = _Frame(now) if now is not None and _can_bear(now) else None


def _can_bear(widget: QWidget) -> bool:
    """Whether a ring belongs round a widget, and a further child into its parent."""
    return not (
        QGuiApplication.mouseButtons()
        or hasattr(widget, "own_ring")
        or widget.isWindow()
        or isinstance(widget.parentWidget(), QSplitter)  # each child becomes one more part
        or widget.window().windowType() == Qt.WindowType.Popup
    )


class _Frame(QWidget):
    """Lies over its widget, beside it in the same parent, and takes no events.

    It is no QFocusFrame, since styles mask that to what lies outside its widget, of which
    nothing is seen where a widget fills its parent.
    """

    _MOVES = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Show, QEvent.Type.Hide)

    def __init__(self, widget: QWidget) -> None:
        super().__init__(widget.parentWidget())
        self._of = widget
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        widget.installEventFilter(self)
        self._place()

    def leave(self) -> None:
        """Follow no longer, and vanish."""
        if isValid(self._of):
            self._of.removeEventFilter(self)
        self.hide()
        self.deleteLater()

    def _place(self) -> None:
        """As far round the widget as the parent leaves room beside it."""
        around = self._of.geometry().adjusted(-2, -2, 2, 2)
        parent = self._of.parentWidget()
        if parent is not None:
            self.setGeometry(around & parent.rect())
        self.setVisible(not self._of.isHidden())
        self.raise_()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if watched is self._of and event.type() in self._MOVES:
            self._place()
        return False

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        paint_ring(QPainter(self), QRectF(self.rect()), self.palette())
