"""What the search says: of an empty archive, of nothing found, of how much was found."""

from typing import TYPE_CHECKING

from ptmark.window.words import day, tr

if TYPE_CHECKING:
    from ptmark.archive import Query
    from ptmark.window.archive.further import Counted

__all__ = ["EMPTY", "NOTHING", "told_count"]

EMPTY = tr(
    "The archive is empty.\n\n"
    "It keeps records and their photos for each part number, so that a later question, "
    "“what did we see at this place on this part, and are the pictures the originals?”, has "
    "an answer.\n\n"
    "To put the first record in: finish an inspection, give it a part number at the Record "
    "step, and press “Keep in the archive” (Ctrl+K) there. Tick “Keep every record that is "
    "saved” and it goes by itself.\n\n"
    "The archive lies in your own folder on this computer and needs no set-up."
)
NOTHING = tr(
    "Nothing in the archive fits.\n\n"
    "• The line on top is the beginning of a part number: P-1 finds P-17 and P-170. "
    "A * stands for any letters, a ? for one: *17 finds what ends in 17.\n"
    "• Where no part number begins so, it is looked for among the words of the records: "
    "remarks, kinds, notes, names.\n"
    '• In quotation marks it is the whole number: "P-1" does not find P-17.\n'
    "• Serial, examiner, procedure and criteria are whole names; a * stands for the rest: "
    "PT-* finds PT-1.\n"
    "• Kind, shape and lengths ask for one indication that has all of them. A length shown "
    "with ≥ runs out of its photo, is covered, overexposed or unsure at its ends: asked for "
    "longer ones, it is found too.\n"
    "• Capitals do not matter. “Clear all” takes every filter away."
)


def told_count(found: "Counted", line: str, *, filtered: bool, order: str) -> str:
    """How many records were found, by what, and in which order, which is in words."""
    number = found.number
    if not (number or line or filtered):
        return ""
    records = tr("1 record") if number == 1 else tr("{0:,} records", number)
    if not found.known:
        records = tr("More than {0:,} records", number - 1)
    how = _how(number, found.query, line, filtered=filtered)
    if found.back_to:
        return tr(
            "Examined after {0}: {1}{2}. The rest has not been looked through yet.",
            day(found.back_to),
            records if number else tr("no record"),
            how,
        )
    return tr("{0}{1}, {2}.", records, how, order) if number else tr("No record{0}.", how)


def _how(number: int, query: "Query", line: str, *, filtered: bool) -> str:
    if not line:
        return tr(" fit the filters") if filtered else ""
    if filtered and not number:
        return tr(" fits both the line and the filters")
    if query.words and not filtered:
        return tr(" with the words “{0}”; no part number begins so", line)
    if query.words:
        how = tr(" with the words “{0}”", line)
    elif not query.part.endswith("*") or set(line) & {"*", "?"}:
        how = tr(" with the part number {0}", line)
    else:
        how = tr(" whose part number begins with {0}", line)
    return how + tr(" that fit the filters") if filtered else how
