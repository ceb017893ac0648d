"""Whether two measurements of one quantity agree."""

from math import hypot

__all__ = ["en_number"]


def en_number(first: float, first_u: float, second: float, second_u: float) -> float | None:
    """The difference over its expanded uncertainty; up to 1 the two agree.

    Parameters
    ----------
    first, second : float
        Two values of the same quantity.
    first_u, second_u : float
        Their expanded uncertainties, k = 2, same unit.

    Returns
    -------
    float or None
        ``|x1 - x2| / sqrt(U1**2 + U2**2)`` (ISO/IEC 17043:2010, B.3.1.3 and B.4.1.1); None
        where both uncertainties are 0. The formula takes the two as independent. Of two
        measurements in one photo they share some causes, so that it reads low rather than
        high: a disagreement counts, an agreement is no proof.

    Examples
    --------
    >>> round(en_number(10.0, 0.3, 10.5, 0.4), 12)
    1.0
    """
    spread = hypot(first_u, second_u)
    return abs(first - second) / spread if spread > 0 else None
