"""On the desktop: the launcher's entry, the icon, and what a record is told by."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QImage

ROOT = Path(__file__).parents[2]
KIND = "application/x-ptmark-record+json"

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="a Linux desktop")


@pytest.fixture
def data(tmp_path):
    """A user's data folder with the launcher put in, its name with a blank in it."""
    folder = tmp_path / "user data"
    program = tmp_path / 'odd $name "1%" & more' / "ptmark"
    program.parent.mkdir()
    program.write_text("#!/bin/sh\n")
    program.chmod(0o755)
    launcher(folder, str(program))
    return folder


def launcher(folder, *words):
    """Run .run/packaging/launcher for this data folder."""
    told = {**os.environ, "XDG_DATA_HOME": str(folder)}
    subprocess.run(
        [ROOT / ".run" / "packaging" / "launcher", *words], env=told, check=True, timeout=600
    )


def kind_by_gio(path, data):
    """What GLib, which file managers build on, takes a file for."""
    told = {**os.environ, "XDG_DATA_HOME": str(data)}
    done = subprocess.run(
        ["gio", "info", "-a", "standard::content-type", path],
        capture_output=True, text=True, timeout=600, check=True, env=told,
    )  # fmt: skip
    return done.stdout.rpartition("content-type: ")[2].strip()


def kind_of(path, data):
    """What Qt's MIME database (freedesktop.org shared-mime-info) takes a file for."""
    code = (
        "import sys; from PySide6.QtCore import QMimeDatabase\n"
        "print(QMimeDatabase().mimeTypeForFile(sys.argv[1]).name())"
    )
    told = {**os.environ, "XDG_DATA_HOME": str(data)}
    done = subprocess.run(
        [sys.executable, "-c", code, str(path)],
        capture_output=True, text=True, timeout=600, check=True, env=told,
    )  # fmt: skip
    return done.stdout.strip()


@pytest.mark.skipif(shutil.which("update-mime-database") is None, reason="no shared-mime-info")
def test_a_record_is_told_from_other_json(data, tmp_path):
    record = tmp_path / "weld.json"
    schema = json.loads((ROOT / "resources/schema/record-3.schema.json").read_text())
    name = schema["properties"]["schema"]["const"]
    record.write_text(json.dumps({"schema": name, "id": "1"}, indent=1))
    other = tmp_path / "other.json"
    other.write_text(json.dumps({"schema": "another/1"}, indent=1))
    assert kind_of(record, data) == KIND
    assert kind_of(other, data) == "application/json"
    if shutil.which("gio"):
        assert kind_by_gio(record, data) == KIND
        assert kind_by_gio(other, data) == "application/json"


def test_the_entry_starts_a_program_with_any_name(data):
    # Desktop Entry Specification 1.5, "The Exec key": quotes, \ before " ` $ \, and %% for %.
    entry = (data / "applications" / "ptmark.desktop").read_text()
    line = next(one for one in entry.splitlines() if one.startswith("Exec="))
    assert '/odd \\\\$name \\\\"1%%\\\\" & more/ptmark" %f' in line
    assert KIND in entry


@pytest.mark.skipif(shutil.which("desktop-file-validate") is None, reason="no validator")
def test_the_entry_holds_to_the_specification(data):
    done = subprocess.run(
        ["desktop-file-validate", data / "applications" / "ptmark.desktop"],
        capture_output=True, text=True, timeout=600, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stdout) == (0, "")


def test_the_launcher_can_be_taken_away_again(data):
    launcher(data, "remove")
    left = [path for path in data.rglob("*") if path.is_file() and "ptmark" in path.name]
    assert left == [] or all("mime/application" in str(path) for path in left)


def test_the_icon_is_a_picture_with_a_clear_ground():
    icon = QImage(str(ROOT / "resources" / "icons" / "ptmark.png"))
    assert (icon.width(), icon.height()) == (256, 256)
    assert icon.pixelColor(0, 0).alpha() == 0
