"""A whole panel of rows: one view, or all of them with the oblique one beside, and the legend below."""

from model.drawing.scene import About, Scene, Sheet
from tui.raster.braille import oblique_canvas, oblique_rows
from tui.raster.canvas import Canvas, Row
from tui.raster.layout import GAP, Plot, plots
from tui.raster.legend import legend_rows, sheet_legend
from tui.raster.orthographic import draw_sheet
from tui.raster.pick import crossing_at, thing_at

LEGEND_SHARE, LEGEND_MOST = 6, 4
"""One row of legend for so many rows of the panel, and no more than this."""
LEAST_OBLIQUE = (24, 8)
"""Columns and rows below which the oblique view is left off a sheet."""

Corner = tuple[int, int, int, int]
"""Left, top, width and height in cells."""


def sheet_panel(
    sheet: Sheet, width: int, height: int, *, ascii: bool = False, beside: Scene | None = None
) -> list[Row]:
    """A sheet with its legend in so many rows; ``beside`` is a view for the corner that three leave free."""
    legend = _legend(sheet, width, height, ascii)
    canvas = Canvas(width, height - len(legend))
    placed = draw_sheet(canvas, sheet, ascii=ascii)
    if beside is not None:
        left, top, wide, tall = free_corner(placed, canvas)
        if wide >= LEAST_OBLIQUE[0] and tall >= LEAST_OBLIQUE[1]:
            canvas.lay(oblique_canvas(beside, wide, tall, ascii=ascii), left, top)
    return [*canvas.rows(), *legend]


def oblique_panel(scene: Scene, width: int, height: int, *, ascii: bool = False) -> list[Row]:
    """The oblique view with its legend in so many rows."""
    legend = legend_rows(scene.legend, width, _legend_most(height), ascii=ascii)
    return [*oblique_rows(scene, width, height - len(legend), ascii=ascii), *legend]


def free_corner(placed: list[Plot], canvas: Canvas) -> Corner:
    """The corner that front, top and side leave free: upper right in third angle, lower left in first."""
    view = {plot.scene.name: plot for plot in placed}
    front, top, side = view["front"], view["top"], view["side"]
    if top.top < front.top:
        left = front.right + GAP
        return left, 0, canvas.width - left, side.top - 2
    floor = side.bottom + len(side.lanes["u"]) + 2
    return 0, floor, top.left - GAP, canvas.height - floor


def picked(sheet: Sheet, width: int, height: int, column: int, row: int) -> About | None:
    """What stands in a cell of a sheet's panel, or None."""
    legend = _legend(sheet, width, height, False)
    return thing_at(plots(sheet, width, height - len(legend)), column, row)


def crossing(
    sheet: Sheet, width: int, height: int, column: int, row: int
) -> tuple[str, tuple[str, str, str]] | None:
    """The view and the crossing of planes near a cell of a sheet's panel, or None."""
    legend = _legend(sheet, width, height, False)
    return crossing_at(plots(sheet, width, height - len(legend)), column, row)


def _legend(sheet: Sheet, width: int, height: int, ascii: bool) -> list[Row]:
    return legend_rows(sheet_legend(sheet), width, _legend_most(height), ascii=ascii)


def _legend_most(height: int) -> int:
    return min(height // LEGEND_SHARE, LEGEND_MOST)
