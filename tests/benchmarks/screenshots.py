"""Pictures of the real window in light and dark, and the contrast of the text in them.

    xvfb-run -s "-screen 0 1280x800x24" python tests/benchmarks/screenshots.py FOLDER [PHOTO]

Writes STEP-light.png and STEP-dark.png for every step, also in windows of the sizes of a small
screen, a tablet held upright and a large screen, for several photos in one inspection,
for the form for house rules, as it opens and with a table of limits that holds a fault, and for
every page of reviewing and of the archive (`screenshots_pages`), then measures in the pictures
themselves: of each label, button and line of text, the contrast
(WCAG 2.2) between its ground, the commonest colour, and its text, the colour that differs most.
Disabled ones are exempt (success criterion 1.4.3). Ends with 1 where any is below 4.5 to 1.
"""

import os
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

from PySide6.QtCore import QEventLoop, QPoint, QRect, Qt
from PySide6.QtGui import QColor, QImage, QPalette
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QPushButton, QWidget
from screenshots_pages import pages, records_for

from ptmark.places import sample_images
from ptmark.window.main_window import MainWindow
from ptmark.window.session import STEPS

SIZES = ((640, 400), (800, 1280), (1920, 1080))  # 1280 x 800 at 200 %, a tablet, a desk
LEAST = 4.5  # WCAG 2.2, success criterion 1.4.3, level AA


def luminance(color: QColor) -> float:
    """Relative luminance, WCAG 2.2 glossary."""
    parts = [
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
        for c in (color.redF(), color.greenF(), color.blueF())
    ]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


def contrast(one: QColor, other: QColor) -> float:
    """Contrast ratio, WCAG 2.2 glossary."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def dark_palette() -> QPalette:
    """A dark desktop's palette, for platforms that cannot be asked for one."""
    palette = QPalette(QColor(46, 49, 54), QColor(38, 40, 44))
    palette.setColor(QPalette.ColorRole.Base, QColor(30, 32, 35))
    palette.setColor(QPalette.ColorRole.AlternateBase, QColor(38, 40, 44))
    palette.setColor(QPalette.ColorRole.Highlight, QColor(30, 90, 160))
    palette.setColor(QPalette.ColorRole.HighlightedText, QColor(255, 255, 255))
    return palette


def spin(window: MainWindow, seconds: float = 0.4) -> None:
    """Let events and workers run."""
    end = time.monotonic() + seconds
    while time.monotonic() < end or window.session.workers.any_running():
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)


def text_of(widget: QWidget) -> str:
    """What a widget has written on it."""
    if isinstance(widget, QLineEdit):
        return widget.text() or widget.placeholderText()
    if isinstance(widget, QComboBox):
        return widget.currentText()
    return widget.text() if isinstance(widget, (QLabel, QPushButton)) else ""


def measured(picture: QImage, window: QWidget) -> list[tuple[float, str]]:
    """Contrast and words of every enabled text that shows whole in the picture."""
    made = []
    for widget in window.findChildren(QWidget):
        kinds = (QLabel, QPushButton, QLineEdit, QComboBox)
        if not isinstance(widget, kinds) or not text_of(widget).strip():
            continue
        shows = widget.visibleRegion().boundingRect() == widget.rect()
        if not widget.isVisible() or not widget.isEnabled() or not shows:
            continue
        box = QRect(widget.mapTo(window, QPoint(0, 0)), widget.size()).adjusted(4, 4, -4, -4)
        if isinstance(widget, QComboBox):
            box.adjust(0, 0, -24, 0)  # without its arrow
        colors = Counter(
            picture.pixel(x, y)
            for x in range(box.left(), box.right())
            for y in range(box.top(), box.bottom())
        )
        if colors:
            ground = QColor(colors.most_common(1)[0][0])
            best = max(contrast(QColor(color), ground) for color in colors)
            made.append((best, text_of(widget)[:60]))
    return made


def pictures(folder: Path, photo: Path, scheme: str) -> list[tuple[float, str]]:
    """One picture for each step; the contrasts found in them."""
    window = MainWindow()
    window.show()
    window.begin(photo)
    spin(window, 1.0)
    session = window.session
    session.change("choose the criteria", profile="iso-23277-2")
    found = []
    for step in STEPS:
        session.go(step)
        spin(window)
        picture = window.grab().toImage()
        picture.save(str(folder / f"{step.lower()}-{scheme}.png"))
        for ratio, words in measured(picture, window):
            found.append((ratio, f"{step}, {scheme}: {words}"))
    found += size_pictures(window, folder, scheme)
    found += set_picture(window, folder, scheme)
    found += form_pictures(window, folder, scheme)
    window.close()
    return found


def size_pictures(window: MainWindow, folder: Path, scheme: str) -> list[tuple[float, str]]:
    """Every step in windows of other sizes, where they take turns with photo and page."""
    found = []
    for width, height in SIZES:
        window.resize(width, height)
        for step in STEPS:
            window.session.go(step)
            for part in (window.view, window.pages[step]):
                window.arrangement.bring(part)
                spin(window)
                picture = window.grab().toImage()
                which = "page" if part is not window.view else "photo"
                name = f"{step.lower()}-{which}-{width}x{height}"
                picture.save(str(folder / f"{name}-{scheme}.png"))
                told = measured(picture, window)
                found += [(ratio, f"{name}, {scheme}: {words}") for ratio, words in told]
                if window.arrangement.way != "turns":
                    break
    window.resize(1280, 800)
    return found


def page_pictures(folder: Path, records: Path, scheme: str) -> list[tuple[float, str]]:
    """Reviewing and the archive, page by page, in a window of their own."""
    window = MainWindow()
    window.resize(1280, 800)
    window.show()
    window.begin(None)
    spin(window, 1.0)
    found = []
    for name in pages(window, records):
        spin(window, 2.5)  # the archive's small pictures come after the page
        picture = window.grab().toImage()
        picture.save(str(folder / f"{name}-{scheme}.png"))
        found += [
            (ratio, f"{name}, {scheme}: {words}") for ratio, words in measured(picture, window)
        ]
    window.close()
    return found


def set_picture(window: MainWindow, folder: Path, scheme: str) -> list[tuple[float, str]]:
    """Several photos in one inspection: the row of them, and one indication's other photos."""
    session = window.session
    others = [path for path in sorted(sample_images().glob("*.jpg")) if "good" in path.name]
    window.turning.add(others)
    while window.turning.busy:
        spin(window)
    spin(window, 1.0)
    inspection = session.inspection
    if inspection is None or len(inspection.photos) < 2:
        return []
    session.go("Indications")
    one = inspection.state.marked[0].id
    inspection.photos.same(one, inspection.photos.candidates(one)[0])
    session.select(inspection.state.marked[0].id)
    spin(window, 0.6)
    window.indications_step.ensureWidgetVisible(window.indications_step.same_as)
    spin(window)
    picture = window.grab().toImage()
    picture.save(str(folder / f"photos-{scheme}.png"))
    told = measured(picture, window)
    return [(ratio, f"several photos, {scheme}: {words}") for ratio, words in told]


def form_pictures(window: MainWindow, folder: Path, scheme: str) -> list[tuple[float, str]]:
    """The form for house rules: the head, a rule, a table of limits with a fault."""
    window.session.go("Verdict")
    window.verdict_step.criteria.write_button.click()
    form = window.verdict_step.criteria.form
    nth = next(n for n, rule in enumerate(form.draft.rules) if rule.text("kind") == "size")
    found = []
    for name, at in (("head", ""), ("rule", nth), ("table", nth)):
        if name == "table":
            rows = [{"up_to": "<= 10 mm", "reject": "> 2 mm"}, {"reject": "> 3 in"}]
            form.draft.rules[nth].put("reject", "")
            form.draft.rules[nth].put("bands", rows)
        form.take(form.draft, None)
        form.parts.choose(at)
        spin(window, 0.6)
        picture = form.grab().toImage()
        picture.save(str(folder / f"rules-{name}-{scheme}.png"))
        for ratio, words in measured(picture, form):
            found.append((ratio, f"rules, {name}, {scheme}: {words}"))
    return found


def main() -> int:
    """Make the pictures, print the faintest texts."""
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    photo = Path(sys.argv[2]) if len(sys.argv) > 2 else sample_images() / "rejectable.jpg"
    found = []
    with tempfile.TemporaryDirectory() as home:
        app = QApplication(sys.argv[:1])
        app.setStyle("Fusion")
        light = QPalette(app.style().standardPalette())
        for scheme, palette in (("light", light), ("dark", dark_palette())):
            os.environ["PTMARK_HOME"] = str(Path(home) / scheme)
            app.styleHints().setColorScheme(
                Qt.ColorScheme.Dark if scheme == "dark" else Qt.ColorScheme.Light
            )
            app.setPalette(palette)
            found += pictures(folder, photo, scheme)
            with tempfile.TemporaryDirectory() as records:
                found += page_pictures(folder, records_for(Path(records), photo), scheme)
    found.sort()
    for ratio, words in found[:8]:
        print(f"{ratio:5.2f}  {words}")
    print(f"{len(found)} texts, {sum(ratio < LEAST for ratio, _ in found)} below {LEAST}")
    return int(bool(found) and found[0][0] < LEAST)


if __name__ == "__main__":
    sys.exit(main())
