"""The scale card can be had from the window, on the first page and at the scale."""

import pypdfium2
import pytest
from PySide6.QtCore import QLocale

from ptmark.window import dialogs
from ptmark.window.card_out import CardOut, paper_of

pytestmark = pytest.mark.gui

MM = 72 / 25.4  # points


def all_of(window):
    return window.findChildren(CardOut)


def test_it_is_offered_before_the_first_photo_and_where_a_card_is_chosen(window, idle):
    (first,) = (one for one in all_of(window) if window.empty.isAncestorOf(one))
    assert first.button.isVisible()
    window.session.go("Scale")
    at_scale = window.scale_step.card_out
    assert at_scale.button.isVisible()
    window.scale_step.choose("rectangle")
    idle()
    assert at_scale.isHidden()
    window.scale_step.choose("pipe card")
    idle()
    assert not at_scale.isHidden()


def test_the_card_is_written_and_how_to_print_it_is_told(window, idle, tmp_path, monkeypatch):
    asked = tmp_path / "card"  # without its ending
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: asked)
    card = window.scale_step.card_out
    window.session.go("Scale")
    card.button.click()
    idle()
    with pypdfium2.PdfDocument(tmp_path / "card.pdf") as pdf:
        sides = sorted(side / MM for side in pdf[0].get_size())
    papers = [pytest.approx([210, 297], abs=0.1), pytest.approx([215.9, 279.4], abs=0.1)]
    assert sides in papers  # ISO 216; ANSI/ASME Y14.1
    assert "Saved card.pdf. Print it at 100 %" in card.says.text.text()


def test_a_folder_that_is_not_there_is_told_and_a_dialog_left_does_nothing(
    window, idle, tmp_path, monkeypatch
):
    card = window.scale_step.card_out
    window.session.go("Scale")
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: None)
    card.button.click()
    idle()
    assert not card.says.isVisible()
    gone = tmp_path / "gone" / "card.pdf"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: gone)
    card.button.click()
    idle()
    assert "choose a folder" in card.says.text.text().lower()


@pytest.mark.parametrize(
    ("country", "paper"),
    [("en_US", "Letter"), ("de_DE", "A4"), ("en_GB", "A4"), ("ja_JP", "A4")],
)
def test_the_paper_is_that_of_the_country(country, paper):
    assert paper_of(QLocale(country)) == paper
