"""From the directions of the bars at a joint to the fittings of the stock that fit them."""

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from model.design import Fitting, Socket, Stock, in_hand
from model.fittings.turns import placements
from model.vectors import Grid, grid

Way = tuple[Grid, str]
"""Where a bar leaves a joint, and its pipe size."""


class Match(Struct, frozen=True):
    """A fitting turned so that each bar of a joint has a socket.

    Attributes:
        sockets: the socket that takes the bar which leaves in a direction.
        spare: the directions of the sockets that no bar uses.
    """

    fitting: Fitting
    sockets: Mapping[Grid, Socket]
    spare: tuple[Grid, ...]


class Catalogue:
    """The fittings of one stock in all their positions."""

    def __init__(self, stock: Stock) -> None:
        self._positions = [(fitting, _positions(fitting)) for fitting in stock.fittings]
        self._found: dict[frozenset[Way], tuple[Match, ...]] = {}

    def matches(self, ways: frozenset[Way]) -> tuple[Match, ...]:
        """One match for each fitting that fits: fewest spare sockets first, then the cheapest."""
        if ways not in self._found:
            fits = [match for fitting, held in self._positions if (match := _first(fitting, held, ways))]
            fits.sort(key=lambda match: (len(match.spare), match.fitting.price, match.fitting.mass))
            self._found[ways] = tuple(fits)
        return self._found[ways]

    def match(self, ways: frozenset[Way], pick: str | None) -> Match | None:
        """The team's pick if it fits, else None; without a pick the best that fits."""
        for match in self.matches(ways):
            if pick is None or match.fitting.id == pick:
                return match
        return None


@lru_cache(maxsize=16)
def catalogue(stock: Stock) -> Catalogue:
    """The catalogue of a stock; kept, since a stock seldom changes between two edits."""
    return Catalogue(in_hand(stock))


Position = dict[Grid, Socket]


def _positions(fitting: Fitting) -> tuple[Position, ...]:
    """The different ways that a fitting can lie; turns that look the same are left out."""
    looks = [(socket.laying_length, socket.depth, socket.pipe) for socket in fitting.sockets]
    different: dict[frozenset[tuple[Grid, tuple[float, float, str]]], Position] = {}
    for ways in placements(tuple(grid(socket.to) for socket in fitting.sockets)):
        lies = frozenset(zip(ways, looks, strict=True))
        if lies not in different:
            different[lies] = dict(zip(ways, fitting.sockets, strict=True))
    return tuple(different.values())


def _first(fitting: Fitting, positions: tuple[Position, ...], ways: frozenset[Way]) -> Match | None:
    for position in positions:
        if all(to in position and position[to].pipe == pipe for to, pipe in ways):
            used = {to for to, _ in ways}
            spare = tuple(sorted(to for to in position if to not in used))
            return Match(fitting, position, spare)
    return None
