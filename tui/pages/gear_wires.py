"""The wires: battery, fuses, cores and plugs, with the volts that really arrive at each motor."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design import edits
from model.design.edits import Ref
from model.power.diagram import wiring_lines
from model.power.gauges import gauge_choices
from model.solve.wires import longer_tether
from tui.forms.entry import Entry, field
from tui.forms.kinds import COUNT, LENGTH, LONG_TEXT, TEXT, YES_NO, choice, number
from tui.forms.proposal import Offer, ProposalSection, Way
from tui.forms.section import Act, FormSection
from tui.pages.choosing import asks

if TYPE_CHECKING:
    from model.design import Thruster
    from model.review import Report

POWER, BATTERY = Ref("power"), Ref("battery")
FEEDS = choice(("a pair for each motor", "pair each"), ("one pair for all", "one pair"))


def wires_form() -> FormSection:
    """The section for the wiring."""
    acts = (
        Act("plan", "Plan the wiring", asks("wiring planned", edits.plan_wiring)),
        Act("drop", "No wiring", asks("wiring left out", edits.drop_wiring)),
    )
    return FormSection("Wires", entries, facts, ("power", "battery"), acts)


def entries(report: Report) -> tuple[Entry, ...]:
    """What can be said of the wiring, if there is one."""
    if report.design.arrangement.power is None:
        return ()
    return (
        field(POWER, "main_fuse", "Main fuse", number("A"), optional=True),
        *(_fuse(thruster) for thruster in report.design.arrangement.thrusters),
        field(POWER, "fuse_distance", "Fuse from battery", LENGTH),
        field(POWER, "feed", "Cores in the tether", FEEDS),
        field(POWER, "core_area", "Copper of one core", number("mm2")),
        field(POWER, "length", "Tether, one way", LENGTH),
        field(POWER, "lead_area", "Copper of the lead", number("mm2")),
        field(POWER, "lead_length", "Lead, one way", LENGTH),
        field(POWER, "plugs", "Plugs on the way", COUNT),
        field(POWER, "contact", "One contact", number("ohm")),
        field(BATTERY, "name", "Battery", TEXT, help="What it is called."),
        field(BATTERY, "volts", "Nominal volts", number("V")),
        field(BATTERY, "capacity", "Capacity", number("Ah")),
        field(BATTERY, "usable", "Share to draw", number()),
        field(BATTERY, "resistance", "Resistance inside", number("ohm")),
        field(POWER, "strain_relief", "Strain relief", YES_NO),
        field(POWER, "motor_seal", "Motor seal", LONG_TEXT),
        field(POWER, "soak_hours", "Soak test", number("h")),
        field(POWER, "notes", "Notes", LONG_TEXT, help="Anything to remember about the wiring."),
    )


def _fuse(thruster: Thruster) -> Entry:
    ref = Ref("thruster", thruster.id)
    return Entry(
        key=f"fuse-{thruster.id}",
        label=f"Fuse, {thruster.name}",
        kind=number("A"),
        get=lambda report: edits.find(report.design, ref).branch.fuse,
        edit=lambda amps: lambda design: edits.set_branch(design, thruster.id, fuse=amps),
        help="The fuse of this motor alone. Empty: the main fuse has to do.",
        optional=True,
        about=thruster.name,
    )


def facts(report: Report) -> str:
    """Volts, current and minutes, and the wiring from the battery to the motors."""
    wires = report.survey.wiring
    if wires is None:
        return (
            "No wiring planned yet: each motor is taken to get the volts of its test. Press Plan the wiring "
            "to see what the cable really leaves. Low-voltage direct current only; no mains at the poolside."
        )
    names = {thruster.id: thruster.name for thruster in report.design.arrangement.thrusters}
    loads = [
        f"{names[load.thruster]}: {load.volts:.1f} V and {load.amps:.1f} A arrive "
        f"({100 * wires.lost[load.thruster]:.0f} % of the volts are lost)"
        for load in wires.loads
    ]
    minutes = "" if wires.minutes is None else f", which lasts {wires.minutes:.0f} minutes"
    total = f"All running: {wires.amps:.1f} A from the battery{minutes}."
    return "\n".join([*loads, total, *wiring_lines(report.design.arrangement, wires, report.design.units)])


def gauges_section() -> ProposalSection:
    """Which wire would be enough, and what a longer tether costs."""
    return ProposalSection(
        "Gauges",
        lambda report: "Which cable would be enough, and what five metres more of it cost.",
        (Way("gauges", "Work it out", gauges),),
        takes=False,
    )


def gauges(report: Report) -> Offer:
    """Each size of wire on sale with what it leaves, and a tether five metres longer."""
    found = report.survey
    choices = gauge_choices(report.design, found.arrangement, found.balance.density)
    if not choices:
        return Offer("", "Plan the wiring first, in the section Wires.", None)
    lines = [
        f"{each.name:<10} {100 * each.lost:>3.0f} % of the volts lost, {100 * each.pull:>3.0f} % of the pull "
        f"left, fuse up to {each.fuse:.0f} A{'' if each.enough else ': too thin'}"
        for each in choices
    ]
    longer = longer_tether(found)
    if longer:
        lines.append(
            f"{longer.metres:g} m more tether: {longer.volts[0]:.1f} to {longer.volts[1]:.1f} V at the worst "
            f"motor, {100 * longer.pull[0]:.0f} to {100 * longer.pull[1]:.0f} % of the pull"
        )
    return Offer("", "\n".join(lines), None)
