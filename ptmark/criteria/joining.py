"""Rules that take other rules together: ids become rules, circles are refused."""

from dataclasses import replace

from ptmark.criteria.parse import Read
from ptmark.criteria.rules import JoinRule, KindRule, PartRule, Rule, SingleRule

__all__ = ["joined", "looks_at_one", "with_parts"]

_DEEPEST = 8
_MOST_PARTS = 500  # a rule that is taken twice counts twice


def joined(read: list[Read]) -> tuple[Rule, ...]:
    """The rules that judge by themselves, with those they take inside them; order kept.

    Raises
    ------
    CriteriaError
        If a join names no rule, takes itself in a circle, or cannot take a rule as it does.
    """
    by_id = {one.rule.id: one for one in read}
    taken = {name for one in read for names in one.takes.values() for name in names}
    sizes = {one.rule.id: 1 for one in read if not one.takes}
    made = {one.rule.id: _whole(one, by_id, (), sizes) for one in read}
    for one in read:
        if isinstance(one.rule, PartRule) and one.rule.id not in taken:
            raise one.table.wrong(
                "kind",
                "a rule about the part judges nothing by itself",
                "name it in the rules of an all-of, any-of or unless",
            )
    if all(name in taken for name in made):
        raise read[0].table.wrong(
            "id", "no rule is left that judges", "leave one that no other rule takes"
        )
    return tuple(rule for name, rule in made.items() if name not in taken)


def looks_at_one(rule: Rule) -> bool:
    """Whether a rule can be asked of one indication by itself."""
    if isinstance(rule, JoinRule):
        return rule.each
    return isinstance(rule, SingleRule | KindRule | PartRule)


def with_parts(rules: tuple[Rule, ...]) -> tuple[Rule, ...]:
    """The rules and all that they take, each once, in reading order."""
    found: dict[str, Rule] = {}
    for rule in rules:
        found[rule.id] = rule
        if isinstance(rule, JoinRule):
            for part in with_parts((*rule.rules, *rule.exempt)):
                found.setdefault(part.id, part)
    return tuple(found.values())


def _whole(
    one: Read, by_id: dict[str, Read], above: tuple[str, ...], sizes: dict[str, int]
) -> Rule:
    """A rule with what it takes; ``sizes`` holds how many parts each finished one has."""
    rule = one.rule
    if not isinstance(rule, JoinRule):
        return rule
    if rule.id in above:
        circle = " -> ".join((*above[above.index(rule.id) :], rule.id))
        raise one.table.wrong(
            "rules", f"the rules take each other in a circle: {circle}", "take one of them out"
        )
    if len(above) >= _DEEPEST:
        raise one.table.wrong(
            "rules", f"more than {_DEEPEST} rules inside each other", "list rules side by side"
        )
    parts: dict[str, tuple[Rule, ...]] = {"rules": (), "unless": ()}
    for key, names in one.takes.items():
        for name in names:
            if name not in by_id:
                raise one.table.wrong(
                    key, f"there is no rule with the id '{name}'", "name a rule of this file"
                )
        inside = (*above, rule.id)
        parts[key] = tuple(_whole(by_id[name], by_id, inside, sizes) for name in names)
    sizes[rule.id] = 1 + sum(sizes[name] for names in one.takes.values() for name in names)
    if sizes[rule.id] > _MOST_PARTS:
        raise one.table.wrong(
            "rules", f"takes more than {_MOST_PARTS} rules in all", "take fewer together"
        )
    _refuse_misfits(one, parts)
    each = one.about != "scene" and all(looks_at_one(part) for part in parts["rules"])
    return replace(rule, rules=parts["rules"], exempt=parts["unless"], each=each)


def _refuse_misfits(one: Read, parts: dict[str, tuple[Rule, ...]]) -> None:
    both = [name for name in one.takes.get("unless", ()) if name in one.takes["rules"]]
    if both:
        raise one.table.wrong(
            "unless", f"'{both[0]}' would exempt itself, so nothing could hit it", "take it out"
        )
    for exempt in parts["unless"]:
        if not looks_at_one(exempt):
            raise one.table.wrong(
                "unless",
                f"'{exempt.id}' looks at several indications at once and cannot exempt",
                "exempt by size, shape, named kind, edge or part",
            )
    together = [part.id for part in parts["rules"] if not looks_at_one(part)]
    if one.about == "indication" and together:
        raise one.table.wrong(
            "about",
            f"'{together[0]}' looks at several indications at once",
            'use about = "scene", or leave it out',
        )
