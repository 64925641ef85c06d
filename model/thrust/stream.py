"""What stands in a propeller's stream, and the pull that it costs.

Water goes through the disc at w, and on the axis at w (1 + x/sqrt(x^2 + R^2)), x behind the disc
(vortex cylinder of an actuator disc, textbook; from memory).  A body of frontal area S there has a
drag of 1/2 rho v^2 C_D S, and the pull is 2 rho A w^2, so it loses C_D (S/A) (v/w)^2/4 of it.

Stated rule: of a round solid each strip along its side counts where it lies in the stream, at the depth of
its axis, and of its two ends the one that faces the stream.  Of a block the rectangle through its middle
counts that lies most across the stream, for all of its frontal area.
"""

from collections.abc import Iterator
from functools import cached_property
from math import cos, pi, sin, sqrt

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
UNITS: tuple[Vector, Vector, Vector] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
"""The axes of a block."""


def _strips(count: int) -> tuple[tuple[float, float], ...]:
    angles = (pi * (number + 0.5) / count for number in range(count))
    return tuple((cos(angle), sin(angle) * pi / count) for angle in angles)


STRIPS, ASLANT = _strips(14), _strips(192)
"""Where strips stand that share a width from -1 to 1, and how wide each is: close to its edges, where they
are shortest (Chebyshev's points, textbook); more where each lies at a depth of its own."""
STRAIGHT = 1e-9
"""A slant below this is none."""
PIECES = 12
"""A line aslant in the stream is cut into so many, each in a stream as wide as at its middle."""


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
        seen = self._block(solid) if isinstance(solid, Block) else self._round(solid)
        return BLUFF * seen / (pi * self.radius**2)

    def _near(self, solid: Solid) -> bool:
        if not any(box.meets(solid.box) for box in self.boxes):
            return False
        from_disc = sub(middle(solid), self.centre)
        behind = dot(from_disc, self.along)
        aside = norm(sub(from_disc, scale(self.along, behind)))
        far, diameter = reach(solid), 2 * self.radius
        ahead = -BEFORE * diameter - far < behind < BEHIND * diameter + far
        return ahead and aside < 1.5 * self.radius + far

    def _block(self, block: Block) -> float:
        """Frontal area [m2] of a block in the stream, each piece times (v/w)^2/4.

        Strips through its middle, along the two of its axes that lie most across the stream.
        """
        length, breadth = sorted(range(3), key=lambda axis: round(abs(self.along[axis]), 9))[:2]
        long, half = block.size[length], block.size[breadth] / 2
        if not long * half:
            return 0.0
        way, side = UNITS[length], UNITS[breadth]
        centre = sub(block.centre, self.centre)
        first = dot(centre, self.along) - abs(self.along[length]) * long / 2 - abs(self.along[breadth]) * half
        wide = self.radius / sqrt(self.speed(max(first, -2 * BEFORE * self.radius)))
        start = add(centre, scale(way, -long / 2))
        seen = 0.0
        for out, width in self._across(centre, side, half, wide):
            seen += width * self._strip(add(start, scale(side, out)), way, long)
        return frontal(block, self.along) * seen / (2 * half * long)

    def _round(self, solid: Cylinder) -> float:
        """The same of a round solid: strips along its side, and chords of the end that faces the stream."""
        axis, radius = solid.axis, solid.radius
        facing, aside = dot(axis, self.along), cross(axis, self.along)
        slant = norm(aside)
        start, end = sub(solid.start, self.centre), sub(solid.end, self.centre)
        first = min(dot(start, self.along), dot(end, self.along)) - slant * radius
        wide = self.radius / sqrt(self.speed(max(first, -2 * BEFORE * self.radius)))
        level = scale(aside, 1 / slant) if slant > STRAIGHT else _across(axis)
        seen = 0.0
        if slant > STRAIGHT:
            for out, width in self._across(start, level, radius, wide):
                seen += slant * width * self._strip(add(start, scale(level, out)), axis, solid.length)
        if abs(facing) > STRAIGHT:
            face, rise = start if facing > 0 else end, cross(axis, level)
            for out, width in self._across(face, rise, radius, wide):
                half = sqrt(max(0.0, radius**2 - out**2))
                chord = add(face, add(scale(rise, out), scale(level, -half)))
                seen += abs(facing) * width * self._strip(chord, level, 2 * half)
        return seen

    def _across(self, at: Vector, way: Vector, radius: float, wide: float) -> Iterator[tuple[float, float]]:
        """Strips side by side as far as the stream reaches: how far off a place each lies, and its width [m].

        Args:
            at: from the middle of the disc; way: that they lie along.
            radius: how far there are any; wide: radius of the stream.
        """
        aside = sub(way, scale(self.along, dot(way, self.along)))
        square = dot(aside, aside)
        middle, reach = -dot(at, aside) / square, wide / sqrt(square)
        low, high = max(-radius, middle - reach), min(radius, middle + reach)
        slope, behind = dot(way, self.along), dot(at, self.along)
        if abs(slope) > STRAIGHT:  # the stream is followed only so far
            ends = sorted(
                ((-2 * BEFORE * self.radius - behind) / slope, (2 * BEHIND * self.radius - behind) / slope)
            )
            low, high = max(low, ends[0]), min(high, ends[1])
        for out, width in (ASLANT if abs(slope) > STRAIGHT else STRIPS) if low < high else ():
            yield (low + high) / 2 + (high - low) / 2 * out, (high - low) / 2 * width

    def _strip(self, start: Vector, way: Vector, length: float) -> float:
        """Length [m] of a line in the stream, each piece times (v/w)^2/4.

        Args:
            start: where it starts, from the middle of the disc.
        """
        behind, slope = dot(start, self.along), dot(way, self.along)
        out, away = sub(start, scale(self.along, behind)), sub(way, scale(self.along, slope))
        square, half, apart = dot(away, away), dot(out, away), dot(out, out)
        low, high = -2 * BEFORE * self.radius - EDGE, 2 * BEHIND * self.radius + EDGE
        first, last = _between(behind, slope, length, low, high)
        middle, reach = -half / square, self.radius / sqrt(self.speed(low) * square)
        first, last = max(first, middle - reach), min(last, middle + reach)
        if first >= last:
            return 0.0
        count = PIECES if abs(slope) > STRAIGHT else 1
        step, seen = (last - first) / count, 0.0
        for number in range(count):
            here = first + number * step
            speed = self.speed(behind + slope * (here + step / 2))
            room = half**2 - square * (apart - (self.radius + EDGE) ** 2 / speed)
            if room > 0:
                reach = sqrt(room) / square
                inside = min(here + step, middle + reach) - max(here, middle - reach)
                seen += max(0.0, inside) * speed * speed / 4
        return seen


def frontal(solid: Solid, along: Vector) -> float:
    """Area of a solid [m2] as seen along a direction of length 1."""
    if isinstance(solid, Block):
        a, b, c = solid.size
        return abs(along[0]) * b * c + abs(along[1]) * a * c + abs(along[2]) * a * b
    axis = sub(solid.end, solid.start)
    length = norm(axis)
    facing = abs(dot(axis, along)) / length if length else 1.0
    return float(2 * solid.radius * length * sqrt(max(0.0, 1 - facing**2)) + pi * solid.radius**2 * facing)


def _across(axis: Vector) -> Vector:
    """Some direction across an axis, of length 1."""
    aside = cross(axis, (0.0, 0.0, 1.0) if abs(axis[2]) < 0.9 else (1.0, 0.0, 0.0))
    return scale(aside, 1 / norm(aside))


def _between(at: float, slope: float, length: float, low: float, high: float) -> tuple[float, float]:
    """From where to where on a line [m] a depth, which grows with a slope, lies between two values."""
    if abs(slope) < STRAIGHT:
        return (0.0, length) if low < at < high else (0.0, 0.0)
    ends = sorted(((low - at) / slope, (high - at) / slope))
    return max(0.0, ends[0]), min(length, ends[1])
