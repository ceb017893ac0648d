"""The same indication traced again: how far the inspector's hand strays."""

from dataclasses import replace

import numpy as np
import numpy.typing as npt

from ptmark.errors import OutlineError, UsageError
from ptmark.inspection.changing import Changing
from ptmark.inspection.state import check_outline, overlap
from ptmark.measure import caliper, with_own_hand

__all__ = ["trace_again"]

Array = npt.NDArray[np.float64]


def trace_again(inspection: Changing, name: str, outline_px: Array) -> None:
    """Take one more trace of an indication that a person traced; its outline stays.

    The greatest lengths of its traces are kept with it. As soon as there are enough, over all
    indications of the photo that were traced the same way, their spread takes the place of the
    default in each of these (`ptmark.measure.hand.hand_of`). One step of undo.

    Parameters
    ----------
    inspection : Changing
    name : str
        Letter of the indication.
    outline_px : ndarray of shape (N, 2)
        The new trace, px, drawn the way the first was.

    Raises
    ------
    UsageError
        If there is no such indication, or it was not traced by a person.
    OutlineError
        If the trace is no outline, or lies elsewhere.
    """
    check_outline(outline_px)
    state = inspection.state
    one = next((m for m in state.marked if m.id == name), None)
    if one is None or not one.edge.by_person:
        raise UsageError(
            f"{name} was not traced by hand", mend="trace again what a person has traced"
        )
    if not overlap(one.outline_px, outline_px):
        raise OutlineError(
            f"this trace does not lie on {name}",
            mend="trace the same indication again, or add this one as another",
        )
    before = one.edge.traces_px or (caliper(one.outline_px)[0],)
    traced = replace(one.edge, traces_px=(*before, caliper(outline_px)[0]))
    edges = [traced if m.id == name else m.edge for m in state.marked]
    own = [
        with_own_hand(edge, state.fields, edges) if edge.source == traced.source else edge
        for edge in edges
    ]
    marked = tuple(replace(m, edge=e) for m, e in zip(state.marked, own, strict=True))
    inspection.change(f"trace {name} again", marked=marked)
