"""Findings about battery, fuses, tether and volts."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Severity, Step
from model.coach.remedies import power as remedy
from model.coach.say import say
from model.coach.sentences import length, listed
from model.design import COMPARISON_SLACK, Power, Thruster
from model.power.checks import checks_of
from model.power.circuit import branch_area
from model.power.diagram import run_words
from model.power.gauges import Guarded, fuse_for
from model.power.stall import fuse_words, stall_of
from model.power.wire import ampacity
from model.power.wiring import Wiring
from model.survey import Survey

STEP: Step = "wires"
"""Where wires are put right."""
FUSE_DISTANCE = 0.175
"""[m] The furthest that a fuse may sit from the battery (ABYC E-11: 7 in)."""
OVER_VOLTED = 1.25
"""Volts at a motor over those that it is made for, most (common practice: a full 12 V battery is 1.2)."""
POWER, CABLE, CHECKS = About("power"), About("power", "cable"), About("power", "checks")


def no_plan(survey: Survey) -> Iterator[Finding]:
    """Thrusters without a wiring."""
    if survey.arrangement.power is None and survey.arrangement.thrusters:
        yield say("power.plan-missing", "tip", STEP, POWER, partial(remedy.plan, survey))


def supply(survey: Survey) -> Iterator[Finding]:
    """A battery over the brief's limit, or over what a motor is made for."""
    power, limit = survey.arrangement.power, survey.design.brief.supply_limit
    if power is None:
        return
    volts = power.battery.volts
    if limit is not None and volts > limit + COMPARISON_SLACK:
        propose = partial(remedy.lower_supply, survey, limit)
        yield say("power.supply-over", "must", STEP, POWER, propose, volts=f"{volts:g}", limit=f"{limit:g}")
        return
    for load in survey.wiring.loads if survey.wiring else ():
        drive = next(drive for drive in survey.drives if drive.thruster == load.thruster)
        made_for = drive.rated.volts
        if load.volts > OVER_VOLTED * made_for:
            values = {"thruster": drive.name, "volts": f"{load.volts:.1f}", "most": f"{made_for:g}"}
            propose = partial(remedy.lower_supply, survey, made_for)
            about = About("thruster", load.thruster)
            yield say("power.motor-over", "should", STEP, about, propose, **values)


def _borne(survey: Survey) -> float | None:
    """Nominal volts that the rules and the motors bear, where the battery has more; else None."""
    wires, limit = survey.wiring, survey.design.brief.supply_limit
    if wires is None:
        return None
    volts = {drive.thruster: drive.rated.volts for drive in survey.drives}
    borne = [volts[load.thruster] for load in wires.loads if load.volts > OVER_VOLTED * volts[load.thruster]]
    if limit is not None and wires.supply.volts > limit + COMPARISON_SLACK:
        borne.append(limit)
    return min(borne, default=None)


def fuses(survey: Survey) -> Iterator[Finding]:
    """A fuse that is missing, too large for wire or motor, too small for its current, or far away."""
    wires = survey.wiring
    if wires is None or not wires.loads:
        return
    power = wires.power
    yield from _main_fuse(survey, wires, power)
    for item in survey.arrangement.thrusters:
        yield from _branch_fuse(survey, wires, power, item)
    if power.fuse_distance > FUSE_DISTANCE + COMPARISON_SLACK:
        unit = survey.design.units
        values = {"distance": length(power.fuse_distance, unit), "most": length(FUSE_DISTANCE, unit)}
        yield say("power.fuse-far", "should", STEP, POWER, partial(remedy.fuse_near, survey), **values)


def _main_fuse(survey: Survey, wires: Wiring, power: Power) -> Iterator[Finding]:
    most = remedy.main_ampacity(power)
    if power.main_fuse is None:
        bare, fused = _before_branches(power), any(item.branch.fuse for item in survey.arrangement.thrusters)
        if bare and fused:  # where no branch has a fuse, each of them is told
            propose = partial(remedy.one_fuse, survey, Guarded("The main fuse", None, 0.0, wires.amps, most))
            yield say("power.main-missing", "must", STEP, POWER, propose, wires=bare)
        return
    guarded = Guarded("The main fuse", None, power.main_fuse, wires.amps, most)
    yield from _fuse(survey, POWER, guarded, wires.measured())


def _before_branches(power: Power) -> str:
    """The wires that lie between the battery and the fuses of the motors, in words."""
    lead = "the lead from the battery" if power.lead_length else ""
    pair = "the pair in the tether" if power.feed == "one pair" and power.length else ""
    return " and ".join(part for part in (lead, pair) if part)


def _branch_fuse(survey: Survey, wires: Wiring, power: Power, item: Thruster) -> Iterator[Finding]:
    about, own = About("thruster", item.id), item.branch.fuse
    most = ampacity(branch_area(power, item.branch))
    propose = partial(remedy.fuses, survey)
    amps = next(load.amps for load in wires.loads if load.thruster == item.id)
    spoken = False
    if own is not None:
        guarded = Guarded(f"The fuse of {item.name}", item.id, own, amps, most)
        for found in _fuse(survey, about, guarded, wires.measured(item.id)):
            spoken = True
            yield found
    elif power.main_fuse is None:
        spoken = True
        yield say("power.fuse-missing", "must", STEP, about, propose, thruster=item.name)
    elif power.feed == "pair each" and power.main_fuse > most + COMPARISON_SLACK:
        spoken = True
        values = {"fuse": f"The main fuse, all that protects {item.name},", "amps": f"{power.main_fuse:g}"}
        yield say("power.fuse-large", "must", STEP, about, propose, **values, most=f"{most:.1f}")
    if not spoken:
        yield from _held_fast(survey, wires, item, amps, most)


def _fuse(survey: Survey, about: About, guarded: Guarded, measured: bool) -> Iterator[Finding]:
    margin = survey.design.brief.thresholds.fuse_least
    fuse, amps, most = guarded.fuse, guarded.amps, guarded.most
    propose = partial(remedy.one_fuse, survey, guarded)
    values = {"fuse": guarded.name, "amps": f"{fuse:g}"}
    if fuse > most + COMPARISON_SLACK:
        yield say("power.fuse-large", "must", STEP, about, propose, **values, most=f"{most:.1f}")
        return
    fit, borne = fuse_for(amps, most, margin), _borne(survey)
    if borne is not None:  # a larger fuse would only let the motors burn
        propose = partial(remedy.lower_supply, survey, borne)
    values |= {
        "running": f"{amps:.1f}",
        "guessed": "" if measured else " (worked out from the pull, so measure it)",
        "fit": f"A battery of {borne:g} V sends less through it."
        if borne is not None
        else f"A fuse of {fit:g} A carries that and still protects its wire."
        if fit
        else f"No fuse on sale carries that and still protects its wire ({most:.1f} A at most): it needs "
        "thicker wire.",
    }
    if fuse < amps - COMPARISON_SLACK:
        stops = "the motor stops" if guarded.thruster else "all motors stop"
        severity: Severity = "must" if measured else "should"
        yield say("power.fuse-blows", severity, STEP, about, propose, **values, stops=stops)
    elif fuse < margin * amps - COMPARISON_SLACK:
        least = f"{margin * amps:.1f}"
        yield say("power.fuse-small", "should", STEP, about, propose, **values, least=least)


def _held_fast(survey: Survey, wires: Wiring, item: Thruster, amps: float, most: float) -> Iterator[Finding]:
    """A fuse that lets a motor burn whose propeller is held fast, where a smaller one carries the run."""
    found = stall_of(survey.arrangement, wires, item.id)
    fit = fuse_for(amps, most, survey.design.brief.thresholds.fuse_least)
    if found.fate == "holds" and found.fuse and fit and fit < found.amps - COMPARISON_SLACK:
        guarded = Guarded(f"The fuse of {item.name}", item.id, fit, amps, most)
        values = {
            "thruster": item.name,
            "stalled": f"{found.amps:.1f}",
            "fuse": fuse_words(found),
            "running": f"{amps:.1f}",
        }
        propose = partial(remedy.one_fuse, survey, guarded)
        yield say("power.fuse-stalled", "tip", STEP, About("thruster", item.id), propose, **values)


def volts(survey: Survey) -> Iterator[Finding]:
    """Too little of the battery's volts arrives: the tether is too thin for its length."""
    wires, limits = survey.wiring, survey.design.brief.thresholds
    if wires is None or not wires.lost:
        return
    worst = max(wires.lost, key=lambda name: wires.lost[name])
    lost = 100 * wires.lost[worst]
    if lost <= limits.volts_tip + COMPARISON_SLACK:
        return
    severity: Severity = "should" if lost > limits.volts_should + COMPARISON_SLACK else "tip"
    load = next(load for load in wires.loads if load.thruster == worst)
    values = {
        "thruster": next(drive.name for drive in survey.drives if drive.thruster == worst),
        "volts": f"{load.volts:.1f}",
        "battery": f"{wires.power.battery.volts:g}",
        "lost": f"{lost:.0f} %",
        "left": f"which leaves {100 * wires.share[worst]:.0f} % of its pull"
        if wires.share[worst] < 1
        else "though that is still more than in its test",
    }
    yield say("power.volts-lost", severity, STEP, CABLE, partial(remedy.cores, survey), **values)


def tether_reach(survey: Survey) -> Iterator[Finding]:
    """A tether of no length, shorter than what hangs in the water, or of which nothing hangs there."""
    power, tether = survey.arrangement.power, survey.arrangement.tether
    hanging, unit = tether.hanging if tether else 0.0, survey.design.units
    if tether and not tether.hanging:
        yield say("tether.hanging-none", "tip", "gear", About("tether", tether.id), tether=tether.name)
    if power is None or (power.length > 0 and power.length >= hanging - COMPARISON_SLACK):
        return
    propose = partial(remedy.long_enough, survey, hanging)
    values = {"length": run_words(power.length, unit)}
    if not power.length:
        yield say("power.tether-missing", "should", STEP, CABLE, propose, **values)
    else:
        values["hanging"] = run_words(hanging, unit)
        yield say("power.tether-short", "should", STEP, CABLE, propose, **values)


def checks(survey: Survey) -> Iterator[Finding]:
    """What must be seen to before water and current meet."""
    power = survey.arrangement.power
    if power is None:
        return
    open_ = [check.words for check in checks_of(power) if not check.done]
    if open_:
        yield say("power.checks-open", "tip", STEP, CHECKS, checks=listed(open_))
