"""Annotated image and PDF of a record, and its table as CSV: the same numbers, deterministic."""

from ptmark.report.annotate import annotated_image, write_image
from ptmark.report.pdf import write_pdf
from ptmark.report.table import write_csv

__all__ = ["annotated_image", "write_csv", "write_image", "write_pdf"]
