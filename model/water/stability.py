"""How steady the vehicle is: righting moments, what tips it, how it swings, and the load on its hook."""

from math import atan2, degrees

from msgspec import Struct

from model.design import Arrangement, Design
from model.frame.layout import Frame
from model.motion.inertia import added_inertia, dry_inertia, flooding_inertia, period
from model.motion.shapes import wet_shapes
from model.motion.tensor import Tensor
from model.parts import Part
from model.thrust.moves import Thrust
from model.water.balance import GRAVITY, Balance
from model.water.righting import Loaded, hook_place, righting_moment, with_load

TEST_LOAD = 0.100
"""[kg] Hung on the hook to see how far it tips."""
TILTER = (0.050, 0.150)
"""A weight [kg] and how far from the middle it hangs [m] (DEFAULTS)."""


class Stability(Struct, frozen=True):
    """How steady the vehicle is.

    Attributes:
        tipped: the vehicle with 100 g in water on its hook; None without a hook.
        loaded: with the heaviest load of the brief on its hook; None without either.
        roll_period, pitch_period: of small swings [s]; None where nothing rights it.
    """

    tipped: Loaded | None
    loaded: Loaded | None
    roll_period: float | None
    pitch_period: float | None


def stability(
    design: Design,
    arrangement: Arrangement,
    frame: Frame,
    parts: tuple[Part, ...],
    balance: Balance,
    thrust: Thrust,
) -> Stability:
    """How steady one arrangement is."""
    hook, load = hook_place(arrangement, frame), design.brief.load
    tensor = whole_inertia(arrangement, frame, parts, balance)
    return Stability(
        tipped=with_load(balance, thrust, TEST_LOAD, hook) if hook else None,
        loaded=with_load(balance, thrust, load.in_water(balance.density), hook) if hook and load else None,
        roll_period=period(tensor.xx, balance.mass, balance.bg, GRAVITY),
        pitch_period=period(tensor.yy, balance.mass, balance.bg, GRAVITY),
    )


def whole_inertia(
    arrangement: Arrangement, frame: Frame, parts: tuple[Part, ...], balance: Balance
) -> Tensor:
    """Inertia about G [kg m2] of the parts, of the water in flooded pipes and of the water around."""
    tensor = dry_inertia(parts, balance.g)
    tensor += added_inertia(wet_shapes(frame, parts), balance.density, balance.g)
    if arrangement.bores == "flooded":
        tensor += flooding_inertia(frame, balance.density, balance.g)
    return tensor


def righting_curve(balance: Balance) -> list[tuple[int, float]]:
    """Tilt from rest [deg] and the moment that turns it back [N m], from 0 to 180 degrees."""
    return [(angle, righting_moment(balance, angle)) for angle in range(0, 181, 15)]


def tilt_by(balance: Balance, weight: float, lever: float) -> float:
    """Tilt [deg] from a weight in water [kg] hung at a distance from the middle [m].

    tan(theta) = w x / (M BG), the inclining experiment (textbook naval architecture).

    >>> from model.water.balance import Balance
    >>> four_kilos = Balance(4.0, 0.004, 1000.0, (0, 0, 0), (0, 0, 0.05), 0.05, 0.0, 0.0)
    >>> round(tilt_by(four_kilos, 0.1, 0.2), 2)
    5.71
    """
    return degrees(atan2(weight * lever, balance.mass * balance.bg))
