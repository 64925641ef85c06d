"""A plot of designs by two measures, in letters: small and grey ones for those that another beats."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.raster.canvas import Canvas, Row

if TYPE_CHECKING:
    from model.drawing.trade import Axis, Trade

MANY = "+"
"""Where more than one design stands in a cell."""
BEATEN = "beaten"
"""The role of a design that another beats."""


def scatter(plot: Trade, width: int, height: int) -> list[Row]:
    """The plot as rows of text, axes and their numbers included; what is beaten has the role BEATEN.

    Args:
        width, height: columns and rows for the dots.
    """
    canvas = Canvas(width, height)
    for dot in plot.dots:
        row, column = height - 1 - _cell(plot.up, dot.up, height), _cell(plot.across, dot.across, width)
        if canvas.glyph(column, row):
            canvas.put(column, row, MANY, "")
        else:
            canvas.put(column, row, dot.sign, BEATEN if dot.beaten_by else "")
    margin = max(len(plot.up.text(mark)) for mark in plot.up.marks)
    marked = {height - 1 - _cell(plot.up, mark, height): plot.up.text(mark) for mark in plot.up.marks}
    rows: list[Row] = [[(plot.up.words, "")]]
    for number, cells in enumerate(canvas.rows()):
        rows.append([(f"{marked.get(number, ''):>{margin}} |", ""), *cells])
    rows.append([(f"{'':>{margin}} +{'-' * width}", "")])
    rows.append([(_numbers(plot.across, width, margin + 2), "")])
    rows.append([(f"{'':>{margin}}  {plot.across.words:>{width}}", "")])
    return rows


def _cell(axis: Axis, value: float, count: int) -> int:
    return round(axis.share(value) * (count - 1))


def _numbers(axis: Axis, width: int, margin: int) -> str:
    """The numbers under the axis, each with its middle under its place; those without room are left out."""
    line = ""
    for mark in axis.marks:
        text = axis.text(mark)
        start = margin + _cell(axis, mark, width) - len(text) // 2
        if start > len(line) or not line:
            line = line.ljust(start) + text
    return line
