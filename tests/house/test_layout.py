"""The shape of the checkout: what stands at the top, how long files are, what may not stand."""

import os
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TOP = {
    "DEVELOPERS.md",
    "README.md",
    "ptmark",
    "pyproject.toml",
    "resources",
    "sample_images",
    "tests",
}
MADE = {"build", "dist", "out"}  # what runs leave behind; ignored by git
SKIPPED = {"__pycache__", ".git", ".venv", *MADE}
TEXT = {
    ".cfg",
    ".css",
    ".json",
    ".md",
    ".py",
    ".qss",
    ".sh",
    ".svg",
    ".toml",
    ".txt",
    ".yml",
    "",
}


def own_files(top=ROOT):
    """Every file of the project, without what runs leave behind."""
    for folder, below, names in os.walk(top):
        below[:] = [
            b
            for b in below
            if b not in SKIPPED
            and not b.endswith(("_cache", ".egg-info"))
            and b != ".hypothesis"
        ]
        yield from (Path(folder) / name for name in names)


def test_the_top_level_holds_what_it_should():
    there = {
        p.name
        for p in ROOT.iterdir()
        if not p.name.startswith(".") and not p.name.endswith(".egg-info")
    }
    assert there - MADE == TOP


@pytest.mark.parametrize("top", ["ptmark", "sample_images"])
def test_source_files_stay_short(top):
    sizes = {
        str(p.relative_to(ROOT)): len(p.read_text(encoding="utf-8").splitlines())
        for p in own_files(ROOT / top)
        if p.suffix == ".py"
    }
    assert sizes
    assert {name: lines for name, lines in sizes.items() if lines > 300} == {}


def test_no_path_of_a_machine_stands_in_the_project():
    # The names are put together here so that this file does not hold what it forbids.
    roots = "|".join(
        ["wo" + "rk", "fa" + "rm", "ho" + "me", "Us" + "ers", "ro" + "ot", "mn" + "t"]
    )
    forbidden = re.compile(rf"(?<![\w.:/])/(?:{roots})/\w|\b[A-Z]:\\\\?Users\\")
    looked_at, bad = 0, []
    for path in own_files():
        if path.suffix not in TEXT or path.name.startswith("."):
            continue
        looked_at += 1
        text = path.read_text(encoding="utf-8", errors="ignore")
        if found := forbidden.search(text):
            bad.append((str(path.relative_to(ROOT)), found[0]))
    assert looked_at > 50
    assert bad == []


@pytest.mark.parametrize("script", [".run/job", ".run/tests", ".ci/run"])
def test_the_readme_and_the_continuous_check_call_scripts_that_exist(script):
    path = ROOT / script
    assert path.read_text(encoding="utf-8").startswith("#!/usr/bin/env bash\n")
    if script == ".ci/run":
        assert "/../.run/tests" in path.read_text(encoding="utf-8")
    else:
        assert f"bash {script}" in (ROOT / "README.md").read_text(encoding="utf-8")
