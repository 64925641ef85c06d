"""Small signs and letters, which go on top of the lines."""

from collections.abc import Iterator

from model.drawing.scene import Label, Mark
from tui.raster.canvas import Canvas, cells_of
from tui.raster.glyphs import Glyphs
from tui.raster.layout import Plot
from tui.raster.pipes import LEVEL, UPRIGHT, Pipes

NEAR = ((0, 0), (1, 0), (-1, 0), (0, -1), (0, 1), (1, -1), (-1, 1), (0, -2), (0, 2))
"""Where a text may go when something stands in its place: in its own widths across, in rows up and down."""
HOLD = frozenset(
    ("label", "gravity", "buoyancy", "marked", "joint", "unfitted", "opening", "plug", "air", "tether")
)
"""Roles that no later sign covers."""
MOVED = ("gravity", "buoyancy", "tether")
"""Signs that may stand beside their place, so that they cover no other."""


def sign(canvas: Canvas, plot: Plot, mark: Mark, glyphs: Glyphs) -> None:
    """A mark: an arrow, G or B with a letter, a joint with its name, or a single sign."""
    column, row = plot.cell(mark.at)
    here = mark.about is not None and mark.about == plot.scene.marked
    role = "marked" if here else mark.role
    if mark.heading is not None:
        glyph = glyphs.arrows.get(mark.heading) or (glyphs.towards if mark.towards else glyphs.away)
        canvas.put(column, row, glyph, role)
    elif mark.role in MOVED:
        column, row = beside(canvas, column, row, glyphs.signs[mark.role] + mark.text, role, glyphs)
    else:
        canvas.put(column, row, glyphs.signs[mark.role], role)
        if mark.text:
            _name(canvas, column, row, glyphs.name(mark.text), "marked" if here else "label")
    if here and mark.role not in ("joint", "unfitted"):
        canvas.put(column - 1, row, "[", role)
        canvas.put(column + 1, row, "]", role)


def letter(canvas: Canvas, plot: Plot, label: Label, pipes: Pipes) -> None:
    """A bar's letter on its line, near its middle, with a space on each side where there is room."""
    if label.along is None or not label.text:
        return
    (column, row), (end, floor) = (plot.cell(point) for point in label.along)
    steps = max(abs(end - column), abs(floor - row))
    right, down = (end - column) / (steps or 1), (floor - row) / (steps or 1)
    level = row == floor
    for text in (f" {label.text} ", label.text) if level else (label.text,):
        for k in _outwards(steps):
            start, line = column + round(right * k) - len(text) // 2, row + round(down * k)
            if all(_plain(canvas, pipes, start + n, line, level) for n in range(len(text))):
                canvas.write(start, line, text, "label")
                return


def _outwards(steps: int) -> Iterator[int]:
    """0 to ``steps``, the middle first."""
    for k in range(steps, -1, -2):
        yield k // 2
        if k // 2 != steps - k // 2:
            yield steps - k // 2


def marked_name(canvas: Canvas, plot: Plot, label: Label, glyphs: Glyphs) -> None:
    """The name of what is under the cursor, over its middle or the end of its line."""
    column, row = plot.cell(label.at)
    name = glyphs.name(label.text)
    wide = len(cells_of(name))
    start = min(max(column - wide // 2, 0), max(canvas.width - wide, 0))
    canvas.write(start, row, name, "marked")


def hand(canvas: Canvas, plot: Plot, glyphs: Glyphs) -> None:
    """The cursor in brackets round what stands there, and the pen where a bar was begun."""
    if plot.scene.pen is not None:
        canvas.put(*plot.cell(plot.scene.pen), glyphs.pen, "picked")
    if plot.scene.cursor is not None:
        column, row = plot.cell(plot.scene.cursor)
        canvas.put(column, row, canvas.glyph(column, row) or glyphs.dot, "marked")
        canvas.put(column - 1, row, "[", "picked")
        canvas.put(column + 1, row, "]", "picked")


def _plain(canvas: Canvas, pipes: Pipes, column: int, row: int, level: bool) -> bool:
    """Whether a cell is a plain stretch of bar that a letter may stand on."""
    arms = pipes.arms.get((column, row), 0)
    straight = arms == (LEVEL if level else UPRIGHT) or arms > 15
    role = canvas.role(column, row)
    return straight and (role == "bar" or (role == "marked" and (column, row) in pipes.picked))


def beside(canvas: Canvas, column: int, row: int, text: str, role: str, glyphs: Glyphs) -> tuple[int, int]:
    """A short text at its place, or near it where something holds that place; where it went."""
    step = len(text) + 1
    for across, down in NEAR:
        place, line = column + step * across, row + down
        if _open(canvas, place, line, len(text), glyphs):
            break
    else:
        place, line = column, row
    canvas.write(place, line, text, role)
    return place, line


def _open(canvas: Canvas, column: int, row: int, length: int, glyphs: Glyphs) -> bool:
    inside = 0 <= row < canvas.height and column >= 0 and column + length <= canvas.width
    return inside and not any(_held(canvas, column + k, row, glyphs) for k in range(length))


def _held(canvas: Canvas, column: int, row: int, glyphs: Glyphs) -> bool:
    """Whether a sign or the letter of a piece of gear stands in a cell, which is not to be covered."""
    role = canvas.role(column, row)
    return role in HOLD or (role in glyphs.letters and canvas.glyph(column, row) == glyphs.letters[role])


def _name(canvas: Canvas, column: int, row: int, name: str, role: str) -> None:
    """A name beside its joint where nothing else stands; that of the cursor always finds a place."""
    wide = len(cells_of(name))
    beside = (column + 2, column - 1 - wide)
    for place, line in ((place, row + down) for down in (0, -1, 1) for place in beside):
        if canvas.free(place - 1, line, wide + 2):
            canvas.write(place, line, name, role)
            return
    if role == "marked":
        canvas.write(max(0, min(column + 2, canvas.width - wide)), row, name, role)
