"""The verdict in one word and one sentence, and what is said where nothing is marked."""

from ptmark.criteria import UNJUDGED
from ptmark.hides import Hides
from ptmark.record import Record
from ptmark.report.set_words import set_sentence
from ptmark.report.wording import deciding

__all__ = ["nothing_line", "verdict_line"]


def verdict_line(record: Record) -> tuple[str, str]:
    """The verdict in one word and one sentence; of several photos that of the set."""
    if record.more_photos:
        return record.verdict or "no verdict", set_sentence(record)
    if record.evaluation is None:
        why = (
            "no scale is set" if record.scale["reference"] is None else "no criteria are chosen"
        )
        return "no verdict", f"There is no verdict: {why}."
    verdict = record.evaluation["verdict"]
    count = len(record.indications)
    what = "1 indication" if count == 1 else f"{count or 'No'} indications"
    says = {
        "acceptable": "within every limit, also with the measurement uncertainty counted in",
        "rejectable": "at least one rule is not met",
        "undecided": "within the limits as read, but not with the measurement uncertainty "
        "counted in: measure again, closer, or by hand",
    }[verdict]
    open_ = {one["rule"] for one in deciding(record)} if verdict == "undecided" else set()
    if open_ and open_.issubset(UNJUDGED):
        says = "undecided for what no rule can judge, until that is mended"
    if not record.indications:
        return verdict, f"{what}; {says}." if open_ else nothing_line(record)
    if verdict == "acceptable" and record.evaluation["decision_rule"] == "simple":
        says = "within every limit as the code reads it"
    return verdict, f"{what}; {says}."


def nothing_line(record: Record) -> str:
    """What stands in place of a table without rows: not that nothing is there to be found."""
    if any(why in record.conditions for why in Hides):
        return "No indications are marked; see the cautions for what the photo cannot show."
    return "No indications were found in the examined area."
