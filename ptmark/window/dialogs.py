"""The few questions that need a dialog of the system: which file. Tests put answers here."""

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from ptmark.endings import PICTURES
from ptmark.window.words import tr

__all__ = [
    "ask_for_folder",
    "ask_for_photo",
    "ask_for_photos",
    "ask_for_printer",
    "ask_for_record",
    "ask_where_to_save",
]

PHOTOS = tr("Photos ({0});;All files (*)", " ".join(f"*{one}" for one in PICTURES))


def ask_for_photo(parent: QWidget, folder: Path) -> Path | None:
    """Ask which photo to open; None where the user leaves it."""
    name, _ = QFileDialog.getOpenFileName(parent, tr("Open a photo"), str(folder), PHOTOS)
    return Path(name) if name else None


def ask_for_photos(parent: QWidget, folder: Path) -> list[Path]:
    """Ask which photos to add; none where the user leaves it."""
    names, _ = QFileDialog.getOpenFileNames(parent, tr("Add photos"), str(folder), PHOTOS)
    return sorted(Path(name) for name in names)


def ask_for_printer(parent: QWidget) -> tuple[str, int] | None:
    """Ask for a printer and how many copies; None where the user leaves it."""
    from PySide6.QtPrintSupport import QPrintDialog, QPrinter

    printer = QPrinter()
    dialog = QPrintDialog(printer, parent)
    dialog.setOption(QPrintDialog.PrintDialogOption.PrintToFile, on=False)
    if not dialog.exec() or not printer.printerName():
        return None
    return printer.printerName(), printer.copyCount()


def ask_for_record(parent: QWidget, folder: Path) -> Path | None:
    """Ask which record to open; None where the user leaves it."""
    kinds = tr("Records (*.json);;All files (*)")
    name, _ = QFileDialog.getOpenFileName(parent, tr("Open a record"), str(folder), kinds)
    return Path(name) if name else None


def ask_for_folder(parent: QWidget, title: str, folder: Path) -> Path | None:
    """Ask for a folder; None where the user leaves it."""
    name = QFileDialog.getExistingDirectory(parent, title, str(folder))
    return Path(name) if name else None


def ask_where_to_save(parent: QWidget, proposal: Path, kinds: str) -> Path | None:
    """Ask where to save; the system asks before a file is replaced. None: leave it."""
    name, _ = QFileDialog.getSaveFileName(parent, tr("Save"), str(proposal), kinds)
    return Path(name) if name else None
