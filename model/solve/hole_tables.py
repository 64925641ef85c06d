"""What each hole would leave of the air: the table that the search for the fewest holes works on.

With some holes the surface in a bore stands at the highest level that any of them allows, so what stays
in it is the least over the holes of what stays with each alone.  The table has that for every hole,
attitude and bore; a set of holes is then judged by its least values, and their sums over each attitude.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from model.vectors import dot
from model.water.air.attitudes import Attitude
from model.water.air.bores import Meeting, Network, ring_volume
from model.water.air.fill import volume_above
from model.water.air.pockets import ring_above, shared_above
from model.water.air.settling import Settled, settle

MICRON = 6
"""Levels that agree to so many digits of a metre leave the same to a hundredth of a millilitre."""
Row = tuple[float, ...]
"""What stays in each bore, attitude after attitude [m3]."""


@dataclass(frozen=True, slots=True)
class Vent:
    """A hole that could be: its bore, and the height of its rim in each attitude [m]."""

    bore: int
    rims: tuple[float, ...]


class Lying:
    """One attitude of a network: how the bores are linked, and what stays in each above a level."""

    def __init__(self, network: Network, attitude: Attitude) -> None:
        self.network = network
        self.rest: Settled = settle(network, attitude.up)
        self.links = _widest(network, self.rest)
        self._shares: dict[tuple[int, float], float] = {}
        self._known: dict[tuple[int, float], float] = {}
        self._grooves: list[list[int]] = [[] for _ in network.bores]
        for number, groove in enumerate(network.grooves):
            self._grooves[groove.bore].append(number)

    def left(self, bore: int, level: float) -> float:
        """What stays in a bore above a level [m3]: its part of what it shares with others counts half."""
        key = (bore, round(level, MICRON))
        if key not in self._known:
            self._known[key] = self._left(bore, level)
        return self._known[key]

    def _left(self, number: int, level: float) -> float:
        bore, low, slope = self.network.bores[number], self.rest.lows[number], self.rest.slopes[number]
        if level == -inf:
            return self._all(number)
        if low + max(0.0, slope[0] * bore.length) + slope[1] * bore.radius <= level:
            return 0.0
        air = volume_above(bore.radius, bore.length, low, *slope, level)
        for index in self._grooves[number]:
            groove = self.network.grooves[index]
            start = dot(self.rest.up, groove.start)
            if level < start + max(0.0, slope[0] * groove.length) + slope[1] * bore.radius:
                air += ring_above(groove, bore, slope, level - start)
        for _, index in self.network.neighbours[number]:
            meeting = self.network.meetings[index]
            corner = self.network.corners[meeting.corner]
            if corner.square and level < self.rest.tops[index]:
                air -= self._shared(meeting, level) / 2
        return air

    def _shared(self, meeting: Meeting, level: float) -> float:
        """What two bores that meet share above a level [m3]."""
        over = round(level - dot(self.rest.up, meeting.at), MICRON)
        key = (meeting.corner, over)
        if key not in self._shares:
            self._shares[key] = shared_above(self.network.corners[meeting.corner], self.rest.up, over)
        return self._shares[key]

    def _all(self, number: int) -> float:
        room = self.network.bores[number].volume
        room += sum(
            ring_volume(self.network.grooves[index], self.network.bores[number])
            for index in self._grooves[number]
        )
        corners = (
            self.network.corners[self.network.meetings[m].corner] for _, m in self.network.neighbours[number]
        )
        return room - sum(corner.shared for corner in corners) / 2

    def row(self, bore: int, height: float) -> list[float]:
        """What stays in each bore with one way out of a bore at a height [m]."""
        links = self.links[bore]
        return [self.left(other, min(link, height)) for other, link in enumerate(links)]


def _widest(network: Network, rest: Settled) -> list[list[float]]:
    """For every two bores the highest bottleneck between them [m]; inf for a bore and itself."""
    order = sorted(range(len(network.meetings)), key=lambda meeting: -rest.tops[meeting])
    group = [[bore] for bore in range(len(network.bores))]
    links = [[-inf] * len(network.bores) for _ in network.bores]
    for bore, row in enumerate(links):
        row[bore] = inf
    for meeting in order:
        a, b = (group[bore] for bore in network.meetings[meeting].bores)
        if a is b:
            continue
        for one in a:
            for other in b:
                links[one][other] = links[other][one] = rest.tops[meeting]
        a += b
        for bore in b:
            group[bore] = a
    return links


class Table:
    """The rows of all vents, and of the mouths that there are."""

    def __init__(self, network: Network, attitudes: Sequence[Attitude], skipped: frozenset[int]) -> None:
        self.network, self.attitudes, self.skipped = network, attitudes, skipped
        self.lying = [Lying(network, attitude) for attitude in attitudes]
        self.width = len(network.bores)

    def start(self) -> Row:
        """What stays now."""
        return self._joined([self._now(lying) for lying in self.lying])

    def _now(self, lying: Lying) -> list[float]:
        return [lying.left(bore, level) for bore, level in enumerate(lying.rest.levels)]

    def row(self, vent: Vent) -> Row:
        """What stays with one vent and nothing else."""
        rows = []
        for lying, rim in zip(self.lying, vent.rims, strict=True):
            rows.append(lying.row(vent.bore, rim))
        return self._joined(rows)

    def _joined(self, rows: list[list[float]]) -> Row:
        for row in rows:
            for bore in self.skipped:
                row[bore] = 0.0
        return tuple(value for row in rows for value in row)

    def sums(self, row: Row) -> list[float]:
        """What stays in each attitude [m3]."""
        return [sum(row[k * self.width : (k + 1) * self.width]) for k in range(len(self.attitudes))]
