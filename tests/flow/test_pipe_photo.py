"""A rendered photo of a pipe through the command line, to the record and the report.

The picture is made by meeting each pixel's line of sight with the cylinder, for the test alone.
"""

import json

import numpy as np
import pytest
from PIL import Image

from ptmark.__main__ import main
from ptmark.criteria import load_profile
from ptmark.record import evaluated_again, load_record
from ptmark.record.check import check_document

WIDTH, HEIGHT, FOCAL = 1600, 1200, 1500.0
RADIUS, OFF = 84.15, 300.0


def render(lines):
    """The pipe lies along x; each line is (start deg, end deg, along mm): a dye band around."""
    y, x = np.mgrid[0:HEIGHT, 0:WIDTH].astype(float)
    dx, dy = (x - (WIDTH - 1) / 2) / FOCAL, (y - (HEIGHT - 1) / 2) / FOCAL
    a = dy**2 + 1
    under = OFF**2 - a * (OFF**2 - RADIUS**2)
    far = (OFF - np.sqrt(np.maximum(under, 0))) / a
    turned = np.degrees(np.arctan2(dy * far, OFF - far))
    along = dx * far
    light = np.where(under[..., None] > 0, [0.82, 0.82, 0.80], [0.1, 0.11, 0.12])
    for start, end, at in lines:
        soft = 0.15  # mm
        round_mm = np.radians(np.abs(turned - (start + end) / 2) - (end - start) / 2) * RADIUS
        outside = np.maximum(round_mm, np.abs(along - at) - 0.9)
        dye = np.clip(0.5 - outside / soft, 0, 1)[..., None] * (under[..., None] > 0)
        light = light * (1 - dye) + dye * np.array([0.55, 0.05, 0.07])
    return np.uint8(np.round(255 * light ** (1 / 2.2)))


def edges():
    # The line of sight touches at the limb: half-angle asin(R / off) from the axis.
    half = FOCAL * np.tan(np.arcsin(RADIUS / OFF))
    middle = (HEIGHT - 1) / 2
    points = [(100, middle - half), (1500, middle - half), (100, middle + half)]
    points.append((1500, middle + half))
    return ",".join(f"{v:.2f}" for point in points for v in point)


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "pipe.png"
    Image.fromarray(render([(-4, 4, -30), (18, 30, 20), (-54, -47, 10)])).save(path)
    return path


@pytest.mark.slow
def test_a_pipe_is_measured_along_its_surface_and_its_limb_refused(photo, tmp_path, capsys):
    made, pdf = tmp_path / "r.json", tmp_path / "r.pdf"
    image = tmp_path / "r.png"
    words = ["measure", str(photo), "--pipe", f"{edges()}=168.3mm", "--relief", "0"]
    words += ["--criteria", "iso-23277-1", "--json", str(made), "--pdf", str(pdf)]
    assert main([*words, "--image", str(image)]) == 0
    told = capsys.readouterr().out
    document = json.loads(made.read_text())
    check_document(document, where="record")
    rows = sorted(document["indications"], key=lambda one: one["length_mm"] or 0)
    seen = [one for one in rows if one["length_mm"] is not None]
    # Arc length = R x angle (the unwrapped cylinder keeps lengths).
    for one, degrees in zip(seen, (8, 12), strict=True):
        truth = np.hypot(np.radians(degrees) * RADIUS, 1.8)
        assert abs(one["length_mm"] - truth) <= one["length_u_mm"] + 0.1
        assert one["budget"]["focal length"] > 0
    assert document["scale"]["reference"] == "pipe"
    assert document["scale"]["homography"] is None
    assert document["scale"]["surface"]["radius_mm"] == pytest.approx(RADIUS)
    assert (len(rows), len(seen)) == (3, 2)
    assert "not measured: the surface turns away" in told
    assert document["evaluation"]["verdict"] != "acceptable"
    (held,) = (f for f in document["evaluation"]["findings"] if f["rule"] == "measured")
    assert held["indications"] == [one["id"] for one in rows if one["length_mm"] is None]
    assert load_record(made).scale["given"]["kind"] == "pipe"
    profile = load_profile("asme-viii-1-app-8")
    ((_, _, again),) = evaluated_again(load_record(made), profile)
    assert "measured" in {f.rule for f in again.findings if f.verdict == "undecided"}
    assert pdf.stat().st_size > 1000


def test_a_diameter_that_cannot_be_is_refused(photo, capsys):
    assert main(["measure", str(photo), "--pipe", f"{edges()}=9000mm"]) == 1
    assert "check the diameter" in capsys.readouterr().err


def measured(photo, tmp_path, *words):
    made = tmp_path / "r.json"
    assert main(["measure", str(photo), *words, "--relief", "0", "--json", str(made)]) == 0
    return json.loads(made.read_text())


@pytest.mark.slow
@pytest.mark.parametrize(
    ("words", "kind", "reference"),
    [
        (["--pipe", "200,590,1400,610=168.3mm"], "pipe", "pipe"),
        # 100 mm along the crown, 215.85 mm from a camera of 1500 px.
        (["--pipe", "168.3mm", "--line", "452,600,1147,600=100mm"], "line", "line on a pipe"),
        (
            [
                "--pipe",
                "452,599.5,1147,599.5=168.3mm",
                "--rectangle",
                "520.9,460.5,1078.1,460.5,1078.1,738.5,520.9,738.5=80.2x40mm",
            ],
            "rectangle",
            "rectangle on a pipe",
        ),
    ],
)
def test_a_line_along_the_pipe_a_rule_or_a_rectangle_on_it_will_do(
    photo, tmp_path, words, kind, reference
):
    document = measured(photo, tmp_path, *words)
    check_document(document, where="record")
    assert document["scale"]["reference"] == reference
    given = document["scale"]["given"]
    assert given["kind"] == "pipe"
    assert given.get("on", given)["kind"] == kind
    assert document["scale"]["surface"]["radius_mm"] == pytest.approx(RADIUS)
    sizes = [one for one in document["indications"] if one["length_mm"] is not None]
    middle = min(sizes, key=lambda one: one["length_mm"])
    truth = np.hypot(np.radians(8) * RADIUS, 1.8)
    assert abs(middle["length_mm"] - truth) <= middle["length_u_mm"] + 0.1


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--pipe", "168.3mm"], "0 points given"),
        (["--pipe", "1,1,9,9,1,9=168.3mm"], "3 points given"),
        (["--card-on-pipe"], "lies on no pipe"),
        (["--pipe", "1,1,9,9=168mm", "--check", "80mm"], "add --card-on-pipe"),
        (
            ["--pipe", "168mm", "--line", "1,1,9,9=9mm", "--line", "1,9,9,1=9mm"],
            "give one line",
        ),
    ],
)
def test_what_does_not_go_together_is_said(tmp_path, words, says, capsys):
    assert main(["measure", str(tmp_path / "none.png"), *words]) == 1
    assert says in capsys.readouterr().err


def test_crossing_edges_are_refused(photo, capsys):
    assert main(["measure", str(photo), "--pipe", "0,0,900,900,0,900,900,0=100mm"]) == 1
    assert "edges cross" in capsys.readouterr().err
