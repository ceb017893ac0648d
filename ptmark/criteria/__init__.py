"""Declarative acceptance profiles (TOML) and their evaluation, rule by rule, guard-banded.

Same input, same verdict; each finding names rule, clause, indications, value and limit.
A profile is compared in the units of the edition it was written from, never converted.
"""

from ptmark.criteria.again import Change, changes, is_stale
from ptmark.criteria.asks import Asked, asked_of
from ptmark.criteria.by_name import (
    list_profiles,
    list_templates,
    load_profile,
    profile_stamp,
)
from ptmark.criteria.compare import compare
from ptmark.criteria.evaluate import evaluate
from ptmark.criteria.profile import Profile
from ptmark.criteria.reading import scene_from_json
from ptmark.criteria.result import SEVERITY, Evaluation, Finding, evaluation_to_json
from ptmark.criteria.scene import Judged, Scene
from ptmark.criteria.template import new_profile
from ptmark.criteria.unjudged import UNJUDGED
from ptmark.criteria.vocabulary import rule_kinds, step_kinds

__all__ = [
    "SEVERITY",
    "UNJUDGED",
    "Asked",
    "Change",
    "Evaluation",
    "Finding",
    "Judged",
    "Profile",
    "Scene",
    "asked_of",
    "changes",
    "compare",
    "evaluate",
    "evaluation_to_json",
    "is_stale",
    "list_profiles",
    "list_templates",
    "load_profile",
    "new_profile",
    "profile_stamp",
    "rule_kinds",
    "scene_from_json",
    "step_kinds",
]
