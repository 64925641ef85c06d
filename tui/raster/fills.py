"""What lies around the bars: floats, ballast, thrusters, attachments, propellers and the limit box."""

from math import cos, pi, sin

from model.drawing.scene import Circle, Shape, Stroke
from tui.raster.canvas import Canvas
from tui.raster.glyphs import DOWN, LEFT, RIGHT, UP, Glyphs
from tui.raster.layout import Plot
from tui.raster.pipes import Pipes


def fill(canvas: Canvas, plot: Plot, shape: Shape, glyphs: Glyphs, pipes: Pipes | None = None) -> None:
    """Shade a rectangle; where bars are given, those that lie nearer stay on top of it."""
    left, right, top, bottom = plot.block(*shape.box)
    glyph = glyphs.fills[shape.role]
    for row in range(top, bottom + 1):
        for column in range(left, right + 1):
            if pipes is None or pipes.depths.get((column, row), shape.depth - 1) < shape.depth:
                canvas.put(column, row, glyph, role_of(shape, plot))


def outline(canvas: Canvas, plot: Plot, shape: Shape, glyphs: Glyphs) -> None:
    """A thin box around an attachment with its letter in it; the letter alone where it is small."""
    left, right, top, bottom = plot.block(*shape.box)
    role = role_of(shape, plot)
    if right - left >= 2 and bottom - top >= 1:
        box(canvas, (left, right, top, bottom), glyphs, role)
    letter = glyphs.letters[shape.role]
    column, row = (left + right) // 2, (top + bottom) // 2
    text = f"[{letter}]" if bottom - top < 1 and right - left >= 2 else letter
    canvas.write(column - len(text) // 2, row, text, role)


def box(canvas: Canvas, corners: tuple[int, int, int, int], glyphs: Glyphs, role: str) -> None:
    """A thin rectangle on its border cells."""
    left, right, top, bottom = corners
    thin = glyphs.thin
    for column in range(left + 1, right):
        canvas.put(column, top, thin[LEFT | RIGHT], role)
        canvas.put(column, bottom, thin[LEFT | RIGHT], role)
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
    for column in range(left + 2, right - 1, 2):
        canvas.put(column, top, thin[LEFT | RIGHT], "limit")
        canvas.put(column, bottom, thin[LEFT | RIGHT], "limit")
    for row in range(top + 2, bottom - 1, 2):
        canvas.put(left, row, thin[UP | DOWN], "limit")
        canvas.put(right, row, thin[UP | DOWN], "limit")
    for column, row, arms in (
        (left, top, DOWN | RIGHT),
        (right, top, DOWN | LEFT),
        (left, bottom, UP | RIGHT),
        (right, bottom, UP | LEFT),
    ):
        canvas.put(column, row, thin[arms], "limit")


def line(canvas: Canvas, plot: Plot, stroke: Stroke, glyphs: Glyphs) -> None:
    """A thin line across or upright: a propeller from the side, or a centre line."""
    (u0, v0), (u1, v1) = stroke.points
    left, right, top, bottom = plot.block((min(u0, u1), min(v0, v1)), (max(u0, u1), max(v0, v1)))
    arms = LEFT | RIGHT if abs(u1 - u0) > abs(v1 - v0) else UP | DOWN
    for row in range(top, bottom + 1):
        for column in range(left, right + 1):
            canvas.put(column, row, glyphs.thin[arms], role_of(stroke, plot))


def ring(canvas: Canvas, plot: Plot, circle: Circle, glyphs: Glyphs) -> None:
    """The disc that a propeller sweeps, as a ring of dots; nothing where it is smaller than a cell."""
    (u, v), radius = circle.centre, circle.radius
    if plot.column(u + radius) - plot.column(u - radius) < 2:
        return
    for k in range(24):
        turn = 2 * pi * k / 24
        column, row = plot.cell((u + radius * cos(turn), v + radius * sin(turn)))
        if canvas.role(column, row) in ("", "float"):
            canvas.put(column, row, glyphs.dot, role_of(circle, plot))


def role_of(item: Shape | Stroke | Circle, plot: Plot) -> str:
    """The role of what is drawn, or that of the cursor."""
    return "marked" if item.about is not None and item.about == plot.scene.marked else item.role
