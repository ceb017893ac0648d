"""What hides indications: pink or glow of the background, pink in creases, uneven colour."""

from collections.abc import Iterable

from ptmark.dye.remark import Remark

__all__ = [
    "AS_DENSE",
    "DENSE_HAZE",
    "GLOW",
    "HIDES",
    "IN_CREASE",
    "IN_GRAIN",
    "MAY_HIDE",
    "ODD_LIGHT",
    "UNEVEN",
    "UNEVEN_RISE",
    "dense_places",
    "dense_remark",
    "glow_remark",
    "haze_remark",
]

DENSE_HAZE = "no edge: a pink haze as dense as an indication, reclean and repeat"
GLOW = "no edge: a glow as bright as a faint indication, reclean and repeat"
ODD_LIGHT = "not green-yellow, as most that shines here: set the white balance, or look at it"
IN_CREASE = "pink in a dark crease that goes on beyond it: reclean, or look closely"
IN_GRAIN = "too pale for the grain, but as much dye as a faint indication: give more light"
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
# So it is where penetrant shines under UV-A: of 46 of 30 % in patches of it all are found up to
# 0.15, 43 at 0.19, 44 at 0.25, where 15 read too long by more than U.
MAY_HIDE, HIDES = 0.12, 0.17
_MEND = (
    "Follow the procedure: clean the surface again, with the remover on the cloth and not on "
    "the part, apply penetrant and developer anew, and repeat the examination where it matters."
)


_MEND_GLOW = (
    "Follow the procedure: take the excess penetrant off again, under UV-A until the "
    "background is dark, apply developer anew, and repeat the examination where it matters."
)


def dense_places(reasons: Iterable[str]) -> int:
    """How many of the reasons hide an indication or are as dense as one.

    Examples
    --------
    >>> dense_places(["too pale: 8 % of full dye", DENSE_HAZE])
    1
    """
    held = (DENSE_HAZE, GLOW, IN_CREASE, IN_GRAIN, ODD_LIGHT, UNEVEN)
    return sum(one in held for one in reasons)


def dense_remark(reasons: Iterable[str]) -> Remark | None:
    """What is to be said of the reasons why blobs were left out; None where none is dense."""
    count = dense_places(reasons)
    if not count:
        return None
    return Remark(
        "Places with haze or glow as dense as an indication, with pink in a crease, of uneven "
        f"colour, or as dense in much grain, which may hide one or be one: {count}.",
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


def glow_remark(glow: float | None) -> Remark | None:
    """The same of penetrant that shines all over a fluorescent photo.

    Parameters
    ----------
    glow : float or None
        `ptmark.dye.glow.background_glow`: 0 (dark) to 1 (as bright as the brightest).

    Examples
    --------
    >>> glow_remark(0.05) is None
    True
    """
    if glow is None or glow < MAY_HIDE:
        return None
    if glow < HIDES:
        return Remark(
            f"The background glows ({100 * glow:.0f} % of the brightest indication): faint "
            "indications are less sure.",
            _MEND_GLOW,
        )
    return Remark(
        f"The background glows much ({100 * glow:.0f} % of the brightest indication): it can "
        "hide faint indications.",
        _MEND_GLOW,
    )
