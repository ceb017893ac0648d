"""The signed report: validated by pyHanko itself, and broken by any flipped byte."""

import io
import threading
from datetime import UTC, datetime
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import numpy as np
import pytest

from ptmark.errors import ReportError
from ptmark.report.pages.sign import check_pdf, signed_pdf
from ptmark.report.pages.whole import report_pdf
from ptmark.report.time_stamp import TimeStampError


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
    flips = [(at, 1) for at in places]
    # One bit makes another letter's case of a hexadecimal digit, which means the same.
    digits = [at for at in range(start + 11, start + 2000) if chr(signed[at]).isalpha()]
    flips += [(at, 0x20) for at in (digits[0], digits[-1])]
    for at, bit in flips:
        path.write_bytes(signed[:at] + bytes([signed[at] ^ bit]) + signed[at + 1 :])
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


@pytest.fixture
def authority(certificate):
    """A time-stamping authority on this machine, made for the test: its address.

    pyHanko's own answers (RFC 3161) behind a plain HTTP server; the key is the test's.
    """
    from asn1crypto import tsp
    from pyhanko.sign import signers
    from pyhanko.sign.timestamps.dummy_client import DummyTimeStamper

    own = signers.SimpleSigner.load_pkcs12(certificate, passphrase=b"pass")
    answers = DummyTimeStamper(own.signing_cert, own.signing_key)
    asked = []

    class Answering(BaseHTTPRequestHandler):
        def do_POST(self):
            body = self.rfile.read(int(self.headers["Content-Length"]))
            asked.append((self.headers["Content-Type"], len(body)))
            data = answers.request_tsa_response(tsp.TimeStampReq.load(body)).dump()
            self.send_response(200)
            self.send_header("Content-Type", "application/timestamp-reply")
            self.end_headers()
            self.wfile.write(data)

        def log_message(self, *_):
            """Say nothing."""

    with ThreadingHTTPServer(("127.0.0.1", 0), Answering) as server:
        thread = threading.Thread(target=server.serve_forever, daemon=True)
        thread.start()
        yield f"http://127.0.0.1:{server.server_port}", asked
        server.shutdown()
        thread.join()


@pytest.mark.slow
def test_an_authority_vouches_for_the_time_where_one_is_named(
    weld, certificate, authority, tmp_path
):
    record, rgb = weld
    url, asked = authority
    plain = report_pdf(record, rgb, None)
    before = f"{datetime.now(UTC):%Y-%m-%d %H:%M:%S}"
    made = signed_pdf(plain, certificate, b"pass", "test", stamp_from=url)
    after = f"{datetime.now(UTC):%Y-%m-%d %H:%M:%S}"
    assert asked
    assert {kind for kind, _ in asked} == {"application/timestamp-query"}
    assert max(size for _, size in asked) < 200  # a hash and a number, nothing of the report
    path = tmp_path / "r.pdf"
    path.write_bytes(made)
    (one,) = check_pdf(path)
    assert one.holds
    assert before <= one.stamped[: len(before)] <= after
    assert "Invented examiner" in one.stamped
    path.write_bytes(signed_pdf(plain, certificate, b"pass", "test"))
    assert check_pdf(path)[0].stamped == ""


def test_a_time_stamp_that_does_not_come_is_told(weld, certificate):
    record, rgb = weld
    plain = report_pdf(record, rgb, None)
    for url, says in (
        ("http://127.0.0.1:9", "no time stamp came"),
        ("ftp://127.0.0.1", "no address"),
    ):
        with pytest.raises(TimeStampError, match=says):
            signed_pdf(plain, certificate, b"pass", "test", stamp_from=url)
