"""The window shows before anything heavy loads."""

import subprocess
import sys
from pathlib import Path

HEAVY = ("numpy", "cv2", "scipy", "shapely", "PIL", "reportlab", "jsonschema", "pillow_heif")
PROBE = f"""
import sys
from PySide6.QtWidgets import QApplication
app = QApplication([])
from ptmark.window.main_window import MainWindow
window = MainWindow()
window.show()
app.processEvents()
print([name for name in {HEAVY!r} if name in sys.modules])
"""


def test_nothing_heavy_is_loaded_before_the_first_paint():
    root = str(Path(__file__).parents[2])
    done = subprocess.run(
        [sys.executable, "-c", PROBE],
        capture_output=True, text=True, timeout=600, cwd=root, check=True,
    )  # fmt: skip
    assert done.stdout.strip() == "[]"
