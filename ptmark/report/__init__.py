"""Annotated image, PDF and CSV of a record: the same numbers, the same bytes each time.

The modules load when something of them is asked for: setting pages takes a library that most
commands can do without.
"""

import importlib
import typing

if typing.TYPE_CHECKING:
    from ptmark.report.annotate import annotated_image, write_image, write_images
    from ptmark.report.bundle import take_in, write_bundle
    from ptmark.report.dicom.whole import write_dicom
    from ptmark.report.growth import growth_picture
    from ptmark.report.growth_data import growth_json, write_growth_csv
    from ptmark.report.growth_pdf import write_growth_pdf
    from ptmark.report.outlines import coco_json, geo_json, write_coco, write_geo
    from ptmark.report.pages.sign import PdfSignature, check_pdf, signed_pdf
    from ptmark.report.pages.whole import report_pdf, write_pdf
    from ptmark.report.rework import rework_json, rework_picture
    from ptmark.report.sheet import write_sheet
    from ptmark.report.table import save, write_csv
    from ptmark.report.time_stamp import TimeStampError

__all__ = [
    "PdfSignature",
    "TimeStampError",
    "annotated_image",
    "check_pdf",
    "coco_json",
    "geo_json",
    "growth_json",
    "growth_picture",
    "report_pdf",
    "rework_json",
    "rework_picture",
    "save",
    "signed_pdf",
    "take_in",
    "write_bundle",
    "write_coco",
    "write_csv",
    "write_dicom",
    "write_geo",
    "write_growth_csv",
    "write_growth_pdf",
    "write_image",
    "write_images",
    "write_pdf",
    "write_sheet",
]

_MODULES = {
    "annotated_image": "annotate",
    "write_image": "annotate",
    "write_images": "annotate",
    "take_in": "bundle",
    "write_bundle": "bundle",
    "write_dicom": "dicom.whole",
    "growth_picture": "growth",
    "growth_json": "growth_data",
    "write_growth_csv": "growth_data",
    "write_growth_pdf": "growth_pdf",
    "coco_json": "outlines",
    "geo_json": "outlines",
    "write_coco": "outlines",
    "write_geo": "outlines",
    "report_pdf": "pages.whole",
    "write_pdf": "pages.whole",
    "PdfSignature": "pages.sign",
    "check_pdf": "pages.sign",
    "signed_pdf": "pages.sign",
    "rework_json": "rework",
    "rework_picture": "rework",
    "write_sheet": "sheet",
    "save": "table",
    "write_csv": "table",
    "TimeStampError": "time_stamp",
}


def __getattr__(name: str) -> object:
    """Load what is asked for (PEP 562)."""
    if name not in _MODULES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(importlib.import_module(f"ptmark.report.{_MODULES[name]}"), name)
