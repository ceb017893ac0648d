"""The README's first command, as far as a test may go: the job itself, without the set-up."""

import json
import re
import shlex
from pathlib import Path

import pytest
from PIL import Image

from ptmark.__main__ import main

ROOT = Path(__file__).resolve().parents[2]
pytestmark = pytest.mark.slow


def test_the_job_leaves_record_image_and_report(tmp_path, monkeypatch, capsys):
    script = (ROOT / ".run" / "job").read_text(encoding="utf-8").replace("\\\n", " ")
    (line,) = re.findall(r"^\.venv/bin/ptmark (measure .*)$", script, flags=re.MULTILINE)
    (tmp_path / "sample_images").symlink_to(ROOT / "sample_images")
    monkeypatch.chdir(tmp_path)
    assert main(shlex.split(line)) == 0
    assert "iso-23277-2: rejectable" in capsys.readouterr().out
    record = json.loads((tmp_path / "out" / "record.json").read_text(encoding="utf-8"))
    assert record["evaluation"]["verdict"] == "rejectable"
    with Image.open(tmp_path / "out" / "annotated.png") as picture:
        picture.load()
        assert picture.width >= 1000
    assert (tmp_path / "out" / "report.pdf").read_bytes().startswith(b"%PDF-1.")


def test_every_demo_photo_is_named_in_its_readme():
    text = (ROOT / "sample_images" / "README.md").read_text(encoding="utf-8")
    photos = sorted((ROOT / "sample_images").glob("*.jpg"))
    assert len(photos) == 4
    assert [p.name for p in photos if f"`{p.name}`" not in text] == []
