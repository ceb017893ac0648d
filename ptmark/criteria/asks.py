"""What the rules of a profile ask of the part, for whoever gives them a scene."""

from dataclasses import dataclass

from ptmark.criteria.profile import Profile
from ptmark.criteria.rules import Bands, EdgeRule, PartRule, ShareRule, SizeRule

__all__ = ["Asked", "asked_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Which sizes the rules go by, and the names of the lines they measure distances to."""

    weld_length: bool
    thickness: bool
    diameter: bool
    lines: tuple[str, ...]


def asked_of(profile: Profile) -> Asked:
    """What any rule of the profile needs beside the indications.

    Examples
    --------
    >>> from ptmark.criteria import load_profile
    >>> asked_of(load_profile("iso-23277-2"))
    Asked(weld_length=False, thickness=False, diameter=False, lines=())
    """
    rules = profile.all_rules
    limits = [getattr(rule, "reject", None) for rule in rules]
    by = {limit.by for limit in limits if isinstance(limit, Bands)}
    by |= {rule.by for rule in rules if isinstance(rule, PartRule)}
    shares = any(isinstance(rule, SizeRule) and rule.thickness_share for rule in rules)
    lines = [rule.line for rule in rules if isinstance(rule, EdgeRule)]
    return Asked(
        weld_length=any(isinstance(rule, ShareRule) for rule in rules),
        thickness="thickness" in by or shares,
        diameter="diameter" in by,
        lines=tuple(dict.fromkeys(lines)),
    )
