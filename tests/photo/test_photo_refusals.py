"""What cannot be opened or trusted gives one clear PhotoError, before any decoding."""

import io
import os
import struct
import warnings
from pathlib import Path

import cv2
import numpy as np
import pillow_heif
import pytest
import tifffile
from PIL import AvifImagePlugin, Image

from ptmark.errors import PhotoError
from ptmark.photo import open_photo, read_info, read_preview

NOISE = np.random.default_rng(7).integers(0, 256, (40, 60, 3), dtype=np.uint8)


def encoded(form, **options):
    out = io.BytesIO()
    if form == "HEIC":
        pillow_heif.from_pillow(Image.fromarray(NOISE)).save(out, quality=90)
    else:
        Image.fromarray(NOISE).save(out, form, **options)
    return out.getvalue()


FORMS = {
    "JPEG": encoded("JPEG", quality=90),
    "progressive": encoded("JPEG", quality=90, progressive=True),
    "PNG": encoded("PNG"),
    "WebP": encoded("WEBP", quality=90),
    "lossless WebP": encoded("WEBP", lossless=True),
    "TIFF": encoded("TIFF"),
    "packed TIFF": encoded("TIFF", compression="tiff_lzw"),
    "HEIC": encoded("HEIC"),
    "AVIF": encoded("AVIF"),
}


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 0.99, -1])
def test_truncated(keep, form, share):
    whole = FORMS[form]
    length = len(whole) - 1 if share == -1 else int(len(whole) * share)
    path = keep(whole[:length], "a.jpg")
    for opener in (open_photo, read_info, lambda p: read_preview(p, 20)):
        with pytest.raises(
            PhotoError, match=f"a.jpg: the file is truncated: .* {length} bytes"
        ):
            opener(path)


@pytest.mark.parametrize("form", FORMS)
def test_pillow_keeps_no_limit_of_its_own(keep, monkeypatch, form):
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", 100)  # as if the picture were huge
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert open_photo(keep(FORMS[form], "a")).rgb.shape == (40, 60, 3)


def test_pillow_keeps_no_limit_on_cmyk(keep, monkeypatch):
    path = keep(Image.new("CMYK", (60, 40)), "a.jpg")
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", 100)
    assert open_photo(path).rgb.shape == (40, 60, 3)


@pytest.mark.parametrize("form", FORMS)
def test_the_whole_file_opens(keep, form):
    assert open_photo(keep(FORMS[form], "a")).rgb.shape == (40, 60, 3)


def test_opencv_alone_would_not_tell(keep):
    half = FORMS["JPEG"][: len(FORMS["JPEG"]) // 2]
    assert cv2.imread(str(keep(half, "a.jpg"))).shape == (40, 60, 3)  # why the walk is needed


@pytest.mark.parametrize("form", FORMS)
def test_cut_anywhere_is_refused_cleanly(keep, form):
    whole = FORMS[form]
    path = keep(b"", "a")
    for length in np.linspace(1, len(whole) - 1, 60).astype(int):
        path.write_bytes(whole[:length])
        with pytest.raises(PhotoError):
            read_info(path)


@pytest.mark.parametrize("form", FORMS)
def test_any_flipped_byte_opens_or_is_refused(keep, form):
    whole = FORMS[form]
    draw = np.random.default_rng(11)
    path = keep(b"", "a")
    for at in draw.integers(0, len(whole), 60):
        spoilt = bytearray(whole)
        spoilt[at] ^= int(draw.integers(1, 256))
        path.write_bytes(spoilt)
        try:
            shape = open_photo(path).rgb.shape
        except PhotoError as exc:
            shape = (exc.where == str(path), bool(exc.mend), 3)
        assert all(shape)
        assert shape[2] == 3


def test_end_marker_set_too_early(keep):
    whole = FORMS["JPEG"]
    spoilt = whole[: len(whole) // 2] + b"\xff\xd9"
    with pytest.raises(PhotoError, match="damaged: its data end before its last rows"):
        open_photo(keep(spoilt, "a.jpg"))


def test_a_marker_in_the_middle_of_the_picture(keep):
    whole = FORMS["JPEG"]
    spoilt = bytearray(whole)
    spoilt[len(whole) // 2 : len(whole) // 2 + 4] = b"\xff\xe9\x00\x08"  # APP9, T.81
    with pytest.raises(PhotoError, match="damaged: its data end before its last rows"):
        open_photo(keep(bytes(spoilt), "a.jpg"))


@pytest.mark.parametrize("progressive", [False, True])
def test_a_grey_corner_of_128_is_no_damage(keep, progressive):
    grey = np.full((64, 64, 3), 128, np.uint8)
    grey[:8, :8] = 30
    photo = open_photo(
        keep(Image.fromarray(grey), "a.jpg", quality=95, progressive=progressive)
    )
    assert photo.rgb[-1, -1].tolist() == [128, 128, 128]


def test_changed_png_is_told_by_its_checksum(keep):
    spoilt = bytearray(FORMS["PNG"])
    spoilt[len(spoilt) // 2] ^= 1
    with pytest.raises(PhotoError, match="checksum of its IDAT part differs"):
        open_photo(keep(bytes(spoilt), "a.png"))


@pytest.mark.parametrize("part", [0.3, 0.9, 0.99])
def test_a_heic_with_its_room_made_and_not_filled(keep, part):
    whole = encoded("HEIC")
    cut = whole[: int(part * len(whole))].ljust(len(whole), b"\0")
    pillow_heif.open_heif(cut).to_pillow()  # paints over what lacks and says nothing
    with pytest.raises(PhotoError, match="part of it is empty"):
        read_info(keep(cut, "a.heic"))
    read_info(keep(whole, "b.heic"))


@pytest.mark.parametrize("part", [0.3, 0.9, 0.99])
def test_an_avif_with_its_room_made_and_not_filled(keep, part):
    whole = FORMS["AVIF"]
    cut = whole[: int(part * len(whole))].ljust(len(whole), b"\0")
    Image.open(io.BytesIO(cut)).load()  # paints over what lacks and says nothing
    with pytest.raises(PhotoError, match="part of it is empty"):
        read_info(keep(cut, "a.avif"))


def test_an_avif_where_pillow_has_none(keep, monkeypatch):
    monkeypatch.setattr(AvifImagePlugin, "SUPPORTED", False)
    with pytest.raises(PhotoError, match=r"a.avif: the file is an AVIF .* built without"):
        open_photo(keep(FORMS["AVIF"], "a.avif"))


def test_damage_in_packed_tiff(keep):
    spoilt = bytearray(FORMS["packed TIFF"])
    middle = len(spoilt) // 2
    spoilt[middle : middle + 400] = bytes(400)
    with pytest.raises(PhotoError, match="cannot be decoded"):
        open_photo(keep(bytes(spoilt), "a.tif"))


def test_damage_in_packed_16_bit_tiff(keep):
    out = io.BytesIO()
    tifffile.imwrite(out, NOISE.astype(np.uint16) * 257, photometric="rgb", compression="zlib")
    spoilt = bytearray(out.getvalue())
    middle = len(spoilt) // 2
    spoilt[middle : middle + 400] = bytes(400)
    with pytest.raises(PhotoError, match="cannot be decoded"):
        open_photo(keep(bytes(spoilt), "a.tif"))


@pytest.mark.parametrize(
    ("content", "name", "says"),
    [
        (b"", "a.jpg", "the file is empty"),
        (b"a letter, not a photo\n" * 40, "a.jpg", "the file is no picture"),
        (b"\0" * 4000, "a.png", "the file is no picture"),
        (b"GIF89a" + bytes(200), "a.gif", "the file is a GIF file, which is not opened"),
        (b"%PDF-1.7" + bytes(200), "a.jpg", "the file is a PDF file, which is not opened"),
        (b"II+\0" + bytes(200), "a.tif", "the file is a BigTIFF file, which is not opened"),
        (b"\xff\xd8\xff\xe0", "a.jpg", "the file is truncated"),
        (b"\xff\xd8\xff\xd9", "a.jpg", "damaged: it ends without any picture data"),
        (b"\0\0\0\x18ftypavif" + bytes(200), "a.heic", "the AVIF picture cannot be read"),
    ],
)
def test_no_picture(keep, content, name, says):
    path = keep(content, name)
    with pytest.raises(PhotoError, match=says) as caught:
        open_photo(path)
    assert str(path) in str(caught.value)
    assert caught.value.mend


def test_missing(tmp_path):
    with pytest.raises(PhotoError, match=r"gone.jpg: there is no such file. Check the name"):
        open_photo(tmp_path / "gone.jpg")


def test_a_link_to_itself_is_named_as_one(tmp_path):
    path = tmp_path / "a.jpg"
    path.symlink_to(path)
    with pytest.raises(
        PhotoError, match=r"a.jpg: it is a link that leads back .* Open"
    ) as told:
        open_photo(path)
    assert "Errno" not in str(told.value)


def test_folder(tmp_path):
    with pytest.raises(PhotoError, match="it is a folder"):
        open_photo(tmp_path)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs named pipes")
def test_pipe_is_refused_without_waiting(tmp_path):
    os.mkfifo(tmp_path / "a.jpg")
    with pytest.raises(PhotoError, match="it is no ordinary file"):
        open_photo(tmp_path / "a.jpg")


def test_not_readable(keep, monkeypatch):
    path = keep(b"x", "a.jpg")

    def refuse(_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(
        Path, "read_bytes", refuse
    )  # the tests may run as root, who may read all
    with pytest.raises(PhotoError, match="the file may not be read"):
        open_photo(path)


def test_bad_name():
    with pytest.raises(PhotoError, match="cannot be read"):
        open_photo(Path("a\0b.jpg"))


def test_drive_that_fails(keep, monkeypatch):
    path = keep(b"x", "a.jpg")

    def fail(_):
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(Path, "read_bytes", fail)
    with pytest.raises(PhotoError, match="Input/output error"):
        open_photo(path)


def test_huge_file_is_not_read(tmp_path):
    path = tmp_path / "a.tif"
    with path.open("wb") as out:
        out.truncate(3 << 30)  # a hole: takes no room on the disk
    with pytest.raises(PhotoError, match=r"3.0 GiB; at most 2 GiB"):
        open_photo(path)


def test_file_that_changes_while_it_is_read(keep, jpeg_bytes, monkeypatch):
    path = keep(jpeg_bytes, "a.jpg")
    read = Path.read_bytes

    def read_then_change(self):
        data = read(self)
        with self.open("ab") as out:
            out.write(b"more")
        return data

    monkeypatch.setattr(Path, "read_bytes", read_then_change)
    with pytest.raises(PhotoError, match="changed while it was read"):
        open_photo(path)


def big_jpeg(width, height):
    """A small JPEG whose frame header claims another size."""
    whole = bytearray(FORMS["JPEG"])
    at = whole.index(b"\xff\xc0")
    whole[at + 5 : at + 9] = struct.pack(">HH", height, width)
    return bytes(whole)


def big_png(png_of, width, height):
    return png_of(width, height, 8, 2, b"\0" * 100)


def big_webp(width, height):
    body = b"VP8L" + struct.pack("<I", 6) + b"\x2f"
    body += struct.pack("<I", (width - 1) | (height - 1) << 14) + b"\0"
    return b"RIFF" + struct.pack("<I", 4 + len(body)) + b"WEBP" + body


def big_tiff(width, height):
    tags = [(256, 4, width), (257, 4, height), (258, 3, 8), (259, 3, 1), (262, 3, 1)]
    tags += [(273, 4, 0), (277, 3, 1), (278, 4, height), (279, 4, 8)]
    entries = b"".join(struct.pack("<HHII", tag, kind, 1, value) for tag, kind, value in tags)
    return b"II*\0" + struct.pack("<IH", 8, len(tags)) + entries + bytes(4)


@pytest.fixture
def no_decoding(monkeypatch):
    def fail(*_args, **_options):
        raise AssertionError("decoded")

    monkeypatch.setattr(cv2, "imread", fail)
    monkeypatch.setattr(cv2, "imdecode", fail)
    monkeypatch.setattr(Image.Image, "load", fail)


@pytest.mark.usefixtures("no_decoding")
@pytest.mark.parametrize("form", ["jpeg", "png", "webp", "tiff"])
def test_200_megapixels_pass_and_300_do_not(keep, png_of, form):
    make = {
        "jpeg": big_jpeg,
        "png": lambda w, h: big_png(png_of, w, h),
        "webp": big_webp,
        "tiff": big_tiff,
    }[form]
    height = 12288 if form != "webp" else 12207  # a WebP side ends at 16384
    width = 16320 if form != "webp" else 16384
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        info = read_info(keep(make(width, height), "a"))
    assert info.megapixels == pytest.approx(200, abs=1)
    if form == "webp":
        width, height, says = 16384, 16384, "268 megapixels; at most 250"
    else:
        width, height, says = 20000, 15000, "300 megapixels; at most 250"
    for opener in (open_photo, read_info, lambda p: read_preview(p, 100)):
        with pytest.raises(PhotoError, match=says):
            opener(keep(make(width, height), "a"))


def test_pixels_other_than_the_header_says(keep, png_of):
    with pytest.raises(PhotoError, match="damaged: its data cannot be decoded"):
        open_photo(keep(big_png(png_of, 4000, 4000), "a.png"))


@pytest.mark.parametrize(
    ("array", "options", "says"),
    [
        (np.zeros((4, 4), np.float32), {}, "no plain meaning as a photo"),
        (np.zeros((4, 4), np.uint32), {}, "no plain meaning as a photo"),
        (np.zeros((4, 4), np.int16), {}, "no plain meaning as a photo"),
        (
            np.zeros((4, 4, 6), np.uint8),
            {"photometric": "rgb", "planarconfig": "contig"},
            "its 6 channels",
        ),
        (
            np.zeros((3, 4, 4), np.uint16),
            {"photometric": "rgb", "planarconfig": "separate"},
            "this kind of 16-bit TIFF",
        ),
        (np.zeros((4, 4), np.uint16), {"photometric": "cfa"}, "raw camera file"),
        (np.zeros((4, 4, 3), np.uint8), {"photometric": "rgb", "subfiletype": 1}, "raw camera"),
    ],
)
def test_tiff_without_a_plain_meaning(keep, array, options, says):
    out = io.BytesIO()
    tifffile.imwrite(out, array, **options)
    with pytest.raises(PhotoError, match=says):
        open_photo(keep(out.getvalue(), "a.tif"))


def test_directory_that_points_to_itself(keep):
    whole = bytearray(FORMS["TIFF"])
    start = struct.unpack_from("<I", whole, 4)[0]
    count = struct.unpack_from("<H", whole, start)[0]
    struct.pack_into("<I", whole, start + 2 + 12 * count, start)
    assert open_photo(keep(bytes(whole), "a.tif")).info.frames == 2  # itself, once


def test_endless_scans_are_refused(keep):
    whole = FORMS["progressive"]
    scan = whole[whole.rindex(b"\xff\xda") : -2]
    with pytest.raises(PhotoError, match="more than 200 scans"):
        open_photo(keep(whole[:-2] + scan * 300 + b"\xff\xd9", "a.jpg"))


def test_preview_without_a_side(keep):
    with pytest.raises(PhotoError, match="at least 1 px a side, got 0"):
        read_preview(keep(FORMS["PNG"], "a.png"), 0)


def test_high_dynamic_range_is_refused(keep, png_of):
    # ITU-T H.273: transfer characteristics 16 is PQ, 18 is HLG
    for transfer in (16, 18):
        data = png_of(1, 1, 8, 2, bytes(4), (b"cICP", bytes([9, transfer, 0, 1])))
        with pytest.raises(PhotoError, match="high dynamic range"):
            open_photo(keep(data, "a.png"))


@pytest.mark.parametrize(
    ("tag", "kind", "number", "value", "says"),
    [
        (279, 4, 2, 8, "its strips do not add up"),  # two counts for one strip
        (273, 2, 4, 0, "its strips do not add up"),  # places written as text
        (273, 11, 1, 0, "its strips do not add up"),  # or as a floating-point number
        (256, 11, 1, 0x7FC00000, "size reads 0 x 5 px"),  # a width that is no number
        (279, 13, 1, 0, "does not say where its data stand"),  # a type that is none
        (258, 3, 1, 7, "no plain meaning as a photo"),
    ],
)
def test_tiff_that_contradicts_itself(keep, tag, kind, number, value, says):
    data = bytearray(big_tiff(4, 5))
    place = data.index(struct.pack("<H", tag), 10)
    struct.pack_into("<HHII", data, place, tag, kind, number, value)
    with pytest.raises(PhotoError, match=says):
        open_photo(keep(bytes(data), "a.tif"))


def test_tiff_with_fewer_rows_than_it_says(keep):
    data = big_tiff(4, 5).replace(
        struct.pack("<HHII", 278, 4, 1, 5), struct.pack("<HHII", 278, 4, 1, 2)
    )
    with pytest.raises(PhotoError, match="its data end after row 2 of 5"):
        open_photo(keep(data, "a.tif"))
