"""The bars of a view in cells: their arms are joined where they meet, and the nearer one hides the other."""

from model.drawing.scene import About, Stroke
from tui.raster.canvas import Canvas
from tui.raster.glyphs import DOWN, FALLING, LEFT, RIGHT, RISING, UP, Glyphs
from tui.raster.layout import Plot

Cell = tuple[int, int]
"""Column and row."""
LEVEL, UPRIGHT = LEFT | RIGHT, UP | DOWN
TOUCH = 1.0
"""[mm] Bars whose depths differ by less than this meet; else the farther one passes behind."""


class Pipes:
    """Which arms leave which cell, at which depth, and whether they are under the cursor."""

    def __init__(self, plot: Plot, marked: About | None) -> None:
        self.plot, self.marked = plot, marked
        self.arms: dict[Cell, int] = {}
        self.depths: dict[Cell, float] = {}
        self.picked: set[Cell] = set()

    def lay(self, stroke: Stroke) -> None:
        """Lay a bar's centre line into the cells."""
        start, end = (self.plot.cell(point) for point in stroke.points)
        if start == end:
            between, leave, arrive, through = [], _alone(stroke), _alone(stroke), 0
        else:
            between, leave, arrive, through = _course(start, end)
        first, last = stroke.depths
        step = (last - first) / (len(between) + 1)
        self._add(start, leave, stroke.joins[0])
        for number, cell in enumerate(between, 1):
            self._add(cell, through, first + step * number)
        self._add(end, arrive, stroke.joins[1])
        if self.marked is not None and stroke.about == self.marked:
            self.picked.update(between or (start, end))

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

    def _add(self, cell: Cell, arms: int, depth: float) -> None:
        known = self.depths.get(cell)
        if known is None or depth > known + TOUCH:
            self.depths[cell], self.arms[cell] = depth, arms
        elif depth > known - TOUCH:
            self.arms[cell] |= arms


def _course(start: Cell, end: Cell) -> tuple[list[Cell], int, int, int]:
    """The cells between two cells, and a line's arms in the first, in the last and in those between."""
    (column, row), (last, floor) = start, end
    if row == floor:
        step = 1 if last > column else -1
        leave, arrive = (RIGHT, LEFT) if step > 0 else (LEFT, RIGHT)
        return [(c, row) for c in range(column + step, last, step)], leave, arrive, LEVEL
    if column == last:
        step = 1 if floor > row else -1
        leave, arrive = (DOWN, UP) if step > 0 else (UP, DOWN)
        return [(column, r) for r in range(row + step, floor, step)], leave, arrive, UPRIGHT
    slope = RISING if (last - column) * (floor - row) < 0 else FALLING
    steps = max(abs(last - column), abs(floor - row))
    right, down = (last - column) / steps, (floor - row) / steps
    cells = [(column + round(right * k), row + round(down * k)) for k in range(1, steps)]
    return cells, slope, slope, slope


def _alone(stroke: Stroke) -> int:
    """The arms of a bar so short that it fits into one cell."""
    (u0, v0), (u1, v1) = stroke.points
    return LEVEL if abs(u1 - u0) > abs(v1 - v0) else UPRIGHT
