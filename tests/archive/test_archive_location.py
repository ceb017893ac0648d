"""A place in a photo is shown, and left out of exports, in files as others write them."""

import io
import struct
import zipfile

import numpy as np
import pillow_heif
import pytest
from PIL import Image, PngImagePlugin

from ptmark.__main__ import main
from ptmark.archive import add_record, open_archive, verify
from ptmark.photo.location import (
    has_makers_note,
    location_of,
    places_named,
    without_location,
)

PACKET = (
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf'
    '-syntax-ns#"><rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" '
    'xmlns:other="http://invented.example/" exif:GPSLatitude="51,30.0N" '
    'exif:GPSLongitude="0,7.0W" other:GpsLatitude="51.5000" other:name="kept"/></rdf:RDF>'
    "</x:xmpmeta>"
)


NOTE = b"invented note of a maker, 51.5000 -0.1167"


@pytest.fixture(autouse=True)
def heif_through_pillow(monkeypatch):
    """In these tests alone, as Pillow knows no HEIF by itself."""
    Image.init()
    for kept in ("ID", "OPEN", "SAVE", "MIME", "EXTENSION"):
        monkeypatch.setattr(Image, kept, getattr(Image, kept).copy())
    pillow_heif.register_heif_opener()


def exif():
    made = Image.Exif()
    made[0x010F] = "Invented"
    made.get_ifd(0x8825).update(
        {1: "N", 2: (51.0, 30.0, 0.0), 3: "W", 4: (0.0, 7.0, 0.0), 29: "2026:03:01"}
    )
    made.get_ifd(0x8769)[0x927C] = NOTE
    return made


def photo(kind, **more):
    pixels = np.random.default_rng(1).integers(0, 255, (700, 900, 3), dtype=np.uint8)
    out = io.BytesIO()
    Image.fromarray(pixels).save(out, kind, **more)
    return out.getvalue()


def tiff():
    """A TIFF of Pillow's, with a place put at its far end as other programs do."""
    data = bytearray(photo("TIFF"))
    assert data[:4] == b"II*\0"
    (at,) = struct.unpack_from("<I", data, 4)
    (count,) = struct.unpack_from("<H", data, at)
    entries = data[at + 2 : at + 2 + 12 * count]
    place = len(data) + len(data) % 2
    values = place + 2 + 4 * 12 + 4
    data += bytes(place - len(data)) + struct.pack("<H", 4)
    data += struct.pack("<HHI4s", 1, 2, 2, b"N") + struct.pack("<HHII", 2, 5, 3, values)
    data += struct.pack("<HHI4s", 3, 2, 2, b"W") + struct.pack("<HHII", 4, 5, 3, values + 24)
    data += struct.pack("<I", 0) + struct.pack("<12I", 51, 1, 30, 1, 0, 1, 0, 1, 7, 1, 0, 1)
    struct.pack_into("<I", data, 4, len(data))
    data += struct.pack("<H", count + 1) + entries
    data += struct.pack("<HHII", 0x8825, 4, 1, place) + struct.pack("<I", 0)
    return bytes(data)


def png(**texts):
    made = PngImagePlugin.PngInfo()
    for key, (add, *given) in texts.items():
        getattr(made, add)(key.replace("_", " "), *given, zip=True)
    return photo("PNG", pnginfo=made)


def film():
    head = b"\0\0\0\x18ftypmp42" + bytes(12)
    return photo("JPEG") + head + b"\0\0\0\x1e\xa9xyz\0\x12\x15\xc7+51.5000-000.1167/"


PHOTOS = {
    "jpg": lambda: photo("JPEG", exif=exif()),
    "webp": lambda: photo("WEBP", exif=exif()),
    "png": lambda: photo("PNG", exif=exif()),
    "heic": lambda: photo("HEIF", exif=exif()),
    "avif": lambda: photo("AVIF", exif=exif()),
    "tiff": tiff,
}
HIDDEN = {
    "packet in a JPEG": lambda: photo("JPEG", xmp=PACKET.encode()),
    "packed packet in a PNG": lambda: png(**{"XML:com.adobe.xmp": ("add_itxt", PACKET)}),
    "profile in a PNG": lambda: png(
        Raw_profile_type_exif=("add_text", f"\nexif\n  9\n{exif().tobytes().hex()}\n")
    ),
    "film behind a JPEG": film,
}


def opened(data):
    return Image.open(io.BytesIO(data))


@pytest.mark.parametrize("suffix", PHOTOS)
def test_a_place_is_shown_and_taken_out_of_the_copy_of_each_format(suffix):
    data = PHOTOS[suffix]()
    assert dict(opened(data).getexif().get_ifd(0x8825))  # Pillow reads it, so it is there
    place = location_of(data)
    assert place.latitude == pytest.approx(51.5)
    assert place.longitude == pytest.approx(-7 / 60)
    copy = without_location(data)
    assert location_of(copy) is None
    assert not dict(opened(copy).getexif().get_ifd(0x8825))
    assert struct.pack("<6I", 51, 1, 30, 1, 0, 1) not in copy
    assert struct.pack(">6I", 51, 1, 30, 1, 0, 1) not in copy
    if suffix != "tiff":
        assert has_makers_note(data)
        assert NOTE in data
    assert not has_makers_note(copy)
    assert NOTE not in copy
    assert opened(copy).getexif().get(0x010F) == opened(data).getexif().get(0x010F)
    assert np.array_equal(np.asarray(opened(copy)), np.asarray(opened(data)))
    assert without_location(copy) == copy


@pytest.mark.parametrize("where", sorted(set(HIDDEN) - {"film behind a JPEG"}))
def test_a_place_outside_exif_is_shown(where):
    place = location_of(HIDDEN[where]())
    assert place.latitude == pytest.approx(51.5)
    assert place.longitude == pytest.approx(-7 / 60)


@pytest.mark.parametrize(
    ("said", "degrees"),
    [
        (("51,30,0N", "0,7,0W"), (51.5, -7 / 60)),  # DDD,MM,SSk
        (("33,52.125S", "151,12.5E"), (-33.86875, 151.2083333)),  # DDD,MM.mmk
        (("+51.5000", "-0.1167"), (51.5, -0.1167)),
        (("north", "-0.1167"), None),
    ],
)
def test_places_of_xmp_in_each_spelling(said, degrees):
    packet = (
        f'<r:d x:GPSLatitude="{said[0]}"><e:GPSLongitude>{said[1]}</e:GPSLongitude></r:d>'
    ).encode()
    place = location_of(photo("JPEG", xmp=packet))
    if degrees is None:
        assert place is None
    else:
        assert (place.latitude, place.longitude) == pytest.approx(degrees)
    assert location_of(without_location(photo("JPEG", xmp=packet))) is None


@pytest.mark.parametrize("where", HIDDEN)
def test_a_place_outside_exif_is_taken_out_too(where):
    data = HIDDEN[where]()
    copy = without_location(data)
    said = str(opened(copy).info) + str(dict(opened(copy).getexif().get_ifd(0x8825)))
    for one in ("51.5", "51,30", "0,7.0", "51.0"):
        assert one not in said
        assert one.encode() not in copy
    assert np.array_equal(np.asarray(opened(copy)), np.asarray(opened(data)))
    assert without_location(copy) == copy


def test_the_original_stays_and_the_place_is_shown(tmp_path, make, capsys):
    data = PHOTOS["jpg"]()
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make("r-1", photo=data))
    at = ["archive", "--at", str(tmp_path / "archive")]
    assert main([*at, "show", "r-1"]) == 0
    said = capsys.readouterr().out
    assert "taken at 51.50000, -0.11667" in said
    assert "may hold a place" in said
    assert main([*at, "export", "--to", str(tmp_path / "out"), "--without-location"]) == 0
    with zipfile.ZipFile(tmp_path / "out" / "P-17_S-1_r-1.zip") as bundle:
        (name,) = (one for one in bundle.namelist() if one.endswith(".jpg"))
        assert location_of(bundle.read(name)) is None
    with open_archive(tmp_path / "archive") as archive:
        (key,) = (one for one in archive.store.names() if one.endswith(".jpg"))
        assert archive.store.read(key) == data
        assert verify(archive).problems == []


def segment(marker, data):
    """A segment of a JPEG, put behind its start (ITU-T T.81, B.1.1.4)."""
    plain = photo("JPEG")
    return (
        plain[:2] + bytes([0xFF, marker]) + struct.pack(">H", len(data) + 2) + data + plain[2:]
    )


def datasets():
    """IPTC-IIM 4.2 in Photoshop's block 1028: record 2 with city, country and caption."""
    texts = {90: b"Inventedtown", 101: b"Inventedland", 120: b"caption kept"}
    rows = (b"\x1c\x02" + bytes([n]) + struct.pack(">H", len(t)) + t for n, t in texts.items())
    data = b"".join(rows)
    block = b"8BIM\x04\x04\0\0" + struct.pack(">I", len(data)) + data + b"\0" * (len(data) % 2)
    return segment(0xED, b"Photoshop 3.0\0" + block)


def described(inner):
    return f'<rdf:RDF xmlns:rdf="r"><rdf:Description {inner}</rdf:RDF>'.encode()


def in_pieces():
    """A long packet of which one piece ends within a place (XMP part 3, 1.1.3.1)."""
    packet = described('exif:GPSLatitude="51,30.0N" exif:GPSLongitude="0,7.0W"/>')
    cut, head = packet.index(b"30.0N"), b"http://ns.adobe.com/xmp/extension/\0" + b"AB" * 16
    data = photo("JPEG")
    for at, piece in ((cut, packet[cut:]), (0, packet[:cut])):  # put in from the last on
        said = head + struct.pack(">II", len(packet), at) + piece
        data = data[:2] + b"\xff\xe1" + struct.pack(">H", len(said) + 2) + said + data[2:]
    return data


@pytest.mark.parametrize(
    ("data", "names"),
    [
        (datasets, ["Inventedtown", "Inventedland"]),
        (
            lambda: photo(
                "JPEG", xmp=described('photoshop:City="Inventedtown" a:City="kept"/>')
            ),
            ["Inventedtown"],
        ),
        (
            lambda: photo(
                "WEBP",
                xmp=described(
                    "><Iptc4xmpExt:LocationCreated>\n<rdf:li><Iptc4xmpExt:City\n>Inventedtown"
                    "</Iptc4xmpExt:City\n></rdf:li></Iptc4xmpExt:LocationCreated>"
                    "<dc:title>kept</dc:title></rdf:Description>"
                ),
            ),
            ["Inventedtown"],
        ),
        (in_pieces, []),
    ],
)
def test_a_place_that_is_named_or_told_in_pieces_is_shown_and_taken_out(data, names):
    data = data()
    assert places_named(data) == names
    assert names or location_of(data).latitude == pytest.approx(51.5)
    copy = without_location(data)
    assert places_named(copy) == []
    assert location_of(copy) is None
    assert not any(one in copy for one in (b"Invented", b"30.0N"))
    assert copy.count(b"kept") == data.count(b"kept")
    assert len(copy) == len(data)
    assert np.array_equal(np.asarray(opened(copy)), np.asarray(opened(data)))
