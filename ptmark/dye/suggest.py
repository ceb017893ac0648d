"""Suggested outlines: what a trained eye would call, and why the rest was left out."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.dye.edge import EdgeQuality
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

__all__ = ["LeftOut", "Suggestion", "Suggestions", "suggest"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Suggestion:
    """One suggested outline, shape (N, 2) px at half contrast; confidence 0 to 1."""

    outline_px: Array
    edge: EdgeQuality
    confidence: float
    contrast: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LeftOut:
    """A blob that was not called, with its reason in words."""

    outline_px: Array
    edge: EdgeQuality
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Suggestions:
    """All that one look gives; ``haze`` is the background pinkness, 0 (white) to 1 (dye)."""

    found: tuple[Suggestion, ...]
    left_out: tuple[LeftOut, ...]
    haze: float | None = None


def suggest(
    photo: Photo, surface: SurfaceMap | None = None, area_px: Array | None = None
) -> Suggestions:
    """Look for indications; ``area_px`` of shape (N, 2) bounds the examined area."""
    raise NotImplementedError
