"""The report as PDF/A-3b, rule by rule, since no registry had a validator.

Clauses are those of ISO 19005-2:2011 (and 19005-3:2012 for files inside), all from memory.
pikepdf reads the files; what it would smooth over is looked at in the bytes.
"""

import hashlib
import io
import json
import re
import struct
from dataclasses import replace

import cv2
import numpy as np
import pikepdf
import pytest
from lxml import etree
from pikepdf import Array, Dictionary, Name, Stream
from PIL import Image, ImageCms

from ptmark.record import Record, record_text
from ptmark.report.company import Company
from ptmark.report.icc import srgb_profile, usable_profile
from ptmark.report.pages.sign import signed_pdf
from ptmark.report.pages.whole import report_pdf
from ptmark.report.study import write_study_pdf
from ptmark.review import Study, limits_of_agreement

_BLENDS = {"/Normal", "/Compatible"}  # more are allowed; none of ours needs one
# ISO 32000-1, annex A.
_OPERATORS = frozenset(
    """b B b* B* BDC BI BMC BT BX c cm CS cs d d0 d1 Do DP EI EMC ET EX f F f* G g gs h i ID j J
    K k l m M MP n q Q re RG rg ri s S SC sc SCN scn sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz
    v w W W* y ' \"""".split()  # noqa: SIM905
)


def coloured(rgb, profile):
    out = io.BytesIO()
    Image.fromarray(rgb).save(out, "JPEG", quality=90, icc_profile=profile)
    return out.getvalue()


def wide_profile():
    """A profile that is not sRGB: ours with red and green colorants exchanged."""
    made = bytearray(srgb_profile())
    red, green = made.index(b"rXYZ"), made.index(b"gXYZ")
    made[red : red + 4], made[green : green + 4] = b"gXYZ", b"rXYZ"
    return bytes(made)


@pytest.fixture(scope="module")
def reports(weld, tmp_path_factory):
    """By name: (record, the photo's bytes, the PDF's bytes)."""
    record, rgb = weld
    folder = tmp_path_factory.mktemp("archival")
    png = io.BytesIO()
    Image.fromarray(rgb).save(png, "PNG")
    photos = {
        "plain.jpg": cv2.imencode(".jpg", rgb[..., ::-1])[1].tobytes(),
        "profile.jpg": coloured(rgb, wide_profile()),
        "lossless.png": png.getvalue(),
    }
    made = {}
    for name, data in photos.items():
        (folder / name).write_bytes(data)
        photo = {**record.photo, "file": name, "sha256": hashlib.sha256(data).hexdigest()}
        one = replace(record, photo=photo)
        made[name] = (one, data, report_pdf(one, rgb, folder / name, paper="Letter"))
    return made


@pytest.fixture(scope="module", params=["plain.jpg", "profile.jpg", "lossless.png", "signed"])
def report(request, reports, certificate):
    if request.param != "signed":
        return reports[request.param][2]
    return signed_pdf(reports["plain.jpg"][2], certificate, b"pass", "test")


@pytest.fixture
def opened(report):
    with pikepdf.open(io.BytesIO(report)) as pdf:
        yield pdf


def contents(pdf):
    """Each content stream's instructions with the resources that it may use."""
    for page in pdf.pages:
        yield pikepdf.parse_content_stream(page), page.Resources
    for one in pdf.objects:
        if isinstance(one, Stream) and one.get("/Subtype") == Name.Form:
            yield pikepdf.parse_content_stream(one), one.get("/Resources", Dictionary())


@pytest.mark.truth
def test_bytes_of_header_trailer_and_streams(report, opened):
    assert re.match(rb"%PDF-1\.[0-7]\n%[\x80-\xff]{4}", report)  # 6.1.2
    first, last = opened.trailer.ID  # 6.1.3
    assert len(bytes(first)) == len(bytes(last)) == 16
    assert "/Encrypt" not in opened.trailer  # 6.1.3
    assert report.rstrip(b"\r\n").endswith(b"%%EOF")  # 6.1.3
    assert re.search(rb"\nxref\n0 \d+\n0000000000 65535 f", report)  # 6.1.4
    heads = [m.end() for m in re.finditer(rb">>\nstream\n", report)]
    assert len(heads) == len(re.findall(rb"[^d]stream\r?\n", report))  # 6.1.7.1: CR LF or LF
    assert len(heads) > 10
    tails = len(re.findall(rb"\nendstream\s", report))
    assert tails == report.count(b"endstream")  # 6.1.7.1: an end of line before it
    for one in opened.objects:
        if isinstance(one, Stream):
            assert not {"/F", "/FFilter", "/FDecodeParms"} & set(one.keys())  # 6.1.7.1
            assert "LZW" not in str(one.get("/Filter"))  # 6.1.7.2
            assert "Crypt" not in str(one.get("/Filter"))  # 6.1.7.2
    assert set(opened.Root.get("/Perms", {}).keys()) <= {"/DocMDP", "/UR3"}  # 6.1.12


@pytest.mark.truth
def test_limits_of_the_format(opened):
    """6.1.13: names 127 bytes, strings 32 767, nesting of q 28, 8 388 607 objects."""

    def look(one):
        if isinstance(one, pikepdf.String):
            assert len(bytes(one)) <= 32767
        elif isinstance(one, Name):
            assert len(str(one).encode()) <= 128
        elif isinstance(one, Array) and not one.is_indirect:
            for part in one:
                look(part)
        elif isinstance(one, Dictionary | Stream):
            assert all(len(key.encode()) <= 128 for key in one.keys())  # noqa: SIM118

    assert len(opened.objects) < 8_388_607
    for one in opened.objects:
        look(one)
    for instructions, _ in contents(opened):
        depth = deepest = 0
        for _, operator in instructions:
            depth += {"q": 1, "Q": -1}.get(str(operator), 0)
            deepest = max(deepest, depth)
        assert depth == 0
        assert deepest <= 28


@pytest.mark.truth
def test_colours_stand_under_one_output_intent(opened):
    (intent,) = opened.Root.OutputIntents  # 6.2.3
    assert intent.S == Name.GTS_PDFA1
    profile = intent.DestOutputProfile
    assert profile.N == 3
    assert usable_profile(profile.read_bytes(), 3)
    for one in opened.objects:
        if isinstance(one, Stream) and one.get("/Subtype") == Name.Image:
            space = one.ColorSpace  # 6.2.4.3: device colours by the intent, none of print
            if isinstance(space, Array):
                assert space[0] == Name.ICCBased
                assert usable_profile(space[1].read_bytes(), int(space[1].N))  # 6.2.4.2
            else:
                assert space in (Name.DeviceRGB, Name.DeviceGray)
            assert not {"/Alternates", "/OPI"} & set(one.keys())  # 6.2.8
            assert not one.get("/Interpolate", False)  # 6.2.8
            assert int(one.BitsPerComponent) in {1, 2, 4, 8, 16}  # 6.2.8
        if isinstance(one, Stream) and one.get("/Subtype") == Name.Form:
            assert not {"/OPI", "/PS", "/Ref", "/Subtype2"} & set(one.keys())  # 6.2.9
        if isinstance(one, Dictionary) and one.get("/Type") == Name.ExtGState:
            assert not {"/TR", "/HTP"} & set(one.keys())  # 6.2.5
            assert str(one.get("/BM", Name.Normal)) in _BLENDS  # 6.2.10


@pytest.mark.truth
def test_page_contents_use_known_operators_and_their_own_resources(opened):
    used = set()
    for instructions, resources in contents(opened):
        for operands, operator in instructions:
            name = str(operator)
            used.add(name)
            assert name in _OPERATORS  # 6.2.2
            assert name not in {"K", "k"}  # 6.2.4.3: no print colours under an RGB intent
            if name == "Tf":
                assert operands[0] in resources.Font  # 6.2.2
            if name == "Do":
                assert operands[0] in resources.XObject
    assert {"Tj", "Do", "rg"} <= used
    assert not {"sh", "BI", "gs", "ri"} & used


@pytest.mark.truth
def test_every_font_is_embedded_with_its_widths_and_has_each_letter(opened):
    fonts = {}
    for _, resources in contents(opened):
        for key, font in resources.get("/Font", {}).items():
            fonts[key] = font
    assert len(fonts) >= 2
    letters = dict.fromkeys(fonts, b"")
    for instructions, _ in contents(opened):
        font = None
        for operands, operator in instructions:
            if str(operator) == "Tf":
                font = str(operands[0])
            if str(operator) == "Tj":
                letters[font] += bytes(operands[0])
    assert sum(map(len, letters.values())) > 300
    for key, font in fonts.items():
        described = font.FontDescriptor
        assert font.Subtype == Name.TrueType
        assert int(described.Flags) & 4  # symbolic,
        assert "/Encoding" not in font  # 6.2.11.6: so it has no encoding of its own
        data = described.FontFile2.read_bytes()  # 6.2.11.4.1
        tables = sfnt(data)
        count = struct.unpack(">H", tables[b"cmap"][2:4])[0]
        assert count == 1  # 6.2.11.6: exactly one mapping
        glyphs = mac_glyphs(tables[b"cmap"])
        low = int(font.FirstChar)
        widths = [float(width) for width in font.Widths]
        assert len(widths) == int(font.LastChar) - low + 1
        for code in set(letters[key]):
            glyph = glyphs[code]
            assert glyph != 0  # 6.2.11.8: no letter that the font has not
            assert widths[code - low] == pytest.approx(
                advance(tables, glyph), abs=1
            )  # 6.2.11.5


def sfnt(data):
    """Tables of a TrueType file (ISO/IEC 14496-22, table directory)."""
    count = struct.unpack(">H", data[4:6])[0]
    rows = (struct.unpack(">4sLLL", data[12 + 16 * n : 28 + 16 * n]) for n in range(count))
    return {tag: data[at : at + size] for tag, _, at, size in rows}


def mac_glyphs(cmap):
    """Code to glyph of a one-byte mapping, format 0 or 6 (ISO/IEC 14496-22, cmap)."""
    at = struct.unpack(">L", cmap[8:12])[0]
    kind = struct.unpack(">H", cmap[at : at + 2])[0]
    if kind == 0:
        return dict(enumerate(cmap[at + 6 : at + 262]))
    assert kind == 6
    first, count = struct.unpack(">HH", cmap[at + 6 : at + 10])
    found = struct.unpack(f">{count}H", cmap[at + 10 : at + 10 + 2 * count])
    return {first + n: glyph for n, glyph in enumerate(found)}


def advance(tables, glyph):
    """Width of a glyph in thousandths of the letter size."""
    em = struct.unpack(">H", tables[b"head"][18:20])[0]
    held = struct.unpack(">H", tables[b"hhea"][34:36])[0]
    at = 4 * min(glyph, held - 1)
    return 1000 * struct.unpack(">H", tables[b"hmtx"][at : at + 2])[0] / em


@pytest.mark.truth
def test_nothing_acts_hides_or_asks(opened):
    root = opened.Root
    assert not {"/OpenAction", "/AA", "/OCProperties", "/Requirements"} & set(root.keys())
    assert "/AlternatePresentations" not in root.get("/Names", {})  # 6.10
    assert "/JavaScript" not in root.get("/Names", {})  # 6.5.1
    form = root.get("/AcroForm", Dictionary())
    assert "/XFA" not in form  # 6.4.2
    assert not form.get("/NeedAppearances", False)  # 6.4.1
    for page in opened.pages:
        assert not {"/AA", "/PresSteps"} & set(page.keys())  # 6.5.2, 6.10
        for note in page.get("/Annots", []):
            assert note.Subtype == Name.Widget
            assert int(note.F) & 4  # 6.3.2: printed,
            assert not int(note.F) & (1 | 2 | 32)  # not invisible, hidden or kept from view
            assert not {"/A", "/AA"} & set(note.keys())  # 6.4.1
            flat = note.Rect[0] == note.Rect[2] and note.Rect[1] == note.Rect[3]
            assert flat or "/AP" in note  # 6.3.3


@pytest.mark.truth
def test_metadata_names_the_standard_and_agrees_with_the_file(opened):
    stream = opened.Root.Metadata
    assert (stream.Type, stream.Subtype) == (Name.Metadata, Name.XML)  # 6.6.2.1
    assert "/Filter" not in stream
    text = stream.read_raw_bytes()
    assert text.startswith(b'<?xpacket begin="\xef\xbb\xbf" id="W5M0MpCehiHzreSzNTczkc9d"?>')
    assert b"bytes=" not in text.split(b"?>")[0]  # 6.6.2.1
    etree.fromstring(text.decode("utf-8-sig").split("?>", 1)[1].rsplit("<?", 1)[0])
    with opened.open_metadata() as told:
        assert (told["pdfaid:part"], told["pdfaid:conformance"]) == ("3", "B")  # 6.6.4
        assert told["dc:title"] == str(opened.docinfo.Title)
        assert told["xmp:CreateDate"] == "2026-01-02T03:04:05Z"
        assert str(opened.docinfo.CreationDate) == "D:20260102030405Z"


@pytest.mark.truth
def test_the_record_travels_whole_inside(reports, certificate):
    """ISO 19005-3, 6.8: file name twice, media type, and how it belongs to the document."""
    record, _, pdf = reports["plain.jpg"]
    for data in (pdf, signed_pdf(pdf, certificate, b"pass", "test")):
        with pikepdf.open(io.BytesIO(data)) as made:
            (spec,) = made.Root.AF
            assert spec.AFRelationship == Name.Source
            assert str(spec.F) == str(spec.UF) == "record.json"
            file = spec.EF.F
            assert file.Subtype == Name("/application/json")
            inside = file.read_bytes()
            assert bytes(file.Params.CheckSum) == hashlib.md5(inside).digest()  # noqa: S324
        assert inside.decode("utf-8") == record_text(record)
        assert Record.from_json(json.loads(inside)) == record


def test_a_photo_stays_byte_for_byte_and_shows_by_its_own_profile(reports):
    for name in ("plain.jpg", "profile.jpg"):
        _, photo, pdf = reports[name]
        assert photo in pdf
        with pikepdf.open(io.BytesIO(pdf)) as made:
            (picture,) = (
                one
                for one in made.objects
                if isinstance(one, Stream)
                and one.get("/Subtype") == Name.Image
                and one.read_raw_bytes() == photo
            )
            if name == "plain.jpg":
                assert picture.ColorSpace == Name.DeviceRGB
            else:
                assert picture.ColorSpace[1].read_bytes() == wide_profile()


def test_a_firms_logo_with_clear_parts_stays_within_the_rules(weld, monkeypatch, tmp_path):
    record, rgb = weld
    out = io.BytesIO()
    pixels = np.full((40, 120, 4), (20, 60, 140, 255), np.uint8)
    pixels[:, :30, 3] = 0
    Image.fromarray(pixels).save(out, "PNG")
    firm = Company(name="Invented Works", lines=("Nowhere 1",), logo=out.getvalue())
    monkeypatch.setattr("ptmark.report.pages.whole.company", lambda: firm)
    with pikepdf.open(io.BytesIO(report_pdf(record, rgb, None))) as made:
        test_colours_stand_under_one_output_intent(made)
        test_every_font_is_embedded_with_its_widths_and_has_each_letter(made)


@pytest.mark.truth
def test_the_page_of_a_study_keeps_the_rules_and_names_no_date(tmp_path):
    pairs = ((8.0, 8.3), (2.0, 2.1), (3.0, 2.9))
    found = limits_of_agreement(pairs)
    study = Study(
        records=3,
        pairs=pairs,
        agreement=found,
        en_above_1=0,
        missed=0,
        levels=(),
        pooled=None,
    )
    write_study_pdf(tmp_path / "s.pdf", study)
    with pikepdf.open(tmp_path / "s.pdf") as made:
        test_colours_stand_under_one_output_intent(made)
        test_every_font_is_embedded_with_its_widths_and_has_each_letter(made)
        test_nothing_acts_hides_or_asks(made)
        assert "/CreationDate" not in made.docinfo
        with made.open_metadata() as told:
            assert told["pdfaid:part"] == "3"
            assert "xmp:CreateDate" not in told


@pytest.mark.truth
def test_the_profile_is_srgb_to_another_makers_eye():
    """Little CMS has an sRGB of its own; through both, every colour comes out the same."""
    ours = ImageCms.ImageCmsProfile(io.BytesIO(srgb_profile()))
    theirs = ImageCms.createProfile("sRGB")
    steps = np.linspace(0, 255, 18).round().astype(np.uint8)
    cube = np.stack(np.meshgrid(steps, steps, steps), axis=-1).reshape(54, -1, 3)
    shown = ImageCms.profileToProfile(Image.fromarray(cube), ours, theirs, renderingIntent=1)
    assert np.abs(np.asarray(shown).astype(int) - cube).max() <= 1
    lab = ImageCms.createProfile("LAB")
    for profile in (ours, theirs):
        made = ImageCms.buildTransform(profile, lab, "RGB", "LAB", renderingIntent=1)
        # Pure red of sRGB under D50: L* 54.3, a* 80.8, b* 69.9 (from memory).
        red = ImageCms.applyTransform(Image.new("RGB", (1, 1), (255, 0, 0)), made).getpixel(
            (0, 0)
        )
        light, a, b = red[0] / 2.55, *(v - 128 for v in red[1:])
        assert (light, a, b) == pytest.approx((54.3, 80.8, 69.9), abs=1)


def test_profiles_that_a_pdf_may_not_name_are_told_apart():
    good = srgb_profile()
    assert usable_profile(good, 3)
    assert not usable_profile(good, 1)
    assert not usable_profile(good[:-1], 3)
    assert not usable_profile(good[:12] + b"link" + good[16:], 3)
    assert not usable_profile(b"", 3)
    sizes = [struct.unpack(">II", good[132 + 12 * n + 4 : 132 + 12 * n + 12]) for n in range(9)]
    assert all(at % 4 == 0 for at, _ in sizes)
    assert max(at + size for at, size in sizes) <= len(good)
