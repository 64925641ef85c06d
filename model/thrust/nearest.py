"""The least distance between two round or box-shaped solids, flat ends and all.

Both are convex, so projecting a point from one to the other and back comes to the nearest pair
(alternating projections: Cheney and Goldstein 1959); nearly parallel pipes would take thousands of
rounds, so each starts a little ahead (Beck and Teboulle 2009, with the restart of O'Donoghue and
Candes 2015; all three from memory).  Two planes that keep the solids apart prove how near it is.
"""

from math import sqrt

from model.parts import Block, Cylinder, Solid
from model.vectors import Vector, add, between, dot, norm, scale, sub

ROUNDS = 300
"""Projections there and back at most."""
CLOSE = 1e-6
"""[m] How far off the distance may be."""


def gap(a: Solid, b: Solid) -> float:
    """The least distance [m] between two solids; 0 where they touch or share room.

    To a micrometre, and to a fiftieth of a millimetre where wide ends face each other nearly level.
    """
    last = ahead = min(_beginnings(a, b), key=lambda point: _from(a, point))
    pace, at_least, apart = 1.0, 0.0, 0.0
    for _ in range(ROUNDS):
        there = nearest(a, ahead)
        here = nearest(b, there)
        across = sub(here, nearest(a, here))
        apart = norm(across)
        if apart < CLOSE:
            return 0.0
        at_least = max(at_least, _kept_apart(a, b, scale(across, 1 / apart)))
        if apart - at_least < CLOSE:
            return apart
        step = sub(here, last)
        if dot(sub(ahead, there), step) > 0:  # overshot
            pace = 1.0
        quicker = (1 + sqrt(1 + 4 * pace * pace)) / 2
        last, ahead, pace = here, add(here, scale(step, (pace - 1) / quicker)), quicker
    return apart


def _beginnings(a: Solid, b: Solid) -> list[Vector]:
    """Points of b to begin from: nearly parallel pipes come nearest at an end of one of them."""
    ends = [b.start, b.end] if isinstance(b, Cylinder) else []
    if isinstance(a, Cylinder):
        ends += [nearest(b, a.start), nearest(b, a.end)]
    return [middle(b), *ends]


def _from(solid: Solid, point: Vector) -> float:
    return norm(sub(point, nearest(solid, point)))


def _kept_apart(a: Solid, b: Solid, along: Vector) -> float:
    """How far apart [m] the planes across a direction stand that touch a from above and b from below."""
    return _lowest(b, along) + _lowest(a, scale(along, -1.0))


def _lowest(solid: Solid, along: Vector) -> float:
    """How far [m] along a direction a solid begins."""
    if isinstance(solid, Block):
        half = sum(abs(part) * size for part, size in zip(along, solid.size, strict=True)) / 2
        return dot(along, solid.centre) - half
    axis = sub(solid.end, solid.start)
    square, rise = dot(axis, axis), dot(along, axis)
    across = sqrt(max(0.0, 1 - rise * rise / square)) if square else 1.0
    return dot(along, solid.start) + min(0.0, rise) - solid.radius * across


def middle(solid: Solid) -> Vector:
    """The middle of a solid [m]."""
    return solid.centre if isinstance(solid, Block) else between(solid.start, solid.end, 0.5)


def reach(solid: Solid) -> float:
    """Radius [m] of the ball about its middle that holds a solid."""
    if isinstance(solid, Block):
        return norm(solid.size) / 2
    return float((solid.length**2 / 4 + solid.radius**2) ** 0.5)


def nearest(solid: Solid, point: Vector) -> Vector:
    """The point of a solid that lies nearest to a point [m]."""
    if isinstance(solid, Block):
        (x, y, z), (a, b, c) = solid.centre, solid.size
        return (
            min(max(point[0], x - a / 2), x + a / 2),
            min(max(point[1], y - b / 2), y + b / 2),
            min(max(point[2], z - c / 2), z + c / 2),
        )
    return _in_cylinder(solid, point)


def _in_cylinder(solid: Cylinder, point: Vector) -> Vector:
    axis = sub(solid.end, solid.start)
    square = dot(axis, axis)
    from_start = sub(point, solid.start)
    share = dot(from_start, axis) / square if square else 0.0
    out = sub(from_start, scale(axis, share))
    distance = norm(out)
    on_axis = add(solid.start, scale(axis, min(1.0, max(0.0, share))))
    if distance <= solid.radius:
        return add(on_axis, out)
    return add(on_axis, scale(out, solid.radius / distance))
