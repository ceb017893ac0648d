"""Linear or rounded, in each reading; widths are measured closely only where that decides.

Where only bounds of a width and a path are known (`ptmark.criteria.rough`), an indication is
linear if it is so at its shortest and widest, and is not if it is not so at its longest and
thinnest; between the two it is measured. The comparison only ever grows with the length and
falls with the width, so the two corners decide for all that lies between.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array
from ptmark.criteria.inner import inner_radii
from ptmark.criteria.limits import Limit
from ptmark.criteria.parted import Parted
from ptmark.criteria.scene import Judged
from ptmark.criteria.view import PLAIN

__all__ = ["Shaped", "Shaping", "Taken"]

_READ = (0.0, 1.0, -1.0)
_BENT = 1.02  # a traced centre line this much longer than the caliper is bent, not just rough

Flags = npt.NDArray[np.bool_]


class Shaped(NamedTuple):
    """How the items of one reading are taken, in columns of shape (C,).

    That is their lengths as measured, their ratios, and what they may be.
    """

    length: Array
    width: Array
    ratio: Array
    linear: Flags
    rounded: Flags
    close: Flags


class Shaping:
    """Sizes of the indications in the unit of the profile; ``scale`` is that of 1 mm."""

    def __init__(self, judged: Sequence[Judged], scale: float, limit: Limit) -> None:
        def column(name: str) -> Array:
            return np.array([getattr(one, name) for one in judged], dtype=float) * scale

        self._scale, self.limit = scale, limit
        self._rough = [one.rough for one in judged]
        self.length, self.width = column("length"), column("width")
        self.u, self.width_u = column("length_u"), column("width_u")
        self.close = np.array([rough is None for rough in self._rough], dtype=bool)
        path = column("path")
        self.span = np.where(path > _BENT * self.length, path, self.length)
        self.least_width, self.most_span = self.width.copy(), self.span.copy()
        for k in np.flatnonzero(~self.close).tolist():
            rough = self._rough[k]
            if rough is not None:
                self.least_width[k] = rough.least_width * scale
                self.most_span[k] = max(rough.most_path, rough.length) * scale
        self._settle()

    def taken(self, reading: float) -> "Taken":
        """What one reading takes of each."""
        u, width_u = abs(reading) * self.u, abs(reading) * self.width_u
        possible = self.is_long(self.span + u, self.width - width_u)
        sure = self.is_long(self.span - u, self.width + width_u)
        return Taken(self, reading, u, width_u, possible, sure)

    def is_long(self, spans: Array, widths: Array) -> Flags:
        """Which are linear; what would be below zero is taken as zero."""
        return self.limit.hit_as_multiples(np.maximum(spans, 0.0), np.maximum(widths, 0.0))

    def measure(self, chosen: Flags) -> None:
        """Measure those closely that are not yet."""
        for k in np.flatnonzero(chosen & ~self.close).tolist():
            rough = self._rough[k]
            if rough is not None:
                width, path = (self._scale * size for size in rough.exact())
                span = path if path > _BENT * self.length[k] else self.length[k]
                self.width[k] = self.least_width[k] = width
                self.span[k] = self.most_span[k] = span
                self.close[k] = True

    def _settle(self) -> None:
        self._tighten(np.logical_or.reduce([self._open(sign) for sign in _READ]))
        for sign in _READ:
            self.measure(self._open(sign))

    def _open(self, sign: float) -> Flags:
        """Which may be linear or not in a reading, for all that the bounds tell."""
        u, width_u = sign * self.u, sign * self.width_u
        low = self.is_long(self.span + u, self.width - width_u)
        high = self.is_long(self.most_span + u, self.least_width - width_u)
        return np.asarray(low != high)

    def _tighten(self, chosen: Flags) -> None:
        """Raise the least widths of outlines that do not cross themselves, all at once."""
        sound = np.isfinite(self.width) & ~self.close
        places = np.flatnonzero(chosen & sound).tolist()
        known = [(k, rough) for k in places if (rough := self._rough[k]) is not None]
        radii = inner_radii([rough.outline for _, rough in known]).tolist()
        for (k, rough), radius in zip(known, radii, strict=True):
            rough.tighten(2 * radius)
            self.least_width[k] = rough.least_width * self._scale


class Taken:
    """Shapes in one reading: ``possible`` where longest and thinnest, ``sure`` where not."""

    def __init__(
        self,
        shaping: Shaping,
        reading: float,
        u: Array,
        width_u: Array,
        possible: Flags,
        sure: Flags,
    ) -> None:
        self._shaping, self._reading = shaping, reading
        self._u, self._width_u = u, width_u
        self._possible, self._sure = possible, sure

    def of(self, parted: Parted, ends: Array) -> Shaped:
        """Items: single indications, and several merged, which are ``ends`` long."""
        shaping, several = self._shaping, parted.sizes > 1
        possible, sure = parted.some(self._possible), parted.some(self._sure)
        if several.any():
            merged = self._merged(parted, ends, several)
            possible, sure = possible | merged[0], sure | merged[1]
        length = np.where(several, ends, shaping.length[parted.first])
        span = np.where(several, ends, shaping.span[parted.first])
        width = parted.most(shaping.width)
        least = self._reading < PLAIN
        with np.errstate(divide="ignore", invalid="ignore"):
            ratio = np.where(width > 0, span / width, np.inf)
        return Shaped(
            length=length,
            width=width,
            ratio=ratio,
            linear=sure if least else possible,
            rounded=~(possible if least else sure),
            close=~parted.some(~shaping.close),
        )

    def _merged(self, parted: Parted, ends: Array, several: Flags) -> tuple[Flags, Flags]:
        """Which of several are linear as a whole against the widest member."""
        shaping = self._shaping
        u, width_u = parted.most(self._u), parted.most(self._width_u)
        asked = several & ~parted.some(self._sure)

        def long(widths: Array) -> tuple[Flags, Flags]:
            possible = shaping.is_long(ends + u, widths - width_u)
            return possible, shaping.is_long(ends - u, widths + width_u)

        while True:
            least = parted.most(shaping.least_width)
            possible, sure = long(parted.most(shaping.width))
            other = long(least)
            unsure = asked & ((possible != other[0]) | (sure != other[1]))
            if not unsure.any():
                return several & possible, several & sure
            members, which = parted.members(np.flatnonzero(unsure))
            widest = shaping.width[members] >= least[unsure][which]
            chosen = np.zeros(len(shaping.width), dtype=bool)
            chosen[members[widest]] = True
            shaping.measure(chosen)
