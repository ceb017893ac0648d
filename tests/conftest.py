"""The same for every test: texts, examples and an empty home, and long files first."""

import gc
import os
import tempfile
from collections import Counter
from itertools import count
from pathlib import Path

import pypdfium2
import pytest
from hypothesis import HealthCheck, settings

for _name in [name for name in os.environ if name.startswith("PTMARK_")]:
    del os.environ[_name]
os.environ["PTMARK_LANGUAGE"] = "en"

# Nothing of whoever runs the tests is read or written: profiles, cameras, keys, drafts.
_homes = tempfile.TemporaryDirectory(prefix="ptmark-homes-", ignore_cleanup_errors=True)
_numbers = count(1)
os.environ["PTMARK_HOME"] = str(Path(_homes.name) / "0")

# The same examples in every run, however long a busy machine takes for one; others are drawn
# with --hypothesis-profile others.
settings.register_profile("others", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("same", settings.get_profile("others"), derandomize=True)
settings.load_profile("same")

gc.disable()  # what is collected stays: looking for garbage in it was a quarter of the time


def pytest_collection_modifyitems(items):
    """Files with slow tests come first: one begun at the end keeps a single worker busy."""
    slow = Counter(one.path for one in items if one.get_closest_marker("slow"))
    items.sort(key=lambda one: -slow[one.path])


def pytest_collection_finish():
    """From here on look for garbage, but not among libraries and tests, which stay."""
    gc.freeze()
    gc.enable()


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup():
    """A user's folder of its own for each test, made where something is kept."""
    os.environ["PTMARK_HOME"] = str(Path(_homes.name) / str(next(_numbers)))


@pytest.fixture(scope="session")
def pages_of():
    """Texts of a PDF's pages by PDFium, which reads a page in a hundredth of pdfplumber's time.

    Lines come in the order they were drawn in; pdfplumber sorts them by place.
    """

    def read(path):
        with pypdfium2.PdfDocument(path) as pdf:
            texts = [page.get_textpage().get_text_range() for page in pdf]
        return ["\n".join(line.strip() for line in text.splitlines()) for text in texts]

    return read
