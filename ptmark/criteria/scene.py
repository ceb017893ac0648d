"""What is judged: indications on the surface with their measured uncertainty."""

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from ptmark.criteria.apart import Apart
from ptmark.criteria.rough import Rough
from ptmark.hides import Hidden
from ptmark.least import Least

__all__ = ["NEAR_DEG", "Judged", "Scene"]

NEAR_DEG = (0, 30, 60, 90, 120, 150)  # from the surface's x axis towards its y axis


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Judged:
    """One indication as the criteria see it; mm on the surface.

    ``length_u`` and ``width_u`` are expanded uncertainties, k = 2. ``kind`` is an ISO 6520-1
    name or number where the inspector has named one, else "". ``edge_u`` (k = 2) is how far the
    scene's lines may lie elsewhere as seen from it. ``place_u`` (k = 2, None: ``length_u``) is
    that of its outline's own length, where its size was taken from another photo. Map and
    relief make distances wrong by a share of them, k = 2: ``near_u`` about it, in directions of
    `NEAR_DEG`, none for 0; ``far_u`` from it across the scene. ``least`` is why its sizes are
    the least that they can be; where there is a reason it cannot be acceptable. With ``rough``
    given, width and path are only known between its bounds, ``width`` is their upper and
    ``path`` their lower one; they are measured where a rule hangs on them.
    """

    id: str
    outline_mm: npt.NDArray[np.float64]  # shape (N, 2)
    length: float
    path: float
    width: float
    length_u: float = 0.0
    width_u: float = 0.0
    edge_u: float = 0.0
    place_u: float | None = None
    near_u: tuple[float, ...] = ()
    far_u: float = 0.0
    kind: str = ""
    relevance: str = ""  # "", or "non-relevant"/"false" as set by the inspector, with a reason
    reason: str = ""
    least: frozenset[Least] = frozenset()
    rough: Rough | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """All that an evaluation needs of one examined area.

    ``weld_direction_deg`` is the angle of the weld from the surface's x axis towards its y
    axis; ``edges`` are lines by name, each of shape (N, 2) in mm; ``notes`` are cautions about
    the scene itself, repeated by the evaluation. ``unmeasured`` names indications that could
    not be measured; ``hidden`` is why the photo may not show all that is there. ``known`` holds
    what was worked out of the outlines in reading them, so that it is not worked out twice.
    """

    indications: tuple[Judged, ...]
    weld_length_mm: float | None = None
    thickness_mm: float | None = None
    diameter_mm: float | None = None
    weld_direction_deg: float | None = None
    edges: Mapping[str, tuple[npt.NDArray[np.float64], ...]] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
    unmeasured: tuple[str, ...] = ()
    hidden: Hidden = field(default_factory=dict)
    known: Apart | None = field(default=None, compare=False, repr=False)
