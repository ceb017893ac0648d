"""Lengths as people type them."""

import pytest

from ptmark.errors import UsageError
from ptmark.units import parse_length


# The decimal sign is a comma or a point, and neither is to part thousands: ISO 80000-1:2022,
# 7.3 (from memory); where a comma parts them all the same, 1,500 is fifteen hundred.
@pytest.mark.truth
@pytest.mark.parametrize("typed", ["1,500mm", "1,500 mm", "12,700 cm", "150,000 mm"])
def test_a_comma_that_may_part_thousands_is_asked_about(typed):
    with pytest.raises(UsageError, match="thousand times more"):
        parse_length(typed)


@pytest.mark.parametrize(
    ("typed", "mm"),
    [("0,500 mm", 0.5), ("1,50 mm", 1.5), ("1.500 mm", 1.5), ("1,125 in", 28.575)],
)
def test_other_commas_are_decimal(typed, mm):
    assert parse_length(typed) == pytest.approx(mm)
