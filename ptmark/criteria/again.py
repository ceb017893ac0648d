"""Judging again: what another profile, or an edited one, changes in a verdict."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from ptmark.criteria.profile import Profile
from ptmark.criteria.result import SEVERITY

__all__ = ["Change", "changes", "is_stale"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One row: an indication, or the whole ("verdict"), before and after.

    ``rule_before`` and ``rule_after`` name the rules that decided it, with their clauses.
    """

    what: str
    before: str
    after: str
    rule_before: str
    rule_after: str

    @property
    def differs(self) -> bool:
        return self.before != self.after


def is_stale(evaluation: Mapping[str, Any], profile: Profile) -> bool:
    """Whether a record's evaluation was made by other rules than ``profile`` now holds.

    Compares checksums, so a profile edited after the verdict makes the verdict stale, and a
    comment added to it does not. An evaluation without a checksum is stale.
    """
    return evaluation.get("checksum") != profile.checksum


def changes(before: Mapping[str, Any] | None, after: Mapping[str, Any]) -> list[Change]:
    """Compare two evaluations in the shape of `evaluation_to_json`, the verdict first.

    Each indication has the worst verdict of the findings that name it; where no finding does,
    "not judged". ``before`` None reads as nothing judged.
    """
    old = before or {"verdict": "not judged", "findings": []}
    first, second = _by_indication(old), _by_indication(after)
    rows = [
        Change(
            what="verdict",
            before=str(old["verdict"]),
            after=str(after["verdict"]),
            rule_before=_deciding(old),
            rule_after=_deciding(after),
        )
    ]
    nothing = ("not judged", "")
    for name in dict.fromkeys([*first, *second]):
        was, now = first.get(name, nothing), second.get(name, nothing)
        rows.append(
            Change(
                what=name, before=was[0], after=now[0], rule_before=was[1], rule_after=now[1]
            )
        )
    return rows


def _by_indication(evaluation: Mapping[str, Any]) -> dict[str, tuple[str, str]]:
    worst: dict[str, tuple[str, str]] = {}
    for finding in evaluation["findings"]:
        for name in finding["indications"]:
            known = worst.get(name)
            if known is None or _rank(finding) > SEVERITY.index(known[0]):
                worst[name] = (finding["verdict"], _named(finding))
    return worst


def _deciding(evaluation: Mapping[str, Any]) -> str:
    told = [
        _named(finding)
        for finding in evaluation["findings"]
        if finding["verdict"] == evaluation["verdict"] != "acceptable"
    ]
    return "; ".join(dict.fromkeys(told))


def _rank(finding: Mapping[str, Any]) -> int:
    return SEVERITY.index(finding["verdict"])


def _named(finding: Mapping[str, Any]) -> str:
    clause = finding.get("clause", "")
    return f"{finding['rule']} ({clause})" if clause else str(finding["rule"])
