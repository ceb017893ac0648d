"""Every format and mode opens upright, as an independent decoder shows it."""

import hashlib
import io

import numpy as np
import pillow_heif
import pytest
import tifffile
from PIL import Image, ImageOps

from ptmark.photo import open_photo, read_info, read_preview


def as_rgb(path):
    """Pillow's own reading of a file, turned upright, transparent parts over white."""
    with Image.open(path) as image:
        upright = ImageOps.exif_transpose(image)
        if upright.has_transparency_data:
            colour = upright.convert("RGBA")
            white = Image.new("RGBA", colour.size, "white")
            upright = Image.alpha_composite(white, colour)
        return np.asarray(upright.convert("RGB"), int)


def worst(photo, expected):
    assert photo.rgb.shape == expected.shape
    return np.abs(photo.rgb.astype(int) - expected).max()


def grey(scene):
    return Image.fromarray(scene).convert("L")


def alpha(scene):
    image = Image.fromarray(scene)
    image.putalpha(Image.linear_gradient("L").resize(image.size))
    return image


def grey_alpha(scene):
    image = grey(scene)
    image.putalpha(Image.linear_gradient("L").resize(image.size))
    return image


MODES = {
    "RGB": Image.fromarray,
    "L": grey,
    "LA": grey_alpha,
    "RGBA": alpha,
    "P": lambda scene: Image.fromarray(scene).quantize(64),
    "1": lambda scene: grey(scene).convert("1"),
    "CMYK": lambda scene: Image.fromarray(scene).convert("CMYK"),
}


@pytest.mark.parametrize(
    ("name", "mode", "options", "most"),
    [
        ("a.jpg", "RGB", {"quality": 95}, 12),  # decoders may smooth the colour planes or not
        ("a.jpg", "RGB", {"quality": 95, "progressive": True}, 12),
        ("a.jpg", "RGB", {"quality": 95, "subsampling": 0, "restart_marker_rows": 1}, 2),
        ("a.jpg", "L", {"quality": 95}, 1),
        ("a.jpg", "CMYK", {"quality": 95}, 1),
        ("a.png", "RGB", {}, 0),
        ("a.png", "L", {}, 0),
        ("a.png", "1", {}, 0),
        ("a.png", "P", {}, 0),
        ("a.png", "LA", {}, 1),
        ("a.png", "RGBA", {}, 1),
        ("a.webp", "RGB", {"lossless": True}, 0),
        ("a.webp", "RGB", {"quality": 90}, 2),
        ("a.webp", "RGBA", {"lossless": True, "exact": True}, 1),
        ("a.tif", "RGB", {}, 0),
        ("a.tif", "RGB", {"compression": "tiff_lzw"}, 0),
        ("a.tif", "RGB", {"compression": "tiff_deflate"}, 0),
        ("a.tif", "RGB", {"compression": "jpeg", "quality": 95}, 12),
        ("a.tif", "L", {}, 0),
        ("a.tif", "LA", {}, 1),
        ("a.tif", "1", {}, 0),
        ("a.tif", "1", {"compression": "group4"}, 0),
        ("a.tif", "P", {}, 0),
        ("a.tif", "RGBA", {}, 1),
        ("a.tif", "CMYK", {}, 1),
    ],
)
def test_each_mode_as_pillow_reads_it(scene, keep, name, mode, options, most):
    path = keep(MODES[mode](scene), name, **options)
    photo = open_photo(path)
    assert worst(photo, as_rgb(path)) <= most
    assert photo.info.mode == mode
    assert (photo.info.width, photo.info.height) == (80, 48)
    assert not photo.rgb.flags.writeable


def test_heic_is_close_to_the_scene(scene, keep):
    out = io.BytesIO()
    pillow_heif.from_pillow(Image.fromarray(scene)).save(out, quality=95)
    photo = open_photo(keep(out.getvalue(), "a.heic"))
    assert photo.info.format == "HEIC"
    assert np.abs(photo.rgb.astype(int) - scene).mean() < 4


def test_heic_with_alpha_lies_over_white(scene, keep):
    image = Image.fromarray(scene)
    image.putalpha(0)
    out = io.BytesIO()
    pillow_heif.from_pillow(image).save(out, quality=95)
    photo = open_photo(keep(out.getvalue(), "a.heic"))
    assert photo.rgb.min() >= 253
    assert "over white" in " ".join(photo.info.notes)


@pytest.mark.parametrize("orientation", range(1, 9))
@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.webp", "a.tif"])
def test_orientation_as_pillow_turns_it(scene, keep, name, orientation):
    exif = Image.Exif()
    exif[0x0112] = orientation
    lossless = {"a.webp": {"lossless": True}, "a.jpg": {"quality": 95, "subsampling": 0}}
    path = keep(Image.fromarray(scene), name, exif=exif, **lossless.get(name, {}))
    photo = open_photo(path)
    expected = as_rgb(path)
    assert worst(photo, expected) <= (2 if name == "a.jpg" else 0)
    assert photo.info.orientation == orientation
    assert (photo.info.height, photo.info.width) == expected.shape[:2]
    assert read_preview(path, 40).shape[0] == (24 if orientation < 5 else 40)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_heic_is_turned_once(scene, keep, orientation):
    exif = Image.Exif()
    exif[0x0112] = orientation
    out = io.BytesIO()  # as phones write it: turned by a property of the picture, and in EXIF
    pillow_heif.encode("RGB", (80, 48), scene.tobytes(), out, exif=exif.tobytes(), quality=95)
    photo = open_photo(keep(out.getvalue(), "a.heic"))
    tagged = Image.fromarray(scene)
    tagged.getexif()[0x0112] = orientation
    expected = np.asarray(ImageOps.exif_transpose(tagged), int)
    assert photo.rgb.shape == expected.shape
    assert np.abs(photo.rgb.astype(int) - expected).mean() < 4
    assert photo.info.orientation == 1


def avif(picture, **options):
    out = io.BytesIO()
    picture.save(out, "AVIF", quality=95, subsampling="4:4:4", **options)
    return out.getvalue()


@pytest.mark.parametrize("name", ["a.avif", "a.heic"])
def test_avif_is_close_to_the_scene(scene, keep, name):
    data = avif(Image.fromarray(scene))
    photo = open_photo(keep(data, name))
    assert photo.info.format == "AVIF"
    assert photo.info.sha256 == hashlib.sha256(data).hexdigest()
    assert np.abs(photo.rgb.astype(int) - scene).mean() < 4
    assert ("The name says HEIC" in " ".join(photo.info.notes)) == (name == "a.heic")


def test_avif_whose_brand_is_that_of_any_image_file(scene, keep):
    data = avif(Image.fromarray(scene)).replace(b"ftypavif", b"ftypmif1", 1)
    assert open_photo(keep(data, "a.avif")).info.format == "AVIF"


def test_grey_avif_is_grey(scene, keep):
    photo = open_photo(keep(Image.fromarray(scene[..., 1]), "a.avif", quality=95))
    assert photo.info.mode == "L"
    assert np.abs(photo.rgb.astype(int) - scene[..., 1:2]).mean() < 4


def test_avif_with_alpha_lies_over_white(scene, keep):
    image = Image.fromarray(scene)
    image.putalpha(0)
    photo = open_photo(keep(avif(image), "a.avif"))
    assert photo.rgb.min() >= 253
    assert "over white" in " ".join(photo.info.notes)


def test_avif_of_two_frames_shows_the_first(scene, keep):
    data = avif(Image.fromarray(scene), append_images=[Image.new("RGB", (80, 48))])
    photo = open_photo(keep(data, "a.avif"))
    assert photo.info.frames == 2
    assert np.abs(photo.rgb.astype(int) - scene).mean() < 4


@pytest.mark.parametrize("orientation", range(1, 9))
def test_avif_is_turned_once(scene, keep, orientation):
    exif = Image.Exif()
    exif[0x0112] = orientation  # Pillow writes it as the properties irot and imir
    path = keep(avif(Image.fromarray(scene), exif=exif), "a.avif")
    photo = open_photo(path)
    tagged = Image.fromarray(scene)
    tagged.getexif()[0x0112] = orientation
    expected = np.asarray(ImageOps.exif_transpose(tagged), int)
    assert photo.rgb.shape == expected.shape
    assert np.abs(photo.rgb.astype(int) - expected).mean() < 4
    assert (photo.info.height, photo.info.width) == expected.shape[:2]
    assert read_preview(path, 40).shape[0] == (24 if orientation < 5 else 40)


def test_exif_turns_no_avif_without_that_property(scene, keep):
    exif = Image.Exif()
    exif[0x010F], exif[0x0128] = "Maker of tests", 6
    data = avif(Image.fromarray(scene), exif=exif)
    other, orientation = (
        tag + bytes.fromhex("0003 00000001 0006") for tag in (b"\1\x28", b"\1\x12")
    )
    assert other in data  # the unit's tag becomes that of orientation, which Pillow takes out
    data = data.replace(other, orientation)
    photo = open_photo(keep(data, "a.avif"))
    # ISO/IEC 23000-22 (from memory): orientation in EXIF is to be ignored
    assert photo.rgb.shape == scene.shape
    assert photo.info.camera.make == "Maker of tests"


@pytest.mark.parametrize("compression", [None, "zlib"])
def test_16_bit_tiff_keeps_the_nearest_8_bit(keep, compression):
    deep = np.random.default_rng(3).integers(0, 65536, (20, 30, 3), dtype=np.uint16)
    out = io.BytesIO()
    tifffile.imwrite(out, deep, photometric="rgb", compression=compression)
    photo = open_photo(keep(out.getvalue(), "deep.tif"))
    # 255 / 65535 is 1 / 257: the nearest code by hand
    assert np.array_equal(photo.rgb, np.rint(deep / 257))
    assert photo.info.bits == 16
    assert photo.info.notes == ("16 bits a channel were rounded to 8.",)


@pytest.mark.parametrize("colour", [0, 2, 4, 6])
def test_16_bit_png_keeps_the_nearest_8_bit(keep, png_of, colour):
    channels = {0: 1, 2: 3, 4: 2, 6: 4}[colour]
    deep = np.random.default_rng(4).integers(0, 65536, (6, 9, channels), dtype=np.uint16)
    if channels in (2, 4):
        deep[..., -1] = 65535
    rows = b"".join(b"\0" + row.astype(">u2").tobytes() for row in deep)
    photo = open_photo(keep(png_of(9, 6, 16, colour, rows), "deep.png"))
    expected = np.rint(deep / 257)[..., : 3 if channels > 2 else 1]
    assert np.array_equal(photo.rgb, np.broadcast_to(expected, (6, 9, 3)))


def test_16_bit_grey_tiff_where_zero_is_white(keep):
    deep = np.array([[0, 65535], [257, 1000]], np.uint16)
    out = io.BytesIO()
    tifffile.imwrite(out, deep, photometric="miniswhite")
    photo = open_photo(keep(out.getvalue(), "a.tif"))
    assert photo.rgb[..., 0].tolist() == [[255, 0], [254, 251]]  # 255 - v / 257


@pytest.mark.parametrize("order", ["<", ">"])
@pytest.mark.parametrize("strip", [1, 7, 20])
@pytest.mark.parametrize("kind", ["u1", "u2"])
def test_tiff_in_strips_of_either_byte_order(keep, order, strip, kind):
    top = 256 ** int(kind[1])
    deep = np.random.default_rng(5).integers(0, top, (20, 30, 3)).astype(kind)
    out = io.BytesIO()
    tifffile.imwrite(out, deep, photometric="rgb", byteorder=order, rowsperstrip=strip)
    photo = open_photo(keep(out.getvalue(), "a.tif"))
    assert np.array_equal(photo.rgb, np.rint(deep / (257 if kind == "u2" else 1)))


def test_tiff_in_tiles(keep):
    deep = np.random.default_rng(6).integers(0, 65536, (40, 50, 3), dtype=np.uint16)
    for picture, step in ((deep, 257), ((deep >> 8).astype(np.uint8), 1)):
        out = io.BytesIO()
        tifffile.imwrite(out, picture, photometric="rgb", tile=(16, 32))
        photo = open_photo(keep(out.getvalue(), "a.tif"))
        assert np.array_equal(photo.rgb, np.rint(picture / step))


@pytest.mark.parametrize(
    ("extra", "expected"),
    [
        ("unassalpha", [128, 255, 128]),  # half of 0 and half of white; half of white twice
        ("assocalpha", [127, 255, 127]),  # already halved: what is left is laid on top
        ("unspecified", [0, 255, 0]),  # a fourth channel that is not alpha
    ],
)
def test_alpha_of_16_bit_tiff(keep, extra, expected):
    deep = np.array([[[0, 65535, 0, 32768]]], np.uint16)
    out = io.BytesIO()
    tifffile.imwrite(out, deep, photometric="rgb", extrasamples=[extra])
    photo = open_photo(keep(out.getvalue(), "a.tif"))
    assert np.abs(photo.rgb[0, 0].astype(int) - expected).max() <= 1


@pytest.mark.parametrize(
    ("name", "options"),
    [
        ("a.png", {}),
        ("a.webp", {"lossless": True}),
        ("a.tif", {}),
    ],
)
def test_first_frame_is_shown_and_said(scene, keep, name, options):
    first, second = Image.fromarray(scene), Image.fromarray(255 - scene)
    path = keep(first, name, save_all=True, append_images=[second], **options)
    photo = open_photo(path)
    assert worst(photo, scene.astype(int)) == 0
    assert photo.info.frames == 2
    assert photo.info.notes == ("The file holds 2 frames or pages; the first is shown.",)


def test_transparent_parts_are_said(scene, keep):
    photo = open_photo(keep(alpha(scene), "a.png"))
    assert photo.info.notes == ("Transparent parts are shown over white.",)


def test_palette_with_a_clear_colour_lies_over_white(scene, keep):
    image = Image.fromarray(scene).quantize(16)
    path = keep(image, "a.png", transparency=image.getpixel((10, 10)))
    photo = open_photo(path)
    assert photo.rgb[10, 10].tolist() == [255, 255, 255]
    assert worst(photo, as_rgb(path)) == 0


def test_content_decides_not_the_name(scene, keep):
    out = io.BytesIO()
    Image.fromarray(scene).save(out, "PNG")
    photo = open_photo(keep(out.getvalue(), "photo.jpg"))
    assert photo.info.format == "PNG"
    assert worst(photo, scene.astype(int)) == 0
    assert photo.info.notes == ("The name says JPEG, the content is PNG.",)


def test_a_name_beyond_ascii_opens(scene, keep, jpeg_bytes):
    assert open_photo(keep(jpeg_bytes, "Prüfling ①.jpg")).rgb.shape == scene.shape


def test_bytes_after_the_end_do_no_harm(scene, keep, jpeg_bytes):
    path = keep(jpeg_bytes + jpeg_bytes[: len(jpeg_bytes) // 2] + b"video", "a.jpg")
    assert worst(open_photo(path), scene.astype(int)) < 30


def test_info_is_that_of_the_opened_photo(keep, jpeg_bytes):
    path = keep(jpeg_bytes, "a.jpg")
    assert read_info(path) == open_photo(path).info
    assert read_info(path).bytes == len(jpeg_bytes)


@pytest.mark.parametrize(
    ("side", "shape"),
    [(500, (48, 80, 3)), (80, (48, 80, 3)), (40, (24, 40, 3)), (7, (4, 7, 3))],
)
@pytest.mark.parametrize("name", ["a.jpg", "a.png"])
def test_preview_is_a_smaller_photo(scene, keep, name, side, shape):
    small = read_preview(keep(Image.fromarray(scene), name), side)
    assert small.shape == shape
    means = scene.mean(axis=(0, 1))
    assert np.allclose(small.mean(axis=(0, 1)), means, atol=4)
