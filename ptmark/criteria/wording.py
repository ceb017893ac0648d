"""The plain sentences of a finding, made from its own numbers."""

from collections.abc import Sequence
from math import floor

from ptmark.criteria.limits import Limit

__all__ = [
    "amount",
    "bound",
    "counted",
    "deciding",
    "listed",
    "measured",
    "named",
    "of_kinds",
    "within",
]

_PLACES = {"mm": 2, "in": 3, "mm2": 1, "in2": 3, "%": 1, "1": 0}
_MOST_NAMED = 12
_ON_THE_LIMIT = 2e-6  # mm or in; nearer than that lengths are read as equal


def amount(value: float, unit: str, *, apart_from: float | None = None) -> str:
    """Write an amount with its unit, with as many places as tell it from ``apart_from``.

    Examples
    --------
    >>> amount(5.0, "mm"), amount(5.0004, "mm", apart_from=5.0), amount(3, "1")
    ('5.00 mm', '5.0004 mm', '3')
    """
    places = _PLACES[unit]
    if apart_from is not None and abs(value - apart_from) > 10**-6:
        while places < 6 and f"{value:.{places}f}" == f"{apart_from:.{places}f}":
            places += 1
    return f"{value:.{places}f}" + ("" if unit == "1" else f" {unit}")


def within(value: float, unit: str) -> str:
    """Write how closely something must be known, rounded down so that it is enough.

    Examples
    --------
    >>> within(0.279, "mm"), within(0.00019, "mm"), within(0.0, "mm")
    ('0.27 mm', '0.00019 mm', '0.00 mm')
    """
    places = _PLACES[unit]
    while places < 6 and 0 < value < 10.0 ** (1 - places) - 1e-9:  # two digits that count
        places += 1
    step = 10.0**-places
    return f"{floor(value / step + 1e-9) * step:.{places}f} {unit}"


def deciding(what: str, apart: float, unit: str) -> str:
    """Say how closely something ``apart`` from its limit must be known to decide it.

    Examples
    --------
    >>> deciding("A length", 0.1, "mm")
    'A length known to ± 0.10 mm or better would decide it.'
    >>> deciding("A length", 0.0, "mm")
    'It lies on the limit as measured, so that only another measurement can decide it.'
    """
    if apart < _ON_THE_LIMIT:
        return (
            "It lies on the limit as measured, so that only another measurement can decide it."
        )
    return f"{what} known to ± {within(apart, unit)} or better would decide it."


def measured(value: float, u: float, unit: str, *, against: float) -> str:
    """Write a measured amount with its expanded uncertainty, if it has one."""
    text = amount(value, unit, apart_from=against)
    return f"{text} ± {amount(u, unit, apart_from=0.0)}" if u > 0 else text


def bound(limit: Limit, *, of_length: bool = True) -> str:
    """Write a limit in words.

    Examples
    --------
    >>> bound(Limit(">", 5.0, "mm")), bound(Limit(">=", 4.0, "1"), of_length=False)
    ('longer than 5 mm', '4 or more')
    """
    text = f"{limit.value:g}" + ("" if limit.unit == "1" else f" {limit.unit}")
    return {
        ">": f"longer than {text}" if of_length else f"more than {text}",
        ">=": f"{text} or longer" if of_length else f"{text} or more",
        "<": f"less than {text}",
        "<=": f"{text} or less",
    }[limit.operator]


def listed(ids: Sequence[str]) -> str:
    """Name the indications, the first dozen of many."""
    named = list(ids[:_MOST_NAMED])
    if len(ids) > _MOST_NAMED:
        named.append(f"and {len(ids) - _MOST_NAMED} more")
    return ", ".join(named)


def named(ids: Sequence[str]) -> str:
    """Name the members of one indication, the first dozen of many.

    Examples
    --------
    >>> named(["A"]), named(["A", "B"]), named(["C", "D", "E", "F"])
    ('A', 'A and B', 'C, D, E and F')
    """
    if not 1 < len(ids) <= _MOST_NAMED:
        return listed(ids)
    return " and ".join([", ".join(ids[:-1]), ids[-1]])


def counted(number: int, shape: str) -> str:
    """Write how many indications of a shape.

    Examples
    --------
    >>> counted(1, "rounded"), counted(3, "any"), counted(0, "linear")
    ('1 rounded indication', '3 indications', 'no linear indication')
    """
    kind = "" if shape == "any" else f"{shape} "
    plural = "s" if number > 1 else ""
    return f"{number or 'no'} {kind}indication{plural}"


def of_kinds(named: Sequence[str]) -> str:
    """Write to which named kinds a rule is narrowed; "" where to none.

    Examples
    --------
    >>> of_kinds(("401", "104")), of_kinds(())
    (' named ISO 6520-1 401 or 104', '')
    """
    return f" named ISO 6520-1 {' or '.join(named)}" if named else ""
