"""Room around each propeller, and what stands in its stream.

Rules: DEFAULTS and `nearest` for room, `stream` for the loss.
"""

from collections.abc import Sequence
from math import hypot

from msgspec import Struct

from model.design import Arrangement
from model.frame.layout import Frame
from model.parts import Block, Box, Cylinder, Part, Solid
from model.thrust.nearest import gap, middle, reach
from model.thrust.stream import BEHIND, Jet
from model.vectors import Vector, add, dot, norm, scale, sub

LOOK, LOOK_TETHER = 0.030, 0.060
"""[m] Room wider than this is not measured."""
LINE = 1.0
"""[m] How far up from its tie-off the tether is taken to stand, straight up."""
Thing = tuple[Part, Solid, Box]
"""A part, one of its solids, and the box around that."""


class Near(Struct, frozen=True):
    """A part near a propeller's disc, and the room between [m]."""

    part: Part
    room: float


class Stream(Struct, frozen=True):
    """The pull that a propeller loses one way.

    Attributes:
        lost: share of its pull, 0 to 1.
        worst: the part that costs most, or None.
    """

    lost: float
    worst: Part | None


class Clearance(Struct, frozen=True):
    """What is around one propeller.

    Attributes:
        near: the nearest part, or None where none is within 30 mm.
        tether: room to the tether [m], or None where it is further or there is none.
        ahead, astern: what its stream loses.
    """

    thruster: str
    near: Near | None
    tether: float | None
    ahead: Stream
    astern: Stream


def clearances(arrangement: Arrangement, frame: Frame, parts: Sequence[Part]) -> tuple[Clearance, ...]:
    """What is around each propeller, in the order of the thrusters."""
    tether = tether_line(arrangement, frame)
    things = [(part, solid, solid.box) for part in parts for solid in part.solids]
    return tuple(_around(part, things, tether) for part in parts if part.kind == "thruster")


def tether_line(arrangement: Arrangement, frame: Frame) -> Cylinder | None:
    """The first metre of the tether, taken to stand straight up; None without one."""
    tether = arrangement.tether
    if tether is None:
        return None
    foot = frame.bars[tether.bar].point(tether.at)
    return Cylinder(foot, add(foot, (0.0, 0.0, min(LINE, tether.hanging or LINE))), tether.diameter / 2)


def disc_of(thruster: Part) -> Cylinder:
    """The room that a thruster's propeller sweeps."""
    disc = thruster.solids[1]
    if not isinstance(disc, Cylinder):
        raise TypeError("a thruster is a body and the disc of its propeller")
    return disc


def aft_of(disc: Cylinder) -> Vector:
    """The way that a propeller throws the water when it runs ahead, of length 1."""
    way = sub(disc.start, disc.end)
    return scale(way, 1 / norm(way))


def _around(thruster: Part, things: Sequence[Thing], tether: Cylinder | None) -> Clearance:
    disc = disc_of(thruster)
    aft, centre = aft_of(disc), middle(disc)
    far = scale(aft, 2 * BEHIND * disc.radius)
    whole = Cylinder(sub(centre, far), add(centre, far), disc.radius + LOOK).box
    near = [thing for thing in things if thing[0] is not thruster and _meet(whole, thing[2])]
    return Clearance(
        thruster.id,
        _nearest(disc, near),
        _room(disc, tether, tether.box, LOOK_TETHER) if tether else None,
        _stream(Jet(centre, aft, disc.radius), near),
        _stream(Jet(centre, scale(aft, -1), disc.radius), near),
    )


def _room(disc: Cylinder, solid: Solid, box: Box, look: float) -> float | None:
    """Room [m] between a disc and a solid, or None where it is more than is looked at."""
    centre = middle(disc)
    apart = _from_box(centre, box) if isinstance(solid, Block) else _from_axis(centre, solid) - solid.radius
    if apart > look + reach(disc):
        return None
    room = gap(disc, solid)
    return room if room < look else None


def _meet(a: Box, b: Box) -> bool:
    """Whether two boxes share room."""
    return all(a.low[axis] < b.high[axis] and b.low[axis] < a.high[axis] for axis in range(3))


def _from_box(point: Vector, box: Box) -> float:
    sides = zip(box.low, point, box.high, strict=True)
    return hypot(*(max(0.0, low - here, here - high) for low, here, high in sides))


def _from_axis(point: Vector, solid: Cylinder) -> float:
    """Distance [m] from a point to the axis of a round solid."""
    axis, out = sub(solid.end, solid.start), sub(point, solid.start)
    share = dot(out, axis) / (dot(axis, axis) or 1.0)
    return norm(sub(out, scale(axis, min(1.0, max(0.0, share)))))


def _nearest(disc: Cylinder, things: Sequence[Thing]) -> Near | None:
    rooms = [(part, _room(disc, solid, box, LOOK)) for part, solid, box in things]
    found = [Near(part, room) for part, room in rooms if room is not None]
    return min(found, key=lambda near: near.room, default=None)


def _stream(jet: Jet, things: Sequence[Thing]) -> Stream:
    """The losses of all solids added; the worst part is the one that costs most."""
    losses: dict[str, tuple[float, Part]] = {}
    for part, solid, _ in things:
        lost = jet.lost(solid)
        if lost:
            key = f"{part.kind} {part.id}"
            losses[key] = (losses.get(key, (0.0, part))[0] + lost, part)
    worst = max(losses.values(), key=lambda loss: loss[0], default=(0.0, None))[1]
    return Stream(min(1.0, sum(loss for loss, _ in losses.values())), worst)
