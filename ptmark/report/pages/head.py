"""The head of page one: the firm, the title, and a QR code that names the record."""

import io
from typing import Any

from reportlab.graphics.barcode.qr import QrCodeWidget
from reportlab.graphics.shapes import Drawing
from reportlab.lib.units import mm
from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable, Image, Table, TableStyle

from ptmark.errors import ReportError
from ptmark.record import Record, revision_hash
from ptmark.report.company import Company
from ptmark.report.pages.style import PLAIN, color, text
from ptmark.report.palette import INK

__all__ = ["head"]

_CODE = 19 * mm
_LOGO = (42 * mm, 15 * mm)


def _record_code(record: Record) -> str:
    """What the QR code says: enough to find the record and to tell it from any other."""
    return f"ptmark {record.id} r{record.revision} sha256 {revision_hash(record.to_json())}"


def head(record: Record, width: float, firm: Company | None) -> Table:
    """Title with the firm's name and logo, and the code."""
    title: list[Flowable] = [text("Penetrant inspection report", 17, bold=True)]
    if firm is not None:
        title.append(text(firm.name, 9.5, bold=True))
        title += [text(line, 7.5, quiet=True) for line in firm.lines]
    signed = ", ".join(f"{one['role']} {one['name']}" for one in record.signatures)
    state = f"signed by {signed}" if signed else "not signed"
    title.append(
        text(f"Record {record.id}, revision {record.revision}, {state}", 7, quiet=True)
    )
    cells: list[Any] = [title, _code(record)]
    widths = [width - _CODE - 4, _CODE + 4]
    if firm is not None and firm.logo is not None:
        cells.insert(0, _logo(firm.logo))
        widths = [_LOGO[0] + 6, width - _CODE - _LOGO[0] - 10, _CODE + 4]
    made = Table([cells], colWidths=widths, hAlign="LEFT")
    made.setStyle(
        TableStyle(
            [
                ("FONTNAME", (0, 0), (-1, -1), PLAIN),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("ALIGN", (-1, 0), (-1, 0), "RIGHT"),
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 0),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
            ]
        )
    )
    return made


def _code(record: Record) -> Drawing:
    code = QrCodeWidget(_record_code(record), barLevel="M", barFillColor=color(INK))
    left, low, right, high = code.getBounds()
    turn = (_CODE / (right - left), 0, 0, _CODE / (high - low), 0, 0)
    made = Drawing(_CODE, _CODE, transform=turn)
    made.add(code)
    return made


def _logo(data: bytes) -> Image:
    try:
        wide, high = ImageReader(io.BytesIO(data)).getSize()
    except Exception as exc:
        raise ReportError(
            f"the logo cannot be read ({exc})", where="company", mend="give a PNG or JPEG"
        ) from exc
    zoom = min(_LOGO[0] / wide, _LOGO[1] / high)
    return Image(io.BytesIO(data), wide * zoom, high * zoom)
