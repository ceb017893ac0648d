"""What the first pass says, piece by piece: where, what is read there, and when it is done."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeAlias

from PySide6.QtWidgets import QWidget

from ptmark.window.words import tr

__all__ = ["PIECES", "Piece"]

Window: TypeAlias = Any  # the MainWindow, which is made of the rooms that lead here


@dataclass(frozen=True)
class Piece:
    """One piece of the pass.

    ``step`` is the step of the work that it belongs to, ``beside`` gives what it speaks of,
    ``done`` tells when the person has done it; None: it is read and put away.
    """

    step: str
    says: str
    beside: Callable[[Window], QWidget]
    done: Callable[[Window], bool] | None = None


def _all_seen(window: Window) -> bool:
    state = window.session.state
    marked = state.marked if state is not None else ()
    return bool(marked) and all(one.standing != "suggested" for one in marked)


def _has_criteria(window: Window) -> bool:
    state = window.session.state
    return state is not None and bool(state.profile)


def _has_decision(window: Window) -> bool:
    state = window.session.state
    return state is not None and bool(state.decision)


def _is_kept(window: Window) -> bool:
    return window.saving.saved_as is not None


PIECES = (
    Piece(
        "Photo",
        tr(
            "An invented weld, developed and photographed with the scale card. The photo's own "
            "file is only read. The wheel zooms, dragging moves it, ‹F› fits it."
        ),
        lambda window: window.view,
    ),
    Piece(
        "Photo",
        tr(
            "Five steps lead to the record. Each says what it has or lacks; ‹Ctrl+Right› goes "
            "on, and nothing forces the order."
        ),
        lambda window: window.strip,
    ),
    Piece(
        "Photo",
        tr(
            "Enter the part number here first: what the last inspection of that number had is "
            "then offered, and never taken by itself."
        ),
        lambda window: window.part_form,
    ),
    Piece(
        "Scale",
        tr(
            "The card was found, so pixels are millimetres now. Without a card, choose a rule "
            "or a rectangle and pick its points. Every length carries its ± U from here on."
        ),
        lambda window: window.strip.buttons["Scale"],
    ),
    Piece(
        "Indications",
        tr(
            "Outlines are suggestions until you have looked at each: ‹Return› takes one, ‹Del› "
            "drops it, and the next one is shown. Look at all of them now."
        ),
        lambda window: window.indications_step.table,
        _all_seen,
    ),
    Piece(
        "Verdict",
        tr(
            "Choose the criteria of the contract. They are judged rule by rule, and the "
            "uncertainty can only make a verdict stricter."
        ),
        lambda window: window.verdict_step.criteria,
        _has_criteria,
    ),
    Piece(
        "Verdict",
        tr(
            "Each finding names its rule, clause, value and limit. Choose one, and the photo "
            "shows what it is about."
        ),
        lambda window: window.verdict_step.findings,
    ),
    Piece(
        "Record",
        tr(
            "The verdict is an aid; you decide. Choose a decision. Where it departs from the "
            "verdict, the record asks why."
        ),
        lambda window: window.record_step.decision,
        _has_decision,
    ),
    Piece(
        "Record",
        tr(
            "Timers for drying, dwell, evaporation and development write into the record. What "
            "is too early or too late is said, and you give the reason."
        ),
        lambda window: window.record_step.timers,
    ),
    Piece(
        "Record",
        tr(
            "‹Ctrl+S› saves record, annotated image and PDF beside each other. That is the "
            "whole way; the sample can be saved or left."
        ),
        lambda window: window.record_step.all_button,
        _is_kept,
    ),
)
