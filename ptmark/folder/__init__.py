"""Many photos: measured in worker processes and kept in a book that a kill cannot spoil.

A photo that cannot be measured, even one that brings its process down, gets an error line and
stops nothing; what a run has finished the next one skips.
"""

from ptmark.folder.book import Book
from ptmark.folder.job import Asked, Outcome, inspected, look_over, measured, take_asked
from ptmark.folder.pool import Pool
from ptmark.folder.watching import Arrivals, folders_below, pictures_in

__all__ = [
    "Arrivals",
    "Asked",
    "Book",
    "Outcome",
    "Pool",
    "folders_below",
    "inspected",
    "look_over",
    "measured",
    "pictures_in",
    "take_asked",
]
