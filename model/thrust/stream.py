"""What stands in a propeller's stream, and the pull that it costs.

Water goes through the disc at w, and on the axis at w (1 + x/sqrt(x^2 + R^2)), x behind the disc
(vortex cylinder of an actuator disc, textbook; from memory).  A body of frontal area S there has a
drag of 1/2 rho v^2 C_D S, and the pull is 2 rho A w^2, so it loses C_D (S/A) (v/w)^2/4 of it.
"""

from functools import cached_property
from math import pi, sqrt

from msgspec import Struct

from model.parts import Block, Box, Cylinder, Solid
from model.thrust.nearest import middle, reach
from model.vectors import Vector, add, cross, dot, norm, scale, sub

BLUFF = 1.1
"""C_D of what stands in the stream: pipes, blocks, foam (published 0.7 to 1.2)."""
BEHIND, BEFORE = 3.0, 1.0
"""Diameters behind and before the disc that the stream is followed (stated rule)."""
EDGE = 1e-9
"""[m] What lies just on the stream's edge is in it, wherever the whole vehicle stands."""
ALONG = tuple((number + 0.5) / 16 for number in range(16))
ACROSS = (-2 / 3, 0.0, 2 / 3)


class Jet(Struct, frozen=True, dict=True):  # the dict keeps what was worked out once
    """A stream: the middle of the disc [m], the way that the water goes, and the disc's radius [m]."""

    centre: Vector
    along: Vector
    radius: float

    def speed(self, behind: float) -> float:
        """Speed of the water over that through the disc, at a distance behind it [m]."""
        return 1 + behind / sqrt(behind**2 + self.radius**2)

    @cached_property
    def boxes(self) -> tuple[Box, Box]:
        """Upright boxes around the stream: before the disc, where it is wider, and behind it."""
        first = -2 * BEFORE * self.radius - EDGE
        wide = (self.radius + EDGE) / sqrt(self.speed(first))
        ends = [
            add(self.centre, scale(self.along, at)) for at in (first, 0.0, 2 * BEHIND * self.radius + EDGE)
        ]
        return Cylinder(ends[0], ends[1], wide).box, Cylinder(ends[1], ends[2], self.radius + EDGE).box

    def lost(self, solid: Solid) -> float:
        """The share of the pull that a solid in the stream costs."""
        if not self._near(solid):
            return 0.0
        start, run, wide = _spread(solid, self.along)
        x, y, z = sub(start, self.centre)
        weight = 0.0
        for here in ALONG:
            u, v, w = x + run[0] * here, y + run[1] * here, z + run[2] * here
            for side in ACROSS:
                weight += self._weight(u + wide[0] * side, v + wide[1] * side, w + wide[2] * side)
        count = len(ALONG) * len(ACROSS)
        return BLUFF * frontal(solid, self.along) / (pi * self.radius**2) * weight / count

    def _near(self, solid: Solid) -> bool:
        if not any(box.meets(solid.box) for box in self.boxes):
            return False
        from_disc = sub(middle(solid), self.centre)
        behind = dot(from_disc, self.along)
        aside = norm(sub(from_disc, scale(self.along, behind)))
        far, diameter = reach(solid), 2 * self.radius
        ahead = -BEFORE * diameter - far < behind < BEHIND * diameter + far
        return ahead and aside < 1.5 * self.radius + far

    def _weight(self, x: float, y: float, z: float) -> float:
        """(v/w)^2/4 where a point, from the middle of the disc, lies in the stream, 0 outside.

        The stream narrows as it speeds up.
        """
        a, b, c = self.along
        behind = x * a + y * b + z * c
        if not -2 * BEFORE * self.radius - EDGE < behind < 2 * BEHIND * self.radius + EDGE:
            return 0.0
        speed = self.speed(behind)
        aside = x * x + y * y + z * z - behind * behind
        return speed * speed / 4 if aside * speed < (self.radius + EDGE) ** 2 else 0.0


def frontal(solid: Solid, along: Vector) -> float:
    """Area of a solid [m2] as seen along a direction of length 1."""
    if isinstance(solid, Block):
        a, b, c = solid.size
        return abs(along[0]) * b * c + abs(along[1]) * a * c + abs(along[2]) * a * b
    axis = sub(solid.end, solid.start)
    length = norm(axis)
    facing = abs(dot(axis, along)) / length if length else 1.0
    return float(2 * solid.radius * length * sqrt(max(0.0, 1 - facing**2)) + pi * solid.radius**2 * facing)


def _spread(solid: Solid, along: Vector) -> tuple[Vector, Vector, Vector]:
    """Where samples begin, the way that they go along, and half the width across [m]."""
    if isinstance(solid, Cylinder):
        run = sub(solid.end, solid.start)
        aside = cross(run, along)
        length = norm(aside)
        return solid.start, run, scale(aside, solid.radius / length) if length > 1e-12 else (0.0, 0.0, 0.0)
    axes = sorted(range(3), key=lambda axis: round(abs(along[axis]), 9))[:2]  # at 45 degrees the first
    long, half = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    long[axes[0]], half[axes[1]] = solid.size[axes[0]], solid.size[axes[1]] / 2
    start = sub(solid.centre, (long[0] / 2, long[1] / 2, long[2] / 2))
    return start, (long[0], long[1], long[2]), (half[0], half[1], half[2])
