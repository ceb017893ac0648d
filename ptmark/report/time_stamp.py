"""A time stamp (RFC 3161) from an authority that the user names; nothing is asked otherwise."""

from typing import TYPE_CHECKING
from urllib.error import URLError
from urllib.request import Request, urlopen

from ptmark.errors import ReportError

if TYPE_CHECKING:
    from pyhanko.sign.timestamps import TimeStamper

__all__ = ["TimeStampError", "time_stamper"]

_SECONDS = 15  # to wait for the authority
_LARGEST = 2**20  # bytes of an answer


class TimeStampError(ReportError):
    """The authority could not be reached, or gave no token that can be used."""


def time_stamper(url: str) -> "TimeStamper":
    """What asks the authority at this address: a hash goes out, a signed time comes back.

    Raises
    ------
    TimeStampError
        If the address is none of http or https.
    """
    from asn1crypto import tsp  # type: ignore[import-untyped]
    from pyhanko.sign.timestamps import TimeStamper

    if not url.lower().startswith(("https://", "http://")):
        raise TimeStampError(
            "is no address of a time-stamping authority", where=url, mend="give https://…"
        )

    class Asking(TimeStamper):
        async def async_request_tsa_response(self, req: tsp.TimeStampReq) -> tsp.TimeStampResp:
            # RFC 3161, 3.4: the two media types of the exchange over HTTP.
            head = {
                "Content-Type": "application/timestamp-query",
                "Accept": "application/timestamp-reply",
            }
            asked = Request(url, data=req.dump(), headers=head)  # noqa: S310 - checked above
            try:
                with urlopen(asked, timeout=_SECONDS) as answer:  # noqa: S310
                    return tsp.TimeStampResp.load(answer.read(_LARGEST))
            except (URLError, OSError, ValueError) as exc:
                why = getattr(exc, "reason", exc)
                raise TimeStampError(f"no time stamp came ({why})", where=url) from exc

    return Asking()  # type: ignore[no-untyped-call]
