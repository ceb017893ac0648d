"""Annotated image, PDF and CSV of a record: the same numbers, the same bytes each time."""

from ptmark.report.annotate import annotated_image, write_image
from ptmark.report.growth import growth_picture
from ptmark.report.growth_data import growth_json, write_growth_csv
from ptmark.report.pdf import report_pdf, write_pdf
from ptmark.report.pdf_sign import PdfSignature, check_pdf, signed_pdf
from ptmark.report.rework import rework_json, rework_picture
from ptmark.report.table import save, write_csv

__all__ = [
    "PdfSignature",
    "annotated_image",
    "check_pdf",
    "growth_json",
    "growth_picture",
    "report_pdf",
    "rework_json",
    "rework_picture",
    "save",
    "signed_pdf",
    "write_csv",
    "write_growth_csv",
    "write_image",
    "write_pdf",
]
