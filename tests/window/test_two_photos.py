"""Before and after: the other photo lies where the true homography puts it, or this is said.

The second picture is made from the first with OpenCV by a homography of our own choosing.
"""

import cv2
import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt

from ptmark.photo import open_photo
from ptmark.window import dialogs
from ptmark.window.view.two_photos import laid_over

pytestmark = [pytest.mark.gui, pytest.mark.slow]

WAY = np.array([[0.96, 0.05, 30.0], [-0.04, 0.97, 45.0], [1e-6, 2e-6, 1.0]])


def mottled(seed):
    """Developer with mottle, 1600 x 1200 px, and two dark stamps to find again."""
    rng = np.random.RandomState(seed)
    picture = np.full((1200, 1600), 205.0, np.float32)
    for size in (4, 10, 30, 90):
        small = rng.normal(0, 8, (1200 // size, 1600 // size)).astype(np.float32)
        picture += cv2.resize(small, (1600, 1200), interpolation=cv2.INTER_CUBIC)
    cv2.circle(picture, (400, 300), 25, 60.0, -1)
    cv2.circle(picture, (1200, 800), 25, 60.0, -1)
    return np.clip(np.repeat(picture[..., None], 3, 2), 0, 255).astype(np.uint8)


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("two")
    before = mottled(1)
    after = cv2.warpPerspective(before, WAY, (1600, 1200), borderValue=(120, 120, 120))
    paths = {"before": before, "after": after, "elsewhere": mottled(2)[:900]}
    for name, picture in paths.items():
        cv2.imwrite(str(folder / f"{name}.png"), picture)
    return {name: folder / f"{name}.png" for name in paths}


def darkest(levels, near, reach=60):
    """The middle of the dark stamp near a place, px."""
    x, y = (round(v) for v in near)
    part = levels.levels[0].pixels[y - reach : y + reach, x - reach : x + reach, 0]
    ys, xs = np.nonzero(part < 110)
    return x - reach + xs.mean(), y - reach + ys.mean()


def test_the_other_photo_lies_in_place(files):
    levels, said = laid_over(open_photo(files["before"]), open_photo(files["after"]), None)
    assert (levels.width, levels.height) == (1600, 1200)
    assert "points agree" in said
    for point in ((400.0, 300.0), (1200.0, 800.0)):
        there = cv2.perspectiveTransform(np.array([[point]]), WAY)[0, 0]
        assert darkest(levels, there) == pytest.approx(there, abs=1.0)


def test_what_cannot_be_laid_over_is_fitted_and_said(files):
    levels, said = laid_over(open_photo(files["elsewhere"]), open_photo(files["after"]), None)
    assert "do not lie over each other" in said
    # 1600 x 900 in the middle of 1600 x 1200: shifted down by 150 px
    assert darkest(levels, (400, 450)) == pytest.approx((400, 450), abs=1.0)


def test_a_strip_alike_beside_two_parts_does_not_lay_one_over_the_other(tmp_path):
    """A printed strip, as a rule or a label, in the same place on two surfaces."""
    blocks = np.random.RandomState(3).randint(0, 2, (8, 60)).astype(np.uint8)  # any seed
    strip = cv2.resize(40 + 180 * blocks, (1440, 96), interpolation=cv2.INTER_NEAREST)
    photos = []
    for seed in (1, 2):
        picture = mottled(seed)
        picture[1050:1146, 80:1520] = strip[..., None]
        cv2.imwrite(str(tmp_path / f"{seed}.png"), picture)
        photos.append(open_photo(tmp_path / f"{seed}.png"))
    said = laid_over(*photos, None)[1]
    assert "do not lie over each other" in said
    assert "as a rule or a label does" in said


def test_the_slider_parts_them_and_the_line_can_be_dragged(
    qtbot, window, idle, files, monkeypatch
):
    window.open(files["after"])
    idle()
    monkeypatch.setattr(dialogs, "ask_for_photo", lambda *_: files["before"])
    window.view.setFocus()
    qtbot.keyClick(window.view, Qt.Key.Key_K)
    two, view = window.two_photos, window.view
    qtbot.waitUntil(lambda: view.curtain.levels is not None)
    assert "points agree" in two.says.text()
    assert window.focusWidget() is two.slider

    def shown(x):
        picture = view.grab().toImage()
        ratio = view.devicePixelRatioF()
        at = view.rect().center()
        return picture.pixelColor(round(x * ratio), round(at.y() * ratio) + 60)

    two.slider.setValue(1000)  # the other photo everywhere
    other = [shown(x).getRgb() for x in range(60, view.width() - 60, 40)]
    two.slider.setValue(0)
    mine = [shown(x).getRgb() for x in range(60, view.width() - 60, 40)]
    assert other != mine
    two.slider.setValue(500)
    both = [shown(x).getRgb() for x in range(60, view.width() - 60, 40)]
    half = view.width() / 2
    for number, x in enumerate(range(60, view.width() - 60, 40)):
        if abs(x - half) > 20:
            assert both[number] == (other if x < half else mine)[number]

    middle = QPoint(round(half), 40)
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=middle)
    qtbot.mouseMove(view, QPoint(round(0.25 * view.width()), 40))
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=middle)
    assert two.slider.value() == pytest.approx(250, abs=3)
    for _ in range(3):
        qtbot.keyClick(two.slider, Qt.Key.Key_Right)
    assert view.curtain.share == pytest.approx(0.253, abs=0.003)
    two.close_button.click()
    assert view.curtain.levels is None
    assert not two.isVisible()
