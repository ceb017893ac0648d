import importlib.util
from pathlib import Path

import pytest

_SPEC = importlib.util.spec_from_file_location(
    "criteria_build", Path(__file__).with_name("build.py")
)
_BUILD = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(_BUILD)


@pytest.fixture(scope="session")
def build():
    return _BUILD
