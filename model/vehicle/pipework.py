"""The parts of the frame: sawn pipe and fittings, and the room inside them."""

from functools import lru_cache
from itertools import combinations
from math import pi, sqrt

from model.design import Pin
from model.fittings.match import Match
from model.frame.layout import BarPlace, JointPlace
from model.parts import Cylinder, Part
from model.vectors import Grid, Vector, add, between, dot, norm, scale

TRIPLE_OVERLAP = 2 - sqrt(2)
"""Volume shared by three half-cylinders of radius 1 that leave a point at right angles: an eighth of
the three-cylinder solid, 8 (2 - sqrt 2)."""
PAIR_OVERLAP = 4 / 3
"""Volume shared by two half-cylinders of radius 1 at right angles: a quarter of the two-cylinder solid, 16/3
(Archimedes, The Method)."""


def disc(diameter: float) -> float:
    """Area of a circle [m2] from its diameter [m]."""
    return pi / 4 * diameter * diameter


def bar_part(bar: BarPlace, *, sealed: bool) -> Part:
    """A piece of pipe: the plastic between its ends, and its bore where that is sealed."""
    start, end = bar.pipe_ends
    length = max(0.0, bar.exposed + sum(bar.insertions))
    outside, bore = disc(bar.pipe.outside_diameter), disc(bar.pipe.bore)
    middle = between(start, end, 0.5)
    return Part(
        kind="bar",
        id=bar.id,
        name=bar.name,
        mass=(outside - bore) * length * bar.pipe.density,
        volume=(outside if sealed else outside - bore) * length,
        mass_centre=middle,
        volume_centre=middle,
        solids=(Cylinder(start, end, bar.pipe.outside_diameter / 2),),
        hollow=bar.pipe.bore / 2,
    )


def fitting_part(joint: JointPlace, bars: dict[str, BarPlace], *, sealed: bool) -> Part | None:
    """A fitting: its plastic spread evenly along its sockets, and the room inside where that is sealed."""
    if joint.match is None:
        return None
    fitting = joint.match.fitting
    arms = [(_unit(to), socket) for to, socket in joint.match.sockets.items()]
    plastic = fitting.mass / fitting.density
    centre = add(joint.at, _centroid([(along, socket.centre_to_face) for along, socket in arms]))
    room = hidden_room(joint, bars) if sealed else 0.0
    return Part(
        kind="fitting",
        id=joint.id,
        name=f"{fitting.name} at {joint.name}",
        mass=fitting.mass,
        volume=plastic + room,
        mass_centre=centre,
        volume_centre=centre,
        solids=hubs(joint.at, joint.match),
    )


def pin_part(joint: JointPlace, pin: Pin) -> Part | None:
    """The screws or ties of a joint that is pinned, half-way down its sockets."""
    if joint.match is None or joint.joining != "pinned":
        return None
    sockets = [(_unit(arm.to), joint.match.sockets[arm.to]) for arm in joint.arms if arm.to]
    count = pin.each_end * len(sockets)
    places = [scale(along, socket.centre_to_face - socket.depth / 2) for along, socket in sockets]
    x, y, z = (sum(place[axis] for place in places) / len(places) for axis in range(3))
    centre, mass = add(joint.at, (x, y, z)), count * pin.mass
    name = f"{count} x {pin.name} at {joint.name}"
    return Part("pin", joint.id, name, mass, mass / pin.density, centre, centre, ())


def hidden_room(joint: JointPlace, bars: dict[str, BarPlace]) -> float:
    """The room inside a fitting that the pipes leave free [m3].

    Bores from centre to stop, less the overlap where they meet, plus the gap between each pipe end
    and its stop, plus empty sockets.  A cap is solid from its stop to its centre, the outside of its end.
    """
    if joint.match is None:
        return 0.0
    pushed = {arm.to: _pushed_in(joint.id, bars[arm.bar]) for arm in joint.arms}
    pipes = {arm.to: bars[arm.bar].pipe for arm in joint.arms}
    usual = next(iter(pipes.values()))
    is_cap = len(joint.match.sockets) == 1
    room = 0.0
    for to, socket in joint.match.sockets.items():
        pipe = pipes.get(to, usual)
        gap = socket.depth - pushed.get(to, 0.0)
        body = 0.0 if is_cap else socket.laying_length
        room += disc(pipe.bore) * body + disc(pipe.outside_diameter) * gap
    return max(0.0, room - _overlap(tuple(joint.match.sockets)) * (usual.bore / 2) ** 3)


@lru_cache(maxsize=256)
def _overlap(ways: tuple[Grid, ...]) -> float:
    return overlap([_unit(to) for to in ways])


def overlap(ways: list[Vector]) -> float:
    """How much bores of radius 1 that leave a centre share, counted once too often when they are added.

    Right angles only, by inclusion and exclusion; bores that meet at 45 degrees count as mitred,
    where the centre lines give the volume exactly.

    >>> round(overlap([(1.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0)]), 3)
    2.667
    """
    square = {frozenset((a, b)) for a, b in combinations(ways, 2) if abs(dot(a, b)) < 1e-9}
    corners = sum(
        all(frozenset(pair) in square for pair in combinations(three, 2)) for three in combinations(ways, 3)
    )
    return PAIR_OVERLAP * len(square) - TRIPLE_OVERLAP * corners


def _pushed_in(joint: str, bar: BarPlace) -> float:
    return bar.insertions[0] if bar.joints[0] == joint else bar.insertions[1]


@lru_cache(maxsize=64)
def _unit(to: Grid) -> Vector:
    return scale((float(to[0]), float(to[1]), float(to[2])), 1 / norm(to))


def hubs(centre: Vector, match: Match) -> tuple[Cylinder, ...]:
    """The outside of a fitting: a hub from its centre [m] to the face of each socket."""
    return tuple(
        Cylinder(centre, add(centre, scale(_unit(to), socket.centre_to_face)), match.fitting.hub / 2)
        for to, socket in match.sockets.items()
    )


def _centroid(arms: list[tuple[Vector, float]]) -> Vector:
    """The centre of uniform arms of some lengths [m] that leave the origin."""
    total = sum(length for _, length in arms)
    x, y, z = (sum(along[axis] * length * length / 2 for along, length in arms) for axis in range(3))
    return scale((x, y, z), 1 / total)
