"""How long the pipes take to flood and to drain through their real holes.

At each height of the inner surface the pressure of what leaves settles so that as much flows in through
the holes below as out through those above; bores are taken as wide against the holes, and each group of
bores as having one inner surface.  With one hole low and one high this is the formula of two holes in series.
"""

from collections import defaultdict
from itertools import pairwise
from math import inf, sqrt

from msgspec import Struct

from model.vectors import Vector, dot
from model.water.air.bores import Bore, Network
from model.water.air.fill import volume_above
from model.water.air.orifice import AIR_DENSITY, DRILLED, hole_area
from model.water.air.settling import Settled, settle
from model.water.balance import GRAVITY

SHARE = 0.95
"""The last drops take for ever: the time is that for this share of what can go in or out."""
SLICES = 24
"""Heights at which the flow is worked out; four times as many change the time by under 4 %."""
HALVINGS = 30

Hole = tuple[float, float]
"""Height of its middle [m] and area [m2]."""


class Flow(Struct, frozen=True):
    """Flooding or draining.

    Attributes:
        volume: what can go in or out [m3].
        seconds: the time for 95 % of it; None where nothing flows, as with all holes at one height.
    """

    volume: float
    seconds: float | None


def flooding(network: Network, up: Vector, water: float) -> Flow:
    """How the pipes fill under water of a density [kg/m3], held with ``up`` in body axes."""
    return _flow(network, up, water, AIR_DENSITY)


def draining(network: Network, up: Vector, water: float) -> Flow:
    """How the pipes empty when lifted out, held with ``up``: as flooding by air, turned upside down."""
    x, y, z = up
    return _flow(network, (-x, -y, -z), AIR_DENSITY, water)


def _flow(network: Network, up: Vector, entering: float, leaving: float) -> Flow:
    rest = settle(network, up)
    volume, longest = 0.0, 0.0
    for group in network.groups:
        inside = set(group)
        holes = _holes(network, up, inside)
        steps = _filling(network, rest, group)
        volume += steps[-1][1]
        if holes and steps[-1][1] > 0:
            longest = max(longest, filling_time(steps, holes, entering, leaving))
    return Flow(volume, longest if longest < inf else None)


def _holes(network: Network, up: Vector, group: set[int]) -> list[Hole]:
    """The mouths of a group of bores; those at one height, to a tenth of a millimetre, as one."""
    areas: dict[float, float] = defaultdict(float)
    for mouth in network.mouths:
        if mouth.bore in group:
            areas[round(dot(up, mouth.centre), 4)] += hole_area(mouth.diameter)
    return list(areas.items())


def _filling(network: Network, rest: Settled, group: tuple[int, ...]) -> list[tuple[float, float]]:
    """Heights [m] and what lies below each in a group of bores [m3], where it can be filled at all."""
    wet = [bore for bore in group if rest.wet[bore]]
    spans = [_span(network.bores[bore], rest, bore) for bore in wet]
    if not spans:
        return [(0.0, 0.0)]
    low = min(span[0] for span in spans)
    high = max(min(span[1], rest.levels[bore]) for span, bore in zip(spans, wet, strict=True))
    heights = [low + (high - low) * step / SLICES for step in range(SLICES + 1)]
    return [
        (height, sum(_below(network.bores[bore], rest, bore, height) for bore in wet)) for height in heights
    ]


def _span(bore: Bore, rest: Settled, number: int) -> tuple[float, float]:
    """Height of the lowest and the highest point of a bore [m]."""
    low, (rise, across) = rest.lows[number], rest.slopes[number]
    ends = low, low + rise * bore.length
    return min(ends) - across * bore.radius, max(ends) + across * bore.radius


def _below(bore: Bore, rest: Settled, number: int, height: float) -> float:
    rise, across = rest.slopes[number]
    level = min(height, rest.levels[number])
    return bore.volume - volume_above(bore.radius, bore.length, rest.lows[number], rise, across, level)


def filling_time(
    steps: list[tuple[float, float]], holes: list[Hole], entering: float, leaving: float
) -> float:
    """Time [s] to fill most of a room from below; inf where nothing flows.

    Args:
        steps: rising heights [m] and the volume below each [m3].
        holes: heights and areas.
        entering, leaving: densities of what comes in below and of what goes out above [kg/m3].
    """
    wanted, seconds = SHARE * steps[-1][1], 0.0
    for (low, below), (high, up_to) in pairwise(steps):
        if up_to - below <= 0:
            continue
        part = min(1.0, (wanted - below) / (up_to - below))
        rate = _rate(low + (high - low) * part / 2, holes, entering, leaving)
        if rate <= 0:
            return inf
        seconds += part * (up_to - below) / rate
        if part < 1:
            break
    return seconds


def _rate(surface: float, holes: list[Hole], entering: float, leaving: float) -> float:
    """Flow [m3/s] with the inner surface at a height: in and out are equal at one neutral height."""
    low, high = min(height for height, _ in holes), max(height for height, _ in holes)
    low = max(low, surface)
    for _ in range(HALVINGS):
        neutral = (low + high) / 2
        if _inward(neutral, surface, holes, entering) > _outward(neutral, holes, leaving):
            high = neutral
        else:
            low = neutral
    inward = [_inward(height, surface, holes, entering) for height in (low, high)]
    outward = [_outward(height, holes, leaving) for height in (high, low)]
    surer = inward if inward[1] - inward[0] < outward[1] - outward[0] else outward
    flow = (surer[0] + surer[1]) / 2
    return DRILLED * sqrt(2 * GRAVITY * abs(entering - leaving)) * flow


def _inward(neutral: float, surface: float, holes: list[Hole], density: float) -> float:
    return sum(
        area * sqrt((neutral - max(height, surface)) / density)
        for height, area in holes
        if max(height, surface) < neutral
    )


def _outward(neutral: float, holes: list[Hole], density: float) -> float:
    return sum(area * sqrt((height - neutral) / density) for height, area in holes if height > neutral)
