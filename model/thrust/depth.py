"""How deep the propellers lie when the vehicle floats at rest: near the surface they suck air.

The vehicle is taken to float level; what stands out of the water is what its spare buoyancy holds up.
"""

from collections.abc import Sequence
from math import acos, pi, sqrt

from model.parts import Block, Cylinder, Part, Solid
from model.thrust.clear import disc_of
from model.vectors import norm, sub
from model.water.balance import Balance

HALVINGS = 30
LEVEL = 0.02
"""A cylinder whose axis rises by less than this share of its length counts as level."""


def waterline(parts: Sequence[Part], balance: Balance) -> float | None:
    """Height of the water at rest [m]; None where the vehicle sinks, or floats with nothing under water.

    The height above which the parts hold as much room as the spare buoyancy keeps out of the water.
    """
    out = balance.spare / balance.density
    boxes = [box for part in parts if part.volume > 0 and (box := part.box)]
    if out <= 0 or out >= balance.displaced or not boxes:
        return None
    low, high = min(box.low[2] for box in boxes), max(box.high[2] for box in boxes)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if _room_above(parts, middle) > out:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _room_above(parts: Sequence[Part], height: float) -> float:
    """Room [m3] that the parts displace above a height [m], spread evenly over their solids."""
    total = 0.0
    for part in parts:
        if not part.solids or part.volume <= 0:
            continue
        sizes = [_size(solid) for solid in part.solids]
        above = sum(size * share_above(solid, height) for solid, size in zip(part.solids, sizes, strict=True))
        total += part.volume * above / (sum(sizes) or 1.0)
    return total


def _size(solid: Solid) -> float:
    if isinstance(solid, Block):
        a, b, c = solid.size
        return a * b * c
    return pi * solid.radius**2 * norm(sub(solid.end, solid.start))


def share_above(solid: Solid, height: float) -> float:
    """The share of a solid that lies above a height [m].

    A level cylinder by the segment of its circle; others by the height of their box, as near enough.

    >>> round(share_above(Cylinder((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), 0.1), 0.0), 3)
    0.5
    """
    box = solid.box
    if height >= box.high[2]:
        return 0.0
    if height <= box.low[2]:
        return 1.0
    if isinstance(solid, Cylinder) and abs(solid.end[2] - solid.start[2]) <= LEVEL * norm(
        sub(solid.end, solid.start)
    ):
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
