"""From a cell back to what stands in it: what a click on the drawing means."""

from collections.abc import Iterator

from model.drawing.scene import About, Scene, Stroke
from tui.raster.layout import Plot

REACH = 2
"""Columns from a crossing within which a click means it; half as many rows."""
ON_TOP = ("thruster", "hook", "camera", "attachment")
"""Shapes that are drawn over bars; floats and ballast lie behind them."""


def thing_at(plots: list[Plot], column: int, row: int) -> About | None:
    """The kind and id of what is drawn in a cell, the topmost where there are several."""
    for plot in plots:
        if plot.left - 1 <= column <= plot.right + 1 and plot.top <= row <= plot.bottom:
            for about in _candidates(plot, column, row):
                return about
    return None


def crossing_at(plots: list[Plot], column: int, row: int) -> tuple[str, tuple[str, str, str]] | None:
    """The view, and the crossing of planes nearest to a cell of it, if one is near."""
    for plot in plots:
        cells = [(plot.cell(point), planes) for point, planes in plot.scene.crossings]
        near = [
            (abs(place - column) + 2 * abs(line - row), planes)
            for (place, line), planes in cells
            if abs(place - column) <= REACH and abs(line - row) <= REACH // 2
        ]
        if near:
            return plot.scene.name, min(near)[1]
    return None


def _candidates(plot: Plot, column: int, row: int) -> Iterator[About]:
    """What is in a cell, the topmost first: signs, joints, equipment, bars, and what lies behind them."""
    scene = plot.scene
    signs = [(mark.at, mark.about) for mark in scene.marks]
    for at, about in (*reversed(signs), *reversed(scene.joints)):
        if about is not None and plot.cell(at) == (column, row):
            yield about
    shapes = list(_shapes(plot, scene, column, row))
    yield from (about for role, about in shapes if role in ON_TOP)
    for stroke in reversed(scene.strokes):
        if stroke.role == "bar" and stroke.about is not None and _runs_through(plot, stroke, column, row):
            yield stroke.about
    yield from (about for role, about in shapes if role not in ON_TOP)


def _shapes(plot: Plot, scene: Scene, column: int, row: int) -> Iterator[tuple[str, About]]:
    for shape in reversed(scene.shapes):
        if shape.about is not None:
            left, right, top, bottom = plot.block(*shape.box)
            if left <= column <= right and top <= row <= bottom:
                yield shape.role, shape.about


def _runs_through(plot: Plot, stroke: Stroke, column: int, row: int) -> bool:
    """Whether a bar's line comes within half a cell of the middle of a cell."""
    (c0, r0), (c1, r1) = (plot.cell(point) for point in stroke.points)
    if not (min(c0, c1) <= column <= max(c0, c1) and min(r0, r1) <= row <= max(r0, r1)):
        return False
    off = abs((c1 - c0) * (row - r0) - (r1 - r0) * (column - c0))
    return off <= max(abs(c1 - c0), abs(r1 - r0)) / 2
