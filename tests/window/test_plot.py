"""The axis of lengths ends at a short number, not at something that was measured."""

import pytest

from ptmark.window.archive.plot import round_top

pytestmark = pytest.mark.gui


@pytest.mark.parametrize(
    ("most_mm", "unit", "top"),
    [
        (22.68, "mm", 24.0),
        (24.0, "mm", 24.0),
        (0.87, "mm", 1.0),
        (9.99, "mm", 10.0),
        (0.0, "mm", 1.0),  # nothing was measured
        (25.4, "in", 25.4),
        (27.0, "in", 1.2 * 25.4),
        (2.6, "in", 0.12 * 25.4),
    ],
)
def test_the_top_is_the_next_short_number_of_the_unit(most_mm, unit, top):
    assert round_top(most_mm, unit) == pytest.approx(top)


def test_it_holds_the_longest_and_wastes_at_most_a_third():
    for hundredths in range(1, 20_000, 7):
        longest = hundredths / 100
        assert longest <= round_top(longest, "mm") * (1 + 1e-9) <= longest * 4 / 3 * (1 + 1e-8)
