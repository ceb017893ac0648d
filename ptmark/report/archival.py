"""A PDF made fit for archives: PDF/A-3, level B, with the record's own file inside.

Clauses are those of ISO 19005-2:2011 and 19005-3:2012, from memory; the tests go through them
rule by rule. Level B promises how the pages look, for as long as PDF is read; it does not
promise a reading order for the text.
"""

import io
from dataclasses import dataclass
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from ptmark.report.icc import srgb_profile, usable_profile

if TYPE_CHECKING:
    import pikepdf

__all__ = ["Attached", "archival"]

_XMP = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
 xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<pdfaid:part>3</pdfaid:part>
<pdfaid:conformance>B</pdfaid:conformance>
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<dc:description>
<rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt>
</dc:description>
{author}<xmp:CreatorTool>{creator}</xmp:CreatorTool>
{dates}<pdf:Producer>{producer}</pdf:Producer>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>"""
_DATES = """<xmp:CreateDate>{0}</xmp:CreateDate>
<xmp:ModifyDate>{0}</xmp:ModifyDate>
"""
_AUTHOR = "<dc:creator><rdf:Seq><rdf:li>{}</rdf:li></rdf:Seq></dc:creator>\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Attached:
    """A file that stands whole in the PDF; ``kind`` is its media type."""

    name: str
    data: bytes
    kind: str
    says: str


def archival(
    pdf: bytes, *, created: str | None = None, attached: Attached | None = None
) -> bytes:
    """The PDF with what PDF/A-3b asks for beside the pages: the same bytes for the same.

    Pictures are not touched: a JPEG stays byte for byte; one with a colour profile of its own
    is shown by that profile, everything else by sRGB.

    Parameters
    ----------
    pdf : bytes
        With every font embedded.
    created : str or None
        ISO 8601 in UTC, ``2026-01-02T03:04:05Z``: stands as the time the file was made; without
        it the file names none.
    attached : Attached or None
        The source of the pages, which then travels with them.
    """
    import pikepdf
    from pikepdf import Array, Dictionary, Name, String

    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(pdf)) as made:
        stamp = None if created is None else f"D:{''.join(filter(str.isdigit, created))}Z"
        for name in ("/CreationDate", "/ModDate"):
            if stamp is None:
                del made.docinfo[name]
            else:
                made.docinfo[name] = String(stamp)
        profile = made.make_stream(srgb_profile(), N=3)
        made.Root.OutputIntents = Array(
            [
                Dictionary(
                    Type=Name.OutputIntent,
                    S=Name.GTS_PDFA1,
                    OutputConditionIdentifier=String("sRGB IEC61966-2.1"),
                    Info=String("sRGB IEC61966-2.1"),
                    DestOutputProfile=profile,
                )
            ]
        )
        made.Root.Metadata = made.make_stream(
            _metadata(made, created), Type=Name.Metadata, Subtype=Name.XML
        )
        _leave_packed(made)
        _name_profiles(made)
        if attached is not None:
            file = pikepdf.AttachedFileSpec(
                made,
                attached.data,
                description=attached.says,
                filename=attached.name,
                mime_type=attached.kind,
                relationship=Name.Source,
                creation_date=stamp or "",
                mod_date=stamp or "",
            )
            made.attachments[attached.name] = file
            made.Root.AF = Array([made.Root.Names.EmbeddedFiles.Names[1]])
        made.save(out, deterministic_id=True, preserve_pdfa=True, min_version="1.7")
    return out.getvalue()


def _metadata(made: "pikepdf.Pdf", created: str | None) -> bytes:
    """XMP that says what the document's information says."""
    told = {
        name: escape(str(made.docinfo.get(f"/{name.capitalize()}", "")))
        for name in ("title", "subject", "author", "creator", "producer")
    }
    author = _AUTHOR.format(told.pop("author")) if told["author"] else told.pop("author")
    dates = "" if created is None else _DATES.format(created)
    return _XMP.format(**told, author=author, dates=dates).encode("utf-8")


def _leave_packed(made: "pikepdf.Pdf") -> None:
    """Name the one filter of packed streams plainly.

    As a list of one, which means the same (ISO 32000-1, table 5, from memory), qpdf unpacks
    and packs them again: a third of the time that a report takes.
    """
    from pikepdf import Array, Name, Stream

    for one in made.objects:
        if isinstance(one, Stream) and one.get("/Filter") == Array([Name.FlateDecode]):
            one.Filter = Name.FlateDecode


def _name_profiles(made: "pikepdf.Pdf") -> None:
    """Let each JPEG that carries a colour profile be shown by it."""
    from pikepdf import Array, Name, Stream
    from PIL.JpegImagePlugin import JpegImageFile

    for one in made.objects:
        if not isinstance(one, Stream) or one.get("/Subtype") != Name.Image:
            continue
        if one.get("/Filter") not in (Name.DCTDecode, Array([Name.DCTDecode])):
            continue
        with JpegImageFile(io.BytesIO(one.read_raw_bytes())) as picture:
            profile = picture.info.get("icc_profile") or b""
            components = len(picture.getbands())
        if usable_profile(profile, components):
            one.ColorSpace = Array([Name.ICCBased, made.make_stream(profile, N=components)])
