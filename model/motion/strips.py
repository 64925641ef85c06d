"""The vehicle as strips that each meet the water at their own speed: the cross-flow principle.

Normal force 1/2 rho C_D d L |u_n| u_n and tangential force 1/2 rho C_f pi d L |u_t| u_t, with u split
along and across the axis (after Hoerner, Fluid-Dynamic Drag, 1965).  So the force across a cylinder
goes with the square of the sine of its angle to the flow, and its drag with the cube.  No member is
taken to shelter another.
"""

from collections.abc import Iterable
from functools import cached_property
from math import pi, sqrt
from typing import NamedTuple

from msgspec import Struct

from model.design import Arrangement, Tether
from model.frame.layout import Frame
from model.motion.coefficients import (
    BLOCK,
    BLOCKS,
    BODIES,
    CABLE,
    END_ON,
    FREE_CYLINDER,
    LONG_CYLINDER,
    PIPES,
    SKIN,
    SPHERE,
    TETHER,
    between_rows,
)
from model.motion.shapes import Wet
from model.parts import Block, Cylinder
from model.vectors import Vector, between
from model.vehicle.pipework import disc

LONG, SHORT = 0.10, 0.04
"""[m] A cylinder longer than this is cut into four strips; one no longer than that is one; others are two."""
TWO = (0.5 - sqrt(1 / 12), 0.5 + sqrt(1 / 12))
"""Where two strips stand, as shares of a length: Gauss's points, which integrate a cubic exactly."""
FOUR = (TWO[0] / 2, TWO[1] / 2, 0.5 + TWO[0] / 2, 0.5 + TWO[1] / 2)
FRESH = 1000.0
"""[kg/m3] for the room that a float on the tether takes, from its lift."""


class Strip(NamedTuple):
    """A piece of a cylinder: drag = across |u_n| u_n + along |u_t| u_t.

    Attributes:
        at: its middle [m].
        axis: length 1.
        across, along: [N s2/m2]
        group: which spread it has, see ``coefficients``.
    """

    at: Vector
    axis: Vector
    across: float
    along: float
    group: int


class Slab(NamedTuple):
    """A block: drag on each axis = faces_i |u_i| u_i [N s2/m2]."""

    at: Vector
    faces: Vector
    group: int


class Strips(Struct, frozen=True, dict=True):  # the dict keeps what was worked out once
    """All strips and slabs of a vehicle."""

    strips: tuple[Strip, ...]
    slabs: tuple[Slab, ...]

    @cached_property
    def groups(self) -> "tuple[Strips, ...]":
        """Those of each group of ``coefficients``."""
        strips: dict[int, list[Strip]] = {group: [] for group in (PIPES, BODIES, BLOCKS, TETHER)}
        slabs: dict[int, list[Slab]] = {group: [] for group in strips}
        for strip in self.strips:
            strips[strip.group].append(strip)
        for slab in self.slabs:
            slabs[slab.group].append(slab)
        return tuple(Strips(tuple(strips[group]), tuple(slabs[group])) for group in strips)


def strips_of(arrangement: Arrangement, frame: Frame, shapes: Iterable[Wet], density: float) -> Strips:
    """The strips of what the water meets and of the hanging tether in water of a density [kg/m3]."""
    half = density / 2
    strips: list[Strip] = []
    slabs: list[Slab] = []
    for shape in shapes:
        if isinstance(shape.solid, Block):
            slabs.append(slab_of(shape.solid, half))
        else:
            strips += cylinder_strips(shape, shape.solid, half)
    tether = arrangement.tether
    if tether and tether.hanging:
        strips.append(tether_strip(tether, frame.bars[tether.bar].point(tether.at), density))
    return Strips(tuple(strips), tuple(slabs))


def tether_strip(tether: Tether, at: Vector, density: float) -> Strip:
    """The hanging tether with its floats, upright, all of its drag at its tie-off [m].

    Each metre is taken to move as fast as the vehicle; its upper end may hardly move, which the spread
    of its group says.
    """
    across = CABLE * tether.diameter * tether.hanging
    along = SKIN * pi * tether.diameter * tether.hanging
    balls = SPHERE * floats_area(tether)
    return Strip(at, (0.0, 0.0, 1.0), density / 2 * (across + balls), density / 2 * (along + balls), TETHER)


def floats_area(tether: Tether) -> float:
    """What the small floats along a tether show to the water together [m2]; each is taken as a ball."""
    volume = tether.float_lift / FRESH
    ball: float = pi * (3 * volume / (4 * pi)) ** (2 / 3)
    return tether.floats * ball


def across_coefficient(length: float, diameter: float, *, butted: bool) -> float:
    """C_D of a cylinder across the flow."""
    return LONG_CYLINDER if butted else between_rows(FREE_CYLINDER, length / diameter)


def cylinder_strips(shape: Wet, solid: Cylinder, half: float) -> list[Strip]:
    """The strips of a cylinder; ``half`` is half the density of the water [kg/m3]."""
    length, diameter = solid.length, 2 * solid.radius
    if not length:
        return []
    across = half * across_coefficient(length, diameter, butted=shape.butted) * diameter * length
    along = half * SKIN * pi * diameter * length
    if not shape.butted:
        along += half * between_rows(END_ON, length / diameter) * disc(diameter)
    places = FOUR if length > LONG else TWO if length > SHORT else (0.5,)
    axis, count = solid.axis, len(places)
    group = PIPES if shape.butted else BODIES
    return [
        Strip(between(solid.start, solid.end, share), axis, across / count, along / count, group)
        for share in places
    ]


def slab_of(block: Block, half: float) -> Slab:
    """A block as the drag of its faces; ``half`` is half the density of the water [kg/m3]."""
    a, b, c = block.size
    drag = half * BLOCK
    return Slab(block.centre, (drag * b * c, drag * a * c, drag * a * b), BLOCKS)
