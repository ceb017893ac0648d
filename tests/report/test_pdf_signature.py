"""The signed report: validated by pyHanko itself, and broken by any flipped byte."""

import io

import numpy as np
import pytest

from ptmark.errors import ReportError
from ptmark.report import check_pdf, report_pdf, signed_pdf


@pytest.fixture
def signed(weld, certificate):
    record, rgb = weld
    return signed_pdf(report_pdf(record, rgb, None), certificate, b"pass", "test")


@pytest.mark.truth
def test_pyhanko_finds_the_signature_whole_and_over_all_bytes(signed):
    from pyhanko.pdf_utils.reader import PdfFileReader
    from pyhanko.sign.validation import SignatureCoverageLevel, validate_pdf_signature
    from pyhanko_certvalidator import ValidationContext

    (one,) = PdfFileReader(io.BytesIO(signed)).embedded_signatures
    trusted = ValidationContext(trust_roots=[one.signer_cert], allow_fetching=False)
    status = validate_pdf_signature(one, signer_validation_context=trusted)
    assert status.bottom_line
    assert status.coverage is SignatureCoverageLevel.ENTIRE_FILE


@pytest.mark.slow
def test_any_flipped_byte_breaks_it(signed, tmp_path):
    path = tmp_path / "r.pdf"
    path.write_bytes(signed)
    (one,) = check_pdf(path)
    assert one.holds
    assert "Invented examiner" in one.signer
    start = signed.index(b"/Contents <")
    places = [start + 3500, len(signed) - 3, 10]  # padding, trailer, head
    places += np.random.default_rng(2).integers(len(signed), size=25).tolist()
    for at in places:
        path.write_bytes(signed[:at] + bytes([signed[at] ^ 1]) + signed[at + 1 :])
        try:
            found = check_pdf(path)
        except ReportError:
            continue
        assert not found or not all(one.holds for one in found), at


def test_what_is_added_after_signing_is_told(signed, tmp_path):
    path = tmp_path / "r.pdf"
    path.write_bytes(signed + b"\n% one more line\n")
    (one,) = check_pdf(path)
    assert not one.holds


def test_what_cannot_sign_is_told(weld, certificate, tmp_path):
    with pytest.raises(ReportError, match=r"PKCS #12|cannot be opened"):
        signed_pdf(b"", certificate, b"wrong", "test")
    with pytest.raises(ReportError, match="cannot be read"):
        signed_pdf(b"", tmp_path / "none.p12", None, "test")
    (tmp_path / "no.pdf").write_bytes(b"no")
    with pytest.raises(ReportError, match="no whole PDF"):
        check_pdf(tmp_path / "no.pdf")
