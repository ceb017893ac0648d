"""Why a photo of the set may not show all that is there."""

from ptmark.dye import dense_places, unseen_places
from ptmark.hides import Hidden, Hides, that_hide
from ptmark.inspection.at_hand import AtHand
from ptmark.inspection.handing_on import Worked
from ptmark.inspection.state import State
from ptmark.photo import Photo, PhotoInfo

__all__ = ["hidden_in"]


def hidden_in(photo: Worked, inspection: AtHand) -> Hidden:
    """The reasons that hold of a photo, which is opened once where one is not known.

    Raises
    ------
    PhotoError
        If it is needed and cannot be opened.
    """

    def pixels() -> Photo:
        return inspection.photo_of(info)

    info, state, surface = photo.info, photo.state, photo.surface
    facts, searched = inspection.workings.facts, inspection.workings.searched
    left_out, _ = inspection.look_of(info)
    colourless = not photo.measured and facts.colourless(info, pixels)
    unlooked = not state.marked and not searched.whole(info.sha256, state)
    return that_hide(
        {
            Hides.UNSEEN: unseen_places(left_out),
            Hides.DENSE_HAZE: dense_places(one.reason for one in left_out),
            Hides.COLOURLESS: colourless,
            Hides.UNLOOKED: unlooked and not colourless,  # which says why
            Hides.UNLOOKED_PART: bool(state.marked) and searched.leaves_out(info.sha256, state),
            Hides.OVEREXPOSED: facts.overexposed(state, info, pixels),
            Hides.SMOOTHED: facts.smoothed(state, surface, info, pixels),
            Hides.COARSE: facts.coarse(state, surface)
            and not _is_overview(inspection, info, state),
            Hides.UNKNOWN_KIND: facts.unknown_kind(state, info, pixels),
            Hides.COMPRESSED: facts.compressed(state, info, pixels),
        }
    )


def _is_overview(inspection: AtHand, info: PhotoInfo, state: State) -> bool:
    """Whether photos that are not coarse show every indication that this one shows, if any."""
    names, chosen, here = _letters(state), inspection.state.sizes_from, inspection.photo
    if not names or any(chosen.get(name) == info.sha256 for name in names):
        return False
    close: set[str] = set()
    for other in inspection.state.photos:
        of = other.info or (None if here is None else here.info)
        if of is None or of.sha256 == info.sha256:
            continue
        surface = inspection.surface_of(other, of)
        if surface is not None and not inspection.workings.facts.coarse(other, surface):
            close |= _letters(other)
    return names <= close


def _letters(state: State) -> set[str]:
    return {one.id for one in state.marked if one.standing != "dropped"}
