"""Red-on-white contrast against the local white: suggested outlines and the edge of the dye.

An indication ends at half the colour contrast between the local white and its own plateau,
in linear light. Finds what a trained eye would call, ranks by how sure, and says of every
blob left out why.
"""

from ptmark.dye.edge import EdgeQuality
from ptmark.dye.suggest import LeftOut, Suggestion, Suggestions, suggest
from ptmark.dye.trace import DyeTracer, refine_outline

__all__ = [
    "DyeTracer",
    "EdgeQuality",
    "LeftOut",
    "Suggestion",
    "Suggestions",
    "refine_outline",
    "suggest",
]
