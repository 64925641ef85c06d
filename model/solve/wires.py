"""What other wires would do: each gauge on sale, and a longer tether."""

from dataclasses import dataclass

from model.design import Arrangement, Design, Power
from model.power.wire import ampacity, gauges
from model.power.wiring import Wiring, wired
from model.survey import Survey, motion_of, survey

LONGER = 5.0
"""[m] How much more tether is asked about."""


@dataclass(frozen=True, slots=True)
class GaugeChoice:
    """A size of wire for the cores of the tether.

    Attributes:
        name: of the size; area: copper of one core [mm2].
        lost: worst share of the volts that does not arrive.
        volts: least at any motor [V].
        pull: least share of the pull of its test that a motor has left.
        fuse: the largest fuse for it [A].
        enough: whether the coach is silent about it.
    """

    name: str
    area: float
    lost: float
    volts: float
    pull: float
    fuse: float
    enough: bool


@dataclass(frozen=True, slots=True)
class Longer:
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


def gauge_choices(found: Survey) -> tuple[GaugeChoice, ...]:
    """Each size of wire on sale for all cores of the tether, the thinnest first; none without a wiring."""
    power = found.arrangement.power
    if power is None or not found.arrangement.thrusters:
        return ()
    limit = found.design.brief.thresholds.volts_tip / 100
    choices = []
    for name, area in gauges(inches=found.design.units == "in"):
        result = _with_cores(found, power, area)
        lost = max(result.lost.values())
        choices.append(
            GaugeChoice(
                name,
                area,
                lost,
                min(load.volts for load in result.loads),
                min(result.share.values()),
                ampacity(area),
                lost <= limit,
            )
        )
    return tuple(choices)


def thinnest_enough(found: Survey) -> GaugeChoice | None:
    """The thinnest size about which the coach is silent, or None where none will do."""
    return next((choice for choice in gauge_choices(found) if choice.enough), None)


def cores_of(arrangement: Arrangement, area: float) -> Arrangement:
    """An arrangement with the same copper in every core of its tether [mm2]."""
    if arrangement.power is None:
        return arrangement
    thrusters = tuple(
        item.but(branch=item.branch.but(core_area=None)) if item.branch.core_area else item
        for item in arrangement.thrusters
    )
    return arrangement.but(thrusters=thrusters, power=arrangement.power.but(core_area=area))


def _with_cores(found: Survey, power: Power, area: float) -> Wiring:
    arrangement = cores_of(found.arrangement, area)
    return wired(found.design, arrangement, arrangement.power or power, found.balance.density)


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
