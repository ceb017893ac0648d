"""Annotated image, PDF and CSV of a record: the same numbers, the same bytes each time."""
