"""Start the packed program on this screen and wait until its window stands there.

    xvfb-run -s "-screen 0 1280x800x24" python .run/packaging/try_window.py PROGRAM PICTURE.png

The screen has to be empty (all of one colour) before. Prints how long it took, writes what is
on the screen then, and ends the program; ends with 1 where no window came within a minute.
"""

import subprocess
import sys
import time

from PySide6.QtGui import QGuiApplication, QImage

_LONGEST = 60.0  # s
_LEAST_COLOURS = 8  # of a picture made small: letters and frames, not a bare ground


def on_screen(app: QGuiApplication) -> QImage:
    """What the screen shows."""
    return app.primaryScreen().grabWindow(0).toImage()


def colours(picture: QImage) -> int:
    """How many colours a coarse look at it sees; cheap, beside a start."""
    small = picture.scaled(160, 100)  # single pixels, not means of them
    return len({small.pixel(x, y) for x in range(160) for y in range(100)})


def main() -> int:
    """Start, wait, look, end."""
    program, picture_path = sys.argv[1:3]
    app = QGuiApplication(sys.argv[:1])
    if colours(on_screen(app)) > 1:
        print("the screen is not empty")
        return 1
    begin = time.monotonic()
    child = subprocess.Popen([program])  # noqa: S603 - what was just built
    try:
        while time.monotonic() - begin < _LONGEST and child.poll() is None:
            picture = on_screen(app)
            if colours(picture) > _LEAST_COLOURS:
                print(f"window painted after {time.monotonic() - begin:.2f} s")
                time.sleep(2)
                on_screen(app).save(picture_path)
                return 0
            time.sleep(0.02)
        print("no window")
        return 1
    finally:
        child.terminate()
        child.wait(10)


if __name__ == "__main__":
    sys.exit(main())
