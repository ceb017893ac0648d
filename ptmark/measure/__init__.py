"""From an outline to length, path, width, area, centre and shape, each with its budget.

Every number is a `Quantity`: value, standard uncertainty, named contributions (JCGM 100).
"""

from ptmark.measure.advice import advice, dominant, shares
from ptmark.measure.geometry import (
    area_mm2,
    caliper,
    centroid,
    inscribed_width,
    path_length,
)
from ptmark.measure.hand import (
    Hand,
    Hands,
    hand_words,
    keep_hands,
    kept_hands,
    pooled_hand,
    with_own_hand,
)
from ptmark.measure.outline import (
    Conditions,
    Measurement,
    measure_outline,
    measure_outlines,
)
from ptmark.measure.quantity import Quantity

__all__ = [
    "Conditions",
    "Hand",
    "Hands",
    "Measurement",
    "Quantity",
    "advice",
    "area_mm2",
    "caliper",
    "centroid",
    "dominant",
    "hand_words",
    "inscribed_width",
    "keep_hands",
    "kept_hands",
    "measure_outline",
    "measure_outlines",
    "path_length",
    "pooled_hand",
    "shares",
    "with_own_hand",
]
