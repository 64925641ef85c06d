"""How deep the propellers lie when the vehicle floats at rest: near the surface they suck air.

The vehicle is taken to float level; what stands out of the water is what its spare buoyancy holds up.
"""

from collections.abc import Sequence
from math import acos, pi, sqrt

from model.parts import Block, Box, Cylinder, Part, Solid
from model.thrust.clear import disc_of
from model.water.balance import Balance

HALVINGS = 30
LEVEL = 0.02
"""A cylinder whose axis rises by less than this share of its length counts as level."""


def waterline(parts: Sequence[Part], balance: Balance) -> float | None:
    """Height of the water at rest [m]; None where the vehicle sinks, or floats with nothing under water.

    The height above which the parts hold as much room as the spare buoyancy keeps out of the water.
    """
    out = balance.spare / balance.density
    rooms = _rooms(parts)
    if out <= 0 or out >= balance.displaced or not rooms:
        return None
    low, high = min(box.low[2] for _, _, box in rooms), max(box.high[2] for _, _, box in rooms)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if sum(room * share_above(solid, middle, box) for room, solid, box in rooms) > out:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _rooms(parts: Sequence[Part]) -> list[tuple[float, Solid, Box]]:
    """The room [m3] that each solid displaces, that of a part spread evenly over its solids, and its box."""
    found = []
    for part in parts:
        if part.volume > 0:
            sizes = [_size(solid) for solid in part.solids]
            whole = sum(sizes) or 1.0
            found += [
                (part.volume * size / whole, solid, solid.box)
                for solid, size in zip(part.solids, sizes, strict=True)
            ]
    return found


def _size(solid: Solid) -> float:
    if isinstance(solid, Block):
        a, b, c = solid.size
        return a * b * c
    return pi * solid.radius**2 * solid.length


def share_above(solid: Solid, height: float, box: Box) -> float:
    """The share of a solid in its upright box that lies above a height [m].

    A level cylinder by the segment of its circle; others by the height of their box, as near enough.

    >>> rod = Cylinder((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), 0.1)
    >>> round(share_above(rod, 0.0, rod.box), 3)
    0.5
    """
    if height >= box.high[2]:
        return 0.0
    if height <= box.low[2]:
        return 1.0
    if isinstance(solid, Cylinder) and abs(solid.end[2] - solid.start[2]) <= LEVEL * solid.length:
        h = max(-1.0, min(1.0, (height - box.centre[2]) / solid.radius))
        return (acos(h) - h * sqrt(1 - h * h)) / pi
    return (box.high[2] - height) / (box.high[2] - box.low[2])


def propeller_depths(parts: Sequence[Part], balance: Balance) -> dict[str, float]:
    """How far the upper edge of each propeller lies under the resting waterline [m], by thruster.

    Empty where the vehicle does not float.
    """
    level = waterline(parts, balance)
    if level is None:
        return {}
    return {part.id: level - disc_of(part).box.high[2] for part in parts if part.kind == "thruster"}
