"""Declarative acceptance profiles (TOML) and their evaluation, rule by rule, guard-banded.

Same input, same verdict; each finding names rule, clause, indications, value and limit.
A profile is compared in the units of the edition it was written from, never converted.
"""

from ptmark.criteria.evaluate import evaluate
from ptmark.criteria.profile import Profile, list_profiles, load_profile
from ptmark.criteria.result import Evaluation, Finding, evaluation_to_json
from ptmark.criteria.scene import Judged, Scene, scene_from_json

__all__ = [
    "Evaluation",
    "Finding",
    "Judged",
    "Profile",
    "Scene",
    "evaluate",
    "evaluation_to_json",
    "list_profiles",
    "load_profile",
    "scene_from_json",
]
