"""The trim kit: washers and spare foam that cover what nobody can know before the vehicle is in the water."""

from math import ceil

from msgspec import Struct

from model.design import Arrangement, Design
from model.design.equipment import STEEL_DENSITY
from model.vehicle.pipework import disc


class TrimKit(Struct, frozen=True):
    """What to take to the pool.

    Attributes:
        washers: how many washers bring it down again where it comes out too light.
        foam: id of the foam that lifts it where it comes out too heavy; None where none is used.
        foam_length: how much of it [m].
    """

    washers: int
    foam: str | None
    foam_length: float


def trim_kit(design: Design, arrangement: Arrangement, spare_spread: float, density: float) -> TrimKit:
    """The kit that covers a spread of spare buoyancy [kg], either way, in water of a density [kg/m3].

    A steel washer sinks with 1 - density / 7850 of its weight: 0.87 of it in fresh water.
    """
    each = design.supplies.washer.mass * (1 - density / STEEL_DENSITY)
    washers = ceil(spare_spread / each - 1e-9)
    used = next((piece.foam for piece in arrangement.floats), None)
    foam = next((foam for foam in design.supplies.foams if foam.id == used), None)
    if foam is None:
        return TrimKit(washers, None, 0.0)
    lift = (disc(foam.outside_diameter) - disc(foam.hole)) * (density - foam.density)
    return TrimKit(washers, foam.id, spare_spread / lift if lift > 0 else 0.0)
