"""The map of the printed scale card."""

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from ptmark.errors import ScaleError
from ptmark.scale.card import FoundCard, find_cards
from ptmark.scale.checks import check_length
from ptmark.scale.fit import PlaneFit
from ptmark.scale.layout import CHECK_MM, MARKER_IDS, MARKER_MM, marker_corners_mm
from ptmark.scale.maps import camera_priors, fit_even_cropped, known_lens, map_of, starting_pose
from ptmark.scale.problem import Problem, State
from ptmark.scale.surface import SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo
    from ptmark.scale.reference import CardReference

__all__ = ["CURLED", "UNCHECKED", "solve_card", "usable_cards", "widened"]

CURLED = (
    "the card does not lie flat: its markers are no plane, and every length may be wrong by "
    "some per cent. Hold it down all over, or print it on stiff board, and photograph again"
)

UNCHECKED = (
    "the card's check length was not measured: it is taken to be printed at 100 %, within "
    "0.3 %, and a page fitted to the paper makes every length wrong by some per cent. Measure "
    "it once with callipers"
)

MIRRORED = (
    "the picture is mirrored, as front cameras do: sizes hold, but left and right are swapped, "
    "and so is every place told from an edge or a datum. Use the photo unmirrored, with "
    "mirroring off in the camera"
)

# Printed size without a measured check length: laser and ink printers keep 0.3 % of the length
# asked for (rectangular). Common practice, no source.
PRINT_U = 0.003 / np.sqrt(3)
# A calliper reading of the check length: graduation 0.05 mm, rectangular half-width.
CALLIPER_U = 0.05 / np.sqrt(3) / CHECK_MM
# Ink spreads: each edge of a printed square may lie this far out. Common practice, no source.
SPREAD_U_MM = 0.03
# Squares that seem to spread so much may tell of a picture whose dark edges were moved, as
# local tone mapping and scaling of coded values do: 123 rendered photos as taken reach 0.032
# mm, tone-mapped ones 0.03 to 0.15. Told where print explains it in 1 of 20.
MOVED_MM, TOLD_MM = 0.035, 2 * SPREAD_U_MM
# An edge is printed to the nearest dot: 600 to the inch, rectangular.
DOT_U_MM = 25.4 / 600 / np.sqrt(12)
MIN_CORNERS = 5
# Misfit over what the corners are seen by, squared and for each degree of freedom: flat cards
# in 70 rendered photos reach 1.4. Corners of a card that curls depart together, so their misfit
# tells of more than chance would make of it: seven times that uncertainty covers the lengths
# beside one that curls by 2 to 4 mm, square-on and tilted to 20 degrees, in simulated views.
NOT_FLAT, TOGETHER = 2.0, 7.0


def usable_cards(
    reference: "CardReference", found: tuple[FoundCard, ...]
) -> tuple[FoundCard, ...]:
    """Those that a reference means, of its set or all, seen well enough to use."""
    return tuple(one for one in _meant(reference, found) if one.clear.sum() >= MIN_CORNERS)


def _meant(reference: "CardReference", found: tuple[FoundCard, ...]) -> tuple[FoundCard, ...]:
    return tuple(one for one in found if reference.number in (None, one.number))


def solve_card(
    reference: "CardReference", photo: "Photo", found: FoundCard | None = None
) -> SurfaceMap:
    """Find the card and fit its plane, with the ink's spread as one more unknown.

    ``found`` is the card where it was found before; else that of the reference's set, or the
    first of all.

    Raises
    ------
    ScaleError
        If no card is found, too little of it is clear, or the check length is absurd.
    """
    correction = _correction(reference.check_mm)
    if found is None:
        found = next(iter(_meant(reference, find_cards(photo))), None)
    if found is None or found.clear.sum() < MIN_CORNERS:
        raise ScaleError(
            "no scale card found" if found is None else "too little of the scale card is clear",
            where=photo.info.path.name,
            mend="lay the card flat, unshaded and whole in the picture, or pick a rectangle "
            "or a line of known length",
        )
    clear = found.clear.ravel()
    plane = np.vstack([marker_corners_mm(i) for i in found.ids])[clear] * correction
    corners = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]]
    outward = np.tile(corners, (len(found.ids), 1))[clear]
    seen = found.corners_px.reshape(-1, 2)[clear]
    dot_px = DOT_U_MM * found.sides_px / MARKER_MM
    u_px = np.hypot(found.u_px, dot_px[:, None]).ravel()[clear]
    size_u = PRINT_U if reference.check_mm is None else CALLIPER_U
    problem = Problem(
        seen,
        u_px,
        lambda own: plane + own[0] * outward,
        camera_priors(photo, own_u=(SPREAD_U_MM,)),
        known_lens(photo),
    )
    fit = fit_even_cropped(
        problem,
        State(starting_pose(seen, plane, photo), problem.priors.kappa, np.zeros(1)),
        robust=True,
        perturbed=(
            lambda own: (plane + own[0] * outward) * [1 + size_u, 1],
            lambda own: (plane + own[0] * outward) * [1, 1 + size_u],
        ),
    )
    if fit.kept.sum() < MIN_CORNERS:
        raise ScaleError(
            "the card's markers contradict each other",
            where=photo.info.path.name,
            mend="lay the card flat and uncovered, or pick a rectangle by hand",
        )
    says = _cautions(reference, found, fit)
    made = map_of(fit if _lies_flat(fit) else widened(fit), "card", seen[fit.kept], says)
    return replace(made, displaced_u_mm=_displaced_u_mm(float(fit.own[0])))


def _displaced_u_mm(spread_mm: float) -> float:
    """Standard uncertainty of all dark edges, where squares seem to spread so, mm.

    Print and picture alike may have done it, so half of it is taken (own choice).

    Examples
    --------
    >>> _displaced_u_mm(0.03), _displaced_u_mm(-0.1)
    (0.0, 0.05)
    """
    size = abs(spread_mm)
    return max(min(size / 2, 2 * (size - MOVED_MM)), 0.0)


def widened(fit: PlaneFit) -> PlaneFit:
    """A fit whose misfit is that of a card that does not lie flat."""
    if "map" not in fit.covariance:
        return fit
    wider = fit.covariance | {"map": TOGETHER**2 * fit.covariance["map"]}
    return replace(fit, covariance=wider)


def _lies_flat(fit: PlaneFit) -> bool:
    return fit.chi2 <= NOT_FLAT * fit.dof


def _correction(check_mm: float | None) -> float:
    if check_mm is None:
        return 1.0
    check_length(check_mm, "the check length")
    if abs(check_mm / CHECK_MM - 1) > 0.1:
        raise ScaleError(
            f"a check length of {check_mm:g} mm, where {CHECK_MM:g} mm is printed",
            where="scale",
            mend="measure the check length again, in mm",
        )
    return check_mm / CHECK_MM


def _cautions(reference: "CardReference", found: FoundCard, fit: PlaneFit) -> tuple[str, ...]:
    says = [UNCHECKED] if reference.check_mm is None else []
    if found.mirrored:
        says.append(MIRRORED)
    spread = float(fit.own[0])
    if abs(spread) > TOLD_MM:
        says.append(
            f"each side of the card's squares seems {spread:+.2f} mm off: ink that spread, or "
            "a photo whose dark edges were moved by tone mapping, a filter or a scanning "
            "program, those of indications too. Use the photo as the camera wrote it, and "
            "print the card sharply on smooth paper"
        )
    if not _lies_flat(fit):
        says.append(CURLED)
    missing = len(MARKER_IDS) - len(found.ids)
    if missing:
        says.append(
            f"{missing} of the card's {len(MARKER_IDS)} markers not seen: the map is less sure "
            "away from the others. Uncover the card and photograph again where it matters"
        )
    total = found.u_px.size
    dropped = total - int(fit.kept.sum())
    if dropped:
        says.append(
            f"{dropped} of {total} marker corners covered or out of place: left out. "
            "Uncover the card and lay it flat"
        )
    return tuple(says)
