"""Suggested outlines: what a trained eye would call, and why the rest was left out."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from ptmark.dye.broken import lies_on, parts_between
from ptmark.dye.cards import card_hulls, on_card
from ptmark.dye.close_looks import CloseLooks
from ptmark.dye.closeup import close_up
from ptmark.dye.coarse import CoarseLook, look_coarsely
from ptmark.dye.contour import Contour, edge_of
from ptmark.dye.crease import in_creases
from ptmark.dye.edge import EdgeQuality
from ptmark.dye.glance import outline_of, reason_at_a_glance
from ptmark.dye.haze import IN_CREASE, UNEVEN, UNEVEN_RISE
from ptmark.dye.judge import NO_EDGE, WRONG_COLOUR, Sight, confidence, reason_against
from ptmark.dye.part import ends_within, parts_called
from ptmark.dye.pieces import made_whole
from ptmark.dye.quick import inside_polygon
from ptmark.dye.remark import Remark
from ptmark.dye.same_dye import by_own_dye, ends_may_not_show
from ptmark.dye.sheet import Crop
from ptmark.dye.within import standing_out
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

__all__ = ["LeftOut", "Suggestion", "Suggestions", "suggest", "unseen_places", "unseen_remark"]

Array = npt.NDArray[np.float64]

LEAST_PX = 4.0  # across; below it an outline is a guess
LEAST_MM = 0.3  # well under any code's relevance threshold (1.5 mm and up)
MOST_LOOKS = 2000  # at a blob from nearby, the reddest first: some seconds
_UNSEEN = f"not looked at closely: the photo has {MOST_LOOKS} redder places"
IN_LINE = 0.05  # how sure what only its place in a broken line speaks for is
_SHIFT_PER_BLUR = 0.253  # half the way of a Gaussian edge from 40 to 60 %, in sigma
# A close look holds 21 bytes a pixel until the whole photo's blur is known. Beyond this many
# pixels of a photo it is taken again in place of being held.
_HELD_PIXELS = 1_500_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Suggestion:
    """One suggested outline, shape (N, 2) px at half contrast; confidence 0 to 1.

    ``contrast`` is the amount of dye of its core, 1 for full dye.
    """

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
    photo: Photo,
    surface: SurfaceMap | None = None,
    area_px: Array | None = None,
    ahead: CoarseLook | None = None,
) -> Suggestions:
    """Look for indications.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap, optional
        Tells the least size in mm and where scale cards lie, which are never called.
    area_px : ndarray of shape (N, 2), optional
        Examined area, px; what lies outside is not called. An indication that crosses its
        border is called whole.
    ahead : CoarseLook, optional
        The coarse look at this photo and area, where it was taken before.

    Returns
    -------
    Suggestions
        In reading order: by the row of their top, then from left to right.
    """
    look = look_coarsely(photo, area_px) if ahead is None else ahead
    crops, left_out = _worth_a_look(photo, look, surface)
    looks = CloseLooks(crops, _HELD_PIXELS)
    photo_blur = looks.photo_blur
    sight = _sight(photo, surface, photo_blur)
    called, not_called = _judged(looks, sight, area_px)
    called, same, not_called = by_own_dye(called, not_called, sight)
    called, whole, not_called = made_whole(photo, called, not_called, sight)
    left_out += [_left_out(one, why) for one, why in not_called]
    mixed = [one for one, why in not_called if why.startswith((WRONG_COLOUR, NO_EDGE))]
    called += whole + (parts := parts_called(photo, look, mixed, photo_blur, sight))
    called += (within := standing_out(photo, look, not_called, called, photo_blur, sight))
    unsure = [*whole, *within, *(one for one in parts if ends_within(one, mixed))]
    between = parts_between(photo, look, called, photo_blur, sight)
    creases = in_creases(photo, [*called, *between])
    found = [
        *(
            _called(
                one,
                confidence(one),
                ends_unsure=one in unsure or ends_may_not_show(one, same),
            )
            for one in called
            if one not in creases
        ),
        *(_called(one, IN_LINE) for one in between if one not in creases),
    ]
    taken = {id(one.outline_px) for one in called}
    left_out = [
        *(
            one
            for one in left_out
            if id(one.outline_px) not in taken and not _is_one_of(one, between)
        ),
        *(_left_out(one, IN_CREASE) for one in creases),
        *_too_uneven(photo, area_px, look),
    ]
    found.sort(key=lambda s: tuple(s.outline_px.min(axis=0)[::-1]))
    left_out.sort(key=lambda s: tuple(s.outline_px.min(axis=0)[::-1]))
    return Suggestions(found=tuple(found), left_out=tuple(left_out), haze=look.haze)


def _worth_a_look(
    photo: Photo, look: CoarseLook, surface: SurfaceMap | None
) -> tuple[list[Crop], list[LeftOut]]:
    """Crops of the blobs that may be dye at a glance, and the others; none on a scale card."""
    cards = card_hulls(surface)
    crops: list[Crop] = []
    left_out: list[LeftOut] = []
    for blob in look.blobs:
        if on_card(blob, look, cards):
            continue
        why = reason_at_a_glance(photo, look, blob)
        if not why and len(crops) == MOST_LOOKS:
            why = _UNSEEN
        if why:
            edge = EdgeQuality(shift_px=look.factor, noise_px=look.factor)
            left_out.append(LeftOut(outline_px=outline_of(blob, look), edge=edge, reason=why))
        else:
            crops.append(close_up(photo, look, blob))
    return crops, left_out


def _judged(
    looks: CloseLooks, sight: Sight, area_px: Array | None
) -> tuple[list[Contour], list[tuple[Contour, str]]]:
    """What is called of all that reaches into the examined area, and what is not, and why."""
    called, not_called = [], []
    for outlines in looks.outlines(LEAST_PX / 2):
        for one in outlines:
            if area_px is not None and not inside_polygon(one.outline_px, area_px).any():
                continue
            if why := reason_against(one, sight):
                not_called.append((one, why))
            else:
                called.append(one)
    return called, not_called


def unseen_places(left_out: Sequence[LeftOut]) -> int:
    """How many places were red but too many to look at each."""
    return sum(one.reason == _UNSEEN for one in left_out)


def unseen_remark(left_out: Sequence[LeftOut]) -> Remark | None:
    """What is to be said where too many places were red to look at each; else None."""
    unseen = unseen_places(left_out)
    if not unseen:
        return None
    return Remark(
        f"Too many red places: {unseen} of them were not looked at closely, and indications "
        "among them are not called.",
        "Mark a smaller examined area, or clean the part again and repeat the test.",
    )


def _left_out(one: Contour, why: str) -> LeftOut:
    return LeftOut(outline_px=one.outline_px, edge=edge_of(one, "suggested"), reason=why)


def _too_uneven(photo: Photo, area_px: Array | None, look: CoarseLook) -> list[LeftOut]:
    """The examined area, or all of the photo, where what is faint does not show there."""
    if look.least_rise <= UNEVEN_RISE:
        return []
    wide, high = photo.rgb.shape[1] - 0.5, photo.rgb.shape[0] - 0.5
    frame = np.array([[-0.5, -0.5], [wide, -0.5], [wide, high], [-0.5, high]])
    edge = EdgeQuality(shift_px=0.0, noise_px=0.0)
    outline_px = frame if area_px is None else area_px
    return [LeftOut(outline_px=outline_px, edge=edge, reason=UNEVEN)]


def _is_one_of(one: LeftOut, called: list[Contour]) -> bool:
    return any(lies_on(one.outline_px, other.outline_px) for other in called)


def _called(one: Contour, sure: float, *, ends_unsure: bool = False) -> Suggestion:
    return Suggestion(
        outline_px=one.outline_px,
        edge=replace(edge_of(one, "suggested"), ends_unsure=ends_unsure),
        confidence=sure,
        contrast=one.contrast,
    )


def _sight(photo: Photo, surface: SurfaceMap | None, photo_blur_px: float) -> Sight:
    least_px = LEAST_PX
    if surface is not None:
        least_px = max(LEAST_PX, LEAST_MM / surface.mm_per_px())
    return Sight(
        least_px=least_px,
        least_mm=None if surface is None else least_px * surface.mm_per_px(),
        photo_width=photo.info.width,
        photo_height=photo.info.height,
        usual_shift_px=_SHIFT_PER_BLUR * photo_blur_px,
        colour_step=_colour_step(photo.info.quality),
    )


def _colour_step(quality: float | None) -> float:
    """Least step of a block's mean colour, codes, in a JPEG of that quality; 0 of None.

    An eighth of the first step of table K.2 (T.81), 17, in the encoders' usual scale.
    """
    if quality is None:
        return 0.0
    return 17 / 8 * (50 / max(quality, 1) if quality < 50 else 2 - quality / 50)
