"""Where the views of a sheet lie in the cells, and how much of their dimensions there is room for."""

from collections.abc import Iterator
from itertools import accumulate

from msgspec import Struct

from model.drawing.scene import Dimension, Place, Point, Scene, Sheet
from tui.raster.axis import Axis

GAP = 3
"""Columns between two views."""
LEAST = (14, 5)
"""Columns and rows below which a view gives up its dimensions."""
LANES: tuple[tuple[int, ...], ...] = ((1, 2), (2,), ())
"""Lanes of dimensions to try, from all of them to none."""


class Plot(Struct, frozen=True, dict=True):
    """A view in its place: the cell of its lowest left corner, and its two axes."""

    scene: Scene
    left: int
    top: int
    across: Axis
    upward: Axis
    lanes: dict[str, dict[int, int]]
    """For dimensions along u the row of each lane, for those along v the column."""

    @property
    def bottom(self) -> int:
        """The lowest row of the view."""
        return self.top + self.upward.last

    @property
    def right(self) -> int:
        """The rightmost column of the view."""
        return self.left + self.across.last

    def column(self, u: float) -> int:
        """The column of a place along u [mm]."""
        return self.left + self.across.cell(u)

    def row(self, v: float) -> int:
        """The row of a place along v [mm]."""
        return self.bottom - self.upward.cell(v)

    def cell(self, point: Point) -> tuple[int, int]:
        """The column and the row of a point."""
        across, upward = self.across, self.upward
        return self.left + across.cell(point[0]), self.top + upward.last - upward.cell(point[1])

    def block(self, low: Point, high: Point) -> tuple[int, int, int, int]:
        """The columns and the rows, first and last, that an upright rectangle covers."""
        first, last = self.across.inside(low[0], high[0])
        floor, roof = self.upward.inside(low[1], high[1])
        return self.left + first, self.left + last, self.bottom - roof, self.bottom - floor


class Strip(Struct, frozen=True, dict=True):
    """The views of one column or one row of the sheet: their common span and their margins in cells."""

    low: float
    high: float
    keep: tuple[float, ...]
    before: int
    after: int

    @property
    def length(self) -> float:
        """The span [mm], never quite nothing."""
        return max(self.high - self.low, 1.0)

    def cells(self, scale: float) -> int:
        """How many cells the span takes."""
        return round(self.length * scale) + 1


def plots(sheet: Sheet, width: int, height: int) -> list[Plot]:
    """The views in their places, in as large a scale as fits."""
    for lanes in LANES:
        columns = _columns(_grouped(sheet, by_column=True), lanes)
        rows = [_row(group, lanes) for group in _grouped(sheet, by_column=False)]
        scale = _scale(columns, rows, width, height)
        wide = [strip.cells(scale) for strip in columns]
        tall = [strip.cells(scale / 2) for strip in rows]
        if not lanes or (max(wide) >= LEAST[0] and max(tall) >= LEAST[1]):
            break
    wide = _widened(columns, wide, width)
    tall = _widened(rows, tall, height)
    return list(_placed(sheet, lanes, columns, rows, wide, tall, scale, width))


def _placed(
    sheet: Sheet,
    lanes: tuple[int, ...],
    columns: list[Strip],
    rows: list[Strip],
    wide: list[int],
    tall: list[int],
    scale: float,
    width: int,
) -> Iterator[Plot]:
    across = [Axis(c.low, c.high, n, c.keep, scale) for c, n in zip(columns, wide, strict=True)]
    upward = [Axis(r.low, r.high, n, r.keep, scale / 2) for r, n in zip(rows, tall, strict=True)]
    spare = width - _total(columns, wide)
    lefts = [spare // 2 + start for start in _starts(columns, wide)]
    tops = _starts(rows, tall)
    for place in sheet.places:
        left, top = lefts[place.column], tops[place.row]
        bottom = top + tall[place.row] - 1
        yield Plot(
            place.scene,
            left,
            top,
            across[place.column],
            upward[place.row],
            {"u": _lane_rows(place.scene, lanes, bottom), "v": _lane_columns(place.scene, lanes, left)},
        )


def _grouped(sheet: Sheet, *, by_column: bool) -> list[list[Scene]]:
    def key(place: Place) -> int:
        return place.column if by_column else place.row

    count = max(key(place) for place in sheet.places) + 1
    return [[place.scene for place in sheet.places if key(place) == k] for k in range(count)]


def _columns(groups: list[list[Scene]], lanes: tuple[int, ...]) -> list[Strip]:
    gaps = [GAP] * (len(groups) - 1) + [0]
    margins = [max(sum(_lane_widths(scene, lanes).values()) for scene in group) for group in groups]
    return [_strip(group, 0, margin, gap) for group, margin, gap in zip(groups, margins, gaps, strict=True)]


def _row(scenes: list[Scene], lanes: tuple[int, ...]) -> Strip:
    below = max(len({item.lane for item in _of(scene, "u", lanes)}) for scene in scenes)
    return _strip(scenes, 1, 1, below)


def _strip(scenes: list[Scene], axis: int, before: int, after: int) -> Strip:
    low = min(scene.low[axis] for scene in scenes)
    high = max(scene.high[axis] for scene in scenes)
    keep = {round(at[axis], 2) for scene in scenes for at, _ in scene.joints}
    keep |= {round(at[axis], 2) for scene in scenes for at, _ in scene.crossings}
    edges = [shape.box for scene in scenes for shape in scene.shapes if shape.role in ("limit", "gate")]
    keep |= {round(corner[axis], 2) for box in edges for corner in box}
    return Strip(low, high, tuple(keep), before, after)


def _scale(columns: list[Strip], rows: list[Strip], width: int, height: int) -> float:
    """Cells across to a millimetre; half as many fit up, for cells are twice as high as wide."""
    room = width - sum(strip.before + strip.after + 1 for strip in columns)
    space = height - sum(strip.before + strip.after + 1 for strip in rows)
    across = room / sum(strip.length for strip in columns)
    upward = 2 * space / sum(strip.length for strip in rows)
    return max(min(across, upward), 0.0)


def _widened(strips: list[Strip], cells: list[int], room: int) -> list[int]:
    """More cells for a strip whose planes lie closer than two cells, while there is room."""
    spare = room - _total(strips, cells)
    widened = []
    for strip, here in zip(strips, cells, strict=True):
        more = min(max(2 * len(strip.keep) - 1 - here, 0), max(spare, 0))
        spare -= more
        widened.append(here + more)
    return widened


def _total(strips: list[Strip], cells: list[int]) -> int:
    return sum(cells) + sum(strip.before + strip.after for strip in strips)


def _starts(strips: list[Strip], cells: list[int]) -> list[int]:
    ends = [0, *accumulate(s.before + n + s.after for s, n in zip(strips, cells, strict=True))]
    return [end + strip.before for end, strip in zip(ends, strips, strict=False)]


def _of(scene: Scene, axis: str, lanes: tuple[int, ...]) -> list[Dimension]:
    return [item for item in scene.dimensions if item.axis == axis and item.lane in lanes]


def _lane_widths(scene: Scene, lanes: tuple[int, ...]) -> dict[int, int]:
    """The columns that each lane of upright dimensions takes, a space included."""
    widths: dict[int, int] = {}
    for item in _of(scene, "v", lanes):
        widths[item.lane] = max(widths.get(item.lane, 0), len(item.text) + 1)
    return dict(sorted(widths.items()))


def _lane_columns(scene: Scene, lanes: tuple[int, ...], left: int) -> dict[int, int]:
    columns = {}
    for lane, wide in _lane_widths(scene, lanes).items():
        columns[lane] = left - 1 - wide // 2
        left -= wide
    return columns


def _lane_rows(scene: Scene, lanes: tuple[int, ...], bottom: int) -> dict[int, int]:
    found = sorted({item.lane for item in _of(scene, "u", lanes)})
    return {lane: bottom + number for number, lane in enumerate(found, 1)}
