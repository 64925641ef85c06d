"""The air that stays in the pipes in an attitude: how much, where, and why."""

from collections.abc import Sequence
from math import inf

from msgspec import Struct

from model.vectors import Vector, add, cross, dot, scale, sub
from model.vehicle.pipework import TRIPLE_OVERLAP
from model.water.air.bores import Bore, Corner, Groove, Network, ring_volume
from model.water.air.fill import moments_above, overlap_above, volume_above
from model.water.air.settling import Settled, settle

NOTHING = 1e-9
"""[m3] Less air than this (a thousandth of a millilitre) is none."""
HAIR = 1e-9
"""[m] Heights that differ by less are the same."""
SPECK = 5e-8
"""[m3] A pocket smaller than this (a drop) is counted but not named."""


class Stretch(Struct, frozen=True):
    """The part of a pocket that lies in one bore.

    Attributes:
        bar: the bar, or "" for an empty socket, which is then that of ``joint``.
        start, end: the ends of the axis along which there is air [m].
        middle: how far the middle of that is from the bar's start [m].
        volume: [m3]
    """

    bar: str
    joint: str
    start: Vector
    end: Vector
    middle: float
    volume: float


class Pocket(Struct, frozen=True):
    """Air that cannot leave, in one piece.

    Attributes:
        volume: [m3]
        at: its middle [m].
        stretches: where it lies, the most first.
        dry: whether part of it would be wet if water could get there.
        closed: whether no way leads out at all.
    """

    volume: float
    at: Vector
    stretches: tuple[Stretch, ...]
    dry: bool
    closed: bool


class Caught(Struct, frozen=True):
    """All the air that stays in an attitude.

    Attributes:
        pockets: the largest first.
        grooves: air in the rings between pipe ends and stops that no hole lets out [m3].
        specks: air in pockets too small to name [m3].
    """

    pockets: tuple[Pocket, ...]
    grooves: float
    specks: float

    @property
    def volume(self) -> float:
        """Air that holes could let out [m3]: what lies in the grooves and in closed voids is left out."""
        return sum(pocket.volume for pocket in self.pockets if not pocket.closed) + self.specks

    @property
    def closed(self) -> float:
        """Air in voids without any opening [m3]."""
        return sum(pocket.volume for pocket in self.pockets if pocket.closed)

    @property
    def total(self) -> float:
        """All of it [m3]."""
        return self.volume + self.closed + self.grooves


def caught(network: Network, up: Vector, held: tuple[float, ...] = ()) -> Caught:
    """The air that stays with ``up`` in body axes; ``held`` as for ``settle``."""
    rest = settle(network, up, held)
    volumes = bore_air(network, rest)
    rings, loose = _groove_air(network, rest)
    sharing = _shared_air(network, rest, volumes)
    found, specks = [], 0.0
    for group in _joined(network, rest, volumes):
        inside = set(group)
        less = sum(air for number, air in sharing if network.meetings[number].bores[0] in inside)
        total = sum(volumes[bore] + rings[bore] for bore in group) - less
        if total < SPECK:
            specks += max(0.0, total)
        else:
            found.append(_pocket(network, rest, group, total))
    found.sort(key=lambda pocket: -round(pocket.volume, 12))
    return Caught(tuple(found), loose, specks)


def air_left(network: Network, up: Vector, held: tuple[float, ...] = ()) -> float:
    """What ``caught`` gives as its volume [m3], without looking where it lies."""
    rest = settle(network, up, held)
    volumes = bore_air(network, rest)
    rings, _ = _groove_air(network, rest)
    open_to = [level > -inf for level in rest.levels]
    total = sum(volume + ring for volume, ring, out in zip(volumes, rings, open_to, strict=True) if out)
    shared = _shared_air(network, rest, volumes)
    return total - sum(air for number, air in shared if open_to[network.meetings[number].bores[0]])


def bore_air(network: Network, rest: Settled) -> list[float]:
    """The air that stays in each bore [m3], grooves left out."""
    volumes = []
    for bore, low, (rise, across), level, wet in zip(
        network.bores, rest.lows, rest.slopes, rest.levels, rest.wet, strict=True
    ):
        if not wet:
            volumes.append(bore.volume)
        elif low + max(0.0, rise * bore.length) + across * bore.radius <= level + HAIR:
            volumes.append(0.0)
        else:
            volumes.append(volume_above(bore.radius, bore.length, low, rise, across, level))
    return volumes


def _groove_air(network: Network, rest: Settled) -> tuple[list[float], float]:
    """The air in the grooves of each bore that belongs to its pocket [m3], and what no hole lets out."""
    rings, loose = [0.0] * len(network.bores), 0.0
    faces = {m.bore: rim for m, rim in zip(network.mouths, rest.rims, strict=True) if m.kind == "socket"}
    known: dict[tuple[float, float, float, float], float] = {}
    for groove in network.grooves:
        number = groove.bore
        bore, slope, level = network.bores[number], rest.slopes[number], rest.levels[number]
        if not rest.wet[number]:
            rings[number] += ring_volume(groove, bore)
            continue
        low = dot(rest.up, groove.start)
        top = low + max(0.0, slope[0] * groove.length) + slope[1] * bore.radius
        surface = min(level, top)
        if groove.face:
            surface = max(surface, faces[number])
        shape = (slope[0], groove.length, groove.radius, surface - low)
        if shape not in known:
            known[shape] = ring_above(groove, bore, slope, surface - low)
        if level < top - HAIR:
            rings[number] += known[shape]
        else:
            loose += known[shape]
    return rings, loose


def ring_above(groove: Groove, bore: Bore, slope: tuple[float, float], level: float) -> float:
    """The room of a groove around its bore above a level over its first end [m3]."""
    wide = volume_above(groove.radius, groove.length, 0.0, *slope, level)
    return wide - volume_above(bore.radius, groove.length, 0.0, *slope, level)


def _shared_air(network: Network, rest: Settled, volumes: Sequence[float]) -> list[tuple[int, float]]:
    """For each meeting with air in room that both bores count, that air [m3]."""
    shares: dict[int, float] = {}
    for number in network.squares:
        meeting = network.meetings[number]
        a, b = meeting.bores
        if volumes[a] < NOTHING or volumes[b] < NOTHING:
            continue
        if not (rest.wet[a] and rest.wet[b]):
            shares[number] = 1.0
            continue
        level = max(rest.levels[a], rest.levels[b])
        if level < rest.tops[number]:
            corner, over = network.corners[meeting.corner], level - dot(rest.up, meeting.at)
            shares[number] = shared_above(corner, rest.up, over) / corner.shared
    less = dict.fromkeys(shares, 0.0)
    for number, share in shares.items():
        less[number] = share * network.corners[network.meetings[number].corner].shared
    for three in network.triples:
        if all(number in shares for number in three):
            radius = network.corners[network.meetings[three[0]].corner].radius
            less[three[0]] -= TRIPLE_OVERLAP * radius**3 * sum(shares[number] for number in three) / 3
    return list(less.items())


def shared_above(corner: Corner, up: Vector, level: float) -> float:
    """The room that two bores at right angles share above a level over the point where they meet [m3]."""
    toward = dot(up, corner.a), dot(up, corner.b), dot(up, cross(corner.a, corner.b))
    return overlap_above(toward, level / corner.radius) * corner.radius**3


def _joined(network: Network, rest: Settled, volumes: Sequence[float]) -> list[list[int]]:
    """The bores with air, in groups whose air is in one piece."""
    holding = {bore for bore, volume in enumerate(volumes) if volume > NOTHING}
    groups, seen = [], set()
    for first in sorted(holding):
        if first in seen:
            continue
        seen.add(first)
        group, waiting = [], [first]
        while waiting:
            here = waiting.pop()
            group.append(here)
            for other, meeting in network.neighbours[here]:
                if other in holding and other not in seen and _air_meets(rest, here, other, meeting):
                    seen.add(other)
                    waiting.append(other)
        groups.append(group)
    return groups


def _air_meets(rest: Settled, a: int, b: int, meeting: int) -> bool:
    if not (rest.wet[a] and rest.wet[b]):
        return True
    return rest.tops[meeting] > max(rest.levels[a], rest.levels[b]) + HAIR


def _pocket(network: Network, rest: Settled, group: list[int], total: float) -> Pocket:
    stretches = sorted(
        (_stretch(network, rest, bore) for bore in group), key=lambda pair: -round(pair[0].volume, 12)
    )
    weight = sum(stretch.volume for stretch, _ in stretches)
    x, y, z = (sum(stretch.volume * at[axis] for stretch, at in stretches) / weight for axis in range(3))
    return Pocket(
        volume=total,
        at=(x, y, z),
        stretches=tuple(stretch for stretch, _ in stretches),
        dry=any(_cut_off(network, rest, bore) for bore in group),
        closed=rest.levels[group[0]] == -inf,
    )


def _cut_off(network: Network, rest: Settled, number: int) -> bool:
    """Whether a bore has room below its level that water cannot reach."""
    bore, (rise, across) = network.bores[number], rest.slopes[number]
    lowest = rest.lows[number] + min(0.0, rise * bore.length) - across * bore.radius
    return not rest.wet[number] and lowest < rest.levels[number] - HAIR


def _stretch(network: Network, rest: Settled, number: int) -> tuple[Stretch, Vector]:
    """What a pocket has in one bore, and the middle of it [m]."""
    bore, low, (rise, across) = network.bores[number], rest.lows[number], rest.slopes[number]
    level = rest.levels[number] if rest.wet[number] else low - 2 * (bore.length + bore.radius)
    volume, along, up = moments_above(bore.radius, bore.length, low, rise, across, level)
    upwards = scale(sub(rest.up, scale(bore.along, rise)), 1 / max(across, 1e-9))
    at = add(add(bore.start, scale(bore.along, along / volume)), scale(upwards, up / volume))
    first, last = _airy(bore.length, low + across * bore.radius, rise, level)
    ends = add(bore.start, scale(bore.along, first)), add(bore.start, scale(bore.along, last))
    return Stretch(bore.bar, bore.joint, *ends, bore.offset + (first + last) / 2, volume), at


def _airy(length: float, crown: float, rise: float, level: float) -> tuple[float, float]:
    """From where to where along a bore its crown is above the level [m]."""
    if abs(rise) < 1e-9:
        return 0.0, length
    cut = min(length, max(0.0, (level - crown) / rise))
    return (cut, length) if rise > 0 else (0.0, cut)
