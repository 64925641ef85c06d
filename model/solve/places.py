"""Where foam and weights may go: stretches of bar that show and that nothing else needs."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator

from msgspec import Struct
from msgspec.structs import replace

from model.design import COMPARISON_SLACK, Foam, Thruster
from model.design.equipment import STEEL_DENSITY
from model.design.measures import Direction
from model.frame.layout import BarPlace
from model.parts import Box, Cylinder, Part, Solid, box_around
from model.solve.hole_places import opposite
from model.survey import Survey
from model.thrust.mounts import STRAP_WIDTH, MountPlan, mount_plans
from model.thrust.nearest import gap
from model.thrust.tie_holes import TIE_WIDTH
from model.vectors import ORIGIN, Vector, add, dot, norm, scale, sub, unit
from model.vehicle.fixed import stretched
from model.vehicle.pipework import disc

PROPELLER_ROOM = 0.010
"""[m] Room kept between foam and a propeller's disc (DEFAULTS)."""
WAKE = 3.0
"""Diameters of a propeller's stream that foam keeps out of, before and behind (stated rule)."""
SAME_LEVEL = 1e-6
"""[m] Bars whose heights differ by less lie at one level."""
ROD = 0.012
"""[m] Diameter of a new weight: rod or a stack of washers on a tie."""
FINE = 0.005
"""[m] How finely a bar is looked over for a weight."""
TOUCHING = 0.0005
"""[m] Solids that share less than this only touch."""
TOGETHER = 1e-6
"""[m] Solids nearer than this share room."""
ASLANT = 0.1
"""A side of the vehicle is a side of a bar that goes that way by less than this share of its length."""
Stretch = tuple[float, float]
"""From where to where on a bar, from its start [m]."""
Needed = tuple[float, float, frozenset[str]]
"""A stretch of bar that something else needs, and the sides of the bar that it needs; () is all round."""


class Place(Struct, frozen=True):
    """A stretch of bar for one piece, which grows in steps.

    Attributes:
        beside: the side of the bar that the piece is strapped to; None where it is threaded.
        origin: where the bar begins, carried to the middle line of the piece [m].
        low, high: the stretch, from the start of the bar [m].
        radius: of the piece [m].
        step: length of one step of the piece along the bar [m].
        mass, volume: of one step [kg, m3].
        most: the most steps that fit.
    """

    kind: str
    bar: str
    beside: Direction | None
    origin: Vector
    along: Vector
    low: float
    high: float
    radius: float
    step: float
    mass: float
    volume: float
    most: int

    def solid(self, low: float, high: float) -> Cylinder:
        """A piece from one place on the bar to another [m]."""
        start, end = (add(self.origin, scale(self.along, at)) for at in (low, high))
        return Cylinder(start, end, self.radius)

    def lift(self, density: float) -> float:
        """What one step lifts in water of a density [kg]; below zero where it sinks."""
        return self.volume * density - self.mass


def foam_places(
    found: Survey, bars: Iterable[str], foam: Foam, step: float, wanted: Direction | None
) -> list[Place]:
    """The stretches of some bars where foam may go: as wanted if that is allowed, else threaded or inside."""
    volume, needed, places = (disc(foam.outside_diameter) - disc(foam.hole)) * step, _needed(found), []
    for name in bars:
        bar = found.frame.bars[name]
        for beside in dict.fromkeys((wanted, None, _inwards(bar, found))):
            if not (foam.hole > 0 if beside is None else _is_side(beside, bar)):
                continue
            outside = stretched(foam, bar.pipe.outside_diameter) if beside is None else foam.outside_diameter
            whole = _whole("float", bar, beside, outside / 2, step, volume * foam.density, volume)
            free = _free(found, whole, needed[name], step)
            places += free
            if free:
                break
    return places


def weight_places(found: Survey, bars: Iterable[str], unit_mass: float, most: int) -> list[Place]:
    """The stretches of some bars where weights may be strapped beneath, in pieces of a mass [kg].

    Beside a bar that is upright or slants they go on its inner side.
    """
    if unit_mass <= 0:
        return []
    volume, needed, places = unit_mass / STEEL_DENSITY, _needed(found), []
    for name in bars:
        bar = found.frame.bars[name]
        beside: Direction = "-z" if _is_side("-z", bar) else _inwards(bar, found)
        whole = _whole("ballast", bar, beside, ROD / 2, volume / disc(ROD), unit_mass, volume)
        places += _free(found, whole, needed[name], FINE)
    return [replace(place, most=min(place.most, most)) for place in places]


def level_bars_at(found: Survey, sign: int) -> list[BarPlace]:
    """The level bars that lie highest (1) or lowest (-1)."""
    flat = [bar for bar in found.frame.bars.values() if bar.spacing and abs(bar.along[2]) < 0.1]
    end = max((sign * bar.start[2] for bar in flat), default=0.0)
    return [bar for bar in flat if sign * bar.start[2] > end - SAME_LEVEL]


def _is_side(side: Direction, bar: BarPlace) -> bool:
    return abs(dot(unit(side), bar.along)) < ASLANT


def _inwards(bar: BarPlace, found: Survey) -> Direction:
    """The level side of a bar that faces G; the upper side of a level bar that has none."""
    for axis in (1, 0) if abs(bar.along[0]) > abs(bar.along[1]) else (0, 1):
        if abs(bar.along[axis]) < ASLANT:
            return ("-" if bar.point(0.5)[axis] > found.balance.g[axis] else "+") + "xy"[axis]
    return "+z"


def _whole(
    kind: str,
    bar: BarPlace,
    beside: Direction | None,
    radius: float,
    step: float,
    mass: float,
    volume: float,
) -> Place:
    """All of the pipe that shows on a bar."""
    out = scale(unit(beside), bar.pipe.outside_diameter / 2 + radius) if beside else ORIGIN
    low, high = bar.faces[0], bar.spacing - bar.faces[1]
    origin = add(bar.start, out)
    return Place(kind, bar.id, beside, origin, bar.along, low, high, radius, step, mass, volume, 0)


def _free(found: Survey, whole: Place, needed: Iterable[Needed], fine: float) -> list[Place]:
    """The stretches of a bar where a piece touches nothing that it must not, in whole slices [m]."""
    if whole.high - whole.low < whole.step - COMPARISON_SLACK:
        return []
    around = whole.solid(whole.low, whole.high).box
    obstacles = [solid for solid in _obstacles(found, whole.bar) if around.meets(solid.box)]
    closed = [
        (low, high) for low, high, sides in needed if not (sides and whole.beside) or whole.beside in sides
    ]
    rest = box_around(box for part in found.parts if part.kind != "float" and (box := part.box))

    def free(low: float, high: float) -> bool:
        solid = whole.solid(low, high)
        return (
            all(high <= begin or end <= low for begin, end in closed)
            and fits_limit(rest, found.extents.limit, solid)
            and not any(shares(solid, other) for other in obstacles)
        )

    stretches = _runs(whole.low, whole.high, fine, free)
    return [
        replace(whole, low=low, high=high, most=most)
        for low, high in stretches
        if (most := int((high - low) / whole.step + COMPARISON_SLACK))
    ]


def _runs(low: float, high: float, fine: float, free: Callable[[float, float], bool]) -> Iterator[Stretch]:
    """The longest runs of free slices [m]."""
    begin: float | None = None
    count = int((high - low) / fine + COMPARISON_SLACK)
    for number in range(count + 1):
        here = low + number * fine
        is_free = number < count and free(here, here + fine)
        if is_free and begin is None:
            begin = here
        elif not is_free and begin is not None:
            yield begin, here
            begin = None


def fits_limit(rest: Box | None, limit: Vector | None, solid: Cylinder) -> bool:
    """Whether the vehicle without its floats, in its box, stays in the size limit with one more solid.

    Where it is over the limit already, it comes out no larger.
    """
    if limit is None or rest is None:
        return True
    box = box_around([solid.box, rest])
    return box is None or all(
        size <= max(most, had) + COMPARISON_SLACK
        for size, most, had in zip(box.size, limit, rest.size, strict=True)
    )


def _obstacles(found: Survey, bar: str) -> Iterator[Solid]:
    """What a piece on a bar must not touch: all other parts, and the streams of the propellers."""
    for part in found.parts:
        if part.kind == "thruster":
            yield from (part.solids[0], _stream(part))
        elif part.kind != "float" and (part.kind, part.id) != ("bar", bar):
            yield from part.solids


def _stream(thruster: Part) -> Cylinder:
    """The propeller's disc with the water before and behind it that foam would block."""
    body, disc_ = thruster.solids[0], thruster.solids[1]
    if not isinstance(disc_, Cylinder) or not isinstance(body, Cylinder):
        raise TypeError("a thruster is a body and the disc of its propeller")
    aft = sub(disc_.start, disc_.end)
    reach = scale(aft, WAKE * 2 * disc_.radius / (norm(aft) or 1.0))
    return Cylinder(body.end, add(disc_.start, reach), disc_.radius + PROPELLER_ROOM)


def shares(piece: Solid, other: Solid) -> bool:
    """Whether a round piece shares room with another solid, and does not only touch it."""
    if not isinstance(piece, Cylinder):
        raise TypeError("a piece of foam or weight is round")
    if not piece.box.meets(other.box):
        return False
    inset = scale(piece.axis, min(TOUCHING, piece.length / 4))
    slim = Cylinder(add(piece.start, inset), sub(piece.end, inset), piece.radius - TOUCHING)
    return gap(slim, other) < TOGETHER


def _needed(found: Survey) -> defaultdict[str, list[Needed]]:
    """By the id of a bar, what mounts, tether and drilled holes need of it."""
    needed: defaultdict[str, list[Needed]] = defaultdict(list)
    items = {item.id: item for item in found.arrangement.thrusters}
    for plan in mount_plans(found.design, found.arrangement, found.frame, found.parts):
        item = items[plan.thruster]
        needed[item.bar] += _held(plan, item, found.frame.bars[item.bar])
    for hole in found.arrangement.openings:
        at, half = hole.at * found.frame.bars[hole.bar].spacing, hole.diameter / 2
        sides = {hole.face, *([opposite(hole.face)] if hole.through else [])}
        needed[hole.bar].append((at - half, at + half, frozenset(sides)))
    tether = found.arrangement.tether
    if tether is not None:
        at = tether.at * found.frame.bars[tether.bar].spacing
        needed[tether.bar].append((at - tether.diameter, at + tether.diameter, frozenset()))
    return needed


def _held(plan: MountPlan, item: Thruster, bar: BarPlace) -> Iterator[Needed]:
    """What a mount needs: from the first tie to the last, or the width of its clamp."""
    if plan.holes:
        sawn_end = bar.faces[0] - bar.insertions[0]
        places = [(sawn_end + hole.from_end, max(hole.diameter, TIE_WIDTH) / 2) for hole in plan.holes]
        yield min(at - half for at, half in places), max(at + half for at, half in places), frozenset()
    elif plan.mount.method == "clamp":
        at = item.at * bar.spacing + dot(item.offset, bar.along)
        yield at - STRAP_WIDTH / 2, at + STRAP_WIDTH / 2, frozenset()
