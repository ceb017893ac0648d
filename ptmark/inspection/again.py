"""A photo of the set that is not at hand, opened again."""

from ptmark.errors import PhotoError
from ptmark.photo import Photo, PhotoInfo, open_photo

__all__ = ["open_again"]


def open_again(info: PhotoInfo) -> Photo:
    """Open a photo of the set again, under the profile of its lens that it had.

    Raises
    ------
    PhotoError
        If it cannot be opened, or its content is another one now.
    """
    photo = open_photo(info.path)
    if photo.info.sha256 != info.sha256:
        raise PhotoError(
            "the photo was changed since", where=str(info.path), mend="put the original back"
        )
    return photo.with_lens(info.calibrated)
