"""Dimension lines: a tick at each end, and the text on the line with a space on each side."""

from model.drawing.scene import Dimension
from tui.raster.canvas import Canvas
from tui.raster.glyphs import DOWN, LEFT, RIGHT, UP, Glyphs
from tui.raster.layout import Plot

ROLE = "dimension"


def lengths(canvas: Canvas, plot: Plot, glyphs: Glyphs) -> None:
    """All dimensions of a view for which there is a lane."""
    for item in plot.scene.dimensions:
        lane = plot.lanes[item.axis].get(item.lane)
        if lane is not None:
            (_across if item.axis == "u" else _upright)(canvas, plot, item, lane, glyphs.thin)


def _across(canvas: Canvas, plot: Plot, item: Dimension, row: int, thin: str) -> None:
    start, end = plot.column(item.start), plot.column(item.end)
    if start == end:
        return
    canvas.run(start + 1, end - 1, row, (thin[LEFT | RIGHT], ROLE))
    for column, arms in ((start, RIGHT), (end, LEFT)):
        joined = LEFT | RIGHT if canvas.role(column, row) == ROLE else arms
        canvas.put(column, row, thin[joined | UP | DOWN], ROLE)
    room = end - start - 1
    text = f" {item.text} " if len(item.text) + 2 <= room else item.text
    if len(text) <= room:
        canvas.write(start + 1 + (room - len(text)) // 2, row, text, ROLE)


def _upright(canvas: Canvas, plot: Plot, item: Dimension, column: int, thin: str) -> None:
    bottom, top = plot.row(item.start), plot.row(item.end)
    if bottom == top:
        return
    for row in range(top + 1, bottom):
        canvas.put(column, row, thin[UP | DOWN], ROLE)
    for row, arms in ((top, DOWN), (bottom, UP)):
        joined = UP | DOWN if canvas.role(column, row) == ROLE else arms
        canvas.put(column, row, thin[joined | LEFT | RIGHT], ROLE)
    if bottom - top >= 2:
        canvas.write(column - len(item.text) // 2, (top + bottom) // 2, item.text, ROLE)
