"""Annotated image, PDF and CSV of a record: the same numbers, the same bytes each time."""

from ptmark.report.annotate import annotated_image, write_image, write_images
from ptmark.report.bundle import take_in, write_bundle
from ptmark.report.dicom import write_dicom
from ptmark.report.growth import growth_picture
from ptmark.report.growth_data import growth_json, write_growth_csv
from ptmark.report.growth_pdf import write_growth_pdf
from ptmark.report.outlines import coco_json, geo_json, write_coco, write_geo
from ptmark.report.pdf import report_pdf, write_pdf
from ptmark.report.pdf_sign import PdfSignature, check_pdf, signed_pdf
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
