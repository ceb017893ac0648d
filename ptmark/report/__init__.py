"""What is made of a record: annotated image, PDF, tables, outlines, DICOM, exchange bundle.

All have the record's own numbers; the same record gives the same bytes.
"""
