"""Places that look like dye but for their dull colour: not called, and not passed over."""

from collections.abc import Iterable

from ptmark.dye.remark import Remark

__all__ = ["DULL", "INKY", "dull_remark", "is_dull", "is_shaded_dye"]

INKY = "not dye-coloured: it darkens red as well, like ink, scale or a shadow"
DULL = "not dye-coloured: reddish but dull, like dark ink, or dye in a photo of dull colours"
# Dye in photos of a fifth to two fifths of their saturation, in light poor in red, and maroon
# dye: 0.68 to 0.87 of green's share of red, 0.96 to 1.01 of blue, from 0.44 of green on. Ink,
# scale and shadows take 0.93 of red and more, rust takes 1.07 of blue and more.
MOST_RED_TAKEN, BLUE_TAKEN, LEAST_GREEN_TAKEN = 0.9, (0.92, 1.05), 0.4

# Dye of 35 % in the crease of a toe: 0.11 to 0.18 of green, and of blue 0.80 to 1.04 of that.
# Rust has 1.25 of blue and more, fingers 1.3, black ink and stamped numbers 0.02 of green.
# Of dense dye in shade, and in hairlines of which JPEG left little colour, red takes 0.66 to
# 0.71 of green, and purple-red dye leaves blue 0.74. Where much green is taken, what takes more
# red than that may be any dull thing.
LEAST_SHADE, LEAST_LEFT, BLUE_LEFT = 0.1, 0.1, (0.72, 1.08)
MUCH_GREEN, RED_OF_MUCH = 0.5, 0.74


def is_dull(red: float, green: float, blue: float) -> bool:
    """Whether these shares of light, taken by what is not called, may be those of dull dye.

    Examples
    --------
    >>> is_dull(0.44, 0.57, 0.56), is_dull(0.60, 0.62, 0.60), is_dull(0.40, 0.57, 0.66)
    (True, False, False)
    """
    least, most = BLUE_TAKEN
    alike = least * green < blue < most * green
    return green > LEAST_GREEN_TAKEN and red < MOST_RED_TAKEN * green and alike


def is_shaded_dye(red: float, green: float, blue: float) -> bool:
    """Whether these shares of light, taken by a blob, are those of dye in a crease's shade.

    Shade takes all colours alike, so what the red leaves of green and blue is the dye's.

    Examples
    --------
    >>> is_shaded_dye(0.28, 0.40, 0.39), is_shaded_dye(0.28, 0.50, 0.62)
    (True, False)
    >>> is_shaded_dye(0.46, 0.70, 0.71), is_shaded_dye(0.55, 0.70, 0.71)
    (True, False)
    """
    if red < LEAST_SHADE or (green > MUCH_GREEN and red > RED_OF_MUCH * green):
        return False
    green, blue = 1 - (1 - green) / (1 - red), 1 - (1 - blue) / (1 - red)
    return green > LEAST_LEFT and BLUE_LEFT[0] * green < blue < BLUE_LEFT[1] * green


def dull_remark(reasons: Iterable[str]) -> Remark | None:
    """What is to be said of the reasons why blobs were left out; None where none is `DULL`."""
    count = sum(one == DULL for one in reasons)
    if not count:
        return None
    return Remark(
        f"Reddish places left out for their dull colour alone: {count}. In a photo of dull "
        "colours or in poor light, indications look like that.",
        "Look at each of them, or take the photo again in white light and without a filter.",
    )
