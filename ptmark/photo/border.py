"""Where a photo ends: half a pixel outside the centres of its outermost pixels."""

import numpy as np
import numpy.typing as npt

__all__ = ["ends_at_border"]

# Of what goes on beyond the photo, outlines at half contrast end within 0.2 px of its side
# (edges blurred by 0.8 to 3 px, grain up to 2 %, JPEG from 40 on), those drawn along the
# outermost centres at 0.5, and a hand strays from there. What ends 4 px inside the photo stays
# over 2.6 px away.
_NEAR_PX = 2.0


def ends_at_border(outline_px: npt.NDArray[np.float64], width: int, height: int) -> bool:
    """Whether an outline reaches one of the photo's sides, so that more may follow beyond.

    Parameters
    ----------
    outline_px : ndarray of shape (N, 2)
        Px, (0, 0) the centre of the top-left pixel.
    width, height : int
        The photo's, px.

    Examples
    --------
    >>> ends_at_border(np.array([[1.4, 50.0], [30.0, 50.0], [9.0, 60.0]]), 400, 300)
    True
    >>> ends_at_border(np.array([[1.6, 50.0], [30.0, 50.0], [9.0, 60.0]]), 400, 300)
    False
    """
    inside = outline_px.min(axis=0) + 0.5
    beyond = np.array([width, height]) - 0.5 - outline_px.max(axis=0)
    return bool(min(inside.min(), beyond.min()) < _NEAR_PX)
