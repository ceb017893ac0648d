"""The same indication traced again: the hand's own spread takes the place of the default."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import t

from ptmark.dye import EdgeQuality
from ptmark.errors import OutlineError, UsageError
from ptmark.inspection import Inspection, draft_to_json, restore_draft, trace_again

EDGE = EdgeQuality(shift_px=0.5, noise_px=0.1, source="hand")


@pytest.fixture(autouse=True)
def own_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "own"))


def spindle(length, y=50.0):
    """An outline whose greatest length is ``length``, px, along x."""
    x = np.array([0.0, length / 2, length, length / 2])
    return np.column_stack([x + 10, y + np.array([0.0, 5, 0, -5])])


def traced(*lengths, source="hand"):
    """An inspection with an indication for each row of lengths, traced again where several."""
    made = Inspection()
    for row, (first, *again) in enumerate(lengths):
        name = made.add(spindle(first, 50.0 * row), replace(EDGE, source=source))
        for length in again:
            trace_again(made, name, spindle(length, 50.0 * row))
    return made


def edges(inspection):
    return {one.id: one.edge for one in inspection.state.marked}


@pytest.mark.truth
def test_the_spread_of_repeats_becomes_the_hand():
    """Pooled variance (2 + 2) / 3, JCGM 100:2008, H.3.6; t of Table G.2 for 3: 3.31."""
    made = traced([100, 102], [50, 49, 51], [70])
    one_end = np.sqrt((2 + 2) / 3 / 2)
    for edge in edges(made).values():
        assert edge.operator_px == pytest.approx(one_end * 3.31 / 2, rel=0.002)
        assert edge.operator_free == 3
    assert edges(made)["B"].traces_px == (50, 49, 51)
    assert edges(made)["C"].traces_px == ()
    later = made.add(spindle(80, 300), EDGE)
    assert edges(made)[later].operator_px == edges(made)["A"].operator_px


def test_the_outline_stays_and_one_step_back_takes_the_trace_away():
    made = traced([100, 104, 99])
    assert np.array_equal(made.marked("A").outline_px, spindle(100, 0))
    assert edges(made)["A"].operator_px > 0
    made.undo()
    assert edges(made)["A"].traces_px == (100, 104)
    assert edges(made)["A"].operator_px is None  # one degree of freedom says too little


def test_another_way_of_tracing_is_another_hand():
    made = traced([100, 104, 99])
    drawn = made.add(
        spindle(60, 200), EdgeQuality(shift_px=0.5, noise_px=0.1, source="snapped")
    )
    assert edges(made)[drawn].operator_px is None


def test_what_is_no_repeat_is_refused():
    made = traced([100])
    with pytest.raises(OutlineError, match="does not lie on A"):
        trace_again(made, "A", spindle(100, 300))
    with pytest.raises(UsageError, match="B was not traced by hand"):
        trace_again(made, "B", spindle(100))
    suggested = traced([100], source="suggested")
    with pytest.raises(UsageError, match="A was not traced by hand"):
        trace_again(suggested, "A", spindle(100, 0))
    assert edges(made)["A"] == EDGE


def test_a_draft_brings_the_repeats_back():
    made, other = traced([100, 104, 99]), Inspection()
    restore_draft(other, draft_to_json(made))
    assert edges(other) == edges(made)
    trace_again(other, "A", spindle(101, 0))
    assert edges(other)["A"].traces_px == (100, 104, 99, 101)


@pytest.mark.truth
@pytest.mark.parametrize("free", [2, 3, 5, 8, 20, 50])
def test_never_less_is_stated_than_effective_degrees_of_freedom_ask_for(free):
    """JCGM 100:2008, G.4.1 (Welch-Satterthwaite): U = t(effective) u of the whole, by SciPy."""
    for rest in np.linspace(0.0, 5.0, 51):  # of the other contributions, in that of the hand
        whole = 1 + rest**2
        asked = t.ppf(0.97725, free * whole**2) * np.sqrt(whole)
        stated = 2 * np.hypot(t.ppf(0.97725, free) / 2, rest)
        assert stated >= asked * (1 - 1e-6)
