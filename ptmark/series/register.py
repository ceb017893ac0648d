"""From the pixels of one photo to those of another of the same area, with the uncertainty.

Photo a is the one led from, photo b the one led to; pixel frames as in `ptmark.photo`.
"""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.errors import SeriesError
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap
from ptmark.scale.plane import apply_homography, fit_homography
from ptmark.series.card import card_map, card_words
from ptmark.series.features import View, view_of
from ptmark.series.fit import covariance_of, refined
from ptmark.series.matching import alike, near_indications, surrounded
from ptmark.series.registration import Registration
from ptmark.series.scaled import find_motion, map_of_motion

__all__ = ["register", "register_views"]

Array = npt.NDArray[np.float64]
Mask = npt.NDArray[np.bool_]

# A match is accepted where inliers > 8.0 + 0.3 x matches (Brown and Lowe 2007, "Automatic
# panoramic image stitching using invariant features", section 3.2; from memory).
CHANCE_ALPHA, CHANCE_BETA = 8.0, 0.3
LEAST_INLIERS = 16
_REACH = 3.0  # px of the picture looked at: farther off is no inlier
_WORST_RESIDUAL = 1.5  # px of the picture looked at
_MOST_THINGS = 3  # that moved each by itself: the area, a rule, a label
_MOST_SCALE = 6.0  # one photo taken six times as close as the other
# A mark picked by hand in two photos. Common practice, no source.
MARK_U_PX = 2.0


def register(
    photo_a: Photo,
    photo_b: Photo,
    surface_a: SurfaceMap | None = None,
    surface_b: SurfaceMap | None = None,
    *,
    marks: tuple[Array, Array] | None = None,
    card_stays: bool = False,
) -> Registration:
    """Register two photos; see `register_views`."""
    return register_views(
        view_of(photo_a, surface_a),
        view_of(photo_b, surface_b),
        marks=marks,
        card_stays=card_stays,
    )


def register_views(
    a: View, b: View, *, marks: tuple[Array, Array] | None = None, card_stays: bool = False
) -> Registration:
    """Register two photos of the same area.

    Parameters
    ----------
    a, b : View
        As `view_of` gives them.
    marks : (ndarray of shape (N, 2), ndarray of shape (N, 2)), px, optional
        The same four or more marks, picked in a and in b; taken in place of features.
    card_stays : bool
        The user's word that the scale card was not moved between the photos: then its two maps
        are one frame, which is taken where the features do not hold.

    Returns
    -------
    Registration
        Where both photos show the card, ``card`` says whether it moved.

    Raises
    ------
    SeriesError
        If too little agrees, or what agrees is no possible view of one plane; it names the
        number of points that agree and how far apart they lie.
    """
    for one in (a, b):
        if one.surface is not None and not one.surface.flat:
            raise SeriesError(
                "photos of a pipe cannot be laid over each other: that takes a plane",
                where=one.name,
                mend="compare what each photo gives by itself",
            )
    if marks is not None:
        return _with_card_words(_by_marks(a, b, *marks), a, b)
    try:
        return _with_card_words(_by_features(a, b), a, b)
    except SeriesError:
        scaled = _by_scales(a, b)
        if scaled is not None:
            return _with_card_words(scaled, a, b)
        if not card_stays or a.surface is None or b.surface is None:
            raise
        h, covariance = card_map(a, b)
        return Registration(
            h=h,
            covariance=covariance,
            by="card",
            inliers=0,
            matches=0,
            residual_px=float(np.hypot(a.surface.residual_px, b.surface.residual_px)),
            card="That the card was not moved is the user's word; the photos cannot show it.",
            cautions=("registered by the card alone: places far from it are less sure",),
        )


def _by_features(a: View, b: View) -> Registration:
    from_a, to_b = alike(a, b)
    near = near_indications(a, b, from_a, to_b)
    reasons, asides = [], []
    for chosen in (near, np.ones(len(near), bool)):
        left = np.flatnonzero(chosen)
        for _ in range(_MOST_THINGS if chosen.any() else 0):
            try:
                made, inside = _one_plane(a, b, from_a[left], to_b[left])
            except SeriesError as exc:
                reasons.append(exc)
                break
            if surrounded(a, b, made.h, from_a[left[inside]], to_b[left[inside]]):
                return made
            asides.append(_refusal(a, b, f"{_ASIDE}: {_figures(made)}"))
            left = left[~inside]  # a thing aside, such as a rule: look at the rest
    told = asides or reasons or [_refusal(a, b, "no place of the surface is alike in both")]
    raise told[-1]


def _by_scales(a: View, b: View) -> Registration | None:
    """The same with both scales' help, for surfaces that have little in common."""
    from_a, to_b = alike(a, b)
    near = near_indications(a, b, from_a, to_b)
    for chosen in (near, np.ones(len(near), bool)):
        left = np.flatnonzero(chosen)
        for _ in range(_MOST_THINGS):
            found = find_motion(a, b, from_a[left], to_b[left])
            if found is None:
                break
            motion, inside = found
            pairs = from_a[left[inside]], to_b[left[inside]]
            h, covariance = map_of_motion(a, b, motion)
            if surrounded(a, b, h, *pairs):
                off = pairs[1] - apply_homography(h, pairs[0])
                return Registration(
                    h=h,
                    covariance=covariance,
                    by="features and scales",
                    inliers=int(inside.sum()),
                    matches=len(left),
                    residual_px=float(np.sqrt((off**2).sum(axis=1).mean())),
                )
            left = left[~inside]
    return None


def _one_plane(a: View, b: View, from_a: Array, to_b: Array) -> tuple[Registration, Mask]:
    """The plane that most pairs agree on, and which they are, shape (N,)."""
    found = kept = None
    if len(from_a) >= LEAST_INLIERS:
        reach = _REACH * b.step
        found, kept = cv2.findHomography(from_a, to_b, cv2.USAC_MAGSAC, reach, None, 20000)
    if found is None or not np.isfinite(found).all():
        raise _refusal(a, b, f"only {len(from_a)} places of the surface are alike in both")
    inside = np.asarray(kept).ravel() > 0
    h, inside = refined(np.asarray(found, np.float64), from_a, to_b, inside, _REACH * b.step)
    covariance, residual = covariance_of(h, from_a[inside], to_b[inside])
    made = Registration(
        h=h,
        covariance=covariance,
        by="features",
        inliers=int(inside.sum()),
        matches=len(from_a),
        residual_px=residual,
    )
    needed = max(float(LEAST_INLIERS), CHANCE_ALPHA + CHANCE_BETA * _in_common(b, h, from_a))
    if made.inliers <= needed:
        said = f"too little is alike in both: {_figures(made)}; over {needed:.0f} must agree"
        raise _refusal(a, b, said)
    if residual > _WORST_RESIDUAL * b.step or not _possible(h, a):
        raise _refusal(a, b, f"what agrees is no view of one plane: {_figures(made)}")
    return made, inside


def _figures(made: Registration) -> str:
    return f"{made.inliers} of {made.matches} points agree, within {made.residual_px:.1f} px"


def _refusal(a: View, b: View, what: str) -> SeriesError:
    return SeriesError(what, where=f"{a.name}, {b.name}", mend=_MEND)


_ASIDE = (
    "what is alike in both lies beside the indications, as a rule or a label does, and may "
    "have been moved"
)
_MEND = (
    "take both photos from much the same place, in the same light; or name four or more marks "
    "that both show, or say that the card was not moved"
)


def _in_common(b: View, h: Array, from_a: Array) -> int:
    """How many of the matched points of a lie in what b shows."""
    there = apply_homography(h, from_a)
    return int(((there >= 0) & (there <= np.array(b.size) - 1)).all(axis=1).sum())


def _possible(h: Array, a: View) -> bool:
    """No mirror, no horizon through photo a, no absurd change of size."""
    wide, high = a.size
    corners = np.array([[0, 0], [wide, 0], [wide, high], [0, high]], float)
    depth = corners @ h[2, :2] + 1.0
    if (depth <= 0).any():
        return False
    sizes = np.linalg.det(h) / depth**3  # local area factor of a homography
    return bool((sizes > _MOST_SCALE**-2).all() and (sizes < _MOST_SCALE**2).all())


def _by_marks(a: View, b: View, from_a: Array, to_b: Array) -> Registration:
    where = f"{a.name}, {b.name}"
    if from_a.shape != to_b.shape or from_a.ndim != 2 or from_a.shape[1:] != (2,):
        raise SeriesError("each mark needs a place in both photos", where=where)
    if len(from_a) < 4:
        raise SeriesError(f"{len(from_a)} marks given", where=where, mend="give at least four")
    spread = np.linalg.svd(from_a - from_a.mean(axis=0), compute_uv=False)
    if spread[1] < 0.02 * max(a.size):
        raise SeriesError(
            "the marks lie in one line", where=where, mend="choose marks round the area"
        )
    h = fit_homography(from_a, to_b)
    if not np.isfinite(h).all() or not _possible(h, a):
        raise SeriesError(
            "the marks are no view of one plane", where=where, mend="check their order"
        )
    covariance, residual = covariance_of(h, from_a, to_b, least_px=MARK_U_PX)
    if residual > 10 * MARK_U_PX:
        raise SeriesError(
            f"the marks disagree by {residual:.0f} px", where=where, mend="check each of them"
        )
    return Registration(
        h=h,
        covariance=covariance,
        by="marks",
        inliers=len(from_a),
        matches=len(from_a),
        residual_px=residual,
    )


def _with_card_words(made: Registration, a: View, b: View) -> Registration:
    words, cautions = card_words(made.h, made.u_px, a, b)
    return Registration(
        h=made.h,
        covariance=made.covariance,
        by=made.by,
        inliers=made.inliers,
        matches=made.matches,
        residual_px=made.residual_px,
        card=words,
        cautions=cautions,
    )
