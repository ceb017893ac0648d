"""The few quiet lines that stand where someone is about to rely on a verdict or go to work."""

from ptmark.window.words import tr

__all__ = ["VERDICT_CAUTIONS", "WORK_CAUTIONS"]

VERDICT_CAUTIONS = tr(
    "The verdict is an aid. The contract's own edition and local codes govern, and the "
    "certified inspector decides. Colour vision and lighting must be qualified."
)
WORK_CAUTIONS = tr(
    "Before rework or retest: penetrants, removers and aerosols are flammable and their vapour "
    "harms. Ventilate, keep ignition sources and welding away, wear gloves and eye protection, "
    "keep off hot or energised parts, and read the safety data sheets."
)
