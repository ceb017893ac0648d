"""Two references in one photo: compared, refused where they contradict, fitted together.

Each is solved alone first. Both maps then measure the same places, once on each reference
that tells the plane, and on a line along itself. Where they differ by more than chance, one of
them lies off the surface, or a length is wrong, and nobody can tell which.
"""

from dataclasses import replace

import numpy as np
import numpy.typing as npt

from ptmark.en import en_number
from ptmark.errors import ScaleError
from ptmark.scale.card_map import CURLED, UNCHECKED, widened
from ptmark.scale.fit import Evidence, fit_plane
from ptmark.scale.joint import JointProblem, Part
from ptmark.scale.lines import LINE_CAUTION, LINES_CAUTION
from ptmark.scale.maps import map_of
from ptmark.scale.offset import offset_u_mm, set_back
from ptmark.scale.reference import OnPlane
from ptmark.scale.surface import Beside, SurfaceMap

__all__ = ["MAX_EN", "solve_pair"]

Array = npt.NDArray[np.float64]

# Up to four comparisons, each of a normal deviate over 2 u: En above 1.6 (3.2 u) comes to
# 0.14 % in each, so that of two right references less than 0.6 % are refused. Above 1 (2 u:
# 4.6 % each) it is said.
MAX_EN, SAID_EN = 1.6, 1.0
# A reference this much narrower than long is compared along itself only.
_SLIM = 0.2
_TURNED_ROUND = frozenset({LINE_CAUTION, LINES_CAUTION})


def solve_pair(
    first: tuple[OnPlane, SurfaceMap], second: tuple[OnPlane, SurfaceMap], where: str
) -> SurfaceMap:
    """One map of two references, each given with the map it gives alone, not set back.

    The surface's frame is that of the first which tells the plane.

    Raises
    ------
    ScaleError
        If neither tells the plane, the two contradict each other, or no plane fits both.
    """
    if not _tells_plane(first[1]):
        first, second = second, first
    if not _tells_plane(first[1]):
        raise ScaleError(
            "neither reference tells how the surface leans",
            where="scale",
            mend="take a card, a rectangle or a graduated rule as one of the two",
        )
    alone = [set_back(made, given.offset_mm) for given, made in (first, second)]
    en, difference = _disagreement(*alone)
    if en > MAX_EN:
        raise ScaleError(
            f"the {alone[0].reference} and the {alone[1].reference} contradict each other: "
            f"their scales differ by {100 * abs(difference):.1f} %, En {en:.1f}; of two right "
            "ones fewer than 1 in 100 do",
            where=where,
            mend="one of them lies off the surface or its length is wrong: lay both flat on "
            "the surface, or give how far above it one lies (offset), or use one of them only",
        )
    parts = [
        Part(_evidence(m), g.offset_mm, offset_u_mm(g.offset_mm)) for g, m in (first, second)
    ]
    cards = alone[0].reference == alone[1].reference == "card"
    problem = JointProblem(parts[0], parts[1], alike=cards)
    fit = fit_plane(problem, problem.start(*_between(*alone)))
    if any(CURLED in one.cautions for one in alone):
        fit = widened(fit)
    moot = _TURNED_ROUND if cards else _TURNED_ROUND | {UNCHECKED}  # the other one checks it
    said = [c for one in alone for c in one.cautions if c not in moot]
    if en > SAID_EN:
        said.append(
            f"the two references differ by {100 * abs(difference):.1f} % in scale, En "
            f"{en:.1f}: look whether both lie flat on the surface"
        )
    made = map_of(fit, alone[0].reference, alone[0].reference_px, tuple(said))
    other = alone[1]
    return replace(
        made,
        cautions=tuple(dict.fromkeys(made.cautions)),
        reading="; ".join(one.reading for one in alone if one.reading),
        beside=Beside(other.reference, other.reference_px, en, difference),
        evidence=None,
        displaced_u_mm=max(one.displaced_u_mm for one in alone),
    )


def _tells_plane(surface: SurfaceMap) -> bool:
    return surface.view_slope_u == 0.0


def _evidence(surface: SurfaceMap) -> Evidence:
    if surface.evidence is None:
        raise ScaleError(
            f"a {surface.reference} cannot be used with another reference", where="scale"
        )
    return surface.evidence


def _disagreement(first: SurfaceMap, second: SurfaceMap) -> tuple[float, float]:
    """Largest En of the two maps' lengths on the references, and the relative difference there.

    The En number of ISO/IEC 17043:2010, B.4.1.1, with the uncertainty of the difference:
    focal length, optical centre and lens term are common to both maps and enter once (JCGM
    100:2008, F.1.2.3); errors of size are taken as each reference's own.
    """
    places = _spans(second) if not _tells_plane(second) else _spans(first) + _spans(second)
    found = (0.0, 0.0)
    for ends in places:
        one, by_first = first.distance_slope(ends)
        other, by_second = second.distance_slope(ends)
        own = [
            u**2
            for surface in (first, second)
            for name, u in surface.distance_u(*ends).items()
            if name != "lens"
        ]
        u = float(np.sqrt(sum(own) + _lens_variance(first, second, by_first, by_second)))
        en = en_number(one, 2 * u, other, 0.0) or 0.0
        if en >= found[0]:
            found = (en, one / other - 1)
    return found


def _lens_variance(
    first: SurfaceMap, second: SurfaceMap, by_first: Array, by_second: Array
) -> float:
    one, other = _evidence(first), _evidence(second)
    pulls = by_first @ one.pull, by_second @ other.pull
    known = [
        (p.log_focal_u, p.centre_u, p.kappa_u)
        for p in (one.problem.priors, other.problem.priors)
    ]
    if known[0] != known[1]:  # one of them found the photo cropped: not the same knowledge
        return float(sum(pull @ pull for pull in pulls))
    apart = pulls[0] - pulls[1]
    return float(apart @ apart)


def _spans(surface: SurfaceMap) -> list[Array]:
    """Where a reference lies: lines through its middle along and across it, px, (2, 2) each."""
    if surface.reference == "line":
        return [surface.reference_px[:2]]
    at = surface.to_mm(surface.reference_px)
    low, high = at.min(axis=0), at.max(axis=0)
    middle, size = (low + high) / 2, high - low
    spans = []
    for axis in (0, 1):
        if size[axis] > _SLIM * size.max():
            ends = np.array([middle, middle])
            ends[0, axis], ends[1, axis] = low[axis], high[axis]
            spans.append(surface.to_px(ends))
    return spans


def _between(first: SurfaceMap, second: SurfaceMap) -> tuple[float, Array]:
    """Turn (rad) and place (mm) of the second's frame in the first's (Kabsch 1976, planar)."""
    here, there = (one.to_mm(second.reference_px) for one in (second, first))
    a, b = here - here.mean(axis=0), there - there.mean(axis=0)
    turn = float(np.arctan2((a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum(), (a * b).sum()))
    cos, sin = np.cos(turn), np.sin(turn)
    turned = np.array([[cos, -sin], [sin, cos]]) @ here.mean(axis=0)
    return turn, there.mean(axis=0) - turned
