"""What a file's own structure says of the picture in it, found before any pixel is decoded."""

from dataclasses import dataclass

from ptmark.errors import PhotoError

__all__ = ["COPY_AGAIN", "Found", "check_size", "damaged", "truncated"]

MOST_PIXELS = 250_000_000
COPY_AGAIN = "Copy the original again from the camera or phone"


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A picture before decoding.

    ``width`` and ``height`` are those stored, px. ``way`` says who decodes it: "direct" (to
    8-bit RGB at once), "whole" (all channels and bits), "modes" (by Pillow, for what the
    others do not know), "plain" (unpacked TIFF, straight from its bytes), "heif" or "avif".
    ``exif`` is a TIFF-structured block, ``icc`` the embedded profile, ``coded`` the colour
    primaries and transfer by ITU-T H.273 code points. ``inverted`` tells grey where 0 is white
    that the decoder leaves so, ``multiplied`` colours times their alpha, ``packed`` compressed
    TIFF data, and ``ends`` where the scans of a JPEG end. ``quality`` is a JPEG's, in the usual
    scale to 100, by its tables for colour.
    """

    format: str
    width: int
    height: int
    mode: str
    bits: int = 8
    way: str = "direct"
    exif: bytes = b""
    icc: bytes = b""
    coded: tuple[int, int] | None = None
    frames: int = 1
    alpha: bool = False
    inverted: bool = False
    multiplied: bool = False
    packed: bool = False
    ends: tuple[int, ...] = ()
    quality: float | None = None


def check_size(width: int, height: int) -> None:
    """Refuse an empty picture and one beyond 250 megapixels."""
    if width < 1 or height < 1:
        raise PhotoError(f"the picture's size reads {width} x {height} px", mend=COPY_AGAIN)
    if width * height > MOST_PIXELS:
        raise PhotoError(
            f"the picture has {width} x {height} px, {width * height / 1e6:.0f} megapixels; "
            f"at most {MOST_PIXELS // 10**6} are opened",
            mend="Take the photo again with fewer pixels, or cut out the examined area",
        )


def truncated(length: int) -> PhotoError:
    """The error for a file that ends before its picture does."""
    return PhotoError(
        f"the file is truncated: it ends after {length} bytes, before the picture does",
        mend=COPY_AGAIN,
    )


def damaged(why: str) -> PhotoError:
    """The error for a file that contradicts itself."""
    return PhotoError(f"the picture is damaged: {why}", mend=COPY_AGAIN)
