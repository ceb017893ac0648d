"""What hides indications: pink of the background and in creases, and uneven colour."""

from collections.abc import Iterable

from ptmark.dye.remark import Remark

__all__ = [
    "AS_DENSE",
    "DENSE_HAZE",
    "HIDES",
    "IN_CREASE",
    "MAY_HIDE",
    "UNEVEN",
    "UNEVEN_RISE",
    "dense_places",
    "dense_remark",
    "haze_remark",
]

DENSE_HAZE = "no edge: a pink haze as dense as an indication, reclean and repeat"
IN_CREASE = "pink in a dark crease that goes on beyond it: reclean, or look closely"
UNEVEN = "too uneven in colour: what holds less dye than 30 % of full does not show here"
# Rise of the log of red over green light of 30 % of full dye (as in `ptmark.dye.coarse`), all
# that is less being lost in the grain or mottle of bare metal, paint or a dark photo.
UNEVEN_RISE = 0.25
# Share of full dye from which haze is told so: a faint indication holds no more. What is left
# out as haze has at most 0.30 in the stress set's heavy haze, where all is found, and 0.19 in
# the truth photos; beside 0.34 and more dye of 40 % was not called.
AS_DENSE = 0.32

# Where the stress set's faint indications (30 % of full dye) meet rising haze: up to 0.11 all
# are found; from 0.13 the first are missed; at 0.21 half of them. It stands to reason: the
# number is the middle three fifths of the background, whose extremes reach about 2.5 times as
# far, and that is as much dye as a faint indication holds.
MAY_HIDE, HIDES = 0.12, 0.17
_MEND = (
    "Follow the procedure: clean the surface again, with the remover on the cloth and not on "
    "the part, apply penetrant and developer anew, and repeat the examination where it matters."
)


def dense_places(reasons: Iterable[str]) -> int:
    """How many of the reasons are `DENSE_HAZE`, `IN_CREASE` or `UNEVEN`.

    Examples
    --------
    >>> dense_places(["too pale: 8 % of full dye", DENSE_HAZE])
    1
    """
    return sum(one in (DENSE_HAZE, IN_CREASE, UNEVEN) for one in reasons)


def dense_remark(reasons: Iterable[str]) -> Remark | None:
    """What is to be said of the reasons why blobs were left out; None where none is dense."""
    count = dense_places(reasons)
    if not count:
        return None
    return Remark(
        "Places with pink haze as dense as an indication, with pink in a crease or of uneven "
        f"colour, which may hide one or be one: {count}.",
        _MEND,
    )


def haze_remark(haze: float | None) -> Remark | None:
    """Say where pink haze could hide an indication or look like one.

    Parameters
    ----------
    haze : float or None
        `ptmark.dye.Suggestions.haze`: 0 (evenly white) to 1 (full dye).

    Returns
    -------
    Remark or None
        None where the background is clean, or was not looked at.

    Examples
    --------
    >>> haze_remark(0.05) is None
    True
    """
    if haze is None or haze < MAY_HIDE:
        return None
    share = f"pink haze over the developer (background {100 * haze:.0f} % of full dye)"
    if haze < HIDES:
        return Remark(f"There is {share}: faint indications are less sure.", _MEND)
    return Remark(f"There is much {share}: it can hide faint indications.", _MEND)
