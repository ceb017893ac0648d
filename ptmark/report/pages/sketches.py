"""Sketches of the findings that hang on more than one indication: row, window, merged group."""

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt
from reportlab.platypus import CondPageBreak, Flowable

from ptmark.record import Record
from ptmark.report.pages.photo import jpeg_picture
from ptmark.report.pages.style import grid, heading, text
from ptmark.report.sketch import finding_picture
from ptmark.report.wording import STRICTEST, VERDICT_SIGN

__all__ = ["sketches"]

_MOST = 6
_LETTERING = 1.7  # the picture is shown at less than half its size


@dataclass(frozen=True, slots=True)
class _Outline:
    id: str
    outline_mm: npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Shown:
    indications: tuple[str, ...]
    sketch: tuple[tuple[float, float], ...]
    says: str


def sketches(record: Record, width: float) -> list[Flowable]:
    """The strictest findings first, two in a row; none where no finding joins indications."""
    findings = [] if record.evaluation is None else record.evaluation["findings"]
    joined = [one for one in findings if len(one["indications"]) > 1 and one.get("sketch_mm")]
    joined.sort(key=lambda one: STRICTEST.index(one["verdict"]))
    if not joined:
        return []
    outlines = [
        _Outline(one["id"], np.array(one["outline_mm"], float).reshape(-1, 2))
        for one in record.indications
        if one["outline_mm"]
    ]
    cells: list[Any] = [_cell(one, outlines, width) for one in joined[:_MOST]]
    rows = [[*cells[at : at + 2], ""][:2] for at in range(0, len(cells), 2)]
    said = "Outlines in mm on the surface; those of the finding solid, the others dotted."
    if len(joined) > _MOST:
        said += f" {len(joined) - _MOST} further findings join indications."
    return [
        CondPageBreak(width / 3 + 75),  # the heading stays with the first row
        *heading("What joins them"),
        text(said, 7, quiet=True),
        grid(rows, [width / 2] * 2, head=0),
    ]


def _cell(one: dict[str, Any], outlines: list[_Outline], width: float) -> list[Flowable]:
    corners = tuple((float(x), float(y)) for x, y in one["sketch_mm"])
    shown = _Shown(tuple(one["indications"]), corners, one["says"])
    picture = jpeg_picture(
        finding_picture(shown, outlines, lettering=_LETTERING), (width / 2 - 8, width / 3)
    )
    sign = VERDICT_SIGN[one["verdict"]]
    return [picture, text(f"{sign} {one['verdict']}. {one['says']}", 7)]
