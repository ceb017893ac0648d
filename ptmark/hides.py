"""What a photo cannot show: nothing marked in it does not tell that nothing is there."""

from collections.abc import Mapping
from enum import StrEnum

__all__ = ["Hidden", "Hides", "that_hide"]


class Hides(StrEnum):
    """One reason; its text is the member by which a record's conditions tell it.

    A verdict on such a photo is never acceptable. Of the first two it is told how many places
    they are, the others hold of the photo: nothing is marked, and it holds no colour or was not
    looked over; some of the examined area lay outside that of the last look; most of that area
    cannot show pale dye; a filter took thin ends and faint indications out of it; its pixels
    are too large to show them; it does not tell the kind of penetrant; its file took the colour
    of thin and pale ones. The order is that of the conditions.
    """

    UNSEEN = "unseen"  # red places, too many to be looked at closely
    DENSE_HAZE = "dense_haze"  # or pink in a crease, that may hide an indication or be one
    COLOURLESS = "colourless"
    UNLOOKED = "unlooked"
    UNLOOKED_PART = "unlooked_part"
    OVEREXPOSED = "overexposed"
    SMOOTHED = "smoothed"
    COARSE = "coarse"
    UNKNOWN_KIND = "unknown_kind"
    COMPRESSED = "compressed"

    @property
    def is_counted(self) -> bool:
        """Whether it is told how many places they are, not only that there are any."""
        return self in (Hides.UNSEEN, Hides.DENSE_HAZE)


Hidden = Mapping[Hides, int]  # the reasons that hold, each with how many places, 1 of a photo


def that_hide(told: Mapping[Hides, int | bool]) -> dict[Hides, int]:
    """The reasons that hold, of those told of, in their order.

    Examples
    --------
    >>> that_hide({Hides.COARSE: True, Hides.SMOOTHED: False, Hides.UNSEEN: 7})
    {<Hides.UNSEEN: 'unseen'>: 7, <Hides.COARSE: 'coarse'>: 1}
    """
    return {why: int(told[why]) for why in Hides if told.get(why)}
