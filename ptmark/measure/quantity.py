"""A value with its standard uncertainty and what it is made of (JCGM 100:2008)."""

from dataclasses import dataclass, field
from math import hypot

__all__ = ["COVERAGE_FACTOR", "Quantity"]

COVERAGE_FACTOR = 2.0  # k = 2, about 95 % (JCGM 100:2008, 6.3.3)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A measured value with independent named contributions.

    Attributes
    ----------
    value : float
        In ``unit``.
    budget : dict of str to float
        Standard uncertainty of each independent contribution, in ``unit``.
    unit : str
        "mm", "mm2" or "1".
    """

    value: float
    budget: dict[str, float] = field(default_factory=dict)
    unit: str = "mm"

    @property
    def u(self) -> float:
        """Combined standard uncertainty (JCGM 100:2008, 5.1.2)."""
        return hypot(*self.budget.values()) if self.budget else 0.0

    @property
    def expanded(self) -> float:
        """Expanded uncertainty U, k = 2."""
        return COVERAGE_FACTOR * self.u
