"""Start to window shown, as a ratio to an empty window that imports NumPy and OpenCV.

    python tests/benchmarks/start_speed.py [RUNS]

Each run is a process of its own that ends when its window has been painted, with the invitation
and the first step, or once the pages of the other steps are made too; the kinds take turns.
Processor time (user and system, whole process) holds on a busy machine, wall time on an idle
one. Then the command line, against a Python that imports argparse and json.
"""

import os
import subprocess
import sys
import time
from statistics import median

_SHOWN = """
window.show()
while not window.windowHandle().isExposed():
    app.processEvents()
window.repaint()
"""
_EMPTY = f"""
import numpy, cv2, sys
from PySide6.QtWidgets import QApplication, QWidget
app = QApplication(sys.argv)
window = QWidget()
window.resize(1280, 800)
{_SHOWN}
os._exit(0)
"""
_OURS = """
import sys
from ptmark.window.app import show, start
app, window = start(sys.argv)
show(window)
"""
# an installed program has its bytecode beside it, as NumPy and Qt have theirs here
_ENVIRONMENT = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
_LEAST = "import argparse, json"
_VERBS = (
    ("--version",),
    ("--help",),
    ("measure", "--help"),
    ("criteria",),
)


def once(words: list[str]) -> tuple[float, float]:
    """Processor and wall time of one process, s."""
    begin = time.perf_counter()
    child = subprocess.Popen(words, stdout=subprocess.DEVNULL, env=_ENVIRONMENT)
    _, status, used = os.wait4(child.pid, 0)
    if status:
        raise SystemExit(f"{words} failed")
    child.returncode = status
    return used.ru_utime + used.ru_stime, time.perf_counter() - begin


def compare(name: str, floor: list[str], ours: list[str], runs: int) -> None:
    """Print the medians of both kinds and their ratios."""
    pairs = [(once(floor), once(ours)) for _ in range(runs + 1)][1:]  # the first warms the disk
    for at, kind in enumerate(("processor", "wall")):
        low, high = (median(pair[which][at] for pair in pairs) for which in (0, 1))
        print(f"{name}: {kind} {high * 1e3:.0f} ms, floor {low * 1e3:.0f}, {high / low:.2f}x")


def main() -> None:
    """Measure and print."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 9
    python = [sys.executable, "-c"]
    empty = [*python, f"import os{_EMPTY}"]
    ours = f"import os{_OURS}"
    compare("window painted", empty, [*python, f"{ours}os._exit(0)"], runs)
    compare(
        "every page made", empty, [*python, f"{ours}window.build_rest()\nos._exit(0)"], runs
    )
    for verb in _VERBS:
        ours = [sys.executable, "-m", "ptmark", *verb]
        compare(" ".join(verb), [*python, _LEAST], ours, runs)


if __name__ == "__main__":
    main()
