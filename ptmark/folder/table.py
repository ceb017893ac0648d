"""The table of many photos: one row an indication, and one for a photo without any."""

from collections.abc import Mapping, Sequence

from ptmark.files import csv_text
from ptmark.least import Least
from ptmark.record import Record, least_of

__all__ = ["COLUMNS", "coded", "rows_of", "rows_of_failed"]

_OF_EACH = (  # as the record's indications name them
    "id",
    "shape",
    "length_mm",
    "length_u_mm",
    "path_mm",
    "width_mm",
    "width_u_mm",
    "area_mm2",
)
COLUMNS = ("file", "sha256", "reference", "mm_per_px", *_OF_EACH, "verdict", "error", *Least)


def rows_of(record: Record) -> bytes:
    """A photo's rows of CSV without a head; where it has no indications, one with gaps."""
    of_photo = {
        "file": record.photo["file"],
        "sha256": record.photo["sha256"],
        "reference": record.scale["reference"],
        "mm_per_px": record.scale["mm_per_px"],
        "verdict": "" if record.evaluation is None else record.evaluation["verdict"],
    }
    of_each = [
        {**{name: one[name] for name in _OF_EACH}, **least_of(one)}
        for one in record.indications
    ]
    return _rows([{**of_photo, **one} for one in of_each or [{}]])


def rows_of_failed(file: str, sha256: str, what: str) -> bytes:
    """The row of a photo that could not be measured, and why."""
    return _rows([{"file": file, "sha256": sha256, "error": what}])


def _rows(told: Sequence[Mapping[str, object]]) -> bytes:
    return coded(csv_text([[one.get(name, "") for name in COLUMNS] for one in told]))


def coded(text: str) -> bytes:
    """UTF-8; a byte of a file's name that is none becomes an escape, which JSON reads back."""
    return text.encode("utf-8", "backslashreplace")
