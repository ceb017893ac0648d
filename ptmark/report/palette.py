"""Colours of the report and their contrast.

Marks on the photo are deep blue with a pale cyan halo or cyan with a dark halo: one of each
pair stands out from white developer, the other from dark metal. None is red, pink or white,
so that no mark is taken for dye or developer. Colours are sRGB triples, 0 to 255.
"""

from dataclasses import dataclass

__all__ = [
    "CYAN",
    "DEEP_BLUE",
    "INK",
    "NAVY",
    "PALE",
    "PAPER",
    "QUIET",
    "SHADE",
    "Ink",
    "contrast",
    "ink_of",
]

Color = tuple[int, int, int]

NAVY: Color = (4, 20, 48)
DEEP_BLUE: Color = (20, 66, 190)
CYAN: Color = (0, 205, 235)
PALE: Color = (160, 240, 252)

PAPER: Color = (250, 251, 253)  # ground of the bands round the photo
SHADE: Color = (228, 234, 243)
INK: Color = (16, 24, 38)
QUIET: Color = (78, 88, 104)


@dataclass(frozen=True, slots=True)
class Ink:
    """A mark's line and the halo that carries it over any ground."""

    line: Color
    halo: Color


_ACT = Ink(DEEP_BLUE, PALE)
_REST = Ink(CYAN, NAVY)


def ink_of(verdict: str) -> Ink:
    """Colours of an indication's marks: deep blue where it calls for action, else cyan."""
    return _ACT if verdict in {"rejectable", "undecided"} else _REST


def contrast(one: Color, other: Color) -> float:
    """Contrast ratio of two sRGB colours, 1 to 21.

    References
    ----------
    W3C, Web Content Accessibility Guidelines (WCAG) 2.2, definitions "relative luminance" and
    "contrast ratio".

    Examples
    --------
    >>> contrast((0, 0, 0), (255, 255, 255))
    21.0
    """
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


def _luminance(color: Color) -> float:
    red, green, blue = (_linear(value / 255) for value in color)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(value: float) -> float:
    return float(value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4)
