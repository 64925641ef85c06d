"""Front, top and side in box-drawing characters, or in plain ASCII."""

import re

from model.drawing.scene import Sheet
from tui.raster.canvas import Canvas, Row
from tui.raster.fills import fill, hoop, initial, limit, line, outline, ring
from tui.raster.glyphs import Glyphs, glyphs
from tui.raster.layout import Plot, plots
from tui.raster.lengths import lengths
from tui.raster.pipes import Pipes
from tui.raster.signs import hand, letter, marked_name, sign

JOINTS = ("joint", "unfitted")


def sheet_rows(sheet: Sheet, width: int, height: int, *, ascii: bool = False) -> list[Row]:
    """A sheet in a number of columns and rows; every row is as wide as asked for."""
    canvas = Canvas(width, height)
    draw_sheet(canvas, sheet, ascii=ascii)
    return canvas.rows()


def draw_sheet(canvas: Canvas, sheet: Sheet, *, ascii: bool = False) -> list[Plot]:
    """Draw a sheet on a canvas as large as it goes; returns where its views lie."""
    signs = glyphs(ascii)
    width = canvas.width
    placed = plots(sheet, width, canvas.height)
    for plot in placed:
        paint(canvas, plot, signs)
        hand(canvas, plot, signs)
    for plot in placed:
        edge = min([other.left for other in placed if other.left > plot.left], default=width)
        canvas.write(plot.left, plot.top - 1, title(plot.scene.title, edge - plot.left - 2), "title")
        names(canvas, plot, signs)
    return placed


def paint(canvas: Canvas, plot: Plot, signs: Glyphs) -> None:
    """One view, from the shades at the back to the texts on top."""
    scene = plot.scene
    pipes = Pipes(plot, scene.marked)
    for stroke in scene.strokes:
        if stroke.role == "bar":
            pipes.lay(stroke)
    for point, _ in scene.crossings:
        canvas.put(*plot.cell(point), signs.dot, "crossing")
    _behind(canvas, plot, signs)
    for circle in scene.circles:
        if circle.role == "hoop":
            hoop(canvas, plot, circle, signs)
        if circle.role == "end":
            canvas.put(*plot.cell(circle.centre), signs.signs["end"], "bar")
    pipes.paint(canvas, signs)
    _before(canvas, plot, signs, pipes)
    lengths(canvas, plot, signs)
    for mark in scene.marks:
        if mark.role not in JOINTS:
            sign(canvas, plot, mark, signs)
    for label in scene.labels:
        if label.role == "bar":
            letter(canvas, plot, label, pipes)


def title(text: str, room: int) -> str:
    """The whole title, or the name of the view alone where there is no room."""
    return text if len(text) <= room else re.split("[:,]", text)[0][: max(room, 5)]


def names(canvas: Canvas, plot: Plot, signs: Glyphs) -> None:
    """Joints and planes with their names, which go where the rest leaves room."""
    for mark in plot.scene.marks:
        if mark.role in JOINTS:
            sign(canvas, plot, mark, signs)
    for label in plot.scene.labels:
        if label.role == "name":
            marked_name(canvas, plot, label, signs)


def _behind(canvas: Canvas, plot: Plot, signs: Glyphs) -> None:
    """What bars are drawn over: the limit box, foam and ballast."""
    for shape in plot.scene.shapes:
        if shape.role in ("limit", "gate"):
            limit(canvas, plot, shape, signs)
        elif shape.role in ("float", "ballast"):
            fill(canvas, plot, shape, signs)


def _before(canvas: Canvas, plot: Plot, signs: Glyphs, pipes: Pipes) -> None:
    """What is drawn over bars that lie behind it."""
    for shape in plot.scene.shapes:
        if shape.role == "thruster":
            fill(canvas, plot, shape, signs, pipes)
        elif shape.role in signs.letters:
            outline(canvas, plot, shape, signs)
    for shape in plot.scene.shapes:
        if shape.role in signs.letters:
            initial(canvas, plot, shape, signs)
    for stroke in plot.scene.strokes:
        if stroke.role != "bar":
            line(canvas, plot, stroke, signs)
    for circle in plot.scene.circles:
        if circle.role == "propeller":
            ring(canvas, plot, circle, signs)
