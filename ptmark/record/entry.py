"""One indication on its way into the record."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality
from ptmark.measure import Measurement

__all__ = ["Entry"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Entry:
    """One indication as it goes into the record.

    ``outline_px`` of shape (N, 2) px of the upright photo; ``measurement`` is None where there
    is no surface. ``standing`` is "suggested" (not looked at) or "taken"; ``confidence`` 0 to 1
    or None; ``edge_u`` (k = 2, mm) is how well its distance to marked lines is known, None
    where there are none; ``relevance`` is "", "non-relevant" or "false", the latter two with a
    ``reason``.
    """

    id: str
    outline_px: Array
    edge: EdgeQuality
    measurement: Measurement | None = None
    standing: str = "taken"
    confidence: float | None = None
    kind: str = ""
    note: str = ""
    relevance: str = ""
    reason: str = ""
    edge_u: float | None = None
