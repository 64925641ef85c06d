"""What a longer tether would do."""

from msgspec import Struct

from model.design import Arrangement, Design, Power
from model.power.wiring import Wiring
from model.survey import Survey, motion_of, survey

LONGER = 5.0
"""[m] How much more tether is asked about."""


class Longer(Struct, frozen=True):
    """What a longer tether costs: each before and after.

    Attributes:
        metres: how much longer it is.
        volts: least at any motor [V]; amps: from the battery [A].
        pull: of all thrusters ahead, held still, over that of their tests.
        speed: top speed ahead [m/s], the same hanging length; None where nothing drives it ahead.
        price: of the longer piece, at the price of the tether that there is; None where it has none.
    """

    metres: float
    volts: tuple[float, float]
    amps: tuple[float, float]
    pull: tuple[float, float]
    speed: tuple[float, float] | None
    price: float | None


def longer_tether(found: Survey, metres: float = LONGER) -> Longer | None:
    """What some more metres of tether cost; None without a wiring."""
    power, before = found.arrangement.power, found.wiring
    if power is None or before is None or not before.loads:
        return None
    after = survey(_lengthened(found.design, power, metres))
    if after.wiring is None:
        return None
    speeds = [motion_of(one).ahead for one in (found, after)]
    tops = [run.top.value for run in speeds if run]
    return Longer(
        metres=metres,
        volts=(before.motor_volts or 0.0, after.wiring.motor_volts or 0.0),
        amps=(before.amps, after.wiring.amps),
        pull=(_pull_left(before), _pull_left(after.wiring)),
        speed=(tops[0], tops[1]) if len(tops) == 2 else None,
        price=_price(found.arrangement, power, metres),
    )


def _lengthened(design: Design, power: Power, metres: float) -> Design:
    return design.arranged(power=power.but(length=power.length + metres))


def _pull_left(wires: Wiring) -> float:
    return sum(wires.share.values()) / len(wires.share)


def _price(arrangement: Arrangement, power: Power, metres: float) -> float | None:
    tether = arrangement.tether
    if tether is None or not tether.price or not power.length:
        return None
    return round(tether.price / power.length * metres, 2)
