"""The least distance between two round or box-shaped solids, flat ends and all.

Both are convex, so projecting a point from one to the other and back comes to the nearest pair
(alternating projections: Cheney and Goldstein 1959, from memory).
"""

from math import sqrt

from model.parts import Block, Cylinder, Solid
from model.vectors import Vector, add, between, dot, norm, scale, sub

ROUNDS = 300
"""Projections at most."""
CLOSE = 1e-6
"""[m] A point that moves less than this has come to rest."""
SECTION = (sqrt(5) - 1) / 2
NARROWINGS = 22
"""Golden sections of a line: to a 40,000th of its length."""


def gap(a: Solid, b: Solid) -> float:
    """The least distance [m] between two solids; 0 where they touch or share room.

    Where the point of b's axis that lies nearest to a is not one of its ends, the nearest pair lies on
    b's round side; only else are both projected on each other.
    """
    if isinstance(b, Cylinder):
        share = _nearest_share(a, b)
        if 1e-3 < share < 1 - 1e-3:
            on_axis = between(b.start, b.end, share)
            return max(0.0, norm(sub(on_axis, nearest(a, on_axis))) - b.radius)
    return _projected(a, b)


def _nearest_share(a: Solid, b: Cylinder) -> float:
    """Where on its axis b comes nearest to a: the distance to something convex has one least value."""
    low, high = 0.0, 1.0
    first, second = high - SECTION, low + SECTION
    here, there = (_from(a, between(b.start, b.end, share)) for share in (first, second))
    for _ in range(NARROWINGS):
        if here < there:
            high, second, there = second, first, here
            first = high - SECTION * (high - low)
            here = _from(a, between(b.start, b.end, first))
        else:
            low, first, here = first, second, there
            second = low + SECTION * (high - low)
            there = _from(a, between(b.start, b.end, second))
    return (low + high) / 2


def _from(a: Solid, point: Vector) -> float:
    return norm(sub(point, nearest(a, point)))


def _projected(a: Solid, b: Solid) -> float:
    here = middle(b)
    for _ in range(ROUNDS):
        there = nearest(a, here)
        back = nearest(b, there)
        if norm(sub(back, here)) < CLOSE:
            return norm(sub(back, there))
        here = back
    return norm(sub(here, nearest(a, here)))


def middle(solid: Solid) -> Vector:
    """The middle of a solid [m]."""
    return solid.centre if isinstance(solid, Block) else between(solid.start, solid.end, 0.5)


def reach(solid: Solid) -> float:
    """Radius [m] of the ball about its middle that holds a solid."""
    if isinstance(solid, Block):
        return norm(solid.size) / 2
    return float((norm(sub(solid.end, solid.start)) ** 2 / 4 + solid.radius**2) ** 0.5)


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
