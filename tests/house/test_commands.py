"""The command line and the README say the same."""

import argparse
import re
import subprocess
import sys
from pathlib import Path

import pytest

from ptmark.commands.line import parser

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def verbs():
    (one,) = (a for a in parser()._actions if isinstance(a, argparse._SubParsersAction))
    return {
        choice.dest: (choice.help, one.choices[choice.dest]) for choice in one._choices_actions
    }


def test_there_are_verbs():
    assert {"measure", "evaluate", "criteria", "card"} <= verbs().keys()


@pytest.mark.parametrize("name", sorted(verbs()))
def test_each_verb_has_help_and_stands_in_the_readme(name):
    short, made = verbs()[name]
    assert short
    assert made.description
    assert "%%" not in made.format_help()
    assert f"`ptmark {name}" in README
    for action in made._actions:
        if action.option_strings and action.help is None:
            assert action.choices, f"{name} {action.option_strings[0]} has no help"


def test_the_readme_names_no_verb_that_is_not_there():
    named = set(re.findall(r"`ptmark ([a-z]+)", README))
    assert named == set(verbs())


def test_options_in_the_readme_exist():
    known = {o for _, made in verbs().values() for a in made._actions for o in a.option_strings}
    shown = {
        option
        for line in README.splitlines()
        if line.strip().startswith(("ptmark ", "| `ptmark "))
        for option in re.findall(r"(?<![\w-])--[a-z-]+", line)
    }
    assert len(shown) >= 5
    assert shown <= known


@pytest.mark.parametrize("words", [["--help"], ["measure", "--help"], ["criteria", "--help"]])
def test_help_is_printed_and_ends_well(words):
    command = [sys.executable, "-m", "ptmark", *words]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0
    assert "usage: ptmark" in done.stdout
    assert done.stderr == ""


def test_profiles_named_in_the_readme_exist():
    known = {p.stem for p in (ROOT / "resources" / "criteria").glob("*.toml")}
    words = re.findall(r"[`\s]((?:iso|asme|en|aws)-\d?[\w.-]*\w)(?=[`\s])", README)
    assert len(set(words)) >= 6
    assert [w for w in words if w not in known] == []
    for name in known:  # each family stands there, whatever its level or unit
        family = re.split(r"-(?:us|\dx?|class-\d|porosity.*)$", name.removesuffix("-us"))[0]
        assert family in README, name
