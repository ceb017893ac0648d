"""Photos of one area, registered to each other: bleed-out over time, before and after rework.

A `Registration` leads from the pixels of one photo to those of another, with its residual and
uncertainty; where two photos do not show enough in common it is refused with the reason.
Indications are matched by their place; growth curves hold measured points only, no model.
"""

from ptmark.series.clock import minutes_since
from ptmark.series.features import view_of
from ptmark.series.frame import Frame, Seen
from ptmark.series.growth import Curve, Growth, Reading, growth_of
from ptmark.series.places import places_of
from ptmark.series.register import register, register_views
from ptmark.series.registration import Registration
from ptmark.series.rework import GONE, KINDS, Change, compare
from ptmark.series.window import WINDOWS, Timed, Window, choose, read_window, timed

__all__ = [
    "GONE",
    "KINDS",
    "WINDOWS",
    "Change",
    "Curve",
    "Frame",
    "Growth",
    "Reading",
    "Registration",
    "Seen",
    "Timed",
    "Window",
    "choose",
    "compare",
    "growth_of",
    "minutes_since",
    "places_of",
    "read_window",
    "register",
    "register_views",
    "timed",
    "view_of",
]
