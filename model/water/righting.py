"""What rights the vehicle when it is tilted or loaded.

Righting moment of a submerged body: W BG sin(theta); the metacentre lies at B (textbook naval
architecture).  Water in flooded pipes is left out, as in BG.
"""

from math import radians, sin

from msgspec import Struct

from model.design import Arrangement
from model.frame.layout import Frame
from model.thrust.moves import Thrust
from model.vectors import ORIGIN, Vector, add, norm, scale
from model.water.balance import GRAVITY, Balance, rest


class Loaded(Struct, frozen=True):
    """The vehicle with a load on its hook, held at its depth.

    Attributes:
        pitch, roll: bow up and port side up at rest [deg]; None where nothing decides it.
        needed: upward thrust that holds it [N], below zero where it must be held down.
        margin: up thrust over what is needed; None where nothing is needed.
    """

    pitch: float | None
    roll: float | None
    needed: float
    margin: float | None


def righting_moment(balance: Balance, angle: float) -> float:
    """The moment [N m] that turns the vehicle back when it is tilted from rest by an angle [deg].

    >>> from model.water.balance import Balance
    >>> four_kilos = Balance(4.0, 0.004, 1000.0, (0, 0, 0), (0, 0, 0.05), 0.05, 0.0, 0.0)
    >>> round(righting_moment(four_kilos, 10), 4)
    0.3406
    """
    return balance.mass * GRAVITY * balance.bg * sin(radians(angle))


def hook_place(arrangement: Arrangement, frame: Frame) -> Vector | None:
    """Where a load hangs [m]: at the first hook, or None without one."""
    for item in arrangement.attachments:
        if item.kind == "hook":
            return frame.bars[item.bar].centre_of(item)
    return None


def with_load(balance: Balance, thrust: Thrust, load: float, at: Vector) -> Loaded:
    """The vehicle with a load of a weight in water [kg] hanging at a place [m].

    Weight, buoyancy and load act through G, B and the hook; what is left over is held by the upright
    thrusters, at the middle of their pull, or at G where there are none.
    """
    lifted = balance.displaced * balance.density
    left = lifted - balance.mass - load
    lever = ORIGIN
    for force, place in ((lifted, balance.b), (-balance.mass, balance.g), (-load, at)):
        lever = add(lever, scale(place, force))
    lever = add(lever, scale(thrust_place(thrust) or balance.g, -left))
    length = norm(lever)
    pitch, roll = rest(scale(lever, 1 / length)) if length > 1e-9 else (None, None)
    needed = -left * GRAVITY
    return Loaded(pitch, roll, needed, thrust.up / needed if needed > 0 else None)


def thrust_place(thrust: Thrust) -> Vector | None:
    """The middle of the upward pull of the thrusters [m], or None without any."""
    ups = [(at, force[2]) for at, force in thrust.pushes if force[2] > 0]
    total = sum(pull for _, pull in ups)
    if not total:
        return None
    x, y, z = (sum(at[axis] * pull for at, pull in ups) / total for axis in range(3))
    return x, y, z
