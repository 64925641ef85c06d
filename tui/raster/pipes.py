"""The bars of a view in cells: their arms are joined where they meet, and the nearer one hides the other."""

from model.drawing.scene import About, Stroke
from tui.raster.canvas import Canvas
from tui.raster.glyphs import DOWN, FALLING, LEFT, RIGHT, RISING, UP, Glyphs
from tui.raster.layout import Plot

LEVEL, UPRIGHT = LEFT | RIGHT, UP | DOWN
TOUCH = 1.0
"""[mm] Bars whose depths differ by less than this meet; else the farther one passes behind."""


class Pipes:
    """Which arms leave which cell, at which depth, and whether they are under the cursor."""

    def __init__(self, plot: Plot, marked: About | None) -> None:
        self.plot, self.marked = plot, marked
        self.arms: dict[tuple[int, int], int] = {}
        self.depths: dict[tuple[int, int], float] = {}
        self.picked: set[tuple[int, int]] = set()

    def lay(self, stroke: Stroke) -> None:
        """Lay a bar's centre line into the cells."""
        (column, row), (end, floor) = (self.plot.cell(point) for point in stroke.points)
        first, last = stroke.depths
        cells = _straight(column, row, end, floor) if column == end or row == floor else None
        if cells is None:
            cells = _slope(column, row, end, floor)
        elif (column, row) == (end, floor):
            cells = [(column, row, _alone(stroke))]
        steps = max(len(cells) - 1, 1)
        for number, (c, r, arms) in enumerate(cells[1:-1], 1):
            self._add((c, r), arms, first + (last - first) * number / steps)
        for (c, r, arms), depth in zip((cells[0], cells[-1]), stroke.joins, strict=True):
            self._add((c, r), arms, depth)
        if self.marked is not None and stroke.about == self.marked:
            self.picked.update((c, r) for c, r, _ in cells[1:-1] or cells)

    def paint(self, canvas: Canvas, glyphs: Glyphs) -> None:
        """Draw what was laid."""
        pipe, picked = glyphs.pipe, self.picked
        for (column, row), arms in self.arms.items():
            straight = arms & 15
            if picked and (column, row) in picked:
                canvas.put(column, row, glyphs.marked[1 if straight in (UP, DOWN, UPRIGHT) else 0], "marked")
            else:
                glyph = pipe[straight] if straight else glyphs.line(arms, pipe=True)
                canvas.put(column, row, glyph, "bar")

    def _add(self, cell: tuple[int, int], arms: int, depth: float) -> None:
        known = self.depths.get(cell)
        if known is None or depth > known + TOUCH:
            self.depths[cell], self.arms[cell] = depth, arms
        elif depth > known - TOUCH:
            self.arms[cell] |= arms


def _straight(column: int, row: int, end: int, floor: int) -> list[tuple[int, int, int]]:
    """The cells of a line across or upright, each with the arms that the line leaves it by."""
    if row == floor:
        step = 1 if end >= column else -1
        cells = [(c, row, LEVEL) for c in range(column, end + step, step)]
        onward, back = (RIGHT, LEFT) if step > 0 else (LEFT, RIGHT)
    else:
        step = 1 if floor >= row else -1
        cells = [(column, r, UPRIGHT) for r in range(row, floor + step, step)]
        onward, back = (DOWN, UP) if step > 0 else (UP, DOWN)
    cells[0] = (*cells[0][:2], onward)
    cells[-1] = (*cells[-1][:2], back)
    return cells


def _slope(column: int, row: int, end: int, floor: int) -> list[tuple[int, int, int]]:
    rising = RISING if (end - column) * (floor - row) < 0 else FALLING
    steps = max(abs(end - column), abs(floor - row))
    return [
        (column + round((end - column) * k / steps), row + round((floor - row) * k / steps), rising)
        for k in range(steps + 1)
    ]


def _alone(stroke: Stroke) -> int:
    """The arms of a bar so short that it fits into one cell."""
    (u0, v0), (u1, v1) = stroke.points
    return LEVEL if abs(u1 - u0) > abs(v1 - v0) else UPRIGHT
