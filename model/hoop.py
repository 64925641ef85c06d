"""The smallest hoop and the smallest gate that the front view passes through.

The smallest circle round some points: Welzl, Smallest enclosing disks, 1991.  Discs are taken in
exactly: their furthest points from the centre found so far join the points until nothing sticks out.
"""

from collections.abc import Iterable, Iterator
from math import dist, hypot
from random import Random

from msgspec import Struct

from model.parts import Part
from model.silhouette import Outline, outline
from model.silhouette.outline import VIEWS

Point = tuple[float, float]
NEAR = 1e-9
"""[m] What sticks out by less than this does not."""
ROUNDS_MOST = 200


class Hoop(Struct, frozen=True):
    """A circle in the front view: its centre, to port and up, and its diameter [m]."""

    centre: Point
    diameter: float


def smallest_hoop(parts: Iterable[Part]) -> Hoop | None:
    """The smallest hoop that all parts pass through, driven straight ahead; None where there are none."""
    shapes = list(_front(parts))
    if not shapes:
        return None
    points = {shape.start for shape in shapes}
    centre, radius = smallest_circle(points)
    for _ in range(ROUNDS_MOST):
        far = {_furthest(shape, centre) for shape in shapes}
        outside = {point for point in far if dist(point, centre) > radius + NEAR}
        if not outside:
            break
        points |= outside
        centre, radius = smallest_circle(points)
    return Hoop(centre, 2 * radius)


def smallest_gate(parts: Iterable[Part]) -> Point | None:
    """Width and height [m] of the smallest upright gate; None where there are no parts."""
    boxes = [box for part in parts if (box := part.box)]
    if not boxes:
        return None
    width, height = (
        max(box.high[axis] for box in boxes) - min(box.low[axis] for box in boxes) for axis in (1, 2)
    )
    return width, height


def _front(parts: Iterable[Part]) -> Iterator[Outline]:
    return iter({outline(solid, VIEWS["front"]) for part in parts for solid in part.solids})


def _furthest(shape: Outline, centre: Point) -> Point:
    """The point of an outline that lies furthest from a centre."""
    if shape.is_disc:
        u, v = shape.start
        away = dist(shape.start, centre)
        radius = shape.a**0.5
        if away < NEAR:
            return u + radius, v
        return u + (u - centre[0]) / away * radius, v + (v - centre[1]) / away * radius
    return max(shape.points(), key=lambda point: dist(point, centre))


def smallest_circle(points: Iterable[Point]) -> tuple[Point, float]:
    """Centre and radius of the smallest circle round some points.

    >>> smallest_circle([(0.0, 0.0), (2.0, 0.0), (1.0, 0.5)])
    ((1.0, 0.0), 1.0)
    """
    listed = sorted(points)
    Random(1).shuffle(listed)  # any order will do; this one takes linear time on average
    centre, radius = listed[0], 0.0
    for number, point in enumerate(listed):
        if not _holds(centre, radius, point):
            centre, radius = _through_one(listed[:number], point)
    return centre, radius


def _holds(centre: Point, radius: float, point: Point) -> bool:
    return dist(centre, point) <= radius * (1 + 1e-12) + 1e-15


def _through_one(points: list[Point], on: Point) -> tuple[Point, float]:
    """The smallest circle round some points that goes through another."""
    centre, radius = on, 0.0
    for number, point in enumerate(points):
        if not _holds(centre, radius, point):
            centre, radius = _through_two(points[:number], on, point)
    return centre, radius


def _through_two(points: list[Point], first: Point, second: Point) -> tuple[Point, float]:
    """The smallest circle round some points that goes through two others."""
    centre = (first[0] + second[0]) / 2, (first[1] + second[1]) / 2
    radius = dist(first, second) / 2
    for point in points:
        if not _holds(centre, radius, point):
            centre = _circumcentre(first, second, point)
            radius = dist(centre, point)
    return centre, radius


def _circumcentre(a: Point, b: Point, c: Point) -> Point:
    """The centre of the circle through three points that do not lie in one line."""
    (bx, by), (cx, cy) = (b[0] - a[0], b[1] - a[1]), (c[0] - a[0], c[1] - a[1])
    twice = 2 * (bx * cy - by * cx)
    if abs(twice) < 1e-18:  # in one line: the outermost two decide
        ends = max(((a, b), (a, c), (b, c)), key=lambda pair: dist(*pair))
        return (ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2
    b2, c2 = hypot(bx, by) ** 2, hypot(cx, cy) ** 2
    return a[0] + (cy * b2 - by * c2) / twice, a[1] + (bx * c2 - cx * b2) / twice
