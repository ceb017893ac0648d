"""A report signed with a certificate (PAdES-style CMS inside the PDF), and its check.

The certificate and its key come from the user's own PKCS #12 file. Nothing is fetched unless a
time-stamping authority is named: the signing time is else this machine's clock. Whether a
certificate is to be trusted is for the reader's own trust list; the check here tells whether a
byte changed since.
"""

import io
from dataclasses import dataclass
from datetime import UTC
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.errors import ReportError
from ptmark.report.time_stamp import TimeStampError, time_stamper

if TYPE_CHECKING:
    from pyhanko.sign.validation.pdf_embedded import EmbeddedPdfSignature
    from pyhanko.sign.validation.status import TimestampSignatureStatus

__all__ = ["PdfSignature", "check_pdf", "signed_pdf"]

_FIELD = "Report"


@dataclass(frozen=True, slots=True, kw_only=True)
class PdfSignature:
    """One signature of a PDF: whose certificate, its SHA-256, and whether all bytes hold.

    ``stamped`` is the time an authority vouches for, with its name; "" where none does.
    """

    signer: str
    certificate: str
    holds: bool
    says: str
    stamped: str = ""


def signed_pdf(
    pdf: bytes,
    certificate: Path,
    passphrase: bytes | None,
    reason: str,
    *,
    stamp_from: str | None = None,
) -> bytes:
    """The PDF with a certifying signature: any later change breaks it.

    Parameters
    ----------
    pdf : bytes
    certificate : Path
        PKCS #12 file (.p12, .pfx) with certificate and private key.
    passphrase : bytes or None
        Of that file.
    reason : str
        Stands in the signature.
    stamp_from : str or None
        Address of a time-stamping authority (RFC 3161).

    Raises
    ------
    ReportError
        If the file cannot be read, the passphrase is wrong, or its key cannot sign.
    TimeStampError
        If a time stamp is asked for and does not come; it can be signed without one.
    """
    from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
    from pyhanko.sign import signers
    from pyhanko.sign.fields import MDPPerm
    from pyhanko.sign.timestamps.common_utils import TimestampRequestError

    where = str(certificate)
    try:
        signer = signers.SimpleSigner.load_pkcs12_data(
            certificate.read_bytes(), other_certs=[], passphrase=passphrase
        )
    except OSError as exc:
        raise ReportError(f"cannot be read ({exc.strerror or exc})", where=where) from exc
    except Exception as exc:
        raise ReportError(f"is no usable PKCS #12 file ({exc})", where=where) from exc
    if signer is None:
        raise ReportError(
            "cannot be opened", where=where, mend="check the passphrase and the file"
        )
    meta = signers.PdfSignatureMetadata(
        field_name=_FIELD,
        md_algorithm="sha256",
        reason=reason,
        certify=True,
        docmdp_permissions=MDPPerm.NO_CHANGES,
    )
    stamper = None if stamp_from is None else time_stamper(stamp_from)
    try:
        out = signers.sign_pdf(
            IncrementalPdfFileWriter(io.BytesIO(pdf)), meta, signer=signer, timestamper=stamper
        )
    except TimestampRequestError as exc:
        raise TimeStampError(
            f"gave no usable time stamp ({exc})", where=str(stamp_from)
        ) from exc
    return bytes(out.getbuffer())


def check_pdf(path: Path) -> list[PdfSignature]:
    """Each signature of a PDF and whether every byte is as it was signed.

    Raises
    ------
    ReportError
        If the file cannot be read as a PDF.
    """
    from pyhanko.pdf_utils.reader import PdfFileReader

    try:
        data = path.read_bytes()
        found = PdfFileReader(io.BytesIO(data)).embedded_signatures
        return [_checked(one, data) for one in found]
    except OSError as exc:
        raise ReportError(f"cannot be read ({exc.strerror or exc})", where=str(path)) from exc
    except Exception as exc:
        raise ReportError(
            f"is no whole PDF: {exc}", where=str(path), mend="take an unchanged copy"
        ) from exc


def _checked(one: "EmbeddedPdfSignature", data: bytes) -> PdfSignature:
    from asn1crypto.parser import peek  # type: ignore[import-untyped]
    from pyhanko.sign.validation import SignatureCoverageLevel, validate_pdf_signature
    from pyhanko_certvalidator import ValidationContext

    certificate = one.signer_cert
    # Its own certificate as the root: this asks for changed bytes, not for trust.
    context = ValidationContext(trust_roots=[certificate], allow_fetching=False)
    status = validate_pdf_signature(one, signer_validation_context=context)
    content = one.pkcs7_content
    padding = content[peek(content) :]  # no hash covers what follows
    start, length, after, _ = one.byte_range
    spelt = data[start + length : after]  # nor how its hexadecimal digits are spelt
    alike = spelt in {f"<{digits}>".encode() for digits in _spellings(content)}
    whole = status.intact and status.valid and status.docmdp_ok
    covered = status.coverage is SignatureCoverageLevel.ENTIRE_FILE
    stamp = status.timestamp_validity
    stamp_holds = stamp is None or (stamp.intact and stamp.valid)
    holds = bool(whole and covered and stamp_holds and alike and not padding.strip(b"\0"))
    return PdfSignature(
        signer=str(certificate.subject.human_friendly),
        certificate=certificate.sha256.hex(),
        holds=holds,
        says="every byte is as it was signed" if holds else "was changed after signing",
        stamped="" if stamp is None else _stamped(stamp),
    )


def _spellings(content: bytes) -> tuple[str, str]:
    """The two ways in which programs write hexadecimal digits."""
    return content.hex(), content.hex().upper()


def _stamped(stamp: "TimestampSignatureStatus") -> str:
    """The time and the authority of a time stamp."""
    when = stamp.timestamp.astimezone(UTC).strftime("%Y-%m-%d %H:%M:%S UTC")
    return f"{when} by {stamp.signing_cert.subject.human_friendly}"
