"""The record as DICOM images for non-destructive evaluation (DICONDE)."""
