"""Camera facts and focal length from EXIF, by the published tag numbers and by hand."""

import io
import math
import struct

import numpy as np
import pillow_heif
import pytest
from PIL import Image

from ptmark.photo import Camera, read_info
from ptmark.photo._exif import Exif, focal_px, read_exif

SHOT = {
    0x9003: "2026:03:14 09:26:53",
    0x9011: "+01:00",
    0x920A: 4.25,
    0xA405: 26,
    0xA404: 1.0,
    0xA434: "plain test lens",
    0xA002: 80,
    0xA003: 48,
}
PLACE = {1: "N", 2: (48.0, 8.0, 0.0), 3: "E", 4: (11.0, 34.0, 0.0)}


def block(shot=SHOT, place=None, **main):
    exif = Image.Exif()
    exif[0x010F], exif[0x0110] = "Test maker", "Model 1"
    for tag, value in main.items():
        exif[int(tag[1:], 16)] = value
    exif.get_ifd(0x8769).update(shot)
    if place:
        exif.get_ifd(0x8825).update(place)
    return exif.tobytes()


CAMERA = Camera(
    make="Test maker",
    model="Model 1",
    lens="plain test lens",
    taken="2026-03-14T09:26:53+01:00",
    focal_mm=4.25,
    focal_35mm_mm=26.0,
    digital_zoom=1.0,
    has_location=True,
)


@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.webp", "a.avif"])
def test_camera_in_every_format(scene, keep, name):
    path = keep(Image.fromarray(scene), name, exif=block(place=PLACE))
    assert read_info(path).camera == CAMERA


def test_camera_in_tiff(scene, keep):
    exif = Image.Exif()
    exif.load(block(place=PLACE))
    assert read_info(keep(Image.fromarray(scene), "a.tif", exif=exif)).camera == CAMERA


def test_camera_in_heic(scene, keep):
    out = io.BytesIO()
    exif = block(place=PLACE)
    pillow_heif.encode("RGB", (80, 48), scene.tobytes(), out, exif=exif, quality=50)
    assert read_info(keep(out.getvalue(), "a.heic")).camera == CAMERA


@pytest.mark.truth
@pytest.mark.parametrize("turn", [1, 6])
def test_focal_length_by_the_diagonal(keep, turn):
    # by hand: 26 mm on 135 film, diagonal 43.267 mm; 4000 x 3000 px has a diagonal of 5000 px:
    # 26 * 5000 / 43.2666 = 3004.6
    shot = SHOT | {0xA002: 4000, 0xA003: 3000}
    image = Image.new("L", (4000, 3000))
    info = read_info(keep(image, "a.jpg", exif=block(shot, x0112=turn)))
    assert info.focal_px == pytest.approx(3004.6, abs=0.1)
    assert info.width == (4000 if turn == 1 else 3000)


def test_focal_length_follows_a_resized_picture():
    exif = Exif(camera=Camera(focal_35mm_mm=26.0), pixels=(4000.0, 3000.0))
    assert focal_px(exif, 2000, 1500) == pytest.approx(focal_px(exif, 4000, 3000) / 2)


@pytest.mark.parametrize(
    ("size", "taken"),
    [((400, 300), True), ((300, 400), True), ((400, 298), True), ((280, 210), False)],
)
def test_a_picture_of_another_size_than_the_camera_wrote_is_not_as_taken(keep, size, taken):
    shot = SHOT | {0xA002: 400, 0xA003: 300}
    info = read_info(keep(Image.new("L", size), "a.jpg", exif=block(shot)))
    assert info.as_taken is taken


def test_focal_length_is_not_told_of_a_cut_picture():
    exif = Exif(camera=Camera(focal_35mm_mm=26.0), pixels=(4000.0, 3000.0))
    assert focal_px(exif, 4000, 2000) is None
    assert focal_px(exif, 4000, 2990) is not None  # rows that a codec left off
    assert focal_px(exif, 3000, 4000) == focal_px(exif, 4000, 3000)  # turned, not cut


@pytest.mark.parametrize(("unit", "per_unit_mm"), [(2, 25.4), (3, 10.0), (None, 25.4)])
def test_focal_length_by_the_sensor(unit, per_unit_mm):
    shot = {0x920A: 50.0, 0xA20E: 5000.0, 0xA002: 6000, 0xA003: 4000}
    if unit is not None:
        shot[0xA210] = unit
    exif = read_exif(block(shot))
    # by hand: 50 mm times pixels a millimetre, halved with the picture
    assert focal_px(exif, 6000, 4000) == pytest.approx(50 * 5000 / per_unit_mm)
    assert focal_px(exif, 3000, 2000) == pytest.approx(25 * 5000 / per_unit_mm)


def test_both_ways_agree_on_a_full_frame_camera():
    # a 36 mm wide sensor of 6000 px has 6000 / 36 px a millimetre; 50 mm is 50 mm of 135 film
    film = read_exif(block({0xA405: 50}))
    sensor = read_exif(block({0x920A: 50.0, 0xA20E: 60000 / 36, 0xA210: 3}))
    assert focal_px(film, 6000, 4000) == pytest.approx(focal_px(sensor, 6000, 4000), rel=1e-4)


def test_digital_zoom_is_in_the_film_length_only():
    film = read_exif(block({0xA405: 52, 0xA404: 2.0}))
    assert focal_px(film, 4000, 3000) == pytest.approx(52 * 5000 / math.hypot(36, 24))
    sensor = read_exif(block({0x920A: 4.0, 0xA20E: 6000.0, 0xA210: 3, 0xA404: 2.0}))
    assert focal_px(sensor, 4000, 3000) == pytest.approx(4.0 * 600 * 2)


@pytest.mark.parametrize(
    ("film_mm", "zoom", "told"),
    [(26, 1.0, True), (52, 1.0, False), (52, 2.0, True), (26, 2.0, False), (13, 1.0, False)],
)
def test_focal_lengths_that_contradict_each_other_tell_none(film_mm, zoom, told):
    # 26 mm of 135 film is 26 / 43.27 of any frame's diagonal (CIPA DCG-001-2005, from memory):
    # 4.33 mm on a sensor of 7.2 mm, 5.76 mm of which hold the 4000 px. A wrong one of the two
    # made lengths across a rule 5 % long.
    shot = {0x920A: 4.33, 0xA20E: 4000 / 5.76, 0xA210: 4, 0xA002: 4000, 0xA003: 3000}
    found = focal_px(read_exif(block(shot | {0xA405: film_mm, 0xA404: zoom})), 4000, 3000)
    assert (found == pytest.approx(film_mm * 5000 / math.hypot(36, 24))) == told
    assert told or found is None


@pytest.mark.parametrize(
    "shot",
    [{}, {0xA405: 0}, {0x920A: 4.0}, {0xA20E: 600.0}, {0x920A: 4.0, 0xA20E: 600.0, 0xA210: 9}],
)
def test_unknown_focal_length_is_none(shot):
    assert focal_px(read_exif(block(shot)), 4000, 3000) is None


def test_location_needs_coordinates():
    assert not read_exif(block()).camera.has_location
    assert not read_exif(block(place={0: b"\2\3\0\0"})).camera.has_location  # a version alone
    assert read_exif(block(place=PLACE)).camera.has_location


@pytest.mark.parametrize(
    ("shot", "taken"),
    [
        ({0x9003: "2026:03:14 09:26:53"}, "2026-03-14T09:26:53"),
        ({0x9003: "2026:03:14 09:26:53", 0x9011: "   "}, "2026-03-14T09:26:53"),
        ({0x9003: "    :  :     :  :  "}, ""),
        ({0x9003: "0000:00:00 00:00:00"}, ""),
        ({}, ""),
    ],
)
def test_time_taken(shot, taken):
    assert read_exif(block(shot)).camera.taken == taken


@pytest.mark.parametrize(("turn", "read"), [(0, 1), (9, 1), (65535, 1), (8, 8)])
def test_orientation_out_of_range_is_upright(turn, read):
    assert read_exif(block(x0112=turn)).orientation == read


def test_text_is_cleaned():
    camera = read_exif(block(x010F="  Shop\x07 camera \x00rest", x0110="x" * 500)).camera
    assert camera.make == "Shop camera"
    assert len(camera.model) == 100


def test_damaged_block_gives_less_but_no_error(keep, jpeg_bytes):
    whole = block(place=PLACE)
    draw = np.random.default_rng(31)
    for _ in range(400):
        spoilt = bytearray(whole[: draw.integers(0, len(whole) + 1)])
        for at in draw.integers(0, max(1, len(spoilt)), 4):
            if spoilt:
                spoilt[at] = draw.integers(0, 256)
        exif = read_exif(bytes(spoilt))
        assert exif.orientation in range(1, 9)
        assert focal_px(exif, 80, 48) is None or focal_px(exif, 80, 48) > 0
    app1 = b"\xff\xe1" + struct.pack(">H", 2 + 6 + 20) + b"Exif\0\0" + b"MM\0*" + b"\xff" * 16
    path = keep(jpeg_bytes[:2] + app1 + jpeg_bytes[2:], "a.jpg")
    assert read_info(path).camera == Camera()
