"""Two things in the same place: solids that share room, and foam that is squeezed.

Pipe in its own fittings, foam and washers threaded on their bar, and what is clamped round its bar
are meant to share room.  Foam gives way a little; how much a brief may say.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from msgspec import Struct

from model.design import Arrangement, Thresholds, equipment
from model.frame.layout import Frame
from model.parts import Block, Box, Cylinder, Part, Solid
from model.thrust.nearest import gap
from model.vectors import add, norm, scale, sub

Kind = Literal["solid", "foam", "part"]
"""Hard in hard; something in foam; something in the rough box of an attachment."""
SLACK = 0.0005
"""[m] Solids that share less than twice this only touch."""
ALONG = 0.005
"""[m] What shares less than this along a bar, or with the rough box of a part, is let be (DEFAULTS)."""
TOGETHER = 1e-4
"""[m] Shrunken solids nearer than this share room."""
HAIR = 1e-7
"""[m] Boxes that share less than this only touch, wherever the whole vehicle stands."""


class Clash(Struct, frozen=True):
    """Two parts that share room, and what kind of sharing it is; ``second`` is what is fixed on last."""

    kind: Kind
    first: Part
    second: Part


class _Thing(Struct, frozen=True):
    part: Part
    solid: Solid
    box: Box


def clashes(
    arrangement: Arrangement, frame: Frame, parts: Sequence[Part], limits: Thresholds
) -> tuple[Clash, ...]:
    """Each pair of parts that share room and should not, once."""
    carriers = {item.id: item.bar for item in equipment(arrangement)}
    things = [
        _Thing(part, solid, solid.box)
        for part in parts
        for number, solid in enumerate(_shrunk_solids(part, limits.squeeze_most))
        if part.kind != "thruster" or number == 0  # the propeller's room is another matter
    ]
    found: dict[tuple[str, str, str, str], Clash] = {}
    for a, b in _near(things):
        first, second = a.part, b.part
        key = (first.kind, first.id, second.kind, second.id)
        if key in found or not _strangers(first, second, frame, carriers):
            continue
        if gap(a.solid, b.solid) < TOGETHER:
            found[key] = Clash(_kind(first, second), first, second)
    order: dict[tuple[str, str], int] = {(part.kind, part.id): number for number, part in enumerate(parts)}
    return tuple(found[key] for key in sorted(found, key=lambda key: (order[key[:2]], order[key[2:]])))


def _kind(first: Part, second: Part) -> Kind:
    kinds = {first.kind, second.kind}
    return "foam" if "float" in kinds else "part" if "attachment" in kinds else "solid"


def _shrunk_solids(part: Part, squeeze: float) -> Iterator[Solid]:
    """The solids of a part, smaller by what may be shared."""
    for solid in part.solids:
        if part.kind == "float":
            yield _shrunk(solid, squeeze, ALONG)
        elif part.kind == "attachment":
            yield _shrunk(solid, ALONG, ALONG)
        else:
            yield _shrunk(solid, SLACK, SLACK)


def _shrunk(solid: Solid, across: float, along: float) -> Solid:
    if isinstance(solid, Block):
        x, y, z = (max(1e-6, size - 2 * across) for size in solid.size)
        return Block(solid.centre, (x, y, z))
    axis = sub(solid.end, solid.start)
    length = norm(axis)
    if length <= 2 * along:
        middle = scale(add(solid.start, solid.end), 0.5)
        return Cylinder(middle, middle, max(1e-6, solid.radius - across))
    step = scale(axis, along / length)
    return Cylinder(add(solid.start, step), sub(solid.end, step), max(1e-6, solid.radius - across))


def _near(things: list[_Thing]) -> Iterator[tuple[_Thing, _Thing]]:
    """Pairs whose boxes meet, in the order of the parts."""
    order = {id(thing): number for number, thing in enumerate(things)}
    open_now: list[_Thing] = []
    for thing in sorted(things, key=lambda thing: thing.box.low[0]):
        (low_x, low_y, low_z), (_, high_y, high_z) = thing.box.low, thing.box.high
        open_now = [other for other in open_now if other.box.high[0] - HAIR > low_x]
        for other in open_now:
            low, high = other.box.low, other.box.high  # along x they meet, since they are open
            meet = _overlap(low[1], high[1], low_y, high_y) and _overlap(low[2], high[2], low_z, high_z)
            if meet and other.part is not thing.part:
                yield (other, thing) if order[id(other)] < order[id(thing)] else (thing, other)
        open_now.append(thing)


def _overlap(low: float, high: float, other_low: float, other_high: float) -> bool:
    return low < other_high - HAIR and other_low < high - HAIR


def _strangers(first: Part, second: Part, frame: Frame, carriers: Mapping[str, str]) -> bool:
    """Whether two parts have no business in the same place."""
    if first.kind in ("bar", "fitting") and second.kind in ("bar", "fitting"):
        return not _joints(first, frame, carriers) & _reach(second, frame)
    if first.kind not in ("bar", "fitting"):
        return True
    if first.kind == "bar" and carriers.get(second.id) == first.id:
        return second.kind == "thruster"
    # a float too long for its bar, and a hook at the end of its bar, meet the fittings there
    return second.kind not in ("float", "attachment") or not (
        _joints(first, frame, carriers) & _joints(second, frame, carriers)
    )


def _joints(part: Part, frame: Frame, carriers: Mapping[str, str]) -> set[str]:
    """The joints that a part touches: its own, or those at the ends of its bar."""
    if part.kind == "fitting":
        return {part.id}
    return set(frame.bars[carriers.get(part.id, part.id)].joints)


def _reach(part: Part, frame: Frame) -> set[str]:
    """The joints of a bar; of a fitting its own and those that bars join to it."""
    if part.kind == "bar":
        return set(frame.bars[part.id].joints)
    joint = frame.joints[part.id]
    return {part.id} | {end for arm in joint.arms for end in frame.bars[arm.bar].joints}
