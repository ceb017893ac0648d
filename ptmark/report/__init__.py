"""Annotated image, PDF and CSV of a record: the same numbers, the same bytes each time."""

from ptmark.report.annotate import annotated_image, write_image
from ptmark.report.pdf import write_pdf
from ptmark.report.table import write_csv

__all__ = ["annotated_image", "write_csv", "write_image", "write_pdf"]
