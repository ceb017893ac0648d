"""What is judged: indications on the surface with their measured uncertainty."""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

__all__ = ["Judged", "Scene"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Judged:
    """One indication as the criteria see it; mm on the surface.

    ``length_u`` and ``width_u`` are expanded uncertainties, k = 2. ``kind`` is an ISO 6520-1
    name or number where the inspector has named one, else "".
    """

    id: str
    outline_mm: npt.NDArray[np.float64]  # shape (N, 2)
    length: float
    path: float
    width: float
    length_u: float = 0.0
    width_u: float = 0.0
    kind: str = ""
    relevance: str = ""  # "", or "non-relevant"/"false" as set by the inspector, with a reason
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """All that an evaluation needs of one examined area."""

    indications: tuple[Judged, ...]
    weld_length_mm: float | None = None
    thickness_mm: float | None = None
