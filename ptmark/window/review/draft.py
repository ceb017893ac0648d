"""An unfinished review within its draft, so that it comes back as a review, blind as before."""

from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ptmark.errors import RecordError
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.review import Remark

__all__ = ["Unfinished"]


@dataclass(frozen=True, kw_only=True)
class Unfinished:
    """What a draft holds of a review beside the reviewer's own work.

    ``record`` is the record's file, ``photos`` the folder of its photos, ``of`` the hash of the
    revision that is reviewed. ``lifted`` tells that both were shown: measuring is over then.
    """

    record: Path
    photos: Path
    of: str
    lifted: bool
    remarks: "tuple[Remark, ...]"

    def to_json(self) -> dict[str, Any]:
        return {
            "record": str(self.record.absolute()),
            "photos": str(self.photos.absolute()),
            "of": self.of,
            "lifted": self.lifted,
            "remarks": [asdict(one) for one in self.remarks],
        }

    @classmethod
    def from_json(cls, document: dict[str, Any], *, where: str) -> "Unfinished":
        """Read it back; RecordError where it does not fit."""
        from ptmark.review import Remark

        try:
            remarks = tuple(
                Remark(
                    text=str(one["text"]),
                    at_px=None if one["at_px"] is None else (one["at_px"][0], one["at_px"][1]),
                    photo=str(one["photo"]),
                )
                for one in document["remarks"]
            )
            return cls(
                record=Path(document["record"]),
                photos=Path(document["photos"]),
                of=str(document["of"]),
                lifted=document["lifted"] is not False,
                remarks=remarks,
            )
        except (KeyError, TypeError, IndexError) as exc:
            raise RecordError(
                tr("the review in it does not fit: {0!r}", exc), where=where
            ) from exc
