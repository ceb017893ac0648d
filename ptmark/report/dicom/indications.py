"""Indications as DICONDE's own sequence: label, type, disposition, sizes, outline."""

from typing import TYPE_CHECKING, Any

import numpy as np

from ptmark.least import Least
from ptmark.record import Record, least_of
from ptmark.report.dicom.text import code, line, note
from ptmark.report.wording import called, shape_words

if TYPE_CHECKING:
    from pydicom import Dataset

__all__ = ["indications"]

# Label (SH, at most 16 characters), the record's member, unit (UCUM) and the unit's meaning.
_SIZES = (
    ("Length", "length_mm", "mm", "millimeter"),
    ("Length U (k=2)", "length_u_mm", "mm", "millimeter"),
    ("Path", "path_mm", "mm", "millimeter"),
    ("Path U (k=2)", "path_u_mm", "mm", "millimeter"),
    ("Width", "width_mm", "mm", "millimeter"),
    ("Width U (k=2)", "width_u_mm", "mm", "millimeter"),
    ("Area", "area_mm2", "mm2", "square millimeter"),
    ("Area U (k=2)", "area_u_mm2", "mm2", "square millimeter"),
    ("Ratio", "ratio", "1", "no units"),
)
_LEAST = {
    Least.RUNS_OUT: "ends at the photo's edge: its sizes are the least that they can be",
    Least.OVEREXPOSED: "on overexposed developer: its sizes are the least that they can be",
    Least.COVERED: "an end may be covered: its sizes are the least that they can be",
    Least.ENDS_UNSURE: "its ends may not show in haze, rust, grain, a red reflection, beside "
    "paint or where the file lost its colour: its sizes are the least that they can be",
}
_MOST = 8000  # points; a value of 4-byte numbers holds 65 534 bytes (PS3.5, 7.1.2)


def indications(view: Record) -> "list[Dataset]":
    """The items of Indication Sequence (0014,2012) for a record of one photo.

    The outline is a closed polyline in pixels, counted from the corner of the top-left pixel
    (PS3.3, C.10.5.1.2, from memory): our coordinates plus one half.
    """
    stands = called(view)
    return [_item(number, one, stands) for number, one in enumerate(view.indications, 1)]


def _item(number: int, one: dict[str, Any], stands: dict[str, str]) -> "Dataset":
    from pydicom import Dataset

    made = Dataset()
    made.IndicationNumber = number
    made.IndicationLabel = line(one["id"], 16)
    told = least_of(one)
    least = [says for why, says in _LEAST.items() if told[why]]
    words = (shape_words(one), *least, one["relevance"], one["reason"], one["note"])
    made.IndicationDescription = note("; ".join(word for word in words if word), 1024)
    made.IndicationType = code(one["shape"] or "not measured")
    made.IndicationDisposition = code(stands[one["id"]] or "not judged")
    made.IndicationPhysicalPropertySequence = [
        _size(label, one[name], unit, meaning)
        for label, name, unit, meaning in _SIZES
        if one[name] is not None
    ]
    made.IndicationROISequence = [_outline(one["outline_px"])]
    return made


def _size(label: str, value: float, unit: str, meaning: str) -> "Dataset":
    from pydicom import Dataset

    made, units = Dataset(), Dataset()
    made.PropertyLabel = label
    made.NumericValue = f"{value:.10g}"  # DS: at most 16 characters
    made.FloatingPointValue = float(value)
    units.CodeValue, units.CodingSchemeDesignator, units.CodeMeaning = unit, "UCUM", meaning
    made.MeasurementUnitsCodeSequence = [units]
    return made


def _outline(points: list[list[float]]) -> "Dataset":
    from pydicom import Dataset

    thinned = points[:: 1 + len(points) // _MOST]
    ring = np.array([*thinned, thinned[0]], dtype=float) + 0.5
    made = Dataset()
    made.GraphicAnnotationUnits = "PIXEL"
    made.GraphicDimensions = 2
    made.NumberOfGraphicPoints = len(ring)
    made.GraphicData = ring.ravel().tolist()
    made.GraphicType = "POLYLINE"
    made.GraphicFilled = "N"
    return made
