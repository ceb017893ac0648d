"""Start the window."""

import sys
from pathlib import Path

import PySide6
from PySide6.QtCore import QCoreApplication, QElapsedTimer, QEventLoop, QLocale, QSize, Qt
from PySide6.QtGui import QGuiApplication, QIcon
from PySide6.QtWidgets import QApplication, QWidget

from ptmark.errors import PtmarkError
from ptmark.places import resource
from ptmark.window.focus_ring import FocusRing
from ptmark.window.main_window import MainWindow
from ptmark.window.words import language, own_texts, qt_texts

__all__ = ["check_binding", "fit", "run", "show", "start"]

FRAME = 40  # px, what a desktop's title bar and edges take at most (common practice, no source)


def run(photo: Path | None = None) -> int:
    """Open the window, on a photo if one is given; returns the exit code.

    Raises
    ------
    PtmarkError
        If the installed Qt binding cannot be relied on.
    """
    check_binding(PySide6.__version__)
    app, window = start(sys.argv[:1])
    fit(window, QGuiApplication.primaryScreen().availableSize())
    show(window)
    if not window.isVisible():  # closed already
        return 0
    window.begin(photo)
    return app.exec()


def start(words: list[str]) -> tuple[QCoreApplication, MainWindow]:
    """Make the application and its window, which is not shown yet."""
    app = QApplication.instance() or QApplication(words)
    app.setApplicationName("ptmark")
    QGuiApplication.setDesktopFileName("ptmark")
    QGuiApplication.setWindowIcon(QIcon(str(resource("icons", "ptmark.png"))))
    if language != "en":
        QLocale.setDefault(QLocale(language))
        app.installTranslator(qt_texts(app))
        app.installTranslator(own_texts)
    if isinstance(app, QApplication):  # Qt types it as less
        FocusRing(app)
    return app, MainWindow(rest_later=True)


def fit(window: QWidget, room: QSize) -> None:
    """Let it fill a screen that it does not fit on.

    The desktop puts a frame round it, whose size is known only once the window shows: of the
    screen's size, its foot with the hints would lie below the screen's edge.
    """
    within = room - QSize(FRAME, FRAME)
    if window.size().boundedTo(within) != window.size():
        window.resize(window.size().boundedTo(within))
        window.setWindowState(Qt.WindowState.WindowMaximized)


def show(window: QWidget) -> None:
    """Show the window and wait until it has been painted, two seconds at most."""
    window.show()
    handle, waited = window.windowHandle(), QElapsedTimer()
    waited.start()
    while not handle.isExposed() and not waited.hasExpired(2000):
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents, 10)
    window.repaint()


def check_binding(version: str, python: tuple[int, ...] = tuple(sys.version_info[:2])) -> None:
    """Refuse a binding that would end the program in the middle of an inspection.

    PySide6 6.12.0 gives back one reference to ``True`` too many at each signal. Before
    Python 3.12 that ends the process after a few hundred signals (measured on 3.11).
    """
    if version == "6.12.0" and python < (3, 12):
        raise PtmarkError(
            "PySide6 6.12.0 ends the program at random on this Python",
            where="PySide6",
            mend="pip install 'PySide6-Essentials>=6.8,!=6.12.0'",
        )
