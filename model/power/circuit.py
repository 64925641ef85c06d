"""The whole circuit solved together: battery, lead, fuses, plugs, tether and motor curves.

Ohm's and Kirchhoff's laws (textbook).  Propellers are held still, which is when a motor draws most.
"""

from collections.abc import Callable

from msgspec import Struct

from model.design import Arrangement, Branch, Design, Motor, Power, Thruster
from model.power.motor import Curve, curve_of
from model.power.wire import pair_resistance
from model.thrust.rated import rated

FUSE_VOLTS = 0.1
"""Volts lost in a fuse that carries all it may: its cold resistance is about 0.1 V over its rating
(blade fuses, common practice)."""
STEPS = 60
"""Halvings of the voltage where the branches part, to far below a microvolt."""


class Branching(Struct, frozen=True):
    """The way of one motor: its curve and the resistance from where the branches part and back [ohm]."""

    thruster: str
    curve: Curve
    resistance: float


class Supply(Struct, frozen=True):
    """The battery's volts, and what all branches share [ohm]."""

    volts: float
    shared: float
    branches: tuple[Branching, ...]


class Load(Struct, frozen=True):
    """What one motor gets: volts at it, current, and whether its propeller is held fast."""

    thruster: str
    volts: float
    amps: float
    stalled: bool


def supply_of(design: Design, arrangement: Arrangement, power: Power, density: float) -> Supply:
    """The circuit of an arrangement as resistances and motor curves."""
    motors = {motor.id: motor for motor in design.supplies.motors}
    share = design.brief.thresholds.astern_share
    branches = []
    for thruster in arrangement.thrusters:
        motor = motors[thruster.motor]
        curve = thruster_curve(thruster, motor, share, density)
        branches.append(Branching(thruster.id, curve, _branch_resistance(power, thruster.branch)))
    shared = power.battery.resistance + pair_resistance(power.lead_area, power.lead_length)
    shared += _fuse(power.main_fuse)
    if power.feed == "one pair":
        shared += pair_resistance(power.core_area, power.length)
    return Supply(power.battery.volts, shared, tuple(branches))


def thruster_curve(thruster: Thruster, motor: Motor, astern_share: float, density: float) -> Curve:
    """The curve of a thruster's motor."""
    return curve_of(motor, thruster.pull, rated(thruster, motor, astern_share, density).ahead, density)


def _fuse(amps: float | None) -> float:
    return FUSE_VOLTS / amps if amps else 0.0


def branch_area(power: Power, branch: Branch) -> float:
    """Copper of the cores of a branch in the tether [mm2]."""
    return branch.core_area or power.core_area


def _branch_resistance(power: Power, branch: Branch) -> float:
    ohms = _fuse(branch.fuse) + 2 * power.plugs * power.contact
    if power.feed == "pair each":
        ohms += pair_resistance(branch_area(power, branch), power.length)
    return ohms


def solve(
    supply: Supply, running: Callable[[str], bool] = lambda _: True, stalled: str = ""
) -> tuple[Load, ...]:
    """Volts and current of each motor that runs, all at once.

    The voltage where the branches part is halved in on: the more it is, the more the branches draw and
    the less the shared resistance leaves.

    Args:
        running: whether a thruster, by its id, runs.
        stalled: the thruster whose propeller is held fast, if any.
    """
    chosen = [branch for branch in supply.branches if running(branch.thruster)]

    def drawn(volts: float) -> float:
        return sum(_amps(branch, volts, stalled) for branch in chosen)

    low, high = 0.0, supply.volts
    if supply.shared == 0 or not chosen:
        low = high
    for _ in range(STEPS):
        middle = (low + high) / 2
        if middle + supply.shared * drawn(middle) > supply.volts:
            high = middle
        else:
            low = middle
        if high - low < 1e-9:
            break
    return tuple(_load(branch, low, stalled) for branch in chosen)


def _amps(branch: Branching, volts: float, stalled: str) -> float:
    if branch.thruster == stalled:
        return branch.curve.stalled(volts, branch.resistance)
    return branch.curve.current(volts, branch.resistance)


def _load(branch: Branching, volts: float, stalled: str) -> Load:
    amps = _amps(branch, volts, stalled)
    return Load(branch.thruster, volts - amps * branch.resistance, amps, branch.thruster == stalled)
