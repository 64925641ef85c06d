"""Front, top and side in box-drawing characters, or in plain ASCII."""

from model.drawing.scene import Sheet
from tui.raster.canvas import Canvas, Row
from tui.raster.fills import fill, limit, line, outline, ring
from tui.raster.glyphs import Glyphs, glyphs
from tui.raster.layout import Plot, plots
from tui.raster.lengths import lengths
from tui.raster.pipes import Pipes
from tui.raster.signs import letter, plane_name, sign


def sheet_rows(sheet: Sheet, width: int, height: int, *, ascii: bool = False) -> list[Row]:
    """A sheet in a number of columns and rows; every row is as wide as asked for."""
    canvas = Canvas(width, height)
    draw_sheet(canvas, sheet, ascii=ascii)
    return canvas.rows()


def draw_sheet(canvas: Canvas, sheet: Sheet, *, ascii: bool = False) -> list[Plot]:
    """Draw a sheet on a canvas as large as it goes; returns where its views lie."""
    signs = glyphs(ascii)
    placed = plots(sheet, canvas.width, canvas.height)
    for plot in placed:
        paint(canvas, plot, signs)
    return placed


def paint(canvas: Canvas, plot: Plot, signs: Glyphs) -> None:
    """One view, from the shades at the back to the texts on top."""
    scene = plot.scene
    pipes = Pipes(plot, scene.marked)
    for stroke in scene.strokes:
        if stroke.role == "bar":
            pipes.lay(stroke)
    _behind(canvas, plot, signs)
    for circle in scene.circles:
        if circle.role == "end":
            canvas.put(*plot.cell(circle.centre), signs.signs["end"], "bar")
    pipes.paint(canvas, signs)
    _before(canvas, plot, signs, pipes)
    lengths(canvas, plot, signs)
    for mark in scene.marks:
        sign(canvas, plot, mark, signs)
    for label in scene.labels:
        if label.role == "bar":
            letter(canvas, plot, label, pipes)
        else:
            plane_name(canvas, plot, label)
    canvas.write(plot.left, plot.top - 1, scene.title[: max(plot.right - plot.left + 3, 5)], "title")


def _behind(canvas: Canvas, plot: Plot, signs: Glyphs) -> None:
    """What bars are drawn over: the limit box, foam and ballast."""
    for shape in plot.scene.shapes:
        if shape.role == "limit":
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
    for stroke in plot.scene.strokes:
        if stroke.role != "bar":
            line(canvas, plot, stroke, signs)
    for circle in plot.scene.circles:
        if circle.role == "propeller":
            ring(canvas, plot, circle, signs)
