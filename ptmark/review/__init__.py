"""The reviewer's double check: a blind second measurement, compared with the first.

The reviewer sees the photo and the examined area, none of the numbers, until the second
measurement is done. Across many records: agreement, repeatability and reproducibility.
"""

from ptmark.review.agreement import Agreement, limits_of_agreement, precision
from ptmark.review.blind import BlindReview, Remark, reviewed
from ptmark.review.compare import Compared, Comparison, compare_records, en_number
from ptmark.review.hands import hands_in
from ptmark.review.study import Study, study_of
from ptmark.review.worklist import (
    PhotoMissingError,
    WorkItem,
    photo_place,
    sound_record,
    standing_of,
    worklist,
)

__all__ = [
    "Agreement",
    "BlindReview",
    "Compared",
    "Comparison",
    "PhotoMissingError",
    "Remark",
    "Study",
    "WorkItem",
    "compare_records",
    "en_number",
    "hands_in",
    "limits_of_agreement",
    "photo_place",
    "precision",
    "reviewed",
    "sound_record",
    "standing_of",
    "study_of",
    "worklist",
]
