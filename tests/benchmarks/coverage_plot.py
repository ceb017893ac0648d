"""Coverage and U by condition as a plot: SVG, or PNG painted by Qt."""

from xml.sax.saxutils import escape

import numpy as np

LOW, HIGH = 0.93, 0.985  # where coverage should lie for 95 % at k = 2
ROW, LEFT, WIDE, GAP = 22, 190, 300, 60
COLOURS = {"card": "#0a3d7a", "rectangle": "#1597a5", "rule": "#5b6770"}
MARKS = {"card": "circle", "rectangle": "square", "rule": "cross"}


def draw(path, rows, modes):
    """Write the plot: a line for each condition, a mark for each reference."""
    names = list(dict.fromkeys(row["condition"] for row in rows))
    panels = (
        ("length: share within U", 0.7, 1.0, lambda own: share(own, "length")),
        ("width: share within U", 0.7, 1.0, lambda own: share(own, "width")),
        ("length: median U, mm", 0.0, 0.6, lambda own: middle(own, "length")),
    )
    high = ROW * (len(names) + 3)
    parts = [label(8, ROW * (n + 2) + 5, name) for n, name in enumerate(names)]
    for number, (title, least, most, value) in enumerate(panels):
        x0 = LEFT + number * (WIDE + GAP)
        parts.append(label(x0, ROW, f"{title} ({least:g} to {most:g})"))
        parts.append(box(x0, ROW * 1.5, WIDE, ROW * len(names), "#f2f5f7"))
        if most == 1.0:
            left, right = ((v - least) / (most - least) * WIDE for v in (LOW, HIGH))
            parts.append(box(x0 + left, ROW * 1.5, right - left, ROW * len(names), "#cfe3ea"))
        for n, name in enumerate(names):
            for mode in modes:
                own = [r for r in rows if r["condition"] == name and r["mode"] == mode]
                if own:
                    at = np.clip((value(own) - least) / (most - least), 0, 1) * WIDE
                    parts.append(mark(x0 + at, ROW * (n + 2), mode))
    for n, mode in enumerate(modes):
        parts += [
            mark(LEFT + 120 * n, high - 14, mode),
            label(LEFT + 120 * n + 10, high - 9, mode),
        ]
    size = (LEFT + len(panels) * (WIDE + GAP), high)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{size[0]}" height="{size[1]}" '
        f'font-family="sans-serif" font-size="13">\n{box(0, 0, *size, "#ffffff")}\n'
        + "\n".join(parts)
        + "\n</svg>\n"
    )
    if path.suffix == ".svg":
        path.write_text(svg, encoding="utf-8")
    else:
        write_png(path, svg)


def share(rows, what):
    """Share of the errors within U."""
    return np.mean([abs(r[f"{what}_error"]) <= r[f"{what}_u"] for r in rows])


def middle(rows, what):
    """Median expanded uncertainty."""
    return np.median([r[f"{what}_u"] for r in rows])


def label(x, y, text):
    """Text from its left end."""
    return f'<text x="{x:.1f}" y="{y:.1f}" fill="#1b2733">{escape(text)}</text>'


def box(x, y, wide, high, colour):
    """A filled rectangle."""
    size = f'width="{wide:.1f}" height="{high:.1f}"'
    return f'<rect x="{x:.1f}" y="{y:.1f}" {size} fill="{colour}"/>'


def mark(x, y, mode):
    """The reference's own mark, told apart by form and colour."""
    colour = COLOURS[mode]
    if MARKS[mode] == "circle":
        return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4" fill="{colour}"/>'
    if MARKS[mode] == "square":
        return box(x - 3.5, y - 3.5, 7, 7, colour)
    return (
        f'<path d="M{x - 4:.1f} {y - 4:.1f} l8 8 m0 -8 l-8 8" stroke="{colour}" '
        'stroke-width="2" fill="none"/>'
    )


def write_png(path, svg):
    """The same, painted by Qt."""
    from PySide6.QtCore import QByteArray
    from PySide6.QtGui import QGuiApplication, QImage, QPainter
    from PySide6.QtSvg import QSvgRenderer

    app = QGuiApplication.instance() or QGuiApplication([])
    made = QSvgRenderer(QByteArray(svg.encode()))
    picture = QImage(made.defaultSize(), QImage.Format.Format_RGB32)
    painter = QPainter(picture)
    made.render(painter)
    painter.end()
    picture.save(str(path))
    app.processEvents()
