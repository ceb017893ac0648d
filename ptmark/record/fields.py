"""The report's fields that a person fills in, in the order in which a report shows them.

The list is the union of what the usual test report and examination record ask for
(ISO 3452-1 clause 9; ASME BPVC Section V, Article 6, T-690; ASTM E165 and E1417), so that one
form serves all; which of them a job needs is for its procedure to say. CEN/TS 17100:2017 sets
rules for photographs kept as penetrant records; its contents were not to be had, so the fields
on the photo are what such a record plainly has to tell, and room is left for its own.
"""

from dataclasses import dataclass

__all__ = ["FIELDS", "Field"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field of the report that a person fills in.

    ``key`` stands in the JSON and never changes; ``needed`` marks the few without which a
    report says nothing a second person could act on.
    """

    key: str
    label: str
    group: str
    hint: str = ""
    needed: bool = False

    def __str__(self) -> str:
        return self.label


def _group(group: str, *rows: tuple[str, str, str]) -> tuple[Field, ...]:
    """Fields of one group; a label that ends in ``*`` is needed."""
    return tuple(
        Field(key=key, label=label.rstrip("*"), group=group, hint=hint, needed=label[-1] == "*")
        for key, label, hint in rows
    )


_PART = _group(
    "Part",
    ("job_number", "Job or order number", "as on the order"),
    ("part_name", "Part", "what it is, such as nozzle weld"),
    ("part_number", "Part number*", "as marked on the part"),
    ("drawing_number", "Drawing and issue", "number and issue"),
    ("serial_number", "Serial number", "as marked on the part"),
    ("heat_number", "Heat or cast number", "from the material certificate"),
    ("material", "Material", "grade"),
    ("dimensions", "Dimensions", "mm or in, with the unit"),
    ("thickness", "Thickness", "mm or in, with the unit, at the examined area"),
    ("surface_condition", "Surface condition", "as welded, ground, machined, cast, forged …"),
    ("production_stage", "Stage of manufacture", "before or after heat treatment, repair …"),
    ("weld_number", "Weld number", "weld or joint, as on the weld map"),
    ("examined_area", "Examined area*", "where, and how much of the part"),
    ("location_datum", "Location datum", "the point or line that positions are taken from"),
    ("location", "Position of the photo", "distance (mm) or clock position from the datum"),
)
_PROCEDURE = _group(
    "Procedure",
    ("purpose", "Purpose of the test", "contract, in service, after repair …"),
    ("procedure", "Procedure*", "number"),
    ("procedure_revision", "Procedure revision", "revision or date"),
    ("written_instruction", "Written instruction", "number and revision, where there is one"),
    ("contract_code", "Code of the contract", "standard or code with its edition"),
    ("acceptance_level", "Acceptance level", "level, class or paragraph the contract names"),
    ("deviations", "Deviations", "from the procedure, with who agreed; or none"),
)
_SYSTEM = _group(
    "Penetrant system",
    ("system_designation", "System designation", "such as ISO 3452-1, II C e, level 2"),
    ("penetrant_type", "Penetrant type", "visible (colour contrast); sensitivity level"),
    ("penetrant", "Penetrant*", "maker and product"),
    ("penetrant_batch", "Penetrant batch", "batch number and expiry date"),
    ("remover_type", "Remover type", "water, solvent, emulsifier (lipo- or hydrophilic)"),
    ("remover", "Remover*", "maker and product"),
    ("remover_batch", "Remover batch", "batch number and expiry date"),
    ("emulsifier", "Emulsifier", "maker and product, where one is used"),
    ("emulsifier_batch", "Emulsifier batch", "batch number and expiry date"),
    ("developer_form", "Developer form", "dry, water-based, solvent-based (nonaqueous wet)"),
    ("developer", "Developer*", "maker and product"),
    ("developer_batch", "Developer batch", "batch number and expiry date"),
    ("contaminants", "Contaminant certificate", "sulphur and halogens, certificate number"),
    ("system_check", "System performance check", "reference block number, date, result"),
)
_PROCESS = _group(
    "Process",
    ("pre_cleaning", "Pre-cleaning and drying", "method, and drying time in min"),
    ("surface_temperature", "Surface temperature", "°C or °F, with the unit"),
    ("thermometer", "Thermometer", "instrument number and calibration due date"),
    ("penetrant_application", "Penetrant application", "spray, brush, immersion …"),
    ("penetration_start", "Penetrant on at", "time of day, hh:mm"),
    ("penetration_end", "Removal begun at", "time of day, hh:mm"),
    ("penetration_time", "Dwell time", "min"),
    ("removal", "Excess removal", "method, such as cloth moistened with solvent"),
    ("removal_drying", "Drying after removal", "method, and time in min"),
    ("developer_application", "Developer application", "spray, dust, immersion …"),
    ("developer_dry_at", "Developer dry at", "time of day, hh:mm"),
    ("development_time", "Development time", "min, from when the developer was dry"),
    ("first_look", "First look at", "time of day, hh:mm"),
    ("final_look", "Final look at", "time of day, hh:mm; the photo's own time if not this"),
    ("illuminance", "Illuminance*", "lx or fc at the surface; fluorescent: what light is left"),
    ("uv_irradiance", "UV-A irradiance", "µW/cm² at the surface; fluorescent penetrant only"),
    ("light_source", "Light source", "daylight, LED, …; colour temperature in K"),
    ("light_meter", "Light meter", "instrument number and calibration due date"),
    ("uv_meter", "UV-A meter", "instrument number and calibration due date"),
    ("length_instrument", "Scale or rule", "instrument number and calibration due date"),
    ("clock", "Timer", "instrument number, where the procedure asks for it"),
    ("post_cleaning", "Post-cleaning", "method; protection against corrosion"),
)
_EXAMINATION = _group(
    "Examination",
    ("examination_date", "Examination date*", "year-month-day"),
    ("place", "Place", "site, shop or bay"),
    ("examiner", "Examiner*", "name"),
    ("examiner_certificate", "Examiner's certificate", "scheme, level, number, expiry"),
    ("vision_check", "Vision check", "date of the near and colour vision check"),
    ("camera_set_up", "Camera set-up", "distance (mm), support, angle to the surface"),
    ("resolution_check", "Resolution check", "what was seen to be resolved, such as 0.1 mm"),
    ("photo_changes", "Changes to the photo", "cropped, brightened …; or none"),
    ("limits", "Limits of the examination", "what could not be examined, and why"),
    ("remarks", "Remarks", "wipe-offs and second looks, with their times"),
)
_DISPOSITION = _group(
    "Disposition",
    ("rework", "Rework", "what was done, or is to be done"),
    ("retest_cycle", "Retest cycle", "0 for the first test"),
    ("retest_outcome", "Retest outcome", "result, and the number of its report"),
    ("reviewer", "Reviewer", "name"),
    ("reviewer_certificate", "Reviewer's certificate", "scheme, level, number, expiry"),
    ("review_date", "Review date", "year-month-day"),
    ("customer_witness", "Customer or inspection body", "name, where witnessed"),
)

FIELDS: tuple[Field, ...] = (
    *_PART,
    *_PROCEDURE,
    *_SYSTEM,
    *_PROCESS,
    *_EXAMINATION,
    *_DISPOSITION,
)
