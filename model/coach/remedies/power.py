"""Remedies for wires and power: a plan to start from, fuses, thicker cores, another battery."""

from collections.abc import Iterator
from functools import partial
from itertools import product

from model.coach.finding import Remedy
from model.design import Battery, Design, Power, Thruster
from model.power.circuit import branch_area
from model.power.diagram import run_words
from model.power.gauges import Guarded, cores_of, fuse_for, thinnest_enough
from model.power.wire import ampacity, gauges
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
    return cores_in(design, choice.area)


def fused(design: Design) -> Design:
    """The design with fuses that suit its wires, the main one and one in each branch.

    Where none on sale suits, the fuse that is there stays.
    """
    power = design.arrangement.power
    if power is None:
        return design
    result = wired(design, design.arrangement, power, WATER)
    thrusters = tuple(_fused(item, power, result, design) for item in design.arrangement.thrusters)
    margin = design.brief.thresholds.fuse_least
    main = fuse_for(result.amps, main_ampacity(power), margin) or power.main_fuse
    near = min(power.fuse_distance, NEAR)
    return design.arranged(thrusters=thrusters, power=power.but(main_fuse=main, fuse_distance=near))


def _fused(item: Thruster, power: Power, result: Wiring, design: Design) -> Thruster:
    amps = next(load.amps for load in result.loads if load.thruster == item.id)
    most = ampacity(branch_area(power, item.branch))
    fuse = fuse_for(amps, most, design.brief.thresholds.fuse_least) or item.branch.fuse
    return item.but(branch=item.branch.but(fuse=fuse))


def one_fuse(survey: Survey, guarded: Guarded) -> tuple[Remedy, ...]:
    """The fuse that carries the current and protects its wire; all of them; thicker wire, where none does."""
    margin = survey.design.brief.thresholds.fuse_least
    fit = fuse_for(guarded.amps, guarded.most, margin)
    single: tuple[Remedy, ...] = ()
    if fit and guarded.thruster:
        name = next(item.name for item in survey.arrangement.thrusters if item.id == guarded.thruster)
        edit = partial(_branch_fuse, thruster=guarded.thruster, fuse=fit)
        single = (Remedy(f"Fit a fuse of {fit:g} A for {name}", edit),)
    elif fit:
        single = (Remedy(f"Fit a main fuse of {fit:g} A", partial(_powered, main_fuse=fit)),)
    return (*single, *fuses(survey))


def _branch_fuse(design: Design, thruster: str, fuse: float) -> Design:
    items = tuple(
        item.but(branch=item.branch.but(fuse=fuse)) if item.id == thruster else item
        for item in design.arrangement.thrusters
    )
    return design.arranged(thrusters=items)


def fuses(survey: Survey) -> tuple[Remedy, ...]:
    """Fuses that suit the wires; with thicker cores, where the cores are too thin for any."""
    return (
        Remedy("Fit fuses that suit each wire and each current", fused),
        Remedy("Fit thicker cores, and fuses that suit them", lambda design: fused(thicker_cores(design))),
        Remedy("Fit thicker wire, as thick as its fuse needs, and fuses that suit", _wired_for_fuses),
    )


def _wired_for_fuses(design: Design) -> Design:
    """The thinnest lead and cores for which there are fuses that suit; unchanged where there are none."""
    sizes = [area for _, area in gauges(inches=design.units == "in")]
    for lead, area in sorted(product(sizes, sizes), key=sum):
        power = design.arrangement.power
        if power is None or lead < power.lead_area or area < power.core_area:
            continue
        thicker = _powered(cores_in(design, area), lead_area=lead)
        after = thicker.arrangement.power
        if after is not None and _all_suit(thicker, after):
            return fused(thicker)
    return design


def _all_suit(design: Design, power: Power) -> bool:
    """Whether there is a fuse on sale for each wire and its current."""
    result = wired(design, design.arrangement, power, WATER)
    margin = design.brief.thresholds.fuse_least
    amps = {load.thruster: load.amps for load in result.loads}
    branches = [
        fuse_for(amps[item.id], ampacity(branch_area(power, item.branch)), margin)
        for item in design.arrangement.thrusters
    ]
    return all([*branches, fuse_for(result.amps, main_ampacity(power), margin)])


def main_ampacity(power: Power) -> float:
    """What the wires behind the main fuse may be fused with [A]."""
    return ampacity(min(power.lead_area, power.core_area if power.feed == "one pair" else power.lead_area))


def cores_in(design: Design, area: float) -> Design:
    """The design with the same copper in every core of its tether [mm2]."""
    arrangement = cores_of(design.arrangement, area)
    return design.arranged(thrusters=arrangement.thrusters, power=arrangement.power)


def fuse_near(survey: Survey) -> tuple[Remedy, ...]:
    """The first fuse moved to the battery."""
    return (Remedy("Move the fuse to within 150 mm of the battery", partial(_powered, fuse_distance=NEAR)),)


def _powered(design: Design, **changes: object) -> Design:
    power = design.arrangement.power
    return design if power is None else design.arranged(power=power.but(**changes))


def cores(survey: Survey) -> tuple[Remedy, ...]:
    """Thicker cores; a shorter tether where none on sale are thick enough for its length."""
    return tuple(_cores(survey))


def _cores(survey: Survey) -> Iterator[Remedy]:
    choice = thinnest_enough(survey.design, survey.arrangement, survey.balance.density)
    if choice is not None:
        label = f"Use {choice.name} for the cores of the tether"
        yield Remedy(label, thicker_cores)
        yield Remedy(f"{label}, with fuses that suit", lambda design: fused(thicker_cores(design)))
    power, tether = survey.arrangement.power, survey.arrangement.tether
    if power is not None and power.feed == "one pair":
        yield Remedy("Give each motor a pair of its own", partial(_powered, feed="pair each"))
    hanging = tether.hanging if tether else 0.0
    if choice is None and power is not None and power.length > max(USUAL_LENGTH, hanging + MORE_LENGTH):
        yield from long_enough(survey, hanging)


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
    """A tether that reaches from the poolside with its hanging length [m], or less of it that hangs."""
    length, unit = max(USUAL_LENGTH, hanging + MORE_LENGTH), survey.design.units
    label = f"Make the tether {run_words(length, unit)} long"
    longer = (
        Remedy(label, partial(_powered, length=length)),
        Remedy(f"{label}, with cores that suit", partial(_long, length=length)),
    )
    power = survey.arrangement.power
    less = power.length - MORE_LENGTH if power else 0.0
    if not 0 < less < hanging:
        return longer
    return (*longer, Remedy(f"Let {run_words(less, unit)} of it hang in the water", partial(_hung, less)))


def _hung(hanging: float, design: Design) -> Design:
    tether = design.arrangement.tether
    return design if tether is None else design.arranged(tether=tether.but(hanging=hanging))


def _long(design: Design, length: float) -> Design:
    return fused(thicker_cores(_powered(design, length=length)))
