"""Red-on-white contrast against the local white: suggested outlines and the edge of the dye.

An indication ends at half the colour contrast between the local white and its own plateau,
in linear light. Finds what a trained eye would call, ranks by how sure, and says of every
blob left out why.
"""

from ptmark.dye.clipped import clipped_remark
from ptmark.dye.coarse import CoarseLook
from ptmark.dye.covered import covered_remark, ends_covered, reach_card
from ptmark.dye.dull import dull_remark
from ptmark.dye.edge import BY_PERSON, EdgeQuality
from ptmark.dye.exposure import is_overexposed, overexposed_share
from ptmark.dye.fluorescent import (
    find_indications,
    in_colour_contrast,
    lighting_remark,
    look_ahead,
    refine_in_mode,
)
from ptmark.dye.haze import dense_places, dense_remark, glow_remark, haze_remark
from ptmark.dye.kind import kind_remark, kind_unknown, recognise
from ptmark.dye.moved import moved_remark
from ptmark.dye.quality import look_at_quality
from ptmark.dye.remark import Remark
from ptmark.dye.suggest import (
    LeftOut,
    Suggestions,
    suggest,
    unseen_places,
    unseen_remark,
)
from ptmark.dye.trace import DyeTracer, refine_outline
from ptmark.dye.uneven import is_uneven, uneven_remark

__all__ = [
    "BY_PERSON",
    "CoarseLook",
    "DyeTracer",
    "EdgeQuality",
    "LeftOut",
    "Remark",
    "Suggestions",
    "clipped_remark",
    "covered_remark",
    "dense_places",
    "dense_remark",
    "dull_remark",
    "ends_covered",
    "find_indications",
    "glow_remark",
    "haze_remark",
    "in_colour_contrast",
    "is_overexposed",
    "is_uneven",
    "kind_remark",
    "kind_unknown",
    "lighting_remark",
    "look_ahead",
    "look_at_quality",
    "moved_remark",
    "overexposed_share",
    "reach_card",
    "recognise",
    "refine_in_mode",
    "refine_outline",
    "suggest",
    "uneven_remark",
    "unseen_places",
    "unseen_remark",
]
