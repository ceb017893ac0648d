"""Files compressed so strongly that thin and pale indications lose their colour in them."""

from ptmark.dye import Remark
from ptmark.photo import PhotoInfo

__all__ = ["compressed_remark", "is_compressed"]

# At 40 of JPEG 6 of 60 lines 2 to 3 px wide are lost, at 20 10; of the stress set none at 60.
_LEAST_QUALITY = 50.0
# The other codecs tell no quality, but how few bits they took. Of truth photos HEIC of quality
# 30 has 0.03 to 0.06, AVIF of 30 and 50 0.02 to 0.11, WebP of 50 0.04 to 0.07, which all lose
# faint ones; HEIC of 50, which lost none of 45, has 0.22 to 0.27. The least of a photo as taken
# (JPEG) is 0.25.
_LEAST_BITS = 0.15
# Under UV-A all is dark and takes fewer; of 0.02 and 0.04 lengths came out short where the
# white balance made all blue. Of 0.01 to 0.03 in another balance none did.
_LEAST_BITS_IN_DARK = 0.05
_BY_BITS = ("HEIC", "AVIF", "WebP")


def is_compressed(info: PhotoInfo, mode: str = "colour contrast") -> bool:
    """Whether a photo of that kind of penetrant is; a dark one takes fewer bits.

    Examples
    --------
    >>> from pathlib import Path
    >>> told = {"format": "HEIC", "width": 4000, "height": 3000}
    >>> small = PhotoInfo(path=Path("a.heic"), sha256="", bytes=120_000, **told)
    >>> is_compressed(small), is_compressed(small, "fluorescent")
    (True, False)
    """
    if info.quality is not None:
        return info.quality < _LEAST_QUALITY
    least = _LEAST_BITS_IN_DARK if mode == "fluorescent" else _LEAST_BITS
    return info.format in _BY_BITS and _bits(info) < least


def compressed_remark(info: PhotoInfo, mode: str) -> Remark | None:
    """What is to be said of such a file; None where nothing is."""
    if not is_compressed(info, mode):
        return None
    if info.quality is not None:
        how = f"JPEG of quality {info.quality:.0f}"
    else:
        how = f"{info.format} of {_bits(info):.2f} bits a pixel"
    return Remark(
        f"The file is compressed strongly ({how}): thin and pale indications lose their colour "
        "and may be missed.",
        "Use the photo as the camera wrote it, not a copy that was sent or saved smaller.",
    )


def _bits(info: PhotoInfo) -> float:
    return 8e-6 * info.bytes / max(info.megapixels, 1e-6)
