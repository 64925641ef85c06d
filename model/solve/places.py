"""Where foam and weights may go: stretches of bar that nothing forbids."""

from collections.abc import Iterable

from msgspec import Struct

from model.design import COMPARISON_SLACK, Foam
from model.design.equipment import STEEL_DENSITY
from model.design.measures import Direction
from model.frame.layout import BarPlace
from model.parts import Block, Box, Cylinder, Part, Solid, box_around
from model.survey import Survey
from model.vectors import Vector, add, dot, norm, scale, sub, unit
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


class Place(Struct, frozen=True):
    """A stretch of bar for one piece, which grows in steps.

    Attributes:
        beside: the side of the bar that the piece is strapped to; None where it is threaded.
        origin: where the bar begins, carried to the middle line of the piece [m].
        low, high: the stretch, from the start of the bar [m].
        step: length of one step of the piece along the bar [m]; 0 for a weight.
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
    step: float
    mass: float
    volume: float
    most: int


def foam_places(
    found: Survey, bars: Iterable[str], foam: Foam, step: float, wanted: Direction | None
) -> list[Place]:
    """The stretches of some bars where foam may go: as wanted if that is allowed, else threaded or inside."""
    places = []
    for name in bars:
        bar = found.frame.bars[name]
        for beside in (wanted, None, _inwards(bar, found)):
            stretches = _free(found, bar, beside, foam, step)
            places += [_foam_place(bar, beside, foam, step, low, high) for low, high in stretches]
            if stretches:
                break
    return places


def weight_places(found: Survey, bars: Iterable[str], unit_mass: float, most: int) -> list[Place]:
    """The stretches of some bars where weights may hang beneath, in pieces of a mass [kg]."""
    places = []
    for name in bars:
        bar = found.frame.bars[name]
        if bar.exposed > 0:
            low, high = bar.faces[0], bar.spacing - bar.faces[1]
            origin = _carried(bar, "-z", ROD)
            volume = unit_mass / STEEL_DENSITY
            places.append(
                Place("ballast", name, "-z", origin, bar.along, low, high, 0.0, unit_mass, volume, most)
            )
    return places


def level_bars_at(found: Survey, sign: int) -> list[BarPlace]:
    """The level bars that lie highest (1) or lowest (-1)."""
    flat = [bar for bar in found.frame.bars.values() if bar.spacing and abs(bar.along[2]) < 0.1]
    end = max((sign * bar.start[2] for bar in flat), default=0.0)
    return [bar for bar in flat if sign * bar.start[2] > end - SAME_LEVEL]


def _foam_place(
    bar: BarPlace, beside: Direction | None, foam: Foam, step: float, low: float, high: float
) -> Place:
    volume = (disc(foam.outside_diameter) - disc(foam.hole)) * step
    origin = _carried(bar, beside, foam.outside_diameter)
    most = int((high - low) / step + COMPARISON_SLACK)
    return Place(
        "float", bar.id, beside, origin, bar.along, low, high, step, volume * foam.density, volume, most
    )


def _carried(bar: BarPlace, beside: Direction | None, diameter: float) -> Vector:
    if beside is None:
        return bar.start
    return add(bar.start, scale(unit(beside), (bar.pipe.outside_diameter + diameter) / 2))


def _inwards(bar: BarPlace, found: Survey) -> Direction:
    """The level direction from a bar towards G."""
    axis = 1 if abs(bar.along[0]) > abs(bar.along[1]) else 0
    sign = "-" if bar.point(0.5)[axis] > found.balance.g[axis] else "+"
    return sign + "xy"[axis]


def _free(
    found: Survey, bar: BarPlace, beside: Direction | None, foam: Foam, step: float
) -> list[tuple[float, float]]:
    """The stretches [m] of a bar, in whole steps, where foam touches nothing that it must not."""
    low, high = bar.faces[0], bar.spacing - bar.faces[1]
    outside = stretched(foam, bar.pipe.outside_diameter) if beside is None else foam.outside_diameter
    origin = _carried(bar, beside, foam.outside_diameter)
    obstacles = _obstacles(found, bar)
    rest = box_around(box for part in found.parts if part.kind != "float" and (box := part.box))
    stretches: list[tuple[float, float]] = []
    begin: float | None = None
    count = int((high - low) / step + COMPARISON_SLACK)
    for number in range(count + 1):
        here = low + number * step
        ends = add(origin, scale(bar.along, here)), add(origin, scale(bar.along, here + step))
        slice_ = Cylinder(*ends, outside / 2)
        free = (
            number < count
            and fits_limit(rest, found.extents.limit, slice_)
            and not any(meets(slice_, o) for o in obstacles)
        )
        if free and begin is None:
            begin = here
        elif not free and begin is not None:
            stretches.append((begin, here))
            begin = None
    return stretches


def fits_limit(rest: Box | None, limit: Vector | None, solid: Cylinder) -> bool:
    """Whether the vehicle without its floats, in its box, stays in the size limit with one more solid."""
    if limit is None:
        return True
    box = box_around([solid.box, *([rest] if rest else [])])
    return box is None or all(
        size <= most + COMPARISON_SLACK for size, most in zip(box.size, limit, strict=True)
    )


def _obstacles(found: Survey, bar: BarPlace) -> list[Solid]:
    """What foam on a bar must not touch: other parts, and the streams of the propellers."""
    near = set(bar.joints)
    beside = {other.id for other in found.frame.bars.values() if near & set(other.joints)}
    solids: list[Solid] = []
    for part in found.parts:
        if part.kind == "thruster":
            solids += [part.solids[0], _stream(part)]
        elif part.kind != "float" and part.id not in near | beside:
            solids += part.solids
    return solids


def _stream(thruster: Part) -> Cylinder:
    """The propeller's disc with the water before and behind it that foam would block."""
    body, disc_ = thruster.solids[0], thruster.solids[1]
    if not isinstance(disc_, Cylinder) or not isinstance(body, Cylinder):
        raise TypeError("a thruster is a body and the disc of its propeller")
    aft = sub(disc_.start, disc_.end)
    reach = scale(aft, WAKE * 2 * disc_.radius / (norm(aft) or 1.0))
    return Cylinder(body.end, add(disc_.start, reach), disc_.radius + PROPELLER_ROOM)


def meets(a: Cylinder, b: Solid) -> bool:
    """Whether two solids touch; a block counts as its box, round solids by the lines in their middle."""
    if isinstance(b, Block):
        mine, other = a.box, b.box
        return all(
            mine.low[i] < other.high[i] - COMPARISON_SLACK and other.low[i] < mine.high[i] - COMPARISON_SLACK
            for i in range(3)
        )
    return segment_distance(a.start, a.end, b.start, b.end) < a.radius + b.radius - COMPARISON_SLACK


def segment_distance(a: Vector, b: Vector, c: Vector, d: Vector) -> float:
    """The least distance [m] between the lines from a to b and from c to d.

    Closest points of two segments (Ericson, Real-Time Collision Detection, section 5.1.9, from memory).
    """
    first, second, between = sub(b, a), sub(d, c), sub(a, c)
    aa, ee, f = dot(first, first), dot(second, second), dot(second, between)
    ab, af = dot(first, second), dot(first, between)
    slope = aa * ee - ab * ab
    s = min(1.0, max(0.0, (ab * f - af * ee) / slope)) if slope > 1e-18 else 0.0
    t = (ab * s + f) / ee if ee > 0 else 0.0
    if t < 0 or t > 1 or ee <= 0:
        t = min(1.0, max(0.0, t))
        s = min(1.0, max(0.0, (ab * t - af) / aa)) if aa > 0 else 0.0
    return norm(sub(add(a, scale(first, s)), add(c, scale(second, t))))
