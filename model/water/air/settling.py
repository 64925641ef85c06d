"""Where the water stands in the bores at rest in an attitude.

Air can leave a bore down to the highest level such that some way from it to a mouth stays above that
level: a widest-path search over the bores, where the bottleneck between two of them is the highest point
that they share and a mouth counts with the highest point of its rim.  Below its level a bore is wet if
water can reach it from a mouth through other wet bores; else all its air stays.

Turned upside down the same search says what water stays when the vehicle is lifted out: water then
does as the air does here.
"""

from heapq import heapify, heappop, heappush
from math import inf, sqrt

from msgspec import Struct

from model.vectors import Vector, dot
from model.water.air.bores import Network


class Settled(Struct, frozen=True):
    """A network at rest.

    Attributes:
        up: the direction of "up" in body axes.
        lows: height of each bore's first end, on its axis [m].
        slopes: how far each bore's axis climbs per metre, and sqrt(1 - that^2).
        tops, bottoms: height of the highest and lowest point that the bores of each meeting share [m].
        rims: height of the highest point of each mouth's rim [m], less what holds the air back.
        levels: the water surface in each bore [m]; -inf where no way leads to a mouth.
        wet: whether water reaches each bore.
    """

    up: Vector
    lows: tuple[float, ...]
    slopes: tuple[tuple[float, float], ...]
    tops: tuple[float, ...]
    bottoms: tuple[float, ...]
    rims: tuple[float, ...]
    levels: tuple[float, ...]
    wet: tuple[bool, ...]


def settle(network: Network, up: Vector, held: tuple[float, ...] = ()) -> Settled:
    """A network at rest with ``up`` in body axes.

    Args:
        held: for each mouth, by how much the air stands lower than its rim before it can leave [m].
    """
    x, y, z = up
    down = (-x, -y, -z)
    rises = {along: dot(up, along) for along in network.ways}
    slopes = {along: (rise, sqrt(max(0.0, 1 - rise * rise))) for along, rise in rises.items()}
    rims = _rim_heights(network, up, held)
    reaches = [(corner.reach(up), corner.reach(down)) for corner in network.corners]
    heights = {at: x * at[0] + y * at[1] + z * at[2] for at in network.places}
    tops, bottoms = [], []
    for meeting in network.meetings:
        here, (above, below) = heights[meeting.at], reaches[meeting.corner]
        tops.append(here + above)
        bottoms.append(here - below)
    levels = _levels(network, rims, tops)
    return Settled(
        up=up,
        lows=tuple([x * at[0] + y * at[1] + z * at[2] for at in network.starts]),
        slopes=tuple([slopes[bore.along] for bore in network.bores]),
        tops=tuple(tops),
        bottoms=tuple(bottoms),
        rims=tuple(rims),
        levels=tuple(levels),
        wet=tuple(_wet(network, levels, bottoms)),
    )


def _rim_heights(network: Network, up: Vector, held: tuple[float, ...]) -> list[float]:
    reaches = [rim.reach(up) for rim in network.rims]
    heights = [dot(up, mouth.at) + reaches[mouth.rim] for mouth in network.mouths]
    return [height - less for height, less in zip(heights, held, strict=True)] if held else heights


def _levels(network: Network, rims: list[float], tops: list[float]) -> list[float]:
    """The highest bottleneck from each bore to any mouth [m] (widest paths, by Dijkstra's order)."""
    best = [-inf] * len(network.bores)
    for mouth, rim in zip(network.mouths, rims, strict=True):
        best[mouth.bore] = max(best[mouth.bore], rim)
    waiting = [(-level, bore) for bore, level in enumerate(best) if level > -inf]
    heapify(waiting)
    while waiting:
        negative, bore = heappop(waiting)
        level = -negative
        if level < best[bore]:
            continue
        for other, meeting in network.neighbours[bore]:
            reached = tops[meeting] if tops[meeting] < level else level
            if reached > best[other]:
                best[other] = reached
                heappush(waiting, (-reached, other))
    return best


def _wet(network: Network, levels: list[float], bottoms: list[float]) -> list[bool]:
    wet = [False] * len(levels)
    waiting = []
    for mouth in network.mouths:
        if not wet[mouth.bore]:
            wet[mouth.bore] = True
            waiting.append(mouth.bore)
    while waiting:
        bore = waiting.pop()
        for other, meeting in network.neighbours[bore]:
            if not wet[other] and bottoms[meeting] <= min(levels[bore], levels[other]):
                wet[other] = True
                waiting.append(other)
    return wet
