"""A part and its shape: what weighs, lifts, drags or sticks out.

Everything that is summed over the vehicle is summed over one list of these.
"""

from collections.abc import Iterable
from functools import cached_property
from math import sqrt
from typing import Literal

from msgspec import Struct

from model.vectors import Vector, norm, scale, sub

PartKind = Literal["bar", "fitting", "thruster", "mount", "float", "ballast", "attachment", "tether", "pin"]


class Box(Struct, frozen=True):
    """An upright box from its lowest to its highest corner [m]."""

    low: Vector
    high: Vector

    @property
    def size(self) -> Vector:
        """Length, width and height [m]."""
        return sub(self.high, self.low)

    @property
    def centre(self) -> Vector:
        """The middle of the box [m]."""
        return scale(
            (self.low[0] + self.high[0], self.low[1] + self.high[1], self.low[2] + self.high[2]), 0.5
        )

    def meets(self, other: "Box") -> bool:
        """Whether two boxes share room."""
        (x, y, z), (u, v, w) = self.low, self.high
        (a, b, c), (d, e, f) = other.low, other.high
        return x < d and a < u and y < e and b < v and z < f and c < w


class Cylinder(Struct, frozen=True, dict=True):  # the dict, here and below, keeps what was worked out once
    """A round solid between the middles of its flat ends [m]."""

    start: Vector
    end: Vector
    radius: float

    @cached_property
    def length(self) -> float:
        """From one end to the other [m]."""
        return norm(sub(self.end, self.start))

    @cached_property
    def axis(self) -> Vector:
        """The way from start to end, length 1; ahead where they lie in one place."""
        return scale(sub(self.end, self.start), 1 / self.length) if self.length else (1.0, 0.0, 0.0)

    @cached_property
    def box(self) -> Box:
        """The smallest upright box around it: a disc reaches r sqrt(1 - u^2) along each axis."""
        (a, b, c), (d, e, f), r = self.start, self.end, self.radius
        x, y, z = d - a, e - b, f - c
        square = x * x + y * y + z * z or 1.0
        i = r * sqrt(max(0.0, 1.0 - x * x / square))
        j = r * sqrt(max(0.0, 1.0 - y * y / square))
        k = r * sqrt(max(0.0, 1.0 - z * z / square))
        return Box(
            (min(a, d) - i, min(b, e) - j, min(c, f) - k), (max(a, d) + i, max(b, e) + j, max(c, f) + k)
        )


class Block(Struct, frozen=True, dict=True):
    """An upright box-shaped solid [m]."""

    centre: Vector
    size: Vector

    @cached_property
    def box(self) -> Box:
        """The block itself."""
        (x, y, z), (a, b, c) = self.centre, self.size
        return Box((x - a / 2, y - b / 2, z - c / 2), (x + a / 2, y + b / 2, z + c / 2))


Solid = Cylinder | Block


class Part(Struct, frozen=True, dict=True):
    """One thing on the vehicle.

    Attributes:
        kind: what it is; ``id`` is that of the bar, joint or piece of equipment it comes from.
        mass: in air, pipes drained [kg].
        volume: water that it displaces, its plastic alone where it is flooded [m3].
        mass_centre: where its mass acts [m].
        volume_centre: where its buoyancy acts [m].
        solids: its outside shape; empty for what takes no room in the size box.
        hollow: inside radius of its round solids, such as a bore or the hole of a float [m].
    """

    kind: PartKind
    id: str
    name: str
    mass: float
    volume: float
    mass_centre: Vector
    volume_centre: Vector
    solids: tuple[Solid, ...]
    hollow: float = 0.0

    @cached_property
    def box(self) -> Box | None:
        """The upright box around its solids, or None where it has none."""
        return box_around(solid.box for solid in self.solids)


def box_around(boxes: Iterable[Box]) -> Box | None:
    """The smallest upright box around some boxes, or None where there are none."""
    found = list(boxes)
    if len(found) < 2:
        return found[0] if found else None
    x, y, z = map(min, zip(*[box.low for box in found], strict=True))
    u, v, w = map(max, zip(*[box.high for box in found], strict=True))
    return Box((x, y, z), (u, v, w))
