"""How a body is looked at: the directions of the sheet in body axes, and the outlines of solids.

The views follow the glass-box rule of ISO 5456-2 and ASME Y14.3 (both from memory): the sheet
lies between the viewer and the vehicle.  The front view looks aft at the bow, so port, at the
vehicle's left hand, is on the viewer's right.
"""

from collections.abc import Iterable
from functools import lru_cache
from math import cos, pi, radians, sin

from msgspec import Struct

from model.drawing.scene import Point
from model.parts import Cylinder, Solid
from model.vectors import Vector, cross, dot, norm, scale, sub

MM = 1000.0
"""Millimetres in a metre."""
RIM, COARSE_RIM = 24, 8
"""Points on the rim of a round solid that is seen at an angle: on paper, and on a screen of cells."""
QUARTERS = (
    "the bow",
    "bow and port",
    "port",
    "stern and port",
    "the stern",
    "stern and starboard",
    "starboard",
    "bow and starboard",
)


class Projection(Struct, frozen=True):
    """A parallel projection: the unit directions right, up and towards the viewer in body axes."""

    name: str
    title: str
    right: Vector
    up: Vector
    towards: Vector

    def point(self, at: Vector) -> Point:
        """Where a point [m] lies on the sheet [mm]."""
        x, y, z = at
        a, b, c = self.right
        d, e, f = self.up
        return (x * a + y * b + z * c) * MM, (x * d + y * e + z * f) * MM

    def depth(self, at: Vector) -> float:
        """How far a point [m] lies towards the viewer [mm]."""
        return dot(at, self.towards) * MM

    def heading(self, direction: Vector) -> tuple[int, int]:
        """A direction on the sheet: to the right and up as -1, 0 or 1."""
        return _sign(dot(direction, self.right)), _sign(dot(direction, self.up))


FRONT = Projection("front", "Front: port on the right", (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
TOP = Projection("top", "Top: bow at the bottom", (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
SIDE = Projection(
    "side", "Side, from port: bow on the left", (-1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0)
)
VIEWS: dict[str, Projection] = {"front": FRONT, "top": TOP, "side": SIDE}


def oblique(azimuth: float, elevation: float) -> Projection:
    """A view from anywhere.

    Args:
        azimuth: where the viewer stands, from the bow round to port [deg]; 0 looks at the bow.
        elevation: how far above the level plane the viewer stands [deg], -90 to 90.

    >>> oblique(0, 0).right
    (0.0, 1.0, 0.0)
    """
    turn, lift = radians(azimuth), radians(elevation)
    towards = (cos(lift) * cos(turn), cos(lift) * sin(turn), sin(lift))
    right = (-sin(turn) + 0.0, cos(turn), 0.0)
    title = f"Oblique: seen from {_quarter(azimuth)}, {abs(elevation):.0f} deg {_height(elevation)}"
    return Projection("oblique", title, right, cross(towards, right), towards)


def outline(solid: Solid, view: Projection, rim: int = RIM) -> tuple[Point, ...]:
    """The outline of a solid as a convex polygon on the sheet [mm]; ``rim`` points to a circle, even."""
    if isinstance(solid, Cylinder):
        return _round_outline(solid, view, rim)
    low, high = solid.box.low, solid.box.high
    corners = [(x, y, z) for x in (low[0], high[0]) for y in (low[1], high[1]) for z in (low[2], high[2])]
    return hull(view.point(corner) for corner in corners)


def hull(points: Iterable[Point]) -> tuple[Point, ...]:
    """The convex polygon around some points, against the clock (Andrew's monotone chain, 1979)."""
    found = sorted({(round(u, 6), round(v, 6)) for u, v in points})
    if len(found) < 3:
        return tuple(found)
    return (*_chain(found), *_chain(found[::-1]))


def _chain(points: list[Point]) -> list[Point]:
    kept: list[Point] = []
    for point in points:
        while len(kept) > 1 and _turn(kept[-2], kept[-1], point) <= 0:
            kept.pop()
        kept.append(point)
    return kept[:-1]


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _round_outline(solid: Cylinder, view: Projection, rim: int) -> tuple[Point, ...]:
    """Half a rim around each end: seen from anywhere, the sides of a cylinder touch its rims square on."""
    axis = sub(solid.end, solid.start)
    along = scale(axis, 1 / (norm(axis) or 1.0))
    square = cross(along, view.towards)
    tilt = norm(square)
    side = view.point(scale(square, solid.radius / tilt) if tilt > 1e-9 else scale(view.right, solid.radius))
    start, end = view.point(solid.start), view.point(solid.end)
    lean = abs(dot(along, view.towards))
    if lean < 1e-9:
        return _plus(start, side), _plus(end, side), _minus(end, side), _minus(start, side)
    rise = (side[1] * lean, -side[0] * lean)
    outward = rise[0] * (end[0] - start[0]) + rise[1] * (end[1] - start[1]) >= 0
    first, last = (end, start) if outward else (start, end)
    half = rim // 2 + 1
    centres = [first] * half + [last] * half
    return tuple(
        (u + cosine * side[0] + sine * rise[0], v + cosine * side[1] + sine * rise[1])
        for (u, v), (cosine, sine) in zip(centres, _turns(rim), strict=True)
    )


@lru_cache(maxsize=4)
def _turns(rim: int) -> tuple[Point, ...]:
    """Round a rim of radius 1 in two halves, the points where they part in both."""
    halves = (*range(rim // 2 + 1), *range(rim // 2, rim + 1))
    return tuple((cos(2 * pi * k / rim), sin(2 * pi * k / rim)) for k in halves)


def _plus(a: Point, b: Point) -> Point:
    return a[0] + b[0], a[1] + b[1]


def _minus(a: Point, b: Point) -> Point:
    return a[0] - b[0], a[1] - b[1]


def _sign(value: float) -> int:
    return 0 if abs(value) < 1e-6 else (1 if value > 0 else -1)


def _quarter(azimuth: float) -> str:
    return QUARTERS[round(azimuth % 360 / 45) % 8]


def _height(elevation: float) -> str:
    return "below" if elevation < 0 else "above"
