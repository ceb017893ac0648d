"""The same for every test: English texts, whoever runs them, and long files first."""

import gc
import os
from collections import Counter

import pypdfium2
import pytest
from hypothesis import HealthCheck, settings

os.environ["PTMARK_LANGUAGE"] = "en"

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
