"""In words: the one thing that would make a measured value surer.

Contributions combine in quadrature (JCGM 100:2008, 5.1.2), so only the largest is worth
mending, and its share is that of its square.
"""

from collections.abc import Mapping

__all__ = ["advice", "dominant", "shares"]

_MEND = {
    "sampling": "go closer: {share} of it is the photo's sampling",
    "edge": "sharpen the edge (focus, steady hand, even light, thinner developer): {share} of "
    "it is the edge's own width",
    "map": "lay the reference flat and uncovered: {share} of it is the scale's points "
    "contradicting each other",
    "picking": "pick the points again under the magnifier, or let the edge attract the "
    "outline: {share} of it is points set by hand",
    "reference": "measure the reference with callipers, or take a longer one: {share} of it is "
    "the reference's own size",
    "tilt": "lay the card beside the indications, or a rule whose graduations can be read: "
    "{share} of it is a tilt that the reference does not tell",
    "lens": "bring reference and indication to the middle of the picture, near each other, or "
    "calibrate the camera: {share} of it is the lens",
    "focal length": "lay the card on the pipe and give the line where it touches, or use the "
    "photo as the camera wrote it: {share} of it is how far the pipe bulges towards the camera",
    "touching line": "lay the reference on the pipe beside the indication, and pick with care "
    "where it touches: {share} of it is that line",
    "relief": "take the photo from straight above and give the crown's height: {share} of it "
    "is height over the scale",
}
# What is another thing to do where the scale comes from the card, a pipe's edges, or something
# that lies on a pipe.
_MEND_OF = {
    "card": {
        "picking": "lay the card beside the indication, and let the edge attract an outline "
        "drawn by hand: {share} of it is the points",
        "reference": "measure the card's check length with callipers: {share} of it is the "
        "card's own size",
    },
    "rectangle": {
        "map": "pick the four corners again under the magnifier: {share} of it is that they "
        "contradict each other",
    },
    "pipe": {
        "picking": "set a background behind the pipe from which its edges stand out, and let "
        "the edge attract an outline drawn by hand: {share} of it is the points",
        "reference": "measure the outside diameter with callipers: {share} of it is the "
        "diameter",
    },
    "on a pipe": {
        "reference": "measure reference and outside diameter with callipers: {share} of it is "
        "their size",
        "focal length": "use the photo as the camera wrote it, or calibrate the camera: "
        "{share} of it is the focal length",
    },
}
# Below this share no single thing is worth doing.
_WORTH = 0.3


def shares(budget: Mapping[str, float]) -> dict[str, float]:
    """Each contribution's share of the variance, largest first; they add up to 1.

    Empty where nothing contributes.

    Examples
    --------
    >>> shares({"edge": 0.03, "relief": 0.04})
    {'relief': 0.64, 'edge': 0.36}
    """
    total = sum(u**2 for u in budget.values())
    if total <= 0:
        return {}
    parts = {name: u**2 / total for name, u in budget.items() if u > 0}
    return {k: round(v, 6) for k, v in sorted(parts.items(), key=lambda one: -one[1])}


def dominant(budget: Mapping[str, float]) -> str:
    """Name of the largest contribution; "" where nothing contributes."""
    return next(iter(shares(budget)), "")


def advice(budget: Mapping[str, float], reference: str = "") -> str:
    """What would reduce the uncertainty most, with that contribution's share.

    Parameters
    ----------
    budget : mapping of str to float
        Standard uncertainty of each independent contribution, in one unit, as in
        `ptmark.measure.Quantity`.
    reference : str
        What the scale comes from, as `ptmark.scale.SurfaceMap.reference` names it.

    Returns
    -------
    str
        A clause without a full stop; "" where nothing contributes or no single thing is
        worth doing.

    Examples
    --------
    >>> advice({"sampling": 0.06, "edge": 0.04, "relief": 0.02})
    "go closer: 64 % of it is the photo's sampling"
    >>> advice({})
    ''
    """
    name = dominant(budget)
    share = shares(budget).get(name, 0.0)
    if share < _WORTH or name not in _MEND:
        return ""
    own = _MEND_OF.get("on a pipe" if reference.endswith("on a pipe") else reference, {})
    return own.get(name, _MEND[name]).format(share=f"{100 * share:.0f} %")
