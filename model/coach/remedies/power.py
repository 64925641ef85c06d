"""Remedies for wires and power: a plan to start from, fuses, thicker cores, another battery."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import Remedy
from model.design import Battery, Design, Power, Thruster
from model.power.circuit import branch_area
from model.power.diagram import run_words
from model.power.gauges import cores_of, fuse_for, thinnest_enough
from model.power.wire import ampacity
from model.power.wiring import Wiring, wired
from model.survey import Survey

USUAL_LENGTH = 10.0
"""[m] of a tether, or the hanging length and some more (common practice)."""
MORE_LENGTH = 5.0
WATER = 1000.0
"""[kg/m3] Near enough for a current that is worked out from the pull."""
NEAR = 0.15
"""[m] A fuse this near to the battery is near enough."""


def plan(survey: Survey) -> tuple[Remedy, ...]:
    """A wiring to start from: a battery that suits the motors, cores thick enough, a fuse in each branch."""
    return (Remedy("Start from a usual wiring: battery, fuses, one pair for each motor", _planned),)


def _planned(design: Design) -> Design:
    motors = {motor.id: motor for motor in design.supplies.motors}
    volts = min(motors[item.motor].volts for item in design.arrangement.thrusters)
    tether = design.arrangement.tether
    length = max(USUAL_LENGTH, (tether.hanging if tether else 0.0) + MORE_LENGTH)
    power = Power(battery=Battery(name=f"sealed {volts:g} V battery", volts=volts), length=length)
    return fused(thicker_cores(design.arranged(power=power)))


def thicker_cores(design: Design) -> Design:
    """The design with the thinnest cores in its tether that are thick enough, or unchanged."""
    choice = thinnest_enough(design, design.arrangement, WATER)
    power = design.arrangement.power
    if choice is None or power is None or choice.area <= power.core_area:
        return design
    arrangement = cores_of(design.arrangement, choice.area)
    return design.arranged(thrusters=arrangement.thrusters, power=arrangement.power)


def fused(design: Design) -> Design:
    """The design with fuses that suit its wires, the main one and one in each branch."""
    power = design.arrangement.power
    if power is None:
        return design
    result = wired(design, design.arrangement, power, WATER)
    thrusters = tuple(_fused(item, power, result, design) for item in design.arrangement.thrusters)
    margin = design.brief.thresholds.fuse_least
    most = ampacity(power.lead_area)
    if power.feed == "one pair":
        most = min(most, ampacity(power.core_area))
    main = fuse_for(result.amps, most, margin)
    near = min(power.fuse_distance, NEAR)
    return design.arranged(thrusters=thrusters, power=power.but(main_fuse=main, fuse_distance=near))


def _fused(item: Thruster, power: Power, result: Wiring, design: Design) -> Thruster:
    amps = next(load.amps for load in result.loads if load.thruster == item.id)
    most = ampacity(branch_area(power, item.branch))
    fuse = fuse_for(amps, most, design.brief.thresholds.fuse_least)
    return item.but(branch=item.branch.but(fuse=fuse))


def fuses(survey: Survey) -> tuple[Remedy, ...]:
    """Fuses that suit the wires; with thicker cores, where the cores are too thin for any."""
    return (
        Remedy("Fit fuses that suit each wire and each current", fused),
        Remedy("Fit thicker cores, and fuses that suit them", lambda design: fused(thicker_cores(design))),
    )


def fuse_near(survey: Survey) -> tuple[Remedy, ...]:
    """The first fuse moved to the battery."""
    return (Remedy("Move the fuse to within 150 mm of the battery", partial(_powered, fuse_distance=NEAR)),)


def _powered(design: Design, **changes: object) -> Design:
    power = design.arrangement.power
    return design if power is None else design.arranged(power=power.but(**changes))


def cores(survey: Survey) -> tuple[Remedy, ...]:
    """Thicker cores; a shorter tether is for the team to decide."""
    return tuple(_cores(survey))


def _cores(survey: Survey) -> Iterator[Remedy]:
    choice = thinnest_enough(survey.design, survey.arrangement, survey.balance.density)
    if choice is not None:
        label = f"Use {choice.name} for the cores of the tether"
        yield Remedy(label, thicker_cores)
        yield Remedy(f"{label}, with fuses that suit", lambda design: fused(thicker_cores(design)))
    power = survey.arrangement.power
    if power is not None and power.feed == "one pair":
        yield Remedy("Give each motor a pair of its own", partial(_powered, feed="pair each"))


def lower_supply(survey: Survey, volts: float) -> tuple[Remedy, ...]:
    """A battery of at most some nominal volts [V]."""
    battery = Battery(name=f"sealed {volts:g} V battery", volts=volts)
    return (
        Remedy(f"Use a battery of {volts:g} V", partial(_powered, battery=battery)),
        Remedy(f"Use a battery of {volts:g} V, with cores and fuses that suit", partial(_lower, volts=volts)),
    )


def _lower(design: Design, volts: float) -> Design:
    battery = Battery(name=f"sealed {volts:g} V battery", volts=volts)
    return fused(thicker_cores(_powered(design, battery=battery)))


def long_enough(survey: Survey, hanging: float) -> tuple[Remedy, ...]:
    """A tether that reaches from the poolside with its hanging length [m]."""
    length = max(USUAL_LENGTH, hanging + MORE_LENGTH)
    label = f"Make the tether {run_words(length, survey.design.units)} long"
    return (
        Remedy(label, partial(_powered, length=length)),
        Remedy(f"{label}, with cores that suit", partial(_long, length=length)),
    )


def _long(design: Design, length: float) -> Design:
    return fused(thicker_cores(_powered(design, length=length)))
