"""Colour against published values, colour-science and Little CMS."""

import io
import struct
import warnings

import cv2
import numpy as np
import pillow_heif
import pytest
import tifffile
from PIL import Image, ImageCms

from ptmark.errors import PhotoError
from ptmark.photo import linear_to_srgb, open_photo, read_preview, srgb_to_linear
from ptmark.photo._to_srgb import of_codes

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # colour-science tells of optional parts that are missing
    import colour

CODES = np.random.default_rng(21).integers(0, 256, (24, 40, 3), dtype=np.uint8)


# -- the sRGB curve ---------------------------------------------------------------------------
@pytest.mark.truth
def test_curve_at_its_joint_and_ends():
    # IEC 61966-2-1:1999: joints at 0.04045 and 0.0031308, slope 12.92 below
    assert srgb_to_linear(np.array([0.0, 0.04045, 1.0])) == pytest.approx(
        [0, 0.0031308, 1], abs=1e-7
    )
    assert linear_to_srgb(np.array([0.0, 0.0031308, 1.0])) == pytest.approx(
        [0, 0.04045, 1], abs=1e-6
    )
    assert srgb_to_linear(np.array([0.02])) == pytest.approx([0.02 / 12.92])


@pytest.mark.truth
def test_curve_as_colour_science_has_it():
    codes = np.arange(256, dtype=np.uint8)
    expected = colour.models.eotf_sRGB(codes / 255)
    assert srgb_to_linear(codes) == pytest.approx(expected, abs=1e-7)
    assert srgb_to_linear(codes / 255) == pytest.approx(expected, abs=1e-7)
    light = np.linspace(0, 1, 1001)
    assert linear_to_srgb(light) == pytest.approx(
        colour.models.eotf_inverse_sRGB(light), abs=1e-6
    )


@pytest.mark.parametrize(
    "shape", [(0,), (5,), (4, 3), (2, 3, 3), (0, 3, 3), (2, 2, 2, 3), (3, 4, 1)]
)
def test_shape_and_type_are_kept(shape):
    codes = np.full(shape, 77, np.uint8)
    light = srgb_to_linear(codes)
    assert light.shape == shape
    assert light.dtype == np.float32
    assert np.array_equal(np.rint(linear_to_srgb(light) * 255), codes)


def test_views_and_read_only_pixels_are_taken():
    codes = CODES.copy()
    codes.flags.writeable = False
    assert np.array_equal(srgb_to_linear(codes[3:9, 5:21]), srgb_to_linear(codes)[3:9, 5:21])
    assert np.array_equal(srgb_to_linear(codes[::2, ::-1]), srgb_to_linear(codes)[::2, ::-1])


def test_light_beyond_the_ends_is_clipped():
    assert linear_to_srgb(np.array([-0.5, 1.5])).tolist() == [0.0, 1.0]


# -- embedded profiles ------------------------------------------------------------------------
def fixed(*numbers):
    return struct.pack(f">{len(numbers)}i", *(round(n * 65536) for n in numbers))


def profile(space, connection, kind, tags):
    """An ICC profile put together from its tags (ICC.1:2022, clause 7)."""
    place, table, body = 128 + 4 + 12 * len(tags), b"", b""
    for name, content in tags.items():
        padded = content + bytes(-len(content) % 4)
        table += struct.pack(">4sII", name, place + len(body), len(content))
        body += padded
    size = place + len(body)
    head = struct.pack(">I4sI4s4s4s", size, b"none", 0x04200000, kind, space, connection)
    head += bytes(12) + b"acsp" + bytes(28) + fixed(0.9642, 1.0, 0.8249) + bytes(48)
    return head + struct.pack(">I", len(tags)) + table + body


def text(words):
    coded = words.encode("utf-16-be")
    return (
        b"mluc"
        + bytes(4)
        + struct.pack(">II2s2sII", 1, 12, b"en", b"US", len(coded), 28)
        + coded
    )


def rgb_profile(space, curve):
    """Matrix profile of a colour-science colour space, adapted to D50 by Bradford."""
    known = colour.RGB_COLOURSPACES[space]
    white = colour.xy_to_XYZ(known.whitepoint)
    adapt = colour.adaptation.matrix_chromatic_adaptation_VonKries(
        white, np.array([0.9642, 1.0, 0.8249]), transform="Bradford"
    )
    columns = (adapt @ known.matrix_RGB_to_XYZ).T
    tags = {b"desc": text(f"test {space}")}
    for name, column in zip((b"rXYZ", b"gXYZ", b"bXYZ"), columns, strict=True):
        tags[name] = b"XYZ " + bytes(4) + fixed(*column)
    tags |= dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve)
    tags[b"wtpt"] = b"XYZ " + bytes(4) + fixed(0.9642, 1.0, 0.8249)
    return profile(b"RGB ", b"XYZ ", b"mntr", tags)


SRGB_CURVE = b"para" + bytes(4) + struct.pack(">HH", 3, 0)
SRGB_CURVE += fixed(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045)
GAMMA_22 = b"curv" + bytes(4) + struct.pack(">IH", 1, 563) + bytes(2)  # 563 / 256
P3 = rgb_profile("Display P3", SRGB_CURVE)
ADOBE = rgb_profile("Adobe RGB (1998)", GAMMA_22)


def by_colour_science(codes, space):
    """sRGB codes of codes in another space, clipped in linear light."""
    light = colour.RGB_to_RGB(
        codes,
        space,
        "sRGB",
        apply_cctf_decoding=True,
        chromatic_adaptation_transform="Bradford",
    )
    return np.rint(colour.models.eotf_inverse_sRGB(np.clip(light, 0, 1)) * 255)


def off(photo, expected):
    return np.abs(photo.rgb.astype(int) - expected).max()


@pytest.mark.truth
@pytest.mark.parametrize(
    ("embedded", "space"),
    [(P3, "Display P3"), (ADOBE, "Adobe RGB (1998)")],
    ids=["P3", "Adobe"],
)
def test_wide_colours_as_colour_science_converts_them(keep, embedded, space):
    photo = open_photo(keep(Image.fromarray(CODES), "a.png", icc_profile=embedded))
    assert off(photo, by_colour_science(CODES / 255, space)) <= 1
    assert photo.info.profile == f"test {space}"
    unconverted = np.abs(CODES.astype(int) - by_colour_science(CODES / 255, space)).max()
    assert unconverted > 20  # what leaving the profile out would cost


@pytest.mark.truth
def test_display_p3_red(keep):
    matrix = of_codes(12, 13).matrix
    beyond = colour.RGB_to_RGB([1, 0, 0], "Display P3", "sRGB")
    assert matrix[:, 0] == pytest.approx(beyond, abs=3e-4)  # its sRGB matrix has four digits
    # from memory: the linear light of P3 red in sRGB, as CSS Color 4 computes it
    assert matrix[:, 0] == pytest.approx([1.22494, -0.04206, -0.01964], abs=1e-4)
    red = np.full((8, 8, 3), (255, 0, 0), np.uint8)
    photo = open_photo(keep(Image.fromarray(red), "a.png", icc_profile=P3))
    assert photo.rgb[0, 0].tolist() == [255, 0, 0]
    dye = np.full((8, 8, 3), (200, 90, 100), np.uint8)
    photo = open_photo(keep(Image.fromarray(dye), "b.png", icc_profile=P3))
    assert off(photo, by_colour_science(dye / 255, "Display P3")) <= 1
    assert photo.rgb[0, 0, 0] > 210


@pytest.mark.parametrize("embedded", [P3, ADOBE], ids=["P3", "Adobe"])
def test_wide_colours_as_little_cms_converts_them(keep, embedded):
    expected = ImageCms.profileToProfile(
        Image.fromarray(CODES),
        io.BytesIO(embedded),
        ImageCms.createProfile("sRGB"),
        renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
    )
    photo = open_photo(keep(Image.fromarray(CODES), "a.png", icc_profile=embedded))
    assert off(photo, np.asarray(expected, int)) <= 2  # its 8-bit path rounds on the way


@pytest.mark.parametrize("name", ["a.jpg", "a.webp", "a.tif"])
def test_profile_is_found_in_every_format(keep, name):
    dye = np.full((16, 16, 3), (200, 90, 100), np.uint8)
    options = {"a.jpg": {"quality": 100, "subsampling": 0}, "a.webp": {"lossless": True}}
    path = keep(Image.fromarray(dye), name, icc_profile=P3, **options.get(name, {}))
    expected = by_colour_science(dye / 255, "Display P3")
    assert off(open_photo(path), expected) <= 2
    assert np.abs(read_preview(path, 8).astype(int) - expected[:8, :8]).max() <= 2


def test_profile_in_heic(keep):
    dye = np.full((64, 64, 3), (200, 90, 100), np.uint8)
    out = io.BytesIO()
    pillow_heif.encode("RGB", (64, 64), dye.tobytes(), out, icc_profile=P3, quality=100)
    photo = open_photo(keep(out.getvalue(), "a.heic"))
    assert off(photo, by_colour_science(dye / 255, "Display P3")) <= 4
    assert photo.info.profile == "test Display P3"


def test_code_points_of_display_p3_in_heic(keep):
    dye = np.full((64, 64, 3), (200, 90, 100), np.uint8)
    out = io.BytesIO()
    codes = {"color_primaries": 12, "transfer_characteristics": 13, "matrix_coefficients": 6}
    whole = codes | {"full_range_flag": 1}
    pillow_heif.encode(
        "RGB", (64, 64), dye.tobytes(), out, quality=100, save_nclx_profile=True, **whole
    )
    photo = open_photo(keep(out.getvalue(), "a.heic"))
    assert photo.info.profile == "Display P3"
    assert off(photo, by_colour_science(dye / 255, "Display P3")) <= 4


def test_profile_in_avif(keep):
    dye = np.full((64, 64, 3), (200, 90, 100), np.uint8)
    path = keep(Image.fromarray(dye), "a.avif", icc_profile=P3, quality=100)
    photo = open_photo(path)
    assert off(photo, by_colour_science(dye / 255, "Display P3")) <= 4
    assert photo.info.profile == "test Display P3"


@pytest.mark.parametrize(
    ("primaries", "transfer", "space"),
    [(12, 13, "Display P3"), (9, 13, "BT.2020"), (1, 13, "sRGB"), (2, 2, "sRGB")],
)
def test_code_points_in_avif(keep, primaries, transfer, space):
    dye = np.full((64, 64, 3), (200, 90, 100), np.uint8)
    out = io.BytesIO()
    Image.fromarray(dye).save(out, "AVIF", quality=100)
    # Pillow writes those of sRGB, so the box is changed (ISO/IEC 14496-12, 12.1.5)
    plain, wanted = (
        b"colrnclx" + struct.pack(">HHH", *one)
        for one in ((1, 13, 6), (primaries, transfer, 6))
    )
    assert plain in out.getvalue()
    photo = open_photo(keep(out.getvalue().replace(plain, wanted), "a.avif"))
    assert photo.info.profile == space
    named = {"BT.2020": "ITU-R BT.2020"}.get(space, space)
    light = colour.models.eotf_sRGB(dye / 255)  # transfer 13 is IEC 61966-2-1
    light = colour.RGB_to_RGB(light, named, "sRGB").clip(0, 1)
    assert off(photo, np.rint(colour.models.eotf_inverse_sRGB(light) * 255)) <= 4


@pytest.mark.parametrize("transfer", [16, 18])
def test_avif_of_high_dynamic_range_is_refused(keep, transfer):
    out = io.BytesIO()
    Image.new("RGB", (64, 64), (200, 90, 100)).save(out, "AVIF")
    data = out.getvalue().replace(b"nclx\0\1\0\x0d", b"nclx\0\1\0" + bytes([transfer]))
    with pytest.raises(PhotoError, match="high dynamic range"):
        open_photo(keep(data, "a.avif"))


def test_10_bit_avif_is_rounded(keep):
    deep = np.full((64, 64, 3), (100 * 4, 90 * 4, 200 * 4), np.uint16)  # BGR, as OpenCV has it
    asked = [cv2.IMWRITE_AVIF_DEPTH, 10, cv2.IMWRITE_AVIF_QUALITY, 100]
    _, packed = cv2.imencode(".avif", deep, asked)
    photo = open_photo(keep(packed.tobytes(), "a.avif"))
    assert off(photo, np.array([200, 90, 100])) <= 3
    assert photo.info.bits == 10
    assert photo.info.notes == ("10 bits a channel were rounded to 8.",)


def test_10_bit_heic_is_rounded(keep):
    deep = np.full((64, 64, 3), (200 * 257, 90 * 257, 100 * 257), np.uint16)
    out = io.BytesIO()
    pillow_heif.encode("RGB;16", (64, 64), deep.tobytes(), out, quality=100)
    photo = open_photo(keep(out.getvalue(), "a.heic"))
    assert off(photo, np.array([200, 90, 100])) <= 3
    assert photo.info.bits == 10
    assert photo.info.notes == ("10 bits a channel were rounded to 8.",)


def test_profile_with_16_bits(keep):
    deep = np.random.default_rng(22).integers(0, 65536, (20, 30, 3), dtype=np.uint16)
    out = io.BytesIO()
    tifffile.imwrite(out, deep, photometric="rgb", iccprofile=P3)
    photo = open_photo(keep(out.getvalue(), "a.tif"))
    assert off(photo, by_colour_science(deep / 65535, "Display P3")) <= 1


def test_profile_split_over_many_parts(keep):
    padded = ImageCms.ImageCmsProfile(io.BytesIO(P3)).tobytes()
    assert padded
    long = P3[:128] + P3[128:] + bytes(150_000)  # three APP2 segments of at most 64 KiB
    long = struct.pack(">I", len(long)) + long[4:]
    dye = np.full((16, 16, 3), (200, 90, 100), np.uint8)
    path = keep(Image.fromarray(dye), "a.jpg", icc_profile=long, quality=100, subsampling=0)
    assert off(open_photo(path), by_colour_science(dye / 255, "Display P3")) <= 2


def test_an_srgb_profile_changes_nothing(keep):
    embedded = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    photo = open_photo(keep(Image.fromarray(CODES), "a.png", icc_profile=embedded))
    assert off(photo, CODES.astype(int)) == 0
    assert photo.info.profile == "sRGB"


def test_white_and_grey_stay_neutral(keep):
    ramp = np.repeat(np.arange(256, dtype=np.uint8)[np.newaxis, :, np.newaxis], 3, axis=2)
    photo = open_photo(keep(Image.fromarray(ramp), "a.png", icc_profile=P3))
    assert off(photo, ramp.astype(int)) <= 1
    assert photo.rgb[0, -1].tolist() == [255, 255, 255]
    assert np.ptp(photo.rgb, axis=-1).max() == 0


@pytest.mark.parametrize(
    ("kind", "numbers", "formula"),
    [
        # ICC.1:2022, parametricCurveType, by hand
        (0, (2.2,), lambda x: x**2.2),
        (1, (2.2, 0.9, 0.1), lambda x: (0.9 * x + 0.1) ** 2.2),
        (2, (2.2, 0.8, 0.1, 0.05), lambda x: (0.8 * x + 0.1) ** 2.2 + 0.05),
        (
            4,
            (2.0, 0.9, 0.0, 0.1, 0.2, 0.05, 0.01),
            lambda x: np.where(x >= 0.2, (0.9 * x) ** 2 + 0.05, 0.1 * x + 0.01),
        ),
    ],
)
def test_parametric_curves(keep, kind, numbers, formula):
    curve = b"para" + bytes(4) + struct.pack(">HH", kind, 0) + fixed(*numbers)
    ramp = np.repeat(np.arange(256, dtype=np.uint8)[np.newaxis, :, np.newaxis], 3, axis=2)
    embedded = rgb_profile("sRGB", curve)
    photo = open_photo(keep(Image.fromarray(ramp), "a.png", icc_profile=embedded))
    light = np.clip(formula(np.arange(256) / 255), 0, 1)
    expected = np.rint(colour.models.eotf_inverse_sRGB(light) * 255)
    assert np.abs(photo.rgb[0, :, 1] - expected).max() <= 1


def test_table_curve(keep):
    table = np.rint(np.linspace(0, 1, 33) ** 1.8 * 65535).astype(">u2").tobytes()
    curve = b"curv" + bytes(4) + struct.pack(">I", 33) + table
    ramp = np.repeat(np.arange(256, dtype=np.uint8)[np.newaxis, :, np.newaxis], 3, axis=2)
    path = keep(Image.fromarray(ramp), "a.png", icc_profile=rgb_profile("sRGB", curve))
    expected = np.rint(colour.models.eotf_inverse_sRGB((np.arange(256) / 255) ** 1.8) * 255)
    assert np.abs(open_photo(path).rgb[0, 8:, 1] - expected[8:]).max() <= 1


def test_grey_profile(keep):
    tags = {
        b"desc": text("grey"),
        b"kTRC": GAMMA_22,
        b"wtpt": b"XYZ " + bytes(4) + fixed(0.9642, 1, 0.8249),
    }
    embedded = profile(b"GRAY", b"XYZ ", b"mntr", tags)
    ramp = np.arange(256, dtype=np.uint8)[np.newaxis]
    light = (np.arange(256) / 255) ** (563 / 256)
    expected = np.rint(colour.models.eotf_inverse_sRGB(light) * 255)
    for name in ("a.png", "a.tif"):
        photo = open_photo(keep(Image.fromarray(ramp), name, icc_profile=embedded))
        assert np.abs(photo.rgb[0].astype(int) - expected[:, np.newaxis]).max() <= 1
        assert photo.info.profile == "grey"


def table_profile(space, channels, lab_of):
    """An 8-bit table profile (ICC.1:2022, lut8Type) with two grid points a channel."""
    corners = np.stack(np.meshgrid(*[[0.0, 1.0]] * channels, indexing="ij"), -1).reshape(
        -1, channels
    )
    lab = np.array([lab_of(corner) for corner in corners])
    codes = np.rint(np.stack([lab[:, 0] * 2.55, lab[:, 1] + 128, lab[:, 2] + 128], -1))
    line = bytes(range(256))
    table = (
        b"mft1"
        + bytes(4)
        + struct.pack(">4B", channels, 3, 2, 0)
        + fixed(1, 0, 0, 0, 1, 0, 0, 0, 1)
    )
    table += line * channels + codes.astype(np.uint8).tobytes() + line * 3
    return profile(
        space, b"Lab ", b"prtr", {b"desc": text("tables"), b"A2B0": table, b"A2B1": table}
    )


@pytest.mark.parametrize("name", ["a.jpg", "a.tif"])
def test_cmyk_profile(keep, name):
    ink = table_profile(
        b"CMYK", 4, lambda c: (100 * (1 - c[3]) * (1 - 0.3 * c[:3].mean()), 0, 0)
    )
    flat = Image.new("CMYK", (16, 16), (0, 0, 0, 128))
    photo = open_photo(keep(flat, name, icc_profile=ink))
    # halfway between L* 100 and 0 is 49.8; its luminance by CIE 15 is ((49.8 + 16) / 116) ** 3
    light = ((100 * (1 - 128 / 255) + 16) / 116) ** 3
    expected = np.rint(colour.models.eotf_inverse_sRGB(light) * 255)
    assert off(photo, expected) <= 2
    assert photo.info.profile == "tables"
    assert photo.info.notes == ()


def test_rgb_profile_of_tables(keep):
    grey = table_profile(b"RGB ", 3, lambda c: (100 * c.mean(), 0, 0))
    flat = np.full((600, 1000, 3), (255, 255, 0), np.uint8)  # more than one strip
    photo = open_photo(keep(Image.fromarray(flat), "a.png", icc_profile=grey))
    light = ((200 / 3 + 16) / 116) ** 3
    assert off(photo, np.rint(colour.models.eotf_inverse_sRGB(light) * 255)) <= 2


def test_cmyk_without_a_profile_says_so(keep):
    photo = open_photo(keep(Image.new("CMYK", (16, 16), (0, 255, 255, 0)), "a.tif"))
    assert photo.rgb[0, 0].tolist() == [255, 0, 0]
    assert photo.info.notes == (
        "CMYK without a colour profile: the colours are only roughly right.",
    )


@pytest.mark.parametrize(
    ("embedded", "says"),
    [
        (b"not a profile", "does not fit the picture"),
        (profile(b"GRAY", b"XYZ ", b"mntr", {b"kTRC": GAMMA_22}), "does not fit the picture"),
        (profile(b"RGB ", b"XYZ ", b"mntr", {b"rXYZ": b"XYZ "}), "could not be read"),
        (P3[:300], "could not be read"),
        (rgb_profile("sRGB", b"para" + bytes(4) + fixed(0, 900)), "could not be read"),
        (
            rgb_profile("sRGB", b"para" + bytes(4) + struct.pack(">HH", 9, 0)),
            "could not be read",
        ),
        (rgb_profile("sRGB", b"curv" + bytes(4) + struct.pack(">IHH", 1, 0, 0)), "could not"),
    ],
)
def test_useless_profile_is_left_out_and_said(keep, embedded, says):
    path = keep(Image.fromarray(CODES), "a.webp", icc_profile=embedded, lossless=True)
    photo = open_photo(path)
    assert off(photo, CODES.astype(int)) == 0
    assert says in photo.info.notes[0]


# -- colour spaces told otherwise -------------------------------------------------------------
def test_png_code_points_of_display_p3(keep, png_of):
    rows = b"".join(b"\0" + row.tobytes() for row in CODES)
    data = png_of(40, 24, 8, 2, rows, (b"cICP", bytes([12, 13, 0, 1])))
    photo = open_photo(keep(data, "a.png"))
    assert off(photo, by_colour_science(CODES / 255, "Display P3")) <= 1
    assert photo.info.profile == "Display P3"


def test_exif_of_adobe_rgb(keep):
    exif = Image.Exif()
    exif.get_ifd(0x8769)[0xA001] = 0xFFFF  # uncalibrated
    exif.get_ifd(0x8769)[0xA005] = {1: "R03"}  # DCF 2.0: the Adobe RGB option
    path = keep(Image.fromarray(CODES), "a.png", exif=exif.tobytes())
    photo = open_photo(path)
    assert photo.info.profile == "Adobe RGB (1998)"
    assert off(photo, by_colour_science(CODES / 255, "Adobe RGB (1998)")) <= 1


def test_transparent_wide_colours(keep):
    image = Image.fromarray(np.full((8, 8, 3), (200, 90, 100), np.uint8))
    image.putalpha(128)
    photo = open_photo(keep(image, "a.png", icc_profile=P3))
    inner = by_colour_science(np.array([[(200, 90, 100)]]) / 255, "Display P3")
    assert off(photo, 255 - 128 / 255 * (255 - inner)) <= 2
