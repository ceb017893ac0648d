"""What a test report must tell by the standard a job names, as a list of fields.

Written from memory of the editions named: the text of the contract's own edition governs, and
a code section that calls one of these may ask for more.
"""

from dataclasses import dataclass

from ptmark.errors import RecordError
from ptmark.record.fields import FIELDS, Field
from ptmark.record.model import Record

__all__ = ["STANDARDS", "Standard", "lacking"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Standard:
    """The fields of one standard's report; ``sure`` says where the list comes from."""

    name: str
    title: str
    needs: tuple[str, ...]
    sure: str = "from memory"


STANDARDS: dict[str, Standard] = {
    one.name: one
    for one in (
        Standard(
            name="iso-3452-1",
            title="ISO 3452-1:2021, test report",
            needs=(
                "part_name",
                "part_number",
                "dimensions",
                "material",
                "surface_condition",
                "production_stage",
                "examined_area",
                "purpose",
                "system_designation",
                "penetrant",
                "penetrant_batch",
                "remover",
                "remover_batch",
                "developer",
                "developer_batch",
                "procedure",
                "deviations",
                "place",
                "examination_date",
                "examiner",
                "examiner_certificate",
            ),
        ),
        Standard(
            name="astm-e165",
            title="ASTM E165/E165M-18, examination record",
            needs=(
                "part_number",
                "examined_area",
                "procedure",
                "penetrant_type",
                "penetrant",
                "remover",
                "developer",
                "acceptance_level",
                "examination_date",
                "examiner",
                "examiner_certificate",
            ),
        ),
        Standard(
            name="astm-e1417",
            title="ASTM E1417/E1417M-21, record of results",
            needs=(
                "part_number",
                "serial_number",
                "examined_area",
                "procedure",
                "procedure_revision",
                "penetrant_type",
                "penetrant_batch",
                "remover_batch",
                "developer_batch",
                "system_check",
                "acceptance_level",
                "light_meter",
                "examination_date",
                "examiner",
                "examiner_certificate",
                "vision_check",
            ),
        ),
        Standard(
            name="cen-ts-17100",
            title="CEN/TS 17100:2017, photographs as penetrant records",
            needs=(
                "part_number",
                "examined_area",
                "location_datum",
                "location",
                "illuminance",
                "light_source",
                "length_instrument",
                "examination_date",
                "examiner",
                "camera_set_up",
                "resolution_check",
                "photo_changes",
            ),
            sure="contents not to be had: our own list of what a record in photos must tell",
        ),
        Standard(
            name="asme-v-6",
            title="ASME BPVC Section V:2021, Article 6, T-692",
            needs=(
                "procedure",
                "procedure_revision",
                "penetrant_type",
                "penetrant",
                "remover",
                "developer",
                "examiner",
                "examiner_certificate",
                "material",
                "thickness",
                "light_source",
            ),
        ),
    )
}


def lacking(record: Record, standard: str) -> list[Field]:
    """The fields that a standard asks for and the record leaves empty, in the form's order.

    Raises
    ------
    RecordError
        If the standard is not known.

    Examples
    --------
    >>> [one.key for one in FIELDS if one.key in STANDARDS["asme-v-6"].needs][:2]
    ['material', 'thickness']
    """
    known = STANDARDS.get(standard)
    if known is None:
        raise RecordError(
            f"'{standard}' is no known standard",
            where="standard",
            mend=f"choose one of: {', '.join(STANDARDS)}",
        )
    return [
        one
        for one in FIELDS
        if one.key in known.needs and not record.fields.get(one.key, "").strip()
    ]
