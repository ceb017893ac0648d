"""What an earlier inspection hands to a later one, field by field.

A record must never hold what belongs to another part. So nothing is handed on unless it is
named here, and what was handed on is marked as such until a person has looked at it.
"""

import re
from collections.abc import Mapping
from typing import Any

__all__ = [
    "NEXT_PART",
    "SAME_PART_NUMBER",
    "filled",
    "from_same_part_number",
    "limits_follow",
    "next_serial",
    "same_number_again",
]

_PROCEDURE = frozenset({
    "procedure",
    "procedure_revision",
    "written_instruction",
    "contract_code",
    "acceptance_level",
    "system_designation",
    "penetrant_type",
    "penetrant",
    "remover_type",
    "remover",
    "emulsifier",
    "developer_form",
    "developer",
    "penetrant_application",
    "removal",
    "developer_application",
})  # fmt: skip
# To the next part on the bench, keys of `ptmark.record.FIELDS`: procedure, penetrant system
# with its batches, instruments, shop and examiner. Not the part, its order, its times,
# temperature, light, date, remarks, nor anything of the disposition. What is typed of cleaning
# and drying holds times, so it stays behind too.
NEXT_PART = _PROCEDURE | {
    "penetrant_batch",
    "remover_batch",
    "emulsifier_batch",
    "developer_batch",
    "contaminants",
    "system_check",
    "thermometer",
    "light_source",
    "light_meter",
    "uv_meter",
    "length_instrument",
    "clock",
    "place",
    "examiner",
    "examiner_certificate",
    "vision_check",
}
# To a later part of the same number: what the drawing and the procedure say of all such parts.
# Not batches, instruments and people, which may have changed since.
SAME_PART_NUMBER = _PROCEDURE | {
    "part_name",
    "drawing_number",
    "material",
    "dimensions",
    "thickness",
    "surface_condition",
    "production_stage",
    "weld_number",
    "examined_area",
    "location_datum",
    "purpose",
}


def filled(
    fields: Mapping[str, str], carried: frozenset[str], new: Mapping[str, str]
) -> dict[str, Any]:
    """The change to a state that typing into fields makes; what is typed is carried no more.

    Parameters
    ----------
    fields, carried : members of `ptmark.inspection.State`
    new : Mapping
        Texts by field; an empty one takes the field away.

    Examples
    --------
    >>> made = filled({"examiner": "A"}, frozenset({"examiner"}), {"examiner": "B"})
    >>> made["fields"], made["carried"]
    ({'examiner': 'B'}, frozenset())
    """
    kept = {key: text for key, text in {**fields, **new}.items() if text.strip()}
    return {"fields": kept, "carried": carried.difference(new)}


def limits_follow(
    process: Mapping[str, Any], kept: Mapping[str, Mapping[str, float | None]]
) -> dict[str, Any]:
    """What the process is held against once another procedure is named.

    The practice stays; limits are of one procedure, so only those ``kept`` for the one that is
    named now hold. On to the next part both go, as the procedure itself does.

    Examples
    --------
    >>> process = {"practice": "ISO 3452-1", "limits": {"Drying": {"least": 5}}}
    >>> limits_follow(process, {})
    {'practice': 'ISO 3452-1'}
    """
    made = {name: one for name, one in process.items() if name != "limits"}
    return (
        {**made, "limits": {name: dict(pair) for name, pair in kept.items()}} if kept else made
    )


def from_same_part_number(
    fields: Mapping[str, str], carried: frozenset[str], last: Mapping[str, str]
) -> dict[str, str]:
    """What the last inspection of the same part number would fill in here, by field.

    What a person has typed stays; what was carried over from another part gives way.

    Examples
    --------
    >>> last = {"material": "1.4301", "procedure": "P-7", "serial_number": "S1"}
    >>> from_same_part_number({"procedure": "P-9"}, frozenset(), last)
    {'material': '1.4301'}
    >>> from_same_part_number({"procedure": "P-9"}, frozenset({"procedure"}), last)
    {'material': '1.4301', 'procedure': 'P-7'}
    """
    return {
        key: text
        for key, text in last.items()
        if key in SAME_PART_NUMBER
        and text.strip()
        and text != fields.get(key)
        and (not fields.get(key, "").strip() or key in carried)
    }


def next_serial(serial: str) -> str:
    """The serial number after this one, by its last digits; "" where it ends in none.

    Examples
    --------
    >>> next_serial("S-0099"), next_serial("A9"), next_serial("12-R"), next_serial("")
    ('S-0100', 'A10', '', '')
    """
    found = re.fullmatch(r"(.*?)([0-9]{1,18})", serial.strip(), re.DOTALL)
    if found is None:
        return ""
    return found[1] + str(int(found[2]) + 1).zfill(len(found[2]))


def same_number_again(
    fields: Mapping[str, str], carried: frozenset[str], before: Mapping[str, str], serial: str
) -> dict[str, Any]:
    """The change to a state that beginning another part of the number before makes.

    Parameters
    ----------
    fields, carried : members of `ptmark.inspection.State`
    before : Mapping
        The fields of the part before, which has a part number.
    serial : str
        Counted on from that of the part before, hence marked until a person has read it on the
        part; "" to leave the serial number to the person.

    Examples
    --------
    >>> before = {"part_number": "P-4", "serial_number": "S1", "remarks": "one pore"}
    >>> made = same_number_again({}, frozenset(), before, next_serial("S1"))
    >>> made["fields"], made["carried"]
    ({'part_number': 'P-4', 'serial_number': 'S2'}, frozenset({'serial_number'}))
    """
    new = from_same_part_number(fields, carried, before)
    counted = {"serial_number": serial} if serial else {}
    number = {"part_number": before["part_number"]}
    return {
        "fields": {**fields, **new, **number, **counted},
        "carried": carried.difference(number).union(new, counted),
    }
