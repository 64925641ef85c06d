"""What each hole would leave of the air: the table that the search for the fewest holes works on.

With some holes the surface in a bore stands at the highest level that any of them allows, so what stays
in it is the least over the holes of what stays with each alone.  The table has that for every hole,
attitude and bore; a set of holes is then judged by its least values, and their sums over each attitude.
"""

from collections.abc import Sequence
from math import inf

from msgspec import Struct

from model.vectors import dot
from model.water.air.attitudes import Attitude
from model.water.air.bores import Groove, Network, ring_volume
from model.water.air.fill import volume_above
from model.water.air.pockets import ring_above, shared_above
from model.water.air.settling import Settled, settle

MICRON = 6
"""Levels that agree to so many digits of a metre leave the same to a hundredth of a millilitre."""
ROUNDING = 10.0**-MICRON
Row = tuple[float, ...]
"""What stays in each bore, attitude after attitude [m3]."""


class Vent(Struct, frozen=True):
    """A hole that could be: its bore, and the height of its rim in each attitude [m]."""

    bore: int
    rims: tuple[float, ...]


class Lying:
    """One attitude of a network: how the bores are linked, and what stays in each above a level."""

    def __init__(self, network: Network, attitude: Attitude) -> None:
        self.network = network
        self.rest: Settled = settle(network, attitude.up)
        self.links = _widest(network, self.rest)
        self._known: dict[tuple[int, float], float] = {}
        self._shares: dict[tuple[int, float], float] = {}
        self._rings = self._ring_spans()
        self._squares = self._square_spans()

    def _ring_spans(self) -> list[list[tuple[Groove, float, float, float]]]:
        """The grooves of each bore: heights of the first end, the crown of the bore and the floor [m]."""
        spans: list[list[tuple[Groove, float, float, float]]] = [[] for _ in self.network.bores]
        for groove in self.network.grooves:
            start = dot(self.rest.up, groove.start)
            rise, across = self.rest.slopes[groove.bore]
            high = start + max(0.0, rise * groove.length) + across * self.network.bores[groove.bore].radius
            low = start + min(0.0, rise * groove.length) - across * groove.radius
            spans[groove.bore].append((groove, start, high, low))
        return spans

    def _square_spans(self) -> list[list[tuple[int, float, float, float]]]:
        """The shared room of each bore: the corner, its height, and its highest and lowest point."""
        spans: list[list[tuple[int, float, float, float]]] = [[] for _ in self.network.bores]
        for number in self.network.squares:
            meeting = self.network.meetings[number]
            base = dot(self.rest.up, meeting.at)
            span = (meeting.corner, base, self.rest.tops[number], self.rest.bottoms[number])
            for bore in meeting.bores:
                spans[bore].append(span)
        return spans

    def left(self, bore: int, level: float) -> float:
        """What stays in a bore above a level [m3]: its part of what it shares with others counts half."""
        key = (bore, round(level, MICRON))
        if key not in self._known:
            self._known[key] = self._left(bore, level)
        return self._known[key]

    def _left(self, number: int, level: float) -> float:
        bore, low, slope = self.network.bores[number], self.rest.lows[number], self.rest.slopes[number]
        if low + max(0.0, slope[0] * bore.length) + slope[1] * bore.radius <= level + ROUNDING:
            return 0.0
        air = bore.volume if level == -inf else volume_above(bore.radius, bore.length, low, *slope, level)
        for groove, start, high, lowest in self._rings[number]:
            if level <= lowest:
                air += ring_volume(groove, bore)
            elif level < high - ROUNDING:
                air += ring_above(groove, bore, slope, level - start)
        for corner, base, high, lowest in self._squares[number]:
            if level <= lowest:
                air -= self.network.corners[corner].shared / 2
            elif level < high:
                air -= self._shared(corner, level - base) / 2
        return air

    def _shared(self, corner: int, level: float) -> float:
        """What two bores that meet share above a level over the point where they do [m3]."""
        key = (corner, round(level, MICRON))
        if key not in self._shares:
            self._shares[key] = shared_above(self.network.corners[corner], self.rest.up, level)
        return self._shares[key]

    def row(self, bore: int, height: float) -> list[float]:
        """What stays in each bore with one way out of a bore at a height [m]."""
        known, values = self._known, []
        for other, link in enumerate(self.links[bore]):
            level = round(link if link < height else height, MICRON)
            value = known.get((other, level))
            values.append(self.left(other, level) if value is None else value)
        return values


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
