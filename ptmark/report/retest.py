"""What speaks against a record being a retest of the one that it links to."""

import re

from ptmark.record import Record

__all__ = ["retest_doubts"]

_NAMED = {
    "part_number": "part number",
    "serial_number": "serial number",
    "weld_number": "weld number",
}
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")


def retest_doubts(before: Record, after: Record) -> list[str]:
    """Where a retest and the test before name another part or weld, or days in wrong order.

    What either leaves empty says nothing; days are compared where both are year-month-day.
    """
    said = []
    for key, label in _NAMED.items():
        was, now = (one.fields.get(key, "").strip() for one in (before, after))
        if was and now and was.casefold() != now.casefold():
            said.append(f"The {label} is {now}, but {was} in the test before.")
    was, now = (one.fields.get("examination_date", "").strip() for one in (before, after))
    if _DAY.fullmatch(was) and _DAY.fullmatch(now) and now < was:
        said.append(f"It was examined on {now}, earlier than the test before ({was}).")
    return said
