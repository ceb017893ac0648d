"""What ships: a wheel holds the resources and demo photos, and an installed copy finds them."""

import json
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """A wheel of the checkout, built as a packager would."""
    into = tmp_path_factory.mktemp("wheel")
    command = [
        sys.executable,
        "-m",
        "build",
        "--wheel",
        "--no-isolation",
        "--outdir",
        str(into),
    ]
    subprocess.run([*command, str(ROOT)], check=True, capture_output=True, text=True)
    (made,) = into.glob("ptmark-*.whl")
    return made


@pytest.fixture(scope="module")
def installed(wheel, tmp_path_factory):
    """A folder with the installed copy and nothing else of ours."""
    into = tmp_path_factory.mktemp("installed")
    command = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index"]
    subprocess.run([*command, "--target", str(into), str(wheel)], check=True)
    return into


def ask(installed, folder, program):
    """Run a program against the installed copy alone, from another working folder."""
    environment = {**os.environ, "PYTHONPATH": str(installed)}
    command = [sys.executable, "-P", "-c", program]
    done = subprocess.run(
        command, cwd=folder, env=environment, check=True, capture_output=True, text=True
    )
    return json.loads(done.stdout)


def shipped_files(folder):
    kept = (p for p in folder.rglob("*") if p.is_file())
    sizes = {p.relative_to(folder).as_posix(): p.stat().st_size for p in kept}
    return {name: size for name, size in sizes.items() if "__pycache__/" not in name}


@pytest.mark.parametrize("name", ["resources", "sample_images"])
def test_the_wheel_holds_every_shipped_file_whole(wheel, name):
    inside = f"ptmark/_shipped/{name}/"
    with zipfile.ZipFile(wheel) as archive:
        held = {
            item.filename.removeprefix(inside): item.file_size
            for item in archive.infolist()
            if item.filename.startswith(inside)
        }
    wanted = shipped_files(ROOT / name)
    assert len(wanted) > 2
    assert held == wanted


def test_an_installed_copy_finds_its_files_from_another_folder(installed, tmp_path):
    program = (
        "import json, ptmark; from ptmark.places import resource, sample_images;"
        "print(json.dumps([ptmark.__file__, str(resource()), str(sample_images()),"
        "sorted(p.name for p in sample_images().glob('*.jpg'))]))"
    )
    package, resources, samples, photos = ask(installed, tmp_path, program)
    assert Path(package).is_relative_to(installed)  # not the checkout
    assert Path(resources).is_relative_to(installed)
    assert shipped_files(Path(resources)) == shipped_files(ROOT / "resources")
    assert Path(samples).is_relative_to(installed)
    assert photos == ["good.jpg", "hard.jpg", "rejectable.jpg", "undecided.jpg"]


def test_an_installed_copy_knows_every_profile(installed, tmp_path):
    program = (
        "import json; from ptmark.criteria import list_profiles, load_profile;"
        "print(json.dumps([load_profile(getattr(p, 'name', p)).name for p in list_profiles()]))"
    )
    known = ask(installed, tmp_path, program)
    files = {p.stem for p in (ROOT / "resources" / "criteria").glob("*.toml")}
    assert set(known) == files
    assert {"iso-23277-2", "asme-viii-1-app-8", "asme-viii-1-app-8-us"} <= files
