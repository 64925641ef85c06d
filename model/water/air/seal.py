"""A sealed frame: what the air shut in lifts, what presses on it, and what a leak does."""

from msgspec import Struct

from model.water.balance import GRAVITY, Balance

DEPTHS = (1.0, 3.0)
"""[m] A little under the surface, and the floor of a deep school pool (common practice, no source)."""
KILOGRAMS_PER_CM2 = 1e-4 / GRAVITY
"""A pressure of 1 Pa as the weight of so many kilograms on each square centimetre."""
ATMOSPHERE = 101325.0
"""[Pa] standard atmosphere, 10th General Conference on Weights and Measures, 1954."""


class Pressure(Struct, frozen=True):
    """What the water presses with at a depth [m]: [Pa], and as a weight on a square centimetre [kg]."""

    depth: float
    pascals: float
    per_cm2: float


class Seal(Struct, frozen=True):
    """A frame sealed for good.

    Attributes:
        lift: what the air in the pipes carries [kg].
        spare: spare buoyancy while it is tight [kg], above zero it floats.
        leaked: spare buoyancy once all its pipes have filled [kg].
        pressures: at two depths.
    """

    lift: float
    spare: float
    leaked: float
    pressures: tuple[Pressure, ...]


def seal_of(room: float, tight: Balance) -> Seal:
    """What a sealed frame gains and risks, from the room in its pipes [m3] and its balance while tight."""
    lift = room * tight.density
    return Seal(lift, tight.spare, tight.spare - lift, tuple(pressure(d, tight.density) for d in DEPTHS))


def pressure(depth: float, water: float) -> Pressure:
    """What water of a density [kg/m3] presses with at a depth [m] (hydrostatics).

    >>> round(pressure(3.0, 996.5).per_cm2, 2)
    0.3
    """
    pascals = water * GRAVITY * depth
    return Pressure(depth, pascals, pascals * KILOGRAMS_PER_CM2)


def shrunk(depth: float, water: float) -> float:
    """What is left of a pocket of air at a depth [m], as a share (Boyle's law).

    >>> round(shrunk(3.0, 995.7), 3)
    0.776
    """
    return ATMOSPHERE / (ATMOSPHERE + water * GRAVITY * depth)
