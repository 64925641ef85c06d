"""Room around each propeller, and what stands in its stream.

Rules: DEFAULTS and `nearest` for room, `stream` for the loss.
"""

from collections.abc import Iterable, Sequence
from math import hypot

from msgspec import Struct
from msgspec.structs import replace

from model.design import Arrangement
from model.frame.layout import Frame
from model.parts import Block, Box, Cylinder, Part, Solid
from model.thrust.nearest import gap, middle, reach
from model.thrust.senses import turned_round
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


class Loss(Struct, frozen=True):
    """A part in a stream, and the share of the pull that it costs, 0 to 1."""

    part: Part
    lost: float


class Stream(Struct, frozen=True):
    """The pull that a propeller loses one way.

    Attributes:
        lost: share of its pull, 0 to 1.
        losses: what each part in the stream costs, the most first.
    """

    lost: float
    losses: tuple[Loss, ...]

    @property
    def worst(self) -> Part | None:
        """The part that costs most, or None."""
        return self.losses[0].part if self.losses else None


NO_STREAM = Stream(0.0, ())
"""That of a way that a propeller never turns."""


class Clearance(Struct, frozen=True):
    """What is around one propeller.

    Attributes:
        near: the nearest part, or None where none is as near as was looked.
        tether: room to the tether [m], or None where it is further than was looked or there is none.
        ahead, astern: what its stream loses; nothing astern, where its switch cannot turn it round.
    """

    thruster: str
    near: Near | None
    tether: float | None
    ahead: Stream
    astern: Stream


def clearances(
    arrangement: Arrangement,
    frame: Frame,
    parts: Sequence[Part],
    look: float = LOOK,
    look_tether: float = LOOK_TETHER,
) -> tuple[Clearance, ...]:
    """What is around each propeller, in the order of the thrusters.

    Args:
        look, look_tether: how far parts and the tether are looked for [m].
    """
    tether = tether_line(arrangement, frame)
    things = [(part, solid, solid.box) for part in parts for solid in _outside(part, frame)]
    one_way = {item.id for item in arrangement.thrusters if not turned_round(item, arrangement.power)}
    found = (_around(part, things, tether, look, look_tether) for part in parts if part.kind == "thruster")
    return tuple(replace(room, astern=NO_STREAM) if room.thruster in one_way else room for room in found)


def _outside(part: Part, frame: Frame) -> tuple[Solid, ...]:
    """What is to be seen of a part: of a pipe only what its fittings do not cover."""
    if part.kind != "bar":
        return part.solids
    bar = frame.bars[part.id]
    if bar.exposed <= 0:
        return ()
    ends = bar.faces[0] / bar.spacing, 1 - bar.faces[1] / bar.spacing
    return (Cylinder(bar.point(ends[0]), bar.point(ends[1]), bar.pipe.outside_diameter / 2),)


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


def _around(
    thruster: Part, things: Sequence[Thing], tether: Cylinder | None, look: float, look_tether: float
) -> Clearance:
    disc = disc_of(thruster)
    aft, centre = aft_of(disc), middle(disc)
    far = scale(aft, max(2 * BEHIND * disc.radius, look))
    whole = Cylinder(sub(centre, far), add(centre, far), disc.radius + look).box
    near = [thing for thing in things if thing[0] is not thruster and whole.meets(thing[2])]
    return Clearance(
        thruster.id,
        nearest_part(disc, near, look),
        _room(disc, tether, tether.box, look_tether) if tether else None,
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


def _from_box(point: Vector, box: Box) -> float:
    sides = zip(box.low, point, box.high, strict=True)
    return hypot(*(max(0.0, low - here, here - high) for low, here, high in sides))


def _from_axis(point: Vector, solid: Cylinder) -> float:
    """Distance [m] from a point to the axis of a round solid."""
    axis, out = sub(solid.end, solid.start), sub(point, solid.start)
    share = dot(out, axis) / (dot(axis, axis) or 1.0)
    return norm(sub(out, scale(axis, min(1.0, max(0.0, share)))))


def nearest_part(disc: Cylinder, things: Iterable[Thing], look: float) -> Near | None:
    """The part that comes nearest to a disc; None where all are further than is looked [m]."""
    rooms = [(part, _room(disc, solid, box, look)) for part, solid, box in things]
    found = [Near(part, room) for part, room in rooms if room is not None]
    return min(found, key=lambda near: near.room, default=None)


def _stream(jet: Jet, things: Sequence[Thing]) -> Stream:
    """The losses of all solids added up, by part."""
    losses: dict[str, Loss] = {}
    for part, solid, _ in things:
        lost = jet.lost(solid)
        if lost:
            key = f"{part.kind} {part.id}"
            before = losses[key].lost if key in losses else 0.0
            losses[key] = Loss(part, before + lost)
    ordered = sorted(losses.values(), key=lambda loss: -loss.lost)
    return Stream(min(1.0, sum(loss.lost for loss in losses.values())), tuple(ordered))
