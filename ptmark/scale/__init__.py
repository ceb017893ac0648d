"""From a scale reference in the photo to a `SurfaceMap`: pixel to mm, with its covariance.

References, best first: the printed card (found by itself), a known rectangle, two lines at
right angles, one line; two of these at once; a pipe or bar by its diameter and its edges, or
by what lies on it. The map says how far it can be trusted (tilt, working distance, residual,
distance from the reference); a degenerate reference is refused with its reason.
"""

from ptmark.scale.calibration_grid import write_grid_pdf
from ptmark.scale.camera import calibrate_camera
from ptmark.scale.card import CARD_HEIGHT_MM, CARD_WIDTH_MM, find_card
from ptmark.scale.card_pdf import write_card_pdf
from ptmark.scale.cylinder import Cylinder
from ptmark.scale.far import FAR_SIZES, far_caution, sizes_away
from ptmark.scale.pipe_map import PipeMap
from ptmark.scale.plane import Lens
from ptmark.scale.reference import (
    CardReference,
    Flat,
    LineReference,
    LinesReference,
    OnPlane,
    PairReference,
    PipeReference,
    RectangleReference,
    Reference,
    reference_from_json,
    reference_to_json,
)
from ptmark.scale.solve import solve
from ptmark.scale.surface import SurfaceMap

__all__ = [
    "CARD_HEIGHT_MM",
    "CARD_WIDTH_MM",
    "FAR_SIZES",
    "CardReference",
    "Cylinder",
    "Flat",
    "Lens",
    "LineReference",
    "LinesReference",
    "OnPlane",
    "PairReference",
    "PipeMap",
    "PipeReference",
    "RectangleReference",
    "Reference",
    "SurfaceMap",
    "calibrate_camera",
    "far_caution",
    "find_card",
    "reference_from_json",
    "reference_to_json",
    "sizes_away",
    "solve",
    "write_card_pdf",
    "write_grid_pdf",
]
