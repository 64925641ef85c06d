"""A plot of designs by two measures, in letters: large for a design, small for one that another beats."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from model.drawing.trade import Axis, Trade

MANY = "+"
"""Where more than one design stands in a cell."""


def scatter(plot: Trade, width: int, height: int) -> list[str]:
    """The plot as lines of text, axes and their numbers included.

    Args:
        width, height: columns and rows for the dots.
    """
    cells = [[" "] * width for _ in range(height)]
    for dot in plot.dots:
        row, column = height - 1 - _cell(plot.up, dot.up, height), _cell(plot.across, dot.across, width)
        letter = dot.letter.lower() if dot.beaten_by else dot.letter
        cells[row][column] = letter if cells[row][column] == " " else MANY
    margin = max(len(plot.up.text(mark)) for mark in plot.up.marks)
    marked = {height - 1 - _cell(plot.up, mark, height): plot.up.text(mark) for mark in plot.up.marks}
    lines = [plot.up.words]
    for number, row in enumerate(cells):
        lines.append(f"{marked.get(number, ''):>{margin}} |{''.join(row)}".rstrip())
    lines.append(f"{'':>{margin}} +{'-' * width}")
    lines.append(_numbers(plot.across, width, margin + 2))
    lines.append(f"{'':>{margin}}  {plot.across.words:>{width}}")
    return lines


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
