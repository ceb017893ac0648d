"""A window on an invented picture of known sizes: white developer, red blobs, a scale card."""

import importlib.util
import os
import sys
from pathlib import Path

import cv2
import numpy as np
import pytest
from PySide6.QtCore import QEvent, Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

if sys.platform.startswith("linux") and not (
    os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")
):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

PX_PER_MM = 8.0
SIZE = (1600, 1200)
CARD_AT = (840.0, 700.0)  # the card's top left corner, px counted from the pixel's corner
CRACK = ((300.0, 300.0), (460.0, 330.0), 8.0)  # ends and width, px: about 21 mm long, 1 mm wide
DOTS = (((700.0, 250.0), 12.0), ((900.0, 420.0), 20.0))  # centre and radius, px


PATIENCE_MS = 300_000  # ends what hangs; nothing that comes, on a busy machine too, is given up
SOON_MS = 150  # the longest that the window lets pass before it takes in what was typed
LAYERS = 5  # a piece that is laid out anew has the one round it laid out in the next turn


class Patient(QtBot):
    """Waits for what is to come, not for a time."""

    def waitUntil(self, callback, *, timeout=PATIENCE_MS):  # noqa: N802 - pytest-qt's name
        super().waitUntil(callback, timeout=timeout)

    def waitSignal(self, signal, *, timeout=PATIENCE_MS, **more):  # noqa: N802
        return super().waitSignal(signal, timeout=timeout, **more)

    def waitExposed(self, widget, *, timeout=PATIENCE_MS):  # noqa: N802
        return super().waitExposed(widget, timeout=timeout)


@pytest.fixture
def qtbot(qapp, request):
    return Patient(request)


@pytest.fixture(autouse=True)
def nothing_left():
    """Whichever test comes next in the same process, it begins as the first does."""
    yield
    if not isinstance(QApplication.instance(), QApplication):
        return
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert QGuiApplication.mouseButtons() == Qt.MouseButton.NoButton, "pressed, never let go"
    assert not [one for one in QApplication.topLevelWidgets() if one.isVisible()]
    assert QGuiApplication.overrideCursor() is None


def draw_scene(card: bool = True) -> np.ndarray:
    """The picture, drawn four times too large and reduced, so that edges are soft."""
    grow = 4
    big = np.full((SIZE[1] * grow, SIZE[0] * grow, 3), (236, 234, 232), np.uint8)
    dye = (186, 24, 58)
    (x0, y0), (x1, y1), width = CRACK
    ends = (round(x0 * grow), round(y0 * grow)), (round(x1 * grow), round(y1 * grow))
    cv2.line(big, ends[0], ends[1], dye, round(width * grow), cv2.LINE_AA)
    for (x, y), radius in DOTS:
        centre = round(x * grow), round(y * grow)
        cv2.circle(big, centre, round(radius * grow), dye, -1, cv2.LINE_AA)
    if card:
        _draw_card(big, grow)
    small = cv2.resize(big, SIZE, interpolation=cv2.INTER_AREA)
    noise = np.random.RandomState(7).normal(0, 1.0, small.shape)  # any value does
    return np.clip(cv2.GaussianBlur(small, (0, 0), 1.0) + noise, 0, 255).astype(np.uint8)


def _draw_card(big: np.ndarray, grow: int) -> None:
    """ISO/IEC 7810 ID-1 card with four 12 mm markers 4 mm in from its edges."""
    scale = PX_PER_MM * grow
    left, top = CARD_AT[0] * grow, CARD_AT[1] * grow
    wide, high, side, inset = 85.60 * scale, 53.98 * scale, 12.0 * scale, 4.0 * scale
    corner = round(left), round(top)
    cv2.rectangle(big, corner, (round(left + wide), round(top + high)), (250, 250, 250), -1)
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    far_x, far_y = wide - inset - side, high - inset - side
    for number, (dx, dy) in enumerate(
        ((inset, inset), (far_x, inset), (far_x, far_y), (inset, far_y))
    ):
        marker = cv2.aruco.generateImageMarker(dictionary, number, round(side))
        x, y = round(left + dx), round(top + dy)
        big[y : y + round(side), x : x + round(side)] = marker[..., np.newaxis]


@pytest.fixture(scope="session")
def texts():
    """.run/packaging/translations.py, which takes the texts out of the source."""
    place = Path(__file__).parents[2] / ".run" / "packaging" / "translations.py"
    spec = importlib.util.spec_from_file_location("translations", place)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="session")
def scene_file(tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("scene") / "scene.png"
    cv2.imwrite(str(path), draw_scene()[..., ::-1])
    return path


@pytest.fixture(scope="session")
def scene_without_card(tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("scene") / "no-card.png"
    cv2.imwrite(str(path), draw_scene(card=False)[..., ::-1])
    return path


@pytest.fixture
def home(tmp_path, monkeypatch) -> Path:
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "home"))
    return tmp_path / "home"


@pytest.fixture
def window(qtbot, home):
    """A shown window with the engine loaded and no photo."""
    from ptmark.window.main_window import MainWindow

    made = MainWindow()
    qtbot.addWidget(made)
    made.show()
    made.begin(None)
    qtbot.waitUntil(lambda: made.session.inspection is not None)
    return made


def at_rest(window) -> bool:
    """No worker runs, and no timer is about to begin something."""
    return not window.session.workers.any_running() and not any(
        one.isActive() and one.isSingleShot() and one.interval() <= SOON_MS
        for held in (window, window.session)
        for one in held.findChildren(QTimer)
    )


@pytest.fixture
def idle(qtbot, window):
    """Wait until what was asked for is done and shown, each piece in its place."""

    def wait() -> None:
        for _ in range(LAYERS):
            qtbot.waitUntil(lambda: at_rest(window))
            QApplication.processEvents()
        qtbot.waitUntil(lambda: at_rest(window))

    return wait


@pytest.fixture
def opened(qtbot, window, idle, scene_file):
    """The window with the scene opened, its card found and suggestions in place."""
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_file)
    idle()
    return window


@pytest.fixture(scope="session")
def made():
    """The maker of invented records of the archive's own tests."""
    place = Path(__file__).parents[1] / "archive" / "conftest.py"
    spec = importlib.util.spec_from_file_location("archive_records", place)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module.made


@pytest.fixture
def shelf(home, tmp_path, made):
    """Six records of two part numbers; A of each lies at x 0 to 2 mm, y 20 mm."""
    from ptmark.archive import Query, add_record, hold, keep_for, open_archive

    with open_archive(by="keeper") as archive:
        for n in range(6):
            datum = {"location_datum": "hole A"} if n < 4 else {}
            path = made(
                tmp_path / "records", f"r-{n}", part=f"P-{1 + n % 2}", serial=f"S-{n}",
                day=f"2026-0{n + 1}-01", count=1 + n % 3, fields=datum,
            )  # fmt: skip
            add_record(archive, path)
        keep_for(archive, "contract", Query(part="P-1"), 10, "contract, invented")
        hold(archive, "claim", Query(serial="S-4"), "claim, invented")


@pytest.fixture
def desk(shelf, window, idle, qtbot):
    window.archive.open()
    idle()
    return window.archive
