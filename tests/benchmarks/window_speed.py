"""First paint and pan times of the window on a 12-megapixel photo, as ratios to its decode.

    python tests/benchmarks/window_speed.py [PHOTO]

Without a photo one is drawn (4000 x 3000, JPEG quality 90). Prints the time from asking to
open to the first paint and to the whole photo, divided by a plain decode of the same file,
and the frame times while panning at fit, 1:1 and 4:1 with 500 outlines.
"""

import sys
import tempfile
import time
from pathlib import Path
from statistics import median

import cv2
import numpy as np
from PySide6.QtCore import QEventLoop, QPointF, QTimer
from PySide6.QtGui import QPolygonF
from PySide6.QtWidgets import QApplication

from ptmark.window.main_window import MainWindow
from ptmark.window.marks import Mark


def draw_photo(folder: Path) -> Path:
    """A white field with soft noise and some red, like a developed part."""
    random = np.random.RandomState(3)
    field = random.normal(225, 6, (3000, 4000, 3)).astype(np.float32)
    pixels = cv2.GaussianBlur(field, (0, 0), 1.2)
    for _ in range(60):
        x, y = int(random.uniform(100, 3900)), int(random.uniform(100, 2900))
        cv2.ellipse(pixels, (x, y), (40, 6), random.uniform(0, 180), 0, 360, (60, 30, 190), -1)
    path = folder / "field.jpg"
    cv2.imwrite(str(path), np.clip(pixels, 0, 255), [cv2.IMWRITE_JPEG_QUALITY, 90])
    return path


def decode_time(path: Path) -> float:
    """Median of five plain decodes, s."""
    times = []
    for _ in range(5):
        start = time.perf_counter()
        cv2.imread(str(path))
        times.append(time.perf_counter() - start)
    return median(times)


def opening_times(window: MainWindow, path: Path) -> tuple[float, float]:
    """Seconds to the first paint and to the whole photo's paint."""
    loop, marks = QEventLoop(), {}
    start = time.perf_counter()

    def shown(levels: object) -> None:
        window.view.repaint()
        marks["whole" if levels.whole else "first"] = time.perf_counter() - start
        if levels.whole:
            loop.quit()

    connection = window.session.photo_shown.connect(shown)
    window.open(path)
    QTimer.singleShot(60_000, loop.quit)
    loop.exec()
    window.session.photo_shown.disconnect(connection)
    return marks["first"], marks["whole"]


def outlines(count: int) -> list[Mark]:
    """Outlines of 60 points all over a 12-megapixel photo."""
    random = np.random.RandomState(5)
    turn = np.linspace(0, 2 * np.pi, 60, endpoint=False)
    made = []
    for number in range(count):
        x, y = random.uniform(100, 3900), random.uniform(100, 2900)
        points = [QPointF(x + 40 * np.cos(t), y + 9 * np.sin(t)) for t in turn]
        made.append(Mark(f"{number}", QPolygonF(points), "taken"))
    return made


def pan_times(window: MainWindow, steps: int = 120) -> list[float]:
    """Milliseconds for each repaint while panning in a circle."""
    times = []
    for step in range(steps):
        angle = 2 * np.pi * step / 40
        start = time.perf_counter()
        window.view.pan(QPointF(12 * np.cos(angle), 12 * np.sin(angle)))
        window.view.repaint()
        times.append(1000 * (time.perf_counter() - start))
    return times


def wait_idle(window: MainWindow) -> None:
    """Let all workers end."""
    while window.session.workers.any_running():
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)


def main() -> None:
    """Measure and print."""
    app = QApplication(sys.argv[:1])
    with tempfile.TemporaryDirectory() as folder:
        path = Path(sys.argv[1]) if len(sys.argv) > 1 else draw_photo(Path(folder))
        window = MainWindow()
        window.show()
        window.begin(None)
        wait_idle(window)
        decode = decode_time(path)
        rows = []
        for _ in range(5):
            rows.append(opening_times(window, path))
            wait_idle(window)
        first, whole = (median(column) for column in zip(*rows, strict=True))
        print(f"decode {1000 * decode:.0f} ms")
        print(f"first paint / decode {first / decode:.2f}")
        print(f"whole photo / decode {whole / decode:.2f}")
        window.view.show_marks(outlines(500), frozenset({"7"}))
        for name, scale in (("fit", None), ("1:1", 1.0), ("4:1", 4.0)):
            window.view.fit()
            if scale:
                window.view.zoom(scale / window.view.port.scale)
            window.view.repaint()  # rings are made once for each scale
            times = pan_times(window)
            p95 = float(np.percentile(times, 95))
            print(f"pan at {name}: median {median(times):.1f} ms, p95 {p95:.1f} ms")
        window.close()
    app.quit()


if __name__ == "__main__":
    main()
