"""The room inside the pipes as one network of straight round bores.

Each bar's bore runs from joint to joint, through the fittings at its ends; an empty socket has a bore of
its own.  Bores meet in the fittings.  Grooves are the wider rings between a pipe's end and the stop of
its socket.  Mouths are where the water and the air go in and out.
"""

from collections import defaultdict
from functools import cached_property
from itertools import combinations
from math import cos, pi, sin, sqrt
from typing import Literal

from msgspec import Struct

from model.vectors import Vector, add, cross, dot, norm, scale
from model.vehicle.pipework import PAIR_OVERLAP, TRIPLE_OVERLAP

AROUND = tuple((cos(step * pi / 8), sin(step * pi / 8)) for step in range(16))
"""Points of a rim; its top is found to 2 % of the hole's radius."""


class Bore(Struct, frozen=True):
    """A straight round bore, closed at its ends but for where others meet it.

    Attributes:
        bar: the bar it runs in; "" for an empty socket.
        joint: the joint of an empty socket; "" for a bar.
        start: the middle of its first end [m].
        along: its direction, length 1.
        length, radius: [m].
        offset: how far its first end is from the bar's start [m].
    """

    bar: str
    joint: str
    start: Vector
    along: Vector
    length: float
    radius: float
    offset: float = 0.0

    @property
    def volume(self) -> float:
        """[m3]"""
        return pi * self.radius * self.radius * self.length


class Groove(Struct, frozen=True):
    """The part of a bore that is wider: a socket that the pipe does not fill.

    Attributes:
        bore: its number in the network.
        start: the middle of its first end [m].
        length, radius: [m]; the bore runs through its middle.
        face: whether its far end is open to the water (an empty socket).
    """

    bore: int
    start: Vector
    length: float
    radius: float
    face: bool = False


def ring_volume(groove: Groove, bore: Bore) -> float:
    """The room of a groove around its bore [m3]."""
    return pi * (groove.radius**2 - bore.radius**2) * groove.length


class Rim(Struct, frozen=True, dict=True):  # the dict, here and below, keeps what was worked out once
    """The shape of a mouth's rim.

    Attributes:
        along: direction of the bore.
        outward: the side of the bore that a hole is drilled in; None for an open end of the bore.
        bore: radius of the bore [m].
        half: radius of the mouth [m].
    """

    along: Vector
    outward: Vector | None
    bore: float
    half: float

    def reach(self, up: Vector) -> float:
        """How far its highest point is over the axis of the bore [m]."""
        a = dot(up, self.along)
        if self.outward is None:
            return self.half * sqrt(max(0.0, 1 - a * a))
        p, q, w = a * self.half, dot(up, self._across) * self.half, dot(up, self.outward)
        return max([p * c + q * s + w * out for c, s, out in self._points])

    @cached_property
    def _across(self) -> Vector:
        """The way across the bore, square to that of the hole."""
        return cross(self.along, self.outward) if self.outward else self.along

    @cached_property
    def _points(self) -> tuple[Vector, ...]:
        """Points of the rim of a hole: along and across as shares of its radius, and outward [m]."""
        square, half = self.bore * self.bore, min(self.half, self.bore)
        return tuple((c, s, sqrt(max(0.0, square - (half * s) ** 2))) for c, s in AROUND)


class Mouth(Struct, frozen=True):
    """Where a bore is open to the water.

    Attributes:
        bore: its number in the network.
        at: on the axis of the bore [m].
        rim: the number of its shape in the network.
        kind, id: a drilled opening, the joint of an empty socket, or the joint of a loose end.
        centre: the middle of the mouth itself [m].
        diameter: [m]
    """

    bore: int
    at: Vector
    rim: int
    kind: Literal["opening", "socket", "end"]
    id: str
    centre: Vector
    diameter: float


class Corner(Struct, frozen=True, dict=True):
    """How two bores meet, both leaving one point.

    Attributes:
        a, b: their directions away from it.
        radius: of the narrower bore [m].
    """

    a: Vector
    b: Vector
    radius: float

    @cached_property
    def square(self) -> bool:
        """Whether they meet at right angles, and so share some room."""
        return abs(dot(self.a, self.b)) < 1e-9

    @property
    def shared(self) -> float:
        """The room that both share [m3]."""
        return PAIR_OVERLAP * self.radius**3 if self.square else 0.0

    @cached_property
    def _side(self) -> Vector:
        """Square to both; nothing where they lie in one line."""
        return cross(self.a, self.b)

    @cached_property
    def _mitre(self) -> tuple[Vector, float]:
        """The direction half-way between both, length 1, and the sine of the angle from there to each."""
        bisector = add(self.a, self.b)
        along = scale(bisector, 1 / norm(bisector))
        return along, max(1e-6, sqrt(1 - dot(self.a, along) ** 2))

    def reach(self, up: Vector) -> float:
        """How far the highest point that both share is over the meeting point [m].

        At right angles half-bores share the points with s^2 + w^2 <= r^2 and t^2 + w^2 <= r^2, where s and t
        are not below zero; in one line they share a disc, also where both leave the same way, which cannot
        be built; else they count as mitred and share an ellipse.
        """
        if self.square:
            rising = max(0.0, dot(up, self.a)) + max(0.0, dot(up, self.b))
            return self.radius * sqrt(rising * rising + dot(up, self._side) ** 2)
        side = self._side
        if norm(side) < 1e-6:
            return self.radius * sqrt(max(0.0, 1 - dot(up, self.a) ** 2))
        along, sine = self._mitre
        stretched = dot(up, along) / sine
        return self.radius * sqrt(stretched**2 + dot(up, side) ** 2 / dot(side, side))


class Meeting(Struct, frozen=True):
    """Two bores, by their numbers, that meet at a joint, and the number of the corner's shape."""

    bores: tuple[int, int]
    joint: str
    at: Vector
    corner: int


class Network(Struct, frozen=True, dict=True):
    """All bores of a frame."""

    bores: tuple[Bore, ...]
    grooves: tuple[Groove, ...]
    mouths: tuple[Mouth, ...]
    rims: tuple[Rim, ...]
    meetings: tuple[Meeting, ...]
    corners: tuple[Corner, ...]

    @cached_property
    def volume(self) -> float:
        """All the room inside [m3]: bores less what they share in the fittings, and the grooves."""
        room = sum(bore.volume for bore in self.bores)
        room += sum(ring_volume(groove, self.bores[groove.bore]) for groove in self.grooves)
        room -= sum(self.corners[meeting.corner].shared for meeting in self.meetings)
        for first, _, _ in self.triples:
            room += TRIPLE_OVERLAP * self.corners[self.meetings[first].corner].radius ** 3
        return room

    @cached_property
    def ways(self) -> frozenset[Vector]:
        """The different directions of its bores."""
        return frozenset(bore.along for bore in self.bores)

    @cached_property
    def places(self) -> frozenset[Vector]:
        """Where bores meet [m]."""
        return frozenset(meeting.at for meeting in self.meetings)

    @cached_property
    def starts(self) -> tuple[Vector, ...]:
        """The first end of each bore [m]."""
        return tuple(bore.start for bore in self.bores)

    @cached_property
    def squares(self) -> tuple[int, ...]:
        """The numbers of the meetings at right angles, where bores share some room."""
        square = [corner.square for corner in self.corners]
        return tuple(number for number, meeting in enumerate(self.meetings) if square[meeting.corner])

    @cached_property
    def neighbours(self) -> tuple[tuple[tuple[int, int], ...], ...]:
        """For each bore, the bores that it meets and the numbers of the meetings."""
        found: dict[int, list[tuple[int, int]]] = defaultdict(list)
        for number, meeting in enumerate(self.meetings):
            a, b = meeting.bores
            found[a].append((b, number))
            found[b].append((a, number))
        return tuple(tuple(found[bore]) for bore in range(len(self.bores)))

    @cached_property
    def groups(self) -> tuple[tuple[int, ...], ...]:
        """The bores that hang together, each group in rising order."""
        seen: set[int] = set()
        groups = []
        for first in range(len(self.bores)):
            if first in seen:
                continue
            seen.add(first)
            group, waiting = [], [first]
            while waiting:
                here = waiting.pop()
                group.append(here)
                fresh = [other for other, _ in self.neighbours[here] if other not in seen]
                seen.update(fresh)
                waiting += fresh
            groups.append(tuple(sorted(group)))
        return tuple(groups)

    @cached_property
    def triples(self) -> tuple[tuple[int, int, int], ...]:
        """The numbers of three meetings each in which three bores leave one joint all at right angles."""
        square: dict[str, dict[frozenset[int], int]] = defaultdict(dict)
        for number in self.squares:
            meeting = self.meetings[number]
            square[meeting.joint][frozenset(meeting.bores)] = number
        found = set()
        for pairs in square.values():
            bores = sorted({bore for pair in pairs for bore in pair})
            for three in combinations(bores, 3):
                sides = [frozenset(two) for two in combinations(three, 2)]
                if all(side in pairs for side in sides):
                    found.add((pairs[sides[0]], pairs[sides[1]], pairs[sides[2]]))
        return tuple(sorted(found))
