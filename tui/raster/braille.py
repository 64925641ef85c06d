"""The oblique view in braille dots, two by four to a cell; in ASCII as sloping strokes."""

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise

from model.drawing.scene import About, Label, Point, Scene
from tui.raster.canvas import Canvas, Row, cells_of
from tui.raster.glyphs import Glyphs, glyphs
from tui.raster.orthographic import title

DOTS = (0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80)
"""The bit of each dot of a cell, row by row (Unicode, block Braille Patterns)."""
BLANK = 0x2800
SHIFT = 16
WHOLE, HALF = 1 << SHIFT, 1 << SHIFT - 1
"""Dots are counted in whole numbers with 16 bits after the point, which is quicker than rounding."""
SHARES = (0.5, 0.4, 0.6, 0.3, 0.7)
"""Where along its bar a letter may stand, the best first."""


class Screen:
    """Where the points of a scene lie: in dots from the upper left, all square to each other."""

    def __init__(self, scene: Scene, width: int, height: int) -> None:
        self.low, self.high = scene.low, scene.high
        wide, tall = max(self.high[0] - self.low[0], 1.0), max(self.high[1] - self.low[1], 1.0)
        self.scale = min((2 * width - 1) / wide, (4 * height - 1) / tall)
        self.left = (2 * width - 1 - wide * self.scale) / 2
        self.top = (4 * height - 1 - tall * self.scale) / 2
        self._known: dict[Point, tuple[int, int]] = {}

    def dot(self, point: Point) -> tuple[int, int]:
        """The dot of a point, to the right and down; corners are asked for by every line there."""
        known = self._known.get(point)
        if known is None:
            known = self._known[point] = (
                int(self.left + (point[0] - self.low[0]) * self.scale + 0.5),
                int(self.top + (self.high[1] - point[1]) * self.scale + 0.5),
            )
        return known

    def cell(self, point: Point) -> tuple[int, int]:
        """The column and row of a point."""
        x, y = self.dot(point)
        return x // 2, y // 4


def oblique_rows(scene: Scene, width: int, height: int, *, ascii: bool = False) -> list[Row]:
    """A scene in a number of columns and rows, its title above."""
    return oblique_canvas(scene, width, height, ascii=ascii).rows()


def oblique_canvas(scene: Scene, width: int, height: int, *, ascii: bool = False) -> Canvas:
    """The same, still open for more to be drawn on."""
    canvas = Canvas(width, height)
    body = Canvas(width, max(height - 1, 0))
    if body.height and width > 1:
        screen = Screen(scene, width, body.height)
        (_sloped if ascii else _dotted)(body, screen, scene)
        _texts(body, screen, scene, glyphs(ascii))
        _hand(body, screen, scene, glyphs(ascii))
    canvas.cells[1:] = body.cells
    canvas.write(0, 0, title(scene.title, width), "title")
    return canvas


def _lines(scene: Scene) -> Iterator[tuple[Point, Point, str, About | None]]:
    """Every line of the scene; what is under the cursor last, so that its role prevails."""
    for line in (*_outlines(scene), *_bars(scene)):
        if line[3] is None or line[3] != scene.marked:
            yield line
    if scene.marked is not None:
        for start, end, _, about in (*_outlines(scene), *_bars(scene)):
            if about == scene.marked:
                yield start, end, "picked", about


def _bars(scene: Scene) -> Iterator[tuple[Point, Point, str, About | None]]:
    for stroke in scene.strokes:
        yield *stroke.points, stroke.role, stroke.about


def _outlines(scene: Scene) -> Iterator[tuple[Point, Point, str, About | None]]:
    for shape in scene.shapes:
        for start, end in pairwise((*shape.outline, shape.outline[0])):
            yield start, end, shape.role, shape.about


def _dotted(canvas: Canvas, screen: Screen, scene: Scene) -> None:
    """Dots are OR-ed, so that crossing lines keep all of theirs; a cell has the role of its last line."""
    width = canvas.width
    masks, roles = [0] * (width * canvas.height), [""] * (width * canvas.height)
    for start, end, role, _ in _lines(scene):
        (x, y), (last, floor) = screen.dot(start), screen.dot(end)
        first = (y >> 2) * width + (x >> 1)
        for step, mask in _course(x & 1, y & 3, last - x, floor - y, width):
            masks[first + step] |= mask
            roles[first + step] = role
    for row, cells in enumerate(canvas.cells):
        for column, mask in enumerate(masks[row * width : (row + 1) * width]):
            if mask:
                cells[column] = (chr(BLANK + mask), roles[row * width + column])


@lru_cache(4096)
def _course(x: int, y: int, wide: int, tall: int, width: int) -> tuple[tuple[int, int], ...]:
    """The cells of a line and their dots, counted from the cell that it begins in.

    Args:
        x, y: the dot of that cell where it begins.
        wide, tall: how many dots it goes to the right and down.
        width: of the canvas; the cell below is so many further on.
    """
    masks: dict[int, int] = {}
    steps = max(abs(wide), abs(tall)) or 1
    right, down = wide * WHOLE // steps, tall * WHOLE // steps
    across, upright = x * WHOLE + HALF, y * WHOLE + HALF
    for _ in range(steps + 1):
        column, row = across >> SHIFT, upright >> SHIFT
        cell = (row >> 2) * width + (column >> 1)
        masks[cell] = masks.get(cell, 0) | DOTS[(row & 3) << 1 | column & 1]
        across += right
        upright += down
    return tuple(masks.items())


def _sloped(canvas: Canvas, screen: Screen, scene: Scene) -> None:
    for start, end, role, _ in _lines(scene):
        (x, y), (last, floor) = screen.dot(start), screen.dot(end)
        glyph = "#" if role == "picked" else _slope(last - x, floor - y)
        (column, row), (to, bottom) = screen.cell(start), screen.cell(end)
        steps = max(abs(to - column), abs(bottom - row), 1)
        for k in range(steps + 1):
            place, line = column + round((to - column) * k / steps), row + round((bottom - row) * k / steps)
            canvas.put(place, line, glyph, role)


def _slope(right: int, down: int) -> str:
    if abs(down) * 2 < abs(right):
        return "-"
    if abs(right) * 2 < abs(down):
        return "|"
    return "\\" if (right > 0) == (down > 0) else "/"


def _texts(canvas: Canvas, screen: Screen, scene: Scene, signs: Glyphs) -> None:
    taken: set[tuple[int, int]] = set()
    for mark in scene.marks:
        here = mark.about is not None and mark.about == scene.marked
        text = signs.signs[mark.role] + signs.name(mark.text)
        _put(canvas, taken, screen.cell(mark.at), text, "marked" if here else mark.role)
    for label in scene.labels:
        if label.role == "bar":
            _letter(canvas, screen, taken, label)
        else:
            role = "marked" if label.role == "name" else label.role
            _put(canvas, taken, screen.cell(label.at), signs.name(label.text), role)


def _hand(canvas: Canvas, screen: Screen, scene: Scene, signs: Glyphs) -> None:
    """The cursor in brackets round what stands there, and the pen where a bar was begun."""
    if scene.pen is not None:
        canvas.put(*screen.cell(scene.pen), signs.pen, "picked")
    if scene.cursor is not None:
        column, row = screen.cell(scene.cursor)
        canvas.put(column, row, canvas.glyph(column, row) or signs.dot, "marked")
        canvas.put(column - 1, row, "[", "picked")
        canvas.put(column + 1, row, "]", "picked")


def _letter(canvas: Canvas, screen: Screen, taken: set[tuple[int, int]], label: Label) -> None:
    """A letter on its bar where nothing else stands."""
    if label.along is None:
        return
    (u0, v0), (u1, v1) = label.along
    for share in SHARES:
        column, row = screen.cell((u0 + (u1 - u0) * share, v0 + (v1 - v0) * share))
        if not any((column + k, row) in taken for k in range(-1, len(label.text) + 1)):
            _put(canvas, taken, (column, row), label.text, "label")
            return


def _put(canvas: Canvas, taken: set[tuple[int, int]], cell: tuple[int, int], text: str, role: str) -> None:
    """A text at a cell, moved to the left where it would stick out."""
    wide = len(cells_of(text))
    column, row = max(0, min(cell[0], canvas.width - wide)), cell[1]
    canvas.write(column, row, text, role)
    taken.update((column + k, row) for k in range(wide))
