"""The same for every test: English texts, whoever runs them, and long files first."""

import os
from collections import Counter

os.environ["PTMARK_LANGUAGE"] = "en"


def pytest_collection_modifyitems(items):
    """Files with slow tests come first: one begun at the end keeps a single worker busy."""
    slow = Counter(one.path for one in items if one.get_closest_marker("slow"))
    items.sort(key=lambda one: -slow[one.path])
