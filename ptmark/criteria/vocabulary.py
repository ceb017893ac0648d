"""What a profile can say: every kind of rule with its keys, for the reader and for a form.

Both the reader of files (`ptmark.criteria.parse`) and whoever builds a form go by these
tables, so that neither can know a key that the other does not.
"""

from ptmark.criteria.parameter import (
    ABOUT,
    GAP,
    NAMED,
    NUMBER,
    OF,
    OVER,
    RULES,
    UNDER,
    VERDICT,
    WHAT,
    Parameter,
    RuleKind,
    reject,
)

__all__ = ["rule_kinds", "step_kinds"]

_STEPS = (
    RuleKind(
        name="shape",
        title="Linear or rounded",
        says="How many widths long makes an indication linear",
        judges="each",
        parameters=(
            Parameter(
                name="linear",
                holds="limit",
                says="Length over width",
                unit="1",
                operators=OVER,
            ),
        ),
    ),
    RuleKind(
        name="relevance",
        title="Relevant",
        says="The length from which an indication is judged at all",
        judges="each",
        parameters=(
            Parameter(
                name="relevant",
                holds="limit",
                says="Relevant where the length is",
                unit="length",
                operators=OVER,
            ),
        ),
    ),
    RuleKind(
        name="merge",
        title="Neighbours as one",
        says="Neighbours count as one where the gap is small against the smaller one's length",
        judges="together",
        parameters=(
            Parameter(
                name="gap",
                holds="limit",
                says="Gap in lengths of the smaller one",
                unit="1",
                operators=UNDER,
            ),
        ),
    ),
)

_KINDS = (
    RuleKind(
        name="size",
        title="Size",
        says="The length of each indication",
        judges="each",
        parameters=(
            OF,
            *reject("Too long where the length is"),
            Parameter(
                name="thickness_share",
                holds="amount",
                says="Or this share of the thickness, if that is less",
                unit="%",
                required=False,
            ),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="shape",
        title="Shape, any size",
        says="Every relevant indication of a shape",
        judges="each",
        parameters=(OF, NAMED, VERDICT),
    ),
    RuleKind(
        name="kind",
        title="Named kind, any size",
        says="Every indication that the inspector has named so (ISO 6520-1)",
        judges="each",
        parameters=(
            Parameter(name="kinds", holds="kinds", says="Names or numbers of ISO 6520-1"),
            VERDICT,
        ),
    ),
    RuleKind(
        name="edge",
        title="Distance from an edge",
        says="How near each indication lies to a free edge or another line of the scene",
        judges="each",
        parameters=(
            OF,
            *reject("Too near where the distance is", operators=UNDER),
            Parameter(
                name="line",
                holds="text",
                says="Name of the line as the scene gives it in edges_mm",
                required=False,
                default="edge",
            ),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="row",
        title="In a line",
        says="So many that one straight line crosses, with small gaps edge to edge",
        judges="together",
        parameters=(
            OF,
            NUMBER,
            GAP,
            *reject("Only where such a row is, end to end", required=False),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="cluster",
        title="In a cluster",
        says="So many that hang together by small gaps, by the length or area they take up",
        judges="together",
        parameters=(
            OF,
            NUMBER,
            GAP,
            Parameter(
                name="what",
                holds="choice",
                says="Length end to end, or area of the hull around all",
                options=("length", "area"),
            ),
            *reject("Too much where that is", unit="what"),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="window",
        title="In the worst area",
        says="So many in a rectangle of any shape and turn, limited in area and side",
        judges="together",
        parameters=(
            OF,
            NUMBER,
            Parameter(
                name="area", holds="amount", says="Area of the rectangle at most", unit="area"
            ),
            Parameter(
                name="longest",
                holds="amount",
                says="Its longer side at most",
                unit="length",
            ),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="frame",
        title="On a reference area",
        says="Number or summed length on a frame of fixed sides at its worst place and turn",
        judges="together",
        parameters=(
            OF,
            WHAT,
            *reject("Too much where the sum is", unit="what"),
            Parameter(
                name="sides", holds="amounts", says="The two sides of the frame", unit="length"
            ),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="stretch",
        title="In a stretch of weld",
        says="Number or summed length in any stretch of weld of a given length",
        judges="together",
        parameters=(
            OF,
            WHAT,
            *reject("Too much where the sum is", unit="what"),
            Parameter(
                name="stretch", holds="amount", says="Length of the stretch", unit="length"
            ),
            Parameter(
                name="counted",
                holds="limit",
                says="Only those count whose length is",
                unit="length",
                required=False,
                operators=OVER,
            ),
            NAMED,
            VERDICT,
        ),
    ),
    RuleKind(
        name="weld-share",
        title="Share of the weld",
        says="Summed lengths as a share of the weld's length",
        judges="together",
        parameters=(OF, *reject("Too much where the share is", unit="%"), NAMED, VERDICT),
    ),
    RuleKind(
        name="part",
        title="Thickness or diameter of the part",
        says="Holds for parts of a size; judges nothing by itself, so only in a combination",
        judges="part",
        parameters=(
            Parameter(
                name="by",
                holds="choice",
                says="Which size of the part",
                options=("thickness", "diameter"),
            ),
            Parameter(
                name="size",
                holds="limit",
                says="Holds where that size is",
                unit="length",
                operators=(*OVER, *UNDER),
            ),
        ),
    ),
    RuleKind(
        name="all-of",
        title="All of",
        says="Other rules that must all be hit; they no longer judge by themselves",
        judges="join",
        parameters=(RULES, ABOUT, VERDICT),
    ),
    RuleKind(
        name="any-of",
        title="Any of",
        says="Other rules of which one must be hit; they no longer judge by themselves",
        judges="join",
        parameters=(RULES, ABOUT, VERDICT),
    ),
    RuleKind(
        name="unless",
        title="Unless",
        says="Other rules of which one must be hit, where none of the exemptions holds",
        judges="join",
        parameters=(
            RULES,
            Parameter(
                name="unless",
                holds="rules",
                says="Ids of the rules that exempt; each looks at one indication or the part",
            ),
            ABOUT,
            VERDICT,
        ),
    ),
)


def rule_kinds() -> tuple[RuleKind, ...]:
    """Every kind of ``[[rule]]``, with the keys it takes beside `COMMON`, in reading order.

    Examples
    --------
    >>> [one.name for one in rule_kinds()][:3]
    ['size', 'shape', 'kind']
    """
    return _KINDS


def step_kinds() -> tuple[RuleKind, ...]:
    """The tables ``[shape]``, ``[relevance]`` and ``[merge]``, whose ``id`` is their name."""
    return _STEPS
