"""How a kind of rule and its keys are described, and the keys that many kinds share."""

from dataclasses import dataclass

__all__ = [
    "ABOUT",
    "COMMON",
    "GAP",
    "NAMED",
    "NUMBER",
    "OF",
    "OVER",
    "RULES",
    "UNDER",
    "VERDICT",
    "WHAT",
    "Parameter",
    "RuleKind",
    "reject",
]

SURE = ("verified", "secondary", "memory", "conflicting")
_SHAPES = ("linear", "rounded", "any")
_VERDICTS = ("rejectable", "undecided")
OVER = (">", ">=")
UNDER = ("<", "<=")


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """One key of a rule.

    ``holds`` is "text", "choice" (one of ``options``), "limit" (one of ``operators`` and an
    amount), "number" (a limit in whole numbers), "amount", "amounts" (two of them), "kinds"
    (ISO 6520-1 names or numbers), "bands" (a table of limits) or "rules" (ids of others).
    ``unit`` is "length" or "area" for the profile's own unit, "%", "1" for a pure number, or
    "what" where the key ``what`` of the same rule says it: number or length. ``instead`` names
    the key in whose place this one may stand.
    """

    name: str
    holds: str
    says: str
    unit: str = ""
    required: bool = True
    operators: tuple[str, ...] = ()
    options: tuple[str, ...] = ()
    default: str = ""
    instead: str = ""

    def unit_in(self, unit: str, what: str = "length") -> str:
        """The unit its amounts are written in, in a profile in ``unit`` ("mm" or "in").

        Examples
        --------
        >>> Parameter(name="area", holds="amount", says="", unit="area").unit_in("in")
        'in2'
        """
        wanted = what if self.unit == "what" else self.unit
        return {"length": unit, "area": f"{unit}2", "number": "1"}.get(wanted, wanted)


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleKind:
    """One kind of rule: its name in a file, what it says in plain words, its keys.

    ``judges`` is "each" for one indication at a time, "together" for several, "part" for the
    part itself, "join" for other rules.
    """

    name: str
    title: str
    says: str
    judges: str
    parameters: tuple[Parameter, ...]

    def parameter(self, name: str) -> Parameter:
        """Its key of that name."""
        return next(one for one in self.parameters if one.name == name)


COMMON = (
    Parameter(name="id", holds="text", says="Short name of the rule, each one once"),
    Parameter(name="clause", holds="text", says="Where the figure stands"),
    Parameter(name="sure", holds="choice", says="How sure the figure is", options=SURE),
    Parameter(name="note", holds="text", says="What the inspector should know", required=False),
)
OF = Parameter(name="of", holds="choice", says="Which indications it looks at", options=_SHAPES)
NAMED = Parameter(
    name="named",
    holds="kinds",
    says="Only those the inspector has named so (ISO 6520-1)",
    required=False,
)
VERDICT = Parameter(
    name="verdict",
    holds="choice",
    says="What it gives to those it hits",
    required=False,
    options=_VERDICTS,
    default="rejectable",
)
BANDS = Parameter(
    name="bands",
    holds="bands",
    says="A table of limits by thickness or diameter, in place of one limit",
    unit="length",
    required=False,
    operators=UNDER,
    instead="reject",
)
BY = Parameter(
    name="by",
    holds="choice",
    says="What the table goes by",
    required=False,
    options=("thickness", "diameter"),
    default="thickness",
)
WHAT = Parameter(
    name="what", holds="choice", says="What is added up", options=("number", "length")
)
GAP = Parameter(
    name="gap",
    holds="limit",
    says="Gap between neighbours, edge to edge",
    unit="length",
    operators=UNDER,
)
RULES = Parameter(name="rules", holds="rules", says="Ids of the rules it takes together")
ABOUT = Parameter(
    name="about",
    holds="choice",
    says="Whether one and the same indication must meet it, or the scene as a whole; "
    "by default the indication where all its rules look at one at a time",
    required=False,
    options=("indication", "scene"),
)
NUMBER = Parameter(
    name="number", holds="number", says="How many are too many", unit="1", operators=OVER
)


def reject(
    says: str,
    unit: str = "length",
    operators: tuple[str, ...] = OVER,
    *,
    required: bool = True,
) -> tuple[Parameter, ...]:
    """The key for a limit, and the two for a table of limits in its place."""
    limit = Parameter(
        name="reject",
        holds="limit",
        says=says,
        unit=unit,
        operators=operators,
        required=required,
    )
    return (limit, BANDS, BY)
