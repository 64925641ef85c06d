"""How sure buoyancy and trim are: what foam, fittings and push-in scatter do to them.

The causes are independent, so their effects add as the root of the sum of squares.
"""

from collections.abc import Iterable
from math import atan2, degrees, hypot

from msgspec import Struct

from model.design import Arrangement, Design
from model.parts import Part
from model.water.balance import Balance

FITTING_SCATTER = 0.25
"""Share by which a fitting's weight may be off while it is an estimate (from memory: +-25 %)."""
BOUGHT_SCATTER = 0.002
"""[kg] How far a kitchen scale is off for each bought part (common practice, no source)."""


class Spread(Struct, frozen=True):
    """How far the real thing may be off, one way or the other: spare buoyancy [kg], pitch and roll [deg]."""

    spare: float
    pitch: float
    roll: float


def spread(design: Design, arrangement: Arrangement, parts: Iterable[Part], balance: Balance) -> Spread:
    """The spread of spare buoyancy and trim at rest."""
    listed = list(parts)
    foams = {foam.id: foam.scatter for foam in design.supplies.foams}
    scatter = {piece.id: foams[piece.foam] for piece in arrangement.floats}
    foam = [(part, part.volume * scatter[part.id]) for part in listed if part.kind == "float"]
    fittings = [
        (part, FITTING_SCATTER * (part.mass - part.volume * balance.density))
        for part in listed
        if part.kind == "fitting"
    ]
    bought = [[(part, BOUGHT_SCATTER)] for part in listed if part.kind in ("thruster", "attachment")]
    causes = [foam, fittings, *bought]
    spare = hypot(*(sum(extra for _, extra in cause) for cause in causes))
    shift = design.brief.thresholds.insertion_scatter
    tilts = [_tilt(causes, listed, balance, axis, shift) for axis in (0, 1)]
    return Spread(spare, tilts[0], tilts[1])


def _tilt(
    causes: list[list[tuple[Part, float]]], parts: list[Part], balance: Balance, axis: int, shift: float
) -> float:
    """How far the trim about one axis may be off [deg]: weights that differ, and parts that sit elsewhere."""
    if balance.mass <= 0 or balance.displaced <= 0 or balance.bg <= 0:
        return 0.0
    g = balance.g[axis]
    heavier = [sum(extra * (part.mass_centre[axis] - g) for part, extra in cause) for cause in causes]
    levers = [moment / balance.mass for moment in heavier]
    levers += [shift * (part.volume / balance.displaced - part.mass / balance.mass) for part in parts]
    return degrees(atan2(hypot(*levers), balance.bg))
