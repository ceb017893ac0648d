"""What becomes of freed memory, as the kernel counts fresh pages (getrusage, man page)."""

import os
import subprocess
import sys

import pytest

PAGES = 20 * 8_000_000 // (os.sysconf("SC_PAGESIZE") if hasattr(os, "sysconf") else 4096)
FRESH_PAGES = """
import ctypes, resource, sys
ctypes.CDLL(None).prctl(41, 1, 0, 0, 0)  # PR_SET_THP_DISABLE: pages of the usual size alone
import numpy as np
from ptmark.memory import give_memory_back, keep_freed_memory, share_memory

for choice in sys.argv[1:]:
    {"keep": keep_freed_memory, "share": share_memory}[choice]()
for _ in range(3):
    np.ones(2_000_000, np.uint8), np.ones(8_000_000, np.uint8)  # taken, filled, freed
before = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
for _ in range(20):
    np.ones(8_000_000, np.uint8)
print(resource.getrusage(resource.RUSAGE_SELF).ru_minflt - before)
"""


def fresh_pages(*choices: str, **environment: str) -> int:
    """Fresh pages for 20 times 8 MB where nobody else chose what becomes of freed ones."""
    chosen = ("MALLOC_", "GLIBC_TUNABLES")
    env = {name: one for name, one in os.environ.items() if not name.startswith(chosen)}
    env |= environment
    done = subprocess.run(
        [sys.executable, "-c", FRESH_PAGES, *choices],
        env=env,
        check=True,
        capture_output=True,
        text=True,
    )
    return int(done.stdout)


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="glibc alone has these")
def test_freed_memory_is_kept_unless_the_window_or_the_environment_chose() -> None:
    assert fresh_pages("keep") < 100
    assert fresh_pages("share", "keep") > PAGES / 2
    assert fresh_pages("keep", MALLOC_MMAP_THRESHOLD_="4000000") > PAGES / 2
