"""What an evaluation says."""

from dataclasses import dataclass, field
from typing import Any

__all__ = ["SEVERITY", "Evaluation", "Finding", "evaluation_to_json"]

SEVERITY = ("acceptable", "undecided", "rejectable")


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One rule applied to one indication or group.

    ``verdict`` is "acceptable", "rejectable" or "undecided"; ``value``, ``u`` (expanded, k = 2)
    and ``limit`` are in ``unit``; ``says`` is one plain sentence made from these numbers.
    ``conformity`` is the probability of conformity (JCGM 106) or None where u is 0.
    ``sketch`` holds, in mm on the surface, what shows the finding: a line, a window, a gap.
    """

    rule: str
    clause: str
    indications: tuple[str, ...]
    value: float
    u: float
    limit: float
    unit: str
    verdict: str
    says: str
    conformity: float | None = None
    sketch: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Evaluation:
    """The verdict with every finding.

    ``relevance`` and ``shape`` give, by indication id, how each was taken, with its reason.
    ``cautions`` repeat what the profile says of its own sureness.
    """

    profile: str
    title: str
    edition: str
    decision_rule: str  # "guarded" or "simple"
    verdict: str
    findings: tuple[Finding, ...]
    relevance: dict[str, str]
    cautions: tuple[str, ...]
    checksum: str  # SHA-256 of the profile's canonical content
    shape: dict[str, str] = field(default_factory=dict)


def evaluation_to_json(evaluation: Evaluation) -> dict[str, Any]:
    """Give the evaluation as plain JSON values, in the shape that the command line writes."""
    return {
        "profile": evaluation.profile,
        "title": evaluation.title,
        "edition": evaluation.edition,
        "checksum": evaluation.checksum,
        "decision_rule": evaluation.decision_rule,
        "verdict": evaluation.verdict,
        "findings": [
            {
                "rule": finding.rule,
                "clause": finding.clause,
                "indications": list(finding.indications),
                "value": finding.value,
                "u": finding.u,
                "limit": finding.limit,
                "unit": finding.unit,
                "verdict": finding.verdict,
                "says": finding.says,
                "conformity": finding.conformity,
                "sketch_mm": [list(point) for point in finding.sketch],
            }
            for finding in evaluation.findings
        ],
        "relevance": dict(evaluation.relevance),
        "shape": dict(evaluation.shape),
        "cautions": list(evaluation.cautions),
    }
