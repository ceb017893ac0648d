"""Pictures of ours as PNG or JPEG bytes, the same for the same pixels."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.errors import ReportError

__all__ = ["ENDINGS", "encoded"]

# Full colour resolution: thin cyan lines must not bleed.
_JPEG = [
    cv2.IMWRITE_JPEG_QUALITY,
    92,
    cv2.IMWRITE_JPEG_SAMPLING_FACTOR,
    cv2.IMWRITE_JPEG_SAMPLING_FACTOR_444,
]
_OPTIONS: dict[str, list[int]] = {".png": [], ".jpg": _JPEG, ".jpeg": _JPEG}
ENDINGS = tuple(_OPTIONS)


def encoded(rgb: npt.NDArray[np.uint8], ending: str) -> bytes:
    """Encode a picture of shape (H, W, 3) by one of `ENDINGS`.

    Raises
    ------
    ReportError
        If the picture cannot be encoded, such as one wider than JPEG's 65 500 px.
    """
    try:
        done, data = cv2.imencode(ending, rgb[..., ::-1], _OPTIONS[ending])
    except cv2.error as exc:
        raise ReportError(f"a picture of {rgb.shape} cannot be encoded: {exc.err}") from exc
    if not done:
        raise ReportError(
            f"a picture of {rgb.shape[1]} × {rgb.shape[0]} px cannot be encoded as {ending}",
            mend="write a PNG",
        )
    return data.tobytes()
