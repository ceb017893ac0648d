"""The chart of contributions and the words under it, whatever the scale comes from."""

import numpy as np
import pytest
from reportlab.graphics.shapes import Drawing, Rect
from reportlab.platypus import KeepTogether, Paragraph

from ptmark.dye import EdgeQuality
from ptmark.inspection import Inspection
from ptmark.measure import advice
from ptmark.report.pages.budget import budget_chart
from ptmark.scale import (
    CardReference,
    LineReference,
    LinesReference,
    PairReference,
    PipeReference,
    RectangleReference,
)

# Px of the photo of `photo_file`, which shows 12 px a mm and no pipe: the picks alone count.
CORNERS = ((119.5, 59.5), (1319.5, 59.5), (1319.5, 659.5), (119.5, 659.5))
RECTANGLE = RectangleReference(corners_px=CORNERS, width_mm=100.0, height_mm=50.0)
LINE = LineReference(ends_px=(CORNERS[0], CORNERS[1]), length_mm=100.0)
CROWN = ((119.5, 359.5), (1319.5, 359.5))
MODES = {
    "card": CardReference(),
    "rectangle": RECTANGLE,
    "two lines": LinesReference(
        first_px=(CORNERS[0], CORNERS[1]),
        first_mm=100.0,
        second_px=(CORNERS[1], CORNERS[2]),
        second_mm=50.0,
    ),
    "line": LINE,
    "card, pair": PairReference(first=CardReference(), second=RECTANGLE),
    "pipe": PipeReference(
        edges_px=((100.0, 20.0), (1400.0, 25.0), (100.0, 1200.0), (1400.0, 1195.0)),
        diameter_mm=120.0,
    ),
    "line on a pipe": PipeReference(
        diameter_mm=300.0, on=LineReference(ends_px=CROWN, length_mm=100.0)
    ),
    "rectangle on a pipe": PipeReference(axis_px=CROWN, diameter_mm=300.0, on=RECTANGLE),
}
# What each adds to edge, sampling and relief. A line alone tells no tilt; only a pipe feels the
# focal length by itself, and only one that something lies on has a touching line.
OWN = {
    "line": {"tilt"},
    "pipe": {"focal length"},
    "line on a pipe": {"touching line", "tilt"},
    "rectangle on a pipe": {"touching line"},
}


def _laid_flat(parts):
    """Every part of a page, taken out of what keeps some together."""
    for part in parts:
        yield from _laid_flat(part._content) if isinstance(part, KeepTogether) else [part]


@pytest.mark.parametrize("mode", MODES)
def test_the_chart_shows_every_part_and_the_words_fit(photo_file, mode):
    inspection = Inspection()
    inspection.open(photo_file)
    inspection.set_reference(MODES[mode])
    box = np.array([[600.0, 345.0], [760.0, 345.0], [760.0, 371.0], [600.0, 371.0]])
    inspection.add(box, EdgeQuality(shift_px=0.3, noise_px=0.1, source="suggested"))
    record = inspection.to_record()
    (one,) = record.indications
    budget, reference = one["budget"], record.scale["reference"]
    assert reference == mode.removesuffix(", pair")
    assert {"edge", "sampling", "relief", "picking", "reference"} | OWN.get(mode, set()) <= set(
        budget
    )
    # JCGM 100:2008, 5.1.2: the parts in quadrature; what the record rounds is 1e-4 mm.
    assert 2 * np.hypot.reduce([*budget.values()]) == pytest.approx(
        one["length_u_mm"], abs=2e-3
    )
    chart = list(_laid_flat(budget_chart(record, 400.0)))
    (bars,) = [part for part in chart if isinstance(part, Drawing)]
    wide = [bar.width for bar in bars.contents if isinstance(bar, Rect)]
    shares = np.square([*budget.values()]) / np.square([*budget.values()]).sum()
    assert np.allclose(np.array(wide) / sum(wide), shares, atol=1e-6)
    told = " ".join(part.text for part in chart if isinstance(part, Paragraph))
    assert " o " not in told  # a letter of its own for each
    for name in budget:
        assert name in told
        assert advice({name: 1.0}, reference)
    said = advice(budget, reference)
    assert (said in told) if said else ("surer" not in told)
