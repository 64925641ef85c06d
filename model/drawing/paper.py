"""Where the views of a sheet lie on paper, and in which scale."""

from msgspec import Struct

from model.drawing.scene import Point, Scene, Sheet

WIDTH, HEIGHT = 297.0, 210.0
"""[mm] A4 across (ISO 216)."""
EDGE, GAP, TITLE = 10.0, 14.0, 7.0
"""[mm] Around the sheet, between views, and above a view for its title."""
FIRST_LANE, NEXT_LANE = 10.0, 8.0
"""[mm] From a view to its nearest dimension line, and from that to the next (common practice)."""
FOOT = 16.0
"""[mm] Below the views for the cut list, the name of the sheet and the scale."""
REDUCTIONS = (1, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 50, 100, 200)
"""Whole numbers that a scale of 1:n may have: 1, 2, 5, 10, ... are those of ISO 5455 (from memory), the
others lie between so that the page is filled."""


class Panel(Struct, frozen=True):
    """A view on paper: where its lowest left corner lies, y down, and its scale."""

    scene: Scene
    left: float
    bottom: float
    scale: float
    room: float
    """[mm] Width that its title may take."""

    def at(self, point: Point) -> Point:
        """Where a point of the scene lies on the paper [mm]."""
        return self.x(point[0]), self.y(point[1])

    def x(self, u: float) -> float:
        """Where a place along u lies, from the left edge of the paper [mm]."""
        return self.left + (u - self.scene.low[0]) * self.scale

    def y(self, v: float) -> float:
        """Where a place along v lies, from the top of the paper [mm]."""
        return self.bottom - (v - self.scene.low[1]) * self.scale


def panels(sheet: Sheet, size: Point = (WIDTH, HEIGHT)) -> tuple[list[Panel], float]:
    """The views in their places on a paper of a size [mm], and the largest scale in which they all fit."""
    columns = max(place.column for place in sheet.places) + 1
    rows = max(place.row for place in sheet.places) + 1
    wide = [max(_size(p.scene, 0) for p in sheet.places if p.column == k) for k in range(columns)]
    tall = [max(_size(p.scene, 1) for p in sheet.places if p.row == k) for k in range(rows)]
    before = [max(_lanes(p.scene, "v") for p in sheet.places if p.column == k) for k in range(columns)]
    after = [max(_lanes(p.scene, "u") for p in sheet.places if p.row == k) for k in range(rows)]
    room = size[0] - 2 * EDGE - sum(before) - GAP * (columns - 1)
    space = size[1] - 2 * EDGE - FOOT - sum(after) - TITLE * rows - GAP / 2 * (rows - 1)
    fitting = (n for n in REDUCTIONS if sum(wide) <= room * n and sum(tall) <= space * n)
    scale = 1 / next(fitting, REDUCTIONS[-1])
    spare = (room - sum(wide) * scale) / 2
    found = []
    for place in sheet.places:
        k, n = place.column, place.row
        left = EDGE + max(spare, 0.0) + sum(before[: k + 1]) + (GAP * k) + sum(wide[:k]) * scale
        bottom = EDGE + TITLE * (n + 1) + GAP / 2 * n + sum(after[:n]) + sum(tall[: n + 1]) * scale
        left += (wide[k] - _size(place.scene, 0)) * scale / 2
        bottom -= (tall[n] - _size(place.scene, 1)) * scale / 2
        found.append(Panel(place.scene, left, bottom, scale, wide[k] * scale + GAP))
    return found, scale


def lane(number: int) -> float:
    """How far a lane of dimensions lies from its view [mm]."""
    return FIRST_LANE + NEXT_LANE * (number - 1)


def _size(scene: Scene, axis: int) -> float:
    return scene.high[axis] - scene.low[axis]


def _lanes(scene: Scene, axis: str) -> float:
    """The room that the dimensions along an axis take [mm]."""
    found = [item.lane for item in scene.dimensions if item.axis == axis]
    return lane(max(found)) + 2 if found else 0.0
