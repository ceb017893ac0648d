"""`ptmark series` and `ptmark rework` as a script sees them, and the times they work with."""

import json
from pathlib import Path

import cv2
import numpy as np
import pytest

from ptmark.__main__ import main
from ptmark.errors import SeriesError, UsageError
from ptmark.inspection.several import minutes_given, minutes_taken
from ptmark.photo import Camera, PhotoInfo


def info(taken, name="p.jpg"):
    camera = Camera(taken=taken)
    return PhotoInfo(
        path=Path(name), sha256="", bytes=0, format="JPEG", width=1, height=1, camera=camera
    )


@pytest.mark.parametrize(
    ("developed", "minutes"),
    [
        ("10:00", [2.0, 12.5]),
        ("09:59:30", [2.5, 13.0]),
        ("2026-01-15T10:00", [2.0, 12.5]),
        ("2026-01-14T23:02", [660.0, 670.5]),
    ],
)
def test_minutes_come_from_the_cameras_clock(developed, minutes):
    # One camera wrote its offset from UTC and the other did not: both clocks show local time.
    infos = [info("2026-01-15T10:02:00+01:00"), info("2026-01-15T10:12:30")]
    assert minutes_taken(infos, developed) == minutes


@pytest.mark.parametrize(
    ("taken", "developed", "error", "says"),
    [
        ("", "10:00", SeriesError, "does not tell when"),
        ("2026-01-15T10:02:00", "10:30", SeriesError, "-28 min"),
        ("2026-01-15T10:02:00", "ten", UsageError, "no time"),
        ("2026-01-15T10:02:00", "25:00", UsageError, "no time"),
    ],
)
def test_times_that_cannot_be_are_refused(taken, developed, error, says):
    with pytest.raises(error, match=says):
        minutes_taken([info(taken)], developed)


@pytest.mark.parametrize(
    ("text", "says"), [("2,5", "2 times for 3"), ("1,2,x", "not numbers"), ("1,2,-3", "0 to")]
)
def test_minutes_that_do_not_fit_are_refused(text, says):
    with pytest.raises(UsageError, match=says):
        minutes_given(text, 3)


@pytest.fixture(scope="session")
def textured(photo_file, tmp_path_factory):
    """The flow's photo with mottle in the developer, twice; the second turned a little."""
    rgb = cv2.imread(str(photo_file)).astype(np.float32)
    high, wide = rgb.shape[:2]
    rng = np.random.RandomState(8)  # the seed does not matter
    mottle = np.zeros((high, wide), np.float32)
    for size in (4, 9, 30):
        noise = rng.normal(0, 5, (high // size, wide // size)).astype(np.float32)
        mottle += cv2.resize(noise, (wide, high), interpolation=cv2.INTER_CUBIC)
    rgb += mottle[..., None]
    turn = cv2.getRotationMatrix2D((wide / 2, high / 2), 0.5, 1.0)
    turned = cv2.warpAffine(rgb, turn, (wide, high), borderMode=cv2.BORDER_REPLICATE)
    folder = tmp_path_factory.mktemp("several")
    paths = [folder / "first.png", folder / "second.png"]
    for path, pixels in zip(paths, (rgb, turned), strict=True):
        assert cv2.imwrite(str(path), np.clip(np.rint(pixels), 0, 255).astype(np.uint8))
    return [str(path) for path in paths]


@pytest.mark.slow
def test_series_writes_curves_points_and_plot(textured, tmp_path, capsys):
    files = {name: str(tmp_path / name) for name in ("s.json", "s.csv", "s.png", "s.pdf")}
    words = ["series", *textured, "--minutes", "5,20", "--window", "iso-3452-1"]
    options = zip(("--json", "--csv", "--image", "--pdf"), files.values(), strict=True)
    assert main([*words, *(word for pair in options for word in pair)]) == 0
    data = json.loads(Path(files["s.json"]).read_text(encoding="utf-8"))
    assert data["evaluate"]["file"] == "second.png"
    assert len(data["indications"]) == 3
    lead = data["photos"][0]["registration"]
    assert lead["by"] == "features"
    assert "did not move" in lead["card"]
    for curve in data["indications"]:
        first, second = curve["readings"]
        limit = first["length_u_mm"] + second["length_u_mm"]
        assert abs(first["length_mm"] - second["length_mm"]) <= limit
    assert cv2.imread(files["s.png"]).shape[1] == 1600
    assert Path(files["s.pdf"]).read_bytes().startswith(b"%PDF-1.")
    assert "evaluate second.png" in capsys.readouterr().out


@pytest.mark.slow
def test_a_bad_photo_is_named_and_the_others_go_on_by_marks(textured, tmp_path, capsys):
    high, wide = cv2.imread(textured[0]).shape[:2]
    turn = cv2.getRotationMatrix2D((wide / 2, high / 2), 0.5, 1.0)  # as `textured` was turned
    marks = np.array([[50, 50], [wide - 50, 50], [wide - 50, high - 50], [50, high - 50.0]])
    places = [marks, marks @ turn[:, :2].T + turn[:, 2], marks, marks]
    again = tmp_path / "again.png"
    again.write_bytes(Path(textured[0]).read_bytes())  # the same picture, by another name
    photos = [*textured, str(again), str(tmp_path / "gone.png")]
    words = ["series", *photos, "--minutes", "5,20,5,30"]
    words += [f"--marks={','.join(map(str, one.ravel()))}" for one in places]
    table, curves = tmp_path / "s.csv", tmp_path / "s.json"
    assert main([*words, "--csv", str(table), "--json", str(curves)]) == 1
    assert "gone.png: there is no such file" in capsys.readouterr().err
    data = json.loads(curves.read_text(encoding="utf-8"))
    assert data["left_out"] == [
        {"file": "again.png", "reason": "it is the same picture as first.png"},
        {"file": "gone.png", "reason": "there is no such file"},
    ]
    assert data["photos"][0]["registration"]["by"] == "marks"
    last = table.read_text(encoding="utf-8-sig").splitlines()[-1]
    assert last == ",gone.png,,,,,,,,there is no such file"
    assert all(len(one["readings"]) == 2 for one in data["indications"])


@pytest.mark.slow
def test_rework_tells_that_nothing_changed(textured, tmp_path, capsys):
    path = tmp_path / "r.json"
    picture = tmp_path / "r.png"
    words = ["rework", *textured, "--json", str(path), "--image", str(picture)]
    assert main(words) == 0
    data = json.loads(path.read_text(encoding="utf-8"))
    assert {k: len(data[k]) for k in ("new", "grown", "stayed", "unclear", "gone")} == {
        "new": 0,
        "grown": 0,
        "stayed": 3,
        "unclear": 0,
        "gone": 0,
    }
    assert picture.stat().st_size > 1000
    said = capsys.readouterr().out
    assert "stayed: 3" in said
    for one in data["stayed"]:
        was, u = one["length_before_mm"], one["length_before_u_mm"]
        assert f"{one['before'][0]}: {was:.2f} ± {u:.2f} mm → " in said


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["series", "PHOTO", "--minutes", "5"], "no series"),
        (["series", "PHOTO", "PHOTO", "--minutes", "5"], "--minutes"),
        (["series", "PHOTO", "PHOTO", "--minutes", "5,9", "--window", "soon"], "--window"),
        (["series", "PHOTO", "PHOTO", "--developed", "10:00"], "does not tell when"),
        (["series", "PHOTO", "PHOTO", "--minutes", "5,9", "--marks", "1,2,3,4"], "--marks"),
        (["series", "PHOTO", "PHOTO", "--minutes", "5,9"], "the same picture"),
        (["series", "gone.jpg", "away.jpg", "--minutes", "5,9"], "no such file"),
        (["rework", "PHOTO", "PHOTO", "--marks", "1,2,3,4,5,6,7,8", "1,2"], "--marks"),
    ],
)
def test_bad_words_give_one_line(photo_file, tmp_path, capsys, monkeypatch, words, says):
    monkeypatch.chdir(tmp_path)
    assert main([str(photo_file) if word == "PHOTO" else word for word in words]) == 1
    said = capsys.readouterr().err
    assert says in said
    assert len(said.strip().splitlines()) == 1
    assert list(tmp_path.iterdir()) == []
