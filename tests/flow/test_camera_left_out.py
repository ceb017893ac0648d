"""A camera's profile is used where it fits, and can be left out: on the command line, in an
inspection with a way back, and in a draft."""

import json

import cv2
import numpy as np
import pytest
from PIL import Image

from ptmark.commands.line import run
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_to_json, restore_draft
from ptmark.photo import CameraProfile, open_photo, remove_profile, save_profile
from ptmark.scale import CardReference, RectangleReference


@pytest.fixture
def bent(photo_file, tmp_path):
    """The photo as taken by a camera that bends by 4 % at the corner, and its profile.

    ``undistorted = c + (p - c) (1 + kappa r^2)``, r in half diagonals: Brown 1971, one term.
    """
    straight = cv2.imread(str(photo_file))
    high, wide = straight.shape[:2]
    y, x = np.mgrid[0:high, 0:wide].astype(np.float32)
    x0, y0 = (wide - 1) / 2, (high - 1) / 2
    grow = 1 + 0.04 * ((x - x0) ** 2 + (y - y0) ** 2) / (np.hypot(wide, high) / 2) ** 2
    maps = (x0 + (x - x0) * grow, y0 + (y - y0) * grow)
    seen = cv2.remap(straight, *map(np.float32, maps), cv2.INTER_CUBIC, borderValue=(190,) * 3)
    exif, path = Image.Exif(), tmp_path / "bent.jpg"
    exif[0x010F], exif[0x0110] = "Shop", "One"
    Image.fromarray(seen[..., ::-1]).save(path, quality=95, exif=exif)
    long, short = max(wide, high), min(wide, high)
    save_profile(
        CameraProfile(
            name="bench", make="Shop", model="One", lens="", focal_mm=None,
            focal_35mm_mm=None, digital_zoom=None, long_px=long, short_px=short,
            focal_px=1.2 * long, focal_rel_u=0.2, centre_u=0.01, kappa=0.04, kappa_2=0.0,
            kappa_u=0.002, photos=9, residual_px=0.2, made="2026-01-02",
        )
    )  # fmt: skip
    return path


def _line_mm(record):
    """The 20 mm line (known by its drawing) of a record."""
    return max(record["indications"], key=lambda one: one["length_mm"])


def test_the_option_leaves_the_profile_out(bent, tmp_path):
    found = {}
    for told, options in ((True, []), (False, ["--no-camera"])):
        out = tmp_path / f"{told}.json"
        assert run(["measure", str(bent), *options, "--json", str(out)]) == 0
        record = json.loads(out.read_text())
        assert ("lens" in record["scale"]) is told
        found[told] = _line_mm(record)
    assert abs(found[True]["length_mm"] - 20.0) < 0.1
    assert found[True]["length_u_mm"] < 0.9 * found[False]["length_u_mm"]


def _bend_u(surface):
    """Standard uncertainty of the lens term."""
    return np.sqrt(sum(part[8, 8] for part in surface.covariance.values()))


def _opened(path):
    made = Inspection()
    made.open(path)
    made.set_reference(CardReference())
    return made


def test_leaving_it_out_can_be_undone(bent):
    made = _opened(bent)
    with_profile = made.surface
    made.use_lens(None)
    # The profile (0.002) and what the card tells by itself are independent.
    joined = 1 / np.hypot(1 / 0.002, 1 / _bend_u(made.surface))
    assert abs(_bend_u(with_profile) / joined - 1) < 0.2
    made.undo()
    assert made.photo.info.calibrated.name == "bench"
    assert made.surface is with_profile
    made.redo()
    assert made.photo.info.calibrated is None


def test_a_draft_keeps_the_profile_that_was_used(bent):
    made, without = _opened(bent), _opened(bent)
    without.use_lens(None)
    drafts = [json.loads(json.dumps(draft_to_json(one))) for one in (made, without)]
    remove_profile("bench")  # whatever fits when the draft is opened again
    again = [Inspection(), Inspection()]
    for one, draft in zip(again, drafts, strict=True):
        restore_draft(one, draft)
    assert again[0].photo.info.calibrated == made.photo.info.calibrated
    assert again[1].photo.info.calibrated is None
    assert np.allclose(again[0].surface.h, made.surface.h)


def test_another_photo_of_the_set_keeps_its_own(bent, overview_file):
    made = _opened(bent)
    made.use_lens(None)
    made.photos.add(open_photo(overview_file))
    made.photos.turn_to(0)  # opened again, with a profile that fits
    assert made.photo.info.calibrated is None
    corners = ((10.0, 10.0), (900.0, 10.0), (900.0, 800.0), (10.0, 800.0))
    made.set_reference(RectangleReference(corners_px=corners, width_mm=90.0, height_mm=80.0))
    assert abs(made.surface.lens.kappa) < 0.02  # nothing tells it
