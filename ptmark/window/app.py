"""Start the window."""

import sys
from pathlib import Path

from PySide6.QtWidgets import QApplication

from ptmark.window.main_window import MainWindow

__all__ = ["run"]


def run(photo: Path | None = None) -> int:
    """Open the window, on a photo if one is given; returns the exit code."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    app.setApplicationName("ptmark")
    window = MainWindow()
    window.show()
    window.begin(photo)
    return app.exec()
