"""The window's texts in the user's language, and its numbers with that language's comma.

The language holds for the whole run, so that a text may also be made while a module loads. The
English text is the key; what has no translation stays English. Records and reports stay in
English, and so does what the core says: it is translated where it is shown (`from_core`).
"""

import os
import re
import string
from datetime import date
from functools import cache
from typing import TYPE_CHECKING

from PySide6.QtCore import QLibraryInfo, QLocale, QObject, QTranslator

from ptmark import units
from ptmark.errors import PtmarkError
from ptmark.files import write_whole
from ptmark.places import resource, user_folder

if TYPE_CHECKING:
    from ptmark.window.core_texts import CoreTexts

__all__ = [
    "LANGUAGES",
    "choose",
    "day",
    "format_length",
    "from_core",
    "inside",
    "language",
    "number",
    "own_texts",
    "qt_texts",
    "sentence",
    "tr",
]

LANGUAGES = {"en": "English", "de": "Deutsch"}
_CONTEXT = "ptmark"  # of the .ts file
_ISO_DAY = re.compile(r"^(\d{4})-(\d\d)-(\d\d)\b")
_SWAPPED = str.maketrans(",.", ".,")


def _kept() -> str:
    try:
        return (user_folder() / "language").read_text(encoding="utf-8").strip()
    except (OSError, UnicodeError):
        return ""


def _language() -> str:
    """As PTMARK_LANGUAGE has it, else as it was chosen, else as the system speaks."""
    asked = (os.environ.get("PTMARK_LANGUAGE", ""), _kept(), QLocale.system().name()[:2])
    return next((one for one in asked if one in LANGUAGES), "en")


language = _language()
own_texts = QTranslator()  # asked by `tr`; once installed, by Qt for the names of keys
if language != "en":
    own_texts.load(str(resource("languages", f"{language}.qm")))


def choose(code: str) -> None:
    """Keep a language of `LANGUAGES` for the next start."""
    write_whole(user_folder() / "language", code.encode())


class _Numbers(string.Formatter):
    """Writes 1,234.5 as 1.234,5, a date with the day first, and what an error says."""

    def format_field(self, value: object, format_spec: str) -> str:
        if isinstance(value, Exception):
            return from_core(value)
        if isinstance(value, date):
            return day(value.isoformat())
        text: str = super().format_field(value, format_spec)
        return text.translate(_SWAPPED) if isinstance(value, int | float) else text


def tr(text: str, *values: object) -> str:
    """A text of the window in its language, with values at ``{0}``, ``{1}`` and so on.

    Examples
    --------
    >>> tr("{0} of {1} looked at", 2, 5)
    '2 of 5 looked at'
    """
    if language != "en":
        text = own_texts.translate(_CONTEXT, text) or text
        return _Numbers().format(text, *values) if values else text
    return text.format(*values) if values else text


def from_core(said: str | Exception) -> str:
    """What the core says, live or out of a record, in the language; unknown text as it is.

    Examples
    --------
    >>> from_core("There are no indications.")
    'There are no indications.'
    """
    if isinstance(said, PtmarkError):
        where, mend = from_core(said.where), from_core(said.mend)
        mend = sentence(mend) if mend.partition(" ")[0] != "ptmark" else mend  # a command
        return str(PtmarkError(from_core(said.what), where=where, mend=mend))
    if language == "en":
        return str(said)
    return _core_texts()(str(said))


@cache
def _core_texts() -> "CoreTexts":
    from ptmark.window.core_texts import CoreTexts

    file = resource("languages", "core.txt").read_text(encoding="utf-8")
    lines = (line.replace("\\n", "\n") for line in file.splitlines())
    return CoreTexts(lines, lambda text: own_texts.translate("core", text) or "")


def sentence(text: str) -> str:
    """A text as a sentence of its own: a capital, a full stop.

    Examples
    --------
    >>> sentence("measure it once")
    'Measure it once.'
    """
    ended = text.endswith((".", "!", "?", "…")) or not text
    return text[:1].upper() + text[1:] + ("" if ended else ".")


def inside(name: str) -> str:
    """A name as it stands inside a sentence: English writes it small, German does not.

    Examples
    --------
    >>> inside("Drying")
    'drying'
    """
    return name.lower() if language == "en" else tr(name)


def day(text: str) -> str:
    """An ISO 8601 date, with or without a time after it, in the form of the language.

    Examples
    --------
    >>> day("2026-01-15")
    '2026-01-15'
    """
    return text if language == "en" else _ISO_DAY.sub(r"\3.\2.\1", text, count=1)


def number(value: float, spec: str) -> str:
    """A number as ``format(value, spec)`` writes it, with the decimal sign of the language.

    Examples
    --------
    >>> number(12.346, ".2f")
    '12.35'
    """
    text = format(value, spec)
    return text if language == "en" else text.translate(_SWAPPED)


def format_length(mm: float, unit: str = "mm", digits: int | None = None) -> str:
    """A length as `ptmark.units.format_length` writes it, with the sign of the language."""
    text = units.format_length(mm, unit, digits)
    return text if language == "en" else text.translate(_SWAPPED)


def qt_texts(parent: QObject) -> QTranslator:
    """The translator of Qt's own texts, such as those of its file dialog."""
    made = QTranslator(parent)
    folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    made.load(QLocale(language), "qtbase", "_", folder)
    return made
