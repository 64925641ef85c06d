"""A sheet as an SVG picture: true proportions, line weights as on paper, nearer things over farther ones.

Thick lines 0.5 mm and thin ones 0.25 mm, a step of two (ISO 128, from memory); text 3.5 mm high
(ISO 3098, from memory).  All text is escaped, and what XML cannot hold is left out.
"""

import re
from collections.abc import Iterable, Iterator
from xml.sax.saxutils import escape

from model.drawing.paper import EDGE, HEIGHT, WIDTH, Panel, lane, panels
from model.drawing.scene import AROUND, Circle, Dimension, Entry, Label, Mark, Point, Scene, Shape, Sheet

TEXT, SMALL = 3.5, 2.8
"""[mm] Height of letters."""
ARROW = 2.2
"""[mm] Length of an arrowhead."""
LETTER_WIDTH, TITLE_LETTER = 0.56, 0.66
"""Width of a letter to its height, about, thin and bold."""
STYLE = """
svg { background: #fff; font-family: sans-serif; }
polygon, circle { fill: #fff; stroke: #000; stroke-width: 0.35; stroke-linejoin: round; }
rect { fill: #fff; }
line { stroke: #000; stroke-width: 0.25; }
.bar { fill: #fff; stroke-width: 0.5; }
.fitting { fill: #e6e6e6; stroke-width: 0.5; }
.thruster { fill: #b9cfe4; }
.propeller { fill: #dfe9f3; fill-opacity: 0.5; }
.float { fill: #d9ead3; fill-opacity: 0.85; }
.ballast { fill: #8c8c8c; }
.hook, .camera, .attachment { fill: #fbe5c8; }
.limit, .hoop, .gate { fill: none; stroke-dasharray: 5 1.2 1 1.2; stroke-width: 0.25; }
.block { fill: none; stroke-width: 0.35; }
.sign { stroke-width: 0.25; }
.full { fill: #000; stroke: none; }
text { font-size: 3.5px; fill: #000; }
.halo { paint-order: stroke; stroke: #fff; stroke-width: 1; stroke-linejoin: round; }
.small { font-size: 2.8px; }
.title { font-weight: bold; }
.letter { font-weight: bold; font-size: 3px; }
"""
BARS = (10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0)
"""[mm] Lengths that the scale bar may stand for."""
BAR_LEAST, BAR_PARTS = 20.0, 5
"""[mm] Of the scale bar on paper, and its parts."""
BLOCK_ABOVE, BLOCK_BELOW, INSET = 4.4, 2.2, 2.0
"""[mm] The frame of the title block over and under its line, and from the frame to what stands in it."""
BAR_END, BAR_CELL = 0.6, 62.0
"""Where the scale bar ends, as a share of the width; [mm] of the cell up to there."""
FULL = ("gravity", "plug", "joint")
"""Marks that are filled circles."""
SWATCHES = {
    "bar": "pipe",
    "fitting": "fitting",
    "thruster": "thruster and its push",
    "float": "float",
    "ballast": "ballast",
    "limit": "limit box",
    "hoop": "hoop to pass through",
    "gate": "gate to pass through",
    "opening": "opening",
    "plug": "plug",
    "air": "air caught when level",
    "gravity": "G: weight acts here",
    "buoyancy": "B: lift acts here",
}
"""What the legend says of each shade and sign."""
WORDS = {
    "hook": "hook",
    "camera": "camera",
    "attachment": "attachment",
    "tether": "tether",
    "gravity": "G",
    "buoyancy": "B",
    "unfitted": "no fitting",
}
"""What stands beside a mark on paper."""


def sheet_svg(sheet: Sheet, title: str, size: Point = (WIDTH, HEIGHT)) -> str:
    """The whole document.

    Args:
        title: what stands at the foot, such as the name of the design.
        size: of the paper [mm].
    """
    placed, scale = panels(sheet, size)
    width, height = size
    pieces = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:g}mm" height="{height:g}mm" '
        f'viewBox="0 0 {width:g} {height:g}">',
        f"<style>{STYLE}</style>",
    ]
    for panel in placed:
        pieces += _view(panel)
    pieces += _foot(sheet, title, scale, size)
    return "\n".join([*pieces, "</svg>", ""])


def _view(panel: Panel) -> Iterator[str]:
    scene = panel.scene
    yield f'<g class="view" id="{scene.name}">'
    full = len(scene.title) * TITLE_LETTER * TEXT <= panel.room
    title = scene.title if full else re.split("[:,]", scene.title)[0]
    yield text((panel.x(scene.low[0]), panel.y(scene.high[1]) - 3), title, "title", "start")
    for item in _far_to_near(scene):
        yield _circle(panel, item) if isinstance(item, Circle) else _shape(panel, item)
    yield from (_word(panel, shape) for shape in scene.shapes if shape.role in WORDS)
    for mark in scene.marks:
        yield from _mark(panel, mark)
    for label in scene.labels:
        yield _label(panel, label)
    for dimension in scene.dimensions:
        yield from _dimension(panel, dimension)
    yield "</g>"


def _far_to_near(scene: Scene) -> list[Shape | Circle]:
    """What is drawn first lies behind; the limit box is a line of its own behind everything."""
    return sorted((*scene.shapes, *scene.circles), key=lambda item: (item.role not in AROUND, item.depth))


def _shape(panel: Panel, shape: Shape) -> str:
    points = " ".join(f"{x:.2f},{y:.2f}" for x, y in map(panel.at, shape.outline))
    return f'<polygon class="{shape.role}" points="{points}"/>'


def _word(panel: Panel, shape: Shape) -> str:
    (low, _), (_, roof) = shape.box
    return text((panel.x(low), panel.y(roof) - 0.8), WORDS[shape.role], "small halo", "start")


def _circle(panel: Panel, circle: Circle) -> str:
    x, y = panel.at(circle.centre)
    return f'<circle class="{circle.role}" cx="{x:.2f}" cy="{y:.2f}" r="{circle.radius * panel.scale:.2f}"/>'


def _mark(panel: Panel, mark: Mark) -> Iterator[str]:
    x, y = panel.at(mark.at)
    if mark.heading is not None and mark.heading != (0, 0):
        right, up = mark.heading
        yield from arrow((x - right * 3, y + up * 3), (x + right * 3, y - up * 3))
        return
    full = mark.role in FULL
    radius = 1.3 if mark.role in ("gravity", "buoyancy") else 0.8
    yield f'<circle class="{"full" if full else "sign"}" cx="{x:.2f}" cy="{y:.2f}" r="{radius}"/>'
    words = mark.text or WORDS.get(mark.role, "")
    if words:
        yield text((x + radius + 0.6, y - radius), words, "small halo", "start")


def _label(panel: Panel, label: Label) -> str:
    x, y = panel.at(label.at)
    return text((x, y + 1.1), label.text, "letter halo" if label.role == "bar" else "small halo")


def _dimension(panel: Panel, item: Dimension) -> Iterator[str]:
    """Two thin extension lines, the dimension line with arrowheads, and the text on it."""
    scene, away = panel.scene, lane(item.lane)
    if item.axis == "u":
        edge = panel.y(scene.low[1])
        start, end = ((panel.x(place), edge + away) for place in (item.start, item.end))
        yield from (line((x, edge + 1), (x, edge + away + 1.5)) for x, _ in (start, end))
    else:
        edge = panel.x(scene.low[0])
        start, end = ((edge - away, panel.y(place)) for place in (item.start, item.end))
        yield from (line((edge - 1, y), (edge - away - 1.5, y)) for _, y in (start, end))
    long = abs(end[0] - start[0]) + abs(end[1] - start[1])
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    if long > 3 * ARROW:
        yield from arrow(middle, start)
        yield from arrow(middle, end)
    else:
        yield line(start, end)
    if long > len(item.text) * LETTER_WIDTH * SMALL:
        yield from _on_line(middle, item.text, upright=item.axis == "v")


def _on_line(middle: Point, words: str, *, upright: bool) -> Iterator[str]:
    """A text that breaks the line it stands on, with a space on each side."""
    (x, y), half, high = middle, len(words) * LETTER_WIDTH * SMALL / 2 + 1.2, SMALL / 2
    if upright:
        yield f'<rect x="{x - high:.2f}" y="{y - half:.2f}" width="{2 * high}" height="{2 * half:.2f}"/>'
        yield text((x + 1, y), words, "small", upright=True)
    else:
        yield f'<rect x="{x - half:.2f}" y="{y - high:.2f}" width="{2 * half:.2f}" height="{2 * high}"/>'
        yield text((x, y + 1), words, "small")


def _foot(sheet: Sheet, title: str, scale: float, size: Point) -> Iterator[str]:
    """The cut list by letter, then the name of the design, of the projection and of the scale."""
    height = size[1]
    entries: dict[Entry, None] = {}
    for place in sheet.places:
        entries.update(dict.fromkeys(entry for entry in place.scene.legend if entry.role == "bar"))
    cuts = "   ".join(f"{e.sign} {e.meaning}" for e in sorted(entries, key=lambda e: (len(e.sign), e.sign)))
    yield text((EDGE, height - EDGE - 6), f"Cuts: {cuts}" if cuts else "", "small", "start")
    yield from _swatches(sheet, height)
    yield from _title_block(sheet, title, scale, size)


def _title_block(sheet: Sheet, title: str, scale: float, size: Point) -> Iterator[str]:
    """A framed line: the name of the design, the scale bar, the projection and the scale."""
    width, height = size
    low, high, left, right = height - EDGE + BLOCK_BELOW, height - EDGE - BLOCK_ABOVE, EDGE, width - EDGE
    bar = width * BAR_END
    inner = (bar - BAR_CELL, bar + INSET)
    corners = f"{left},{low} {right},{low} {right},{high} {left},{high}"
    yield f'<polygon class="block" points="{corners}"/>'
    for x in inner:
        yield line((x, low), (x, high))
    letters = int((inner[0] - left - 2 * INSET) / (TITLE_LETTER * TEXT))
    name = title if len(title) <= letters else f"{title[: letters - 3]}..."
    yield text((left + INSET, height - EDGE), name, "title", "start")
    projection = f"{sheet.title} projection, " if sheet.title else ""
    words = f"{projection}scale 1:{1 / scale:g}"
    yield text((right - INSET, height - EDGE), words[:1].upper() + words[1:], "title", "end")
    yield from scale_bar((bar, height - EDGE), scale)


def _swatches(sheet: Sheet, height: float) -> Iterator[str]:
    """What each shade means, for the roles that stand on the sheet."""
    present = {shape.role for place in sheet.places for shape in place.scene.shapes}
    signs = {mark.role for place in sheet.places for mark in place.scene.marks}
    x, y = EDGE, height - EDGE - 11
    for role, word in SWATCHES.items():
        if role in present:
            yield f'<polygon class="{role}" points="{x},{y} {x + 6},{y} {x + 6},{y - 3} {x},{y - 3}"/>'
        elif role in signs:
            style = "full" if role in FULL else "sign"
            yield f'<circle class="{style}" cx="{x + 5:g}" cy="{y - 1.5:g}" r="0.8"/>'
        else:
            continue
        yield text((x + 7.5, y - 0.5), word, "small", "start")
        x += 10 + len(word) * LETTER_WIDTH * SMALL


def scale_bar(right: Point, scale: float) -> Iterator[str]:
    """A bar of a round length that ends at a point, filled in part by part, and its length."""
    long = next(size for size in BARS if size * scale >= BAR_LEAST or size == BARS[-1])
    part = long * scale / BAR_PARTS
    for number in range(BAR_PARTS):
        x, y = right[0] - part * (BAR_PARTS - number), right[1]
        style = "full" if number % 2 == 0 else "scale"
        points = f"{x:.2f},{y:.2f} {x + part:.2f},{y:.2f} {x + part:.2f},{y - 1.6:.2f} {x:.2f},{y - 1.6:.2f}"
        yield f'<polygon class="{style}" points="{points}"/>'
    yield text((right[0] - part * BAR_PARTS - 1.5, right[1]), f"{long:g} mm", "small", "end")


def arrow(tail: Point, head: Point) -> Iterator[str]:
    """A thin line with a filled arrowhead at its end."""
    (x0, y0), (x1, y1) = tail, head
    long = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 or 1.0
    right, down = (x1 - x0) / long, (y1 - y0) / long
    back = (x1 - right * ARROW, y1 - down * ARROW)
    wing = ARROW / 5
    corners: Iterable[Point] = (
        head,
        (back[0] - down * wing, back[1] + right * wing),
        (back[0] + down * wing, back[1] - right * wing),
    )
    yield line(tail, back)
    yield f'<polygon class="full" points="{" ".join(f"{x:.2f},{y:.2f}" for x, y in corners)}"/>'


def line(start: Point, end: Point) -> str:
    """A thin line."""
    return f'<line x1="{start[0]:.2f}" y1="{start[1]:.2f}" x2="{end[0]:.2f}" y2="{end[1]:.2f}"/>'


def text(at: Point, words: str, style: str, anchor: str = "middle", *, upright: bool = False) -> str:
    """A text, escaped; upright ones are read from the right."""
    x, y = at
    turn = f' transform="rotate(-90 {x:.2f} {y:.2f})"' if upright else ""
    return f'<text class="{style}" x="{x:.2f}" y="{y:.2f}" text-anchor="{anchor}"{turn}>{clean(words)}</text>'


def clean(words: str) -> str:
    """Text that is safe inside a document; what XML 1.0 cannot hold is left out."""
    return escape("".join(letter for letter in words if letter.isprintable()))
