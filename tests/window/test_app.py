"""Starting: a binding that cannot be relied on is refused with its mend."""

import pytest

from ptmark.errors import PtmarkError
from ptmark.window.app import check_binding


@pytest.mark.parametrize(
    ("version", "python"), [("6.11.3", (3, 11)), ("6.12.0", (3, 12)), ("6.12.1", (3, 11))]
)
def test_other_bindings_are_taken(version, python):
    check_binding(version, python)


def test_the_one_that_loses_references_is_refused():
    with pytest.raises(PtmarkError, match=r"6\.12\.0 .* pip install"):
        check_binding("6.12.0", (3, 11))
