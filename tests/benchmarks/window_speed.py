"""First paint, pan and trace times of the window, and its memory, as ratios to a plain decode.

    python tests/benchmarks/window_speed.py [MEGAPIXELS]

Draws a JPEG of that size (12 unless told, quality 90) with the scale card in it. Prints, each
divided by a plain decode of the same file, the time from asking to open to the first paint and
to the whole photo, and what the process holds and held at most beyond what it held before, in
decoded pictures. Then milliseconds of the processor for each frame while panning across the
view with 500 outlines, without and with the surface grid, and for each move while tracing
along an edge. Frames are counted in the processor's time, since other work may share it.
"""

import resource
import subprocess
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
from ptmark.window.view.marks import Mark

TILE = (3000, 4000)


def draw_photo(folder: Path, megapixels: float) -> Path:
    """A white field with soft noise and some red, like a developed part, and a card."""
    random = np.random.RandomState(3)
    field = random.normal(225, 6, (*TILE, 3)).astype(np.float32)
    pixels = cv2.GaussianBlur(field, (0, 0), 1.2)
    for _ in range(60):
        x, y = int(random.uniform(100, 3900)), int(random.uniform(100, 2900))
        cv2.ellipse(pixels, (x, y), (40, 6), random.uniform(0, 180), 0, 360, (60, 30, 190), -1)
    tile = np.clip(pixels, 0, 255).astype(np.uint8)
    wide = round(1000 * (megapixels * 4 / 3) ** 0.5)
    high = round(wide * 3 / 4)
    times = (-(-high // TILE[0]), -(-wide // TILE[1]), 1)
    whole = np.ascontiguousarray(np.tile(tile, times)[:high, :wide])
    draw_card(whole, wide / 6 / 85.6)
    path = folder / "field.jpg"
    cv2.imwrite(str(path), whole, [cv2.IMWRITE_JPEG_QUALITY, 90])
    return path


def draw_card(pixels: np.ndarray, scale: float) -> None:
    """An ISO/IEC 7810 ID-1 card with four 12 mm markers 4 mm in, ``scale`` px a mm."""
    left, top = round(0.1 * pixels.shape[1]), round(0.1 * pixels.shape[0])
    wide, high, side, inset = (round(v * scale) for v in (85.60, 53.98, 12.0, 4.0))
    pixels[top : top + high, left : left + wide] = 250
    kinds = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    far_x, far_y = wide - inset - side, high - inset - side
    places = ((inset, inset), (far_x, inset), (far_x, far_y), (inset, far_y))
    for number, (dx, dy) in enumerate(places):
        marker = cv2.aruco.generateImageMarker(kinds, number, side)
        x, y = left + dx, top + dy
        pixels[y : y + side, x : x + side] = marker[..., None]


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
    QTimer.singleShot(200_000, loop.quit)
    loop.exec()
    window.session.photo_shown.disconnect(connection)
    return marks["first"], marks["whole"]


def outlines(count: int, width: int, height: int) -> list[Mark]:
    """Outlines of 60 points all over the photo."""
    random = np.random.RandomState(5)
    turn = np.linspace(0, 2 * np.pi, 60, endpoint=False)
    made = []
    for number in range(count):
        x, y = random.uniform(0.03, 0.97) * width, random.uniform(0.03, 0.97) * height
        a, b = 0.01 * width, 0.0022 * width
        points = [QPointF(x + a * np.cos(t), y + b * np.sin(t)) for t in turn]
        made.append(Mark(f"{number}", QPolygonF(points), "taken"))
    return made


def pan_times(window: MainWindow, steps: int = 200) -> list[float]:
    """Milliseconds of the processor for each repaint while dragging far across and back."""
    times = []
    for step in range(steps):
        way = 1 if step % 100 < 50 else -1
        start = time.process_time()
        window.view.pan(QPointF(way * 13.0, way * 7.0))
        window.view.repaint()
        times.append(1000 * (time.process_time() - start))
    return times


def trace_times(window: MainWindow, steps: int = 150) -> list[float]:
    """Milliseconds of the processor for each move of the pointer along a dye's edge."""
    view, levels = window.view, window.view.levels
    window.bench.trace("edge")
    tool, times = view.tool, []
    start = time.perf_counter()
    tool.press(QPointF(0.5 * levels.width, 0.5 * levels.height))
    print(f"trace, the click: {1000 * (time.perf_counter() - start):.1f} ms by the clock")
    for step in range(steps):
        angle = 2 * np.pi * step / 60
        at = QPointF(
            0.5 * levels.width + 60 + 60 * np.cos(angle),
            0.5 * levels.height + 60 * np.sin(angle),
        )
        start = time.thread_time()  # the place is made ready in another
        tool.move(at, held=False)
        tool._draw_live()
        view.repaint()
        times.append(1000 * (time.thread_time() - start))
        QApplication.processEvents()
    window.bench.stop()
    return times


def held() -> tuple[float, float]:
    """Bytes that the process holds, and held at most."""
    page = resource.getpagesize()
    now = int(Path("/proc/self/statm").read_text().split()[1]) * page
    return now, 1024 * resource.getrusage(resource.RUSAGE_SELF).ru_maxrss


def wait_idle(window: MainWindow) -> None:
    """Let all workers end."""
    while window.session.workers.any_running():
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)


def told(name: str, times: list[float]) -> None:
    """Print median and 95th percentile."""
    p95 = float(np.percentile(times, 95))
    print(f"{name}: median {median(times):.1f} ms, p95 {p95:.1f} ms, most {max(times):.1f} ms")


def main() -> None:
    """Measure and print."""
    megapixels = float(sys.argv[1]) if len(sys.argv) > 1 else 12.0
    if len(sys.argv) > 2:  # a process of its own draws, so that its memory is not counted
        draw_photo(Path(sys.argv[2]), megapixels)
        return
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run([sys.executable, __file__, str(megapixels), folder], check=True)
        small = Path(folder) / "small"
        small.mkdir()
        subprocess.run([sys.executable, __file__, "3", str(small)], check=True)
        rounds = 5 if megapixels < 50 else 2
        measure(Path(folder) / "field.jpg", small / "field.jpg", rounds)


def measure(path: Path, small: Path, rounds: int) -> None:
    """Open, pan, trace."""
    app = QApplication(sys.argv[:1])
    window = MainWindow()
    window.show()
    window.begin(None)
    wait_idle(window)
    opening_times(window, small)  # loads every library first
    wait_idle(window)
    before, _ = held()
    rows = [opening_times(window, path)]
    opened, peak_opening = held()
    wait_idle(window)
    levels = window.view.levels
    picture = levels.width * levels.height * 3
    looked, peak = held()
    print(f"{levels.width} x {levels.height} px")
    print(
        f"held / decoded picture {(looked - before) / picture:.2f} after looking,"
        f" {(opened - before) / picture:.2f} as soon as it shows"
    )
    print(
        f"held at most / decoded picture {(peak_opening - before) / picture:.2f} to the whole"
        f" photo, {(peak - before) / picture:.2f} with looking for card and indications"
    )
    for _ in range(rounds - 1):
        rows.append(opening_times(window, path))
        wait_idle(window)
    decode = decode_time(path)
    first, whole = (median(column) for column in zip(*rows, strict=True))
    print(f"decode {1000 * decode:.0f} ms")
    print(f"first paint / decode {first / decode:.2f}")
    print(f"whole photo / decode {whole / decode:.2f}")
    window.session.go("Photo")
    marks = outlines(500, levels.width, levels.height)
    for grid in (False, True):
        if grid:
            window.seeing.turn_grid()
        window.view.show_marks(marks, frozenset({"7"}))
        for name, scale in (("fit", None), ("1:4", 0.25), ("1:1", 1.0), ("4:1", 4.0)):
            window.view.fit()
            if scale:
                window.view.zoom(scale / window.view.port.scale)
            window.view.repaint()  # rings are made once for each scale
            told(f"pan at {name}{', grid' if window.seeing.grid else ''}", pan_times(window))
    if window.seeing.grid:
        window.seeing.turn_grid()
    window.view.show_marks([], frozenset())
    window.view.fit()
    window.view.zoom(1.0 / window.view.port.scale)
    told("trace, one move", trace_times(window))
    window.close()
    app.quit()


if __name__ == "__main__":
    main()
