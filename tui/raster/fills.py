"""What lies around the bars: floats, ballast, thrusters, attachments, propellers and the limit box."""

from math import cos, pi, sin

from model.drawing.scene import Circle, Shape, Stroke
from tui.raster.canvas import Canvas
from tui.raster.glyphs import DOWN, LEFT, RIGHT, UP, Glyphs
from tui.raster.layout import Plot
from tui.raster.pipes import Pipes
from tui.raster.signs import beside

RING = tuple((cos(pi * k / 8), sin(pi * k / 8)) for k in range(16))
"""Points on a circle of radius 1."""


def fill(canvas: Canvas, plot: Plot, shape: Shape, glyphs: Glyphs, pipes: Pipes | None = None) -> None:
    """Shade a rectangle; where bars are given, those that lie nearer stay on top of it."""
    left, right, top, bottom = plot.block(*shape.box)
    cell = (glyphs.fills[shape.role], role_of(shape, plot))
    for row in range(top, bottom + 1):
        if pipes is None:
            canvas.run(left, right, row, cell)
            continue
        for column in range(left, right + 1):
            if pipes.depths.get((column, row), shape.depth - 1) < shape.depth:
                canvas.put(column, row, *cell)


def outline(canvas: Canvas, plot: Plot, shape: Shape, glyphs: Glyphs) -> None:
    """A thin box around an attachment, where it is not small."""
    left, right, top, bottom = plot.block(*shape.box)
    if right - left >= 2 and bottom - top >= 1:
        box(canvas, (left, right, top, bottom), glyphs, role_of(shape, plot))


def initial(canvas: Canvas, plot: Plot, shape: Shape, glyphs: Glyphs) -> None:
    """The letter of an attachment in the middle of it, or near that where another letter stands."""
    left, right, top, bottom = plot.block(*shape.box)
    role, letter = role_of(shape, plot), glyphs.letters[shape.role]
    column, row = (left + right) // 2, (top + bottom) // 2
    text = f"[{letter}]" if bottom - top < 1 and right - left >= 2 else letter
    beside(canvas, column - len(text) // 2, row, text, role, glyphs)


def box(canvas: Canvas, corners: tuple[int, int, int, int], glyphs: Glyphs, role: str) -> None:
    """A thin rectangle on its border cells."""
    left, right, top, bottom = corners
    thin = glyphs.thin
    for row in (top, bottom):
        canvas.run(left + 1, right - 1, row, (thin[LEFT | RIGHT], role))
    for row in range(top + 1, bottom):
        canvas.put(left, row, thin[UP | DOWN], role)
        canvas.put(right, row, thin[UP | DOWN], role)
    canvas.put(left, top, thin[DOWN | RIGHT], role)
    canvas.put(right, top, thin[DOWN | LEFT], role)
    canvas.put(left, bottom, thin[UP | RIGHT], role)
    canvas.put(right, bottom, thin[UP | LEFT], role)


def limit(canvas: Canvas, plot: Plot, shape: Shape, glyphs: Glyphs) -> None:
    """The limit box: whole corners, and every second cell between them."""
    low, high = shape.box
    left, right, top, bottom = plot.column(low[0]), plot.column(high[0]), plot.row(high[1]), plot.row(low[1])
    thin = glyphs.thin
    for row in (top, bottom):
        canvas.run(left + 2, right - 2, row, (thin[LEFT | RIGHT], shape.role), 2)
    for row in range(top + 2, bottom - 1, 2):
        canvas.put(left, row, thin[UP | DOWN], shape.role)
        canvas.put(right, row, thin[UP | DOWN], shape.role)
    for column, row, arms in (
        (left, top, DOWN | RIGHT),
        (right, top, DOWN | LEFT),
        (left, bottom, UP | RIGHT),
        (right, bottom, UP | LEFT),
    ):
        canvas.put(column, row, thin[arms], shape.role)


def line(canvas: Canvas, plot: Plot, stroke: Stroke, glyphs: Glyphs) -> None:
    """A thin line across or upright: a propeller from the side, or a centre line."""
    (u0, v0), (u1, v1) = stroke.points
    left, right, top, bottom = plot.block((min(u0, u1), min(v0, v1)), (max(u0, u1), max(v0, v1)))
    arms = LEFT | RIGHT if abs(u1 - u0) > abs(v1 - v0) else UP | DOWN
    cell = (glyphs.thin[arms], role_of(stroke, plot))
    for row in range(top, bottom + 1):
        canvas.run(left, right, row, cell)


def ring(canvas: Canvas, plot: Plot, circle: Circle, glyphs: Glyphs) -> None:
    """The disc that a propeller sweeps, as a ring of dots; nothing where it is smaller than a cell."""
    middle, line = plot.cell(circle.centre)
    wide, tall = circle.radius * plot.across.scale, circle.radius * plot.upward.scale
    if wide < 1:
        return
    role = role_of(circle, plot)
    for column, row in {(middle + round(wide * u), line + round(tall * v)) for u, v in RING}:
        if canvas.role(column, row) in ("", "float"):
            canvas.put(column, row, glyphs.dot, role)


def hoop(canvas: Canvas, plot: Plot, circle: Circle, glyphs: Glyphs) -> None:
    """The ring that it must pass through, in dots about two cells apart, behind everything."""
    middle, line = plot.cell(circle.centre)
    wide, tall = circle.radius * plot.across.scale, circle.radius * plot.upward.scale
    count = max(12, round(pi * wide))
    for k in range(count):
        turn = 2 * pi * k / count
        column, row = middle + round(wide * cos(turn)), line + round(tall * sin(turn))
        if not canvas.role(column, row):
            canvas.put(column, row, glyphs.dot, "hoop")


def role_of(item: Shape | Stroke | Circle, plot: Plot) -> str:
    """The role of what is drawn, or that of the cursor; the line of a plane stays thin."""
    if item.role == "centre":
        return item.role
    return "marked" if item.about is not None and item.about == plot.scene.marked else item.role
