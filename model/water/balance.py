"""Weight, buoyancy and trim of the submerged vehicle.

Water in flooded bores is left out on both sides: it has no weight in water.  BG is the height of
the centre of buoyancy B above the centre of gravity G on that convention.
"""

from collections.abc import Iterable
from math import asin, atan2, degrees

from msgspec import Struct

from model.parts import Part
from model.vectors import ORIGIN, Vector, norm, scale, sub

GRAVITY = 9.80665
"""[m/s2] standard gravity, 3rd General Conference on Weights and Measures, 1901."""
TOGETHER = 1e-7
"""[m] B this near to G gives no direction to come to rest in."""


class Balance(Struct, frozen=True):
    """How the vehicle floats, fully under water.

    Attributes:
        mass: in air, pipes drained [kg].
        displaced: volume of water displaced [m3].
        density: of the water [kg/m3].
        g, b: centres of gravity and of buoyancy [m].
        bg: distance from G to B, below zero where B lies below G [m].
        pitch: bow up at rest [deg]; None where nothing decides it.
        roll: port side up at rest [deg]; None where nothing decides it.
    """

    mass: float
    displaced: float
    density: float
    g: Vector
    b: Vector
    bg: float
    pitch: float | None
    roll: float | None

    @property
    def spare(self) -> float:
        """Spare buoyancy as a mass [kg]: above zero it floats, below zero it sinks."""
        return self.displaced * self.density - self.mass

    @property
    def net(self) -> float:
        """Net buoyancy [N], up above zero."""
        return self.spare * GRAVITY

    @property
    def spare_percent(self) -> float:
        """Spare buoyancy in per cent of what is displaced; 0 where nothing is."""
        lifted = self.displaced * self.density
        return 100 * self.spare / lifted if lifted else 0.0


def balance(parts: Iterable[Part], density: float) -> Balance:
    """The balance of some parts in water of a density [kg/m3]."""
    listed = list(parts)
    mass, g = _centre([(part.mass, part.mass_centre) for part in listed])
    displaced, b = _centre([(part.volume, part.volume_centre) for part in listed])
    lever = sub(b, g)
    pitch, roll = rest(lever)
    height = norm(lever) if lever[2] > -TOGETHER else -norm(lever)
    bg = height if abs(height) >= TOGETHER else 0.0
    return Balance(mass, displaced, density, g, b, bg, pitch, roll)


def rest(lever: Vector) -> tuple[float | None, float | None]:
    """Pitch and roll at rest [deg] from the lever G to B [m] in body axes.

    Fully submerged and neutral, a body comes to rest with B straight above G; the lever is then
    "up" in body axes: bow up = asin(u_x), port side up = atan2(u_y, u_z).  G to B pointing ahead
    lifts the bow.

    >>> rest((0.0, 0.0, 0.05))
    (0.0, 0.0)
    """
    length = norm(lever)
    if length < TOGETHER:
        return None, None
    x, y, z = scale(lever, 1 / length)
    return degrees(asin(max(-1.0, min(1.0, x)))), degrees(atan2(y, z)) + 0.0


def _centre(weighted: list[tuple[float, Vector]]) -> tuple[float, Vector]:
    """The sum of some weights and their common centre."""
    total = sum(weight for weight, _ in weighted)
    if not total:
        return 0.0, ORIGIN
    x, y, z = (sum(weight * at[axis] for weight, at in weighted) / total for axis in range(3))
    return total, (x, y, z)
