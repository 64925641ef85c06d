"""The wires: battery, fuses, cable and plugs, with the volts that really arrive at each motor."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from model.coach.remedies.power import plan
from model.design import edits
from model.design.edits import Ref
from model.drawing.diagram_svg import diagram_svg
from model.drawing.wires import wiring_scene
from model.power.diagram import wiring_lines, wiring_tree
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.kinds import COUNT, LENGTH, LONG_TEXT, TEXT, YES_NO, choice, number
from tui.forms.section import FormSection, Section
from tui.messages import WriteRequested
from tui.pages.page import Page
from tui.pages.wires_gauges import gauges_section
from tui.pages.wires_motors import motors_list
from tui.pages.wires_words import NO_PLAN, cable_facts, open_checks, supply_facts

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

POWER, BATTERY, ARRANGEMENT = Ref("power"), Ref("battery"), Ref("arrangement")
FEEDS = choice(("a pair for each motor", "pair each"), ("one pair for all", "one pair"))
Entries = Callable[["Report"], tuple[Entry, ...]]


class PowerSection(FormSection):
    """A form for a part of the wiring, empty until there is one.

    Args:
        part: what findings call it.
    """

    def __init__(
        self,
        title: str,
        part: str,
        entries: Entries,
        facts: Callable[[Report], str],
        acts: tuple[Act, ...] = (),
    ) -> None:
        self.part = part

        def planned(report: Report) -> tuple[Entry, ...]:
            return entries(report) if report.design.arrangement.power else ()

        super().__init__(title, planned, facts, acts=acts)

    def finds(self, report: Report, about: About) -> bool:
        """Whether it is this part of the wiring."""
        return about.kind == "power" and about.id == self.part


def battery(report: Report) -> tuple[Entry, ...]:
    """The battery, its fuse, and the lead to the control box."""
    return (
        field(POWER, "main_fuse", "Main fuse", number("A"), optional=True),
        field(POWER, "fuse_distance", "Fuse from battery", LENGTH),
        field(BATTERY, "name", "Battery", TEXT, help="What it is called."),
        field(BATTERY, "volts", "Nominal volts", number("V")),
        field(BATTERY, "capacity", "Capacity", number("Ah")),
        field(BATTERY, "usable", "Share to draw", number()),
        field(BATTERY, "resistance", "Resistance inside", number("ohm")),
        field(POWER, "lead_area", "Copper of the lead", number("mm2")),
        field(POWER, "lead_length", "Lead, one way", LENGTH),
        field(POWER, "notes", "Notes", LONG_TEXT, help="Anything to remember about the wiring."),
    )


def cable(report: Report) -> tuple[Entry, ...]:
    """The cores of the tether, and the plugs on the way."""
    return (
        field(POWER, "core_area", "Copper of one core", number("mm2")),
        field(POWER, "length", "Tether, one way", LENGTH),
        field(POWER, "feed", "Cores in the tether", FEEDS),
        field(POWER, "plugs", "Plugs on the way", COUNT),
        field(POWER, "contact", "One contact", number("ohm")),
    )


def checks(report: Report) -> tuple[Entry, ...]:
    """What must be seen to before water and current meet."""
    return (
        field(POWER, "strain_relief", "Strain relief", YES_NO),
        field(POWER, "soak_hours", "Soak test", number("h")),
        field(POWER, "motor_seal", "Motor seal", LONG_TEXT),
    )


def plan_wiring(section: Section) -> None:
    """A usual wiring with fuses that suit it, where there is none."""
    report = section.report
    if report is None:
        return
    if report.design.arrangement.power is not None:
        section.say("! The wiring is planned already; change it in the fields below.")
    elif not report.design.arrangement.thrusters:
        section.say("! Place a motor on the page Thrusters first: the fuses follow from its current.")
    else:
        section.ask("wiring planned", plan(report.survey)[0].edit)


def drop_wiring(section: Section) -> None:
    """The wiring left out."""
    section.ask("wiring left out", lambda design: edits.set_field(design, ARRANGEMENT, "power", None))


def supply_form() -> PowerSection:
    """The section for what stands on the poolside."""
    acts = (Act("plan", "Plan the wiring", plan_wiring), Act("drop", "No wiring", drop_wiring))
    return PowerSection("Supply", "", battery, supply_facts, acts)


def diagram(report: Report) -> str:
    """The wiring from the battery to the motors, drawn, and then a line for each thing."""
    wires = report.survey.wiring
    if wires is None:
        return NO_PLAN
    what = report.design.arrangement, wires, report.design.units
    return "\n".join((*wiring_tree(*what), "", *wiring_lines(*what)))


def write_diagram(section: Section) -> None:
    """The diagram as a picture beside the design's file."""
    report = section.report
    if report is None or report.survey.wiring is None:
        section.say("! Plan the wiring first, in the section Supply.")
        return
    section.say("")
    scene = wiring_scene(report.design.arrangement, report.survey.wiring, report.design.units)
    section.post_message(WriteRequested("wiring.svg", diagram_svg(scene)))


class WiresPage(Page):
    """Battery, fuses, cable."""

    WHY = (
        "A long thin cable eats the volts before they reach the motor; a fuse that is too large lets the "
        "cable burn. Fuses first, then the cable."
    )
    SAFETY = (
        "Low-voltage DC only; no mains at the poolside. A fuse within 175 mm of the battery's +, battery "
        "terminals covered, no loose lithium packs; battery and plugs dry and two metres back. Charge in "
        "moving air, away from the pool, on a charger behind a residual-current device: that does not "
        "protect the isolated 12 V side. Unplug before hands go near a propeller or into the water; dry "
        "hands. Soldering irons, hot glue and heat guns burn: an adult, never left alone. In trouble cut "
        "the power first and do not jump in. The makers' instructions and the school's rules come first."
    )
    HELP = (
        "Supply: the battery and its main fuse. Motors: what each motor has of its own, and what arrives "
        "at it. Cable: the tether's copper. Gauges: which wire would be enough. Diagram: from the battery "
        "to the motors. Checks: what must be settled before the first run.\n\n"
        "A fuse protects the wire behind it: it must be smaller than what the thinnest wire can carry, and "
        "a quarter larger than what runs through it. Current flows there and back, so that ten metres of "
        "tether are twenty metres of copper. Thrust goes roughly with the square of the volts.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Supply, motors, cable, gauges, diagram, checks."""
        written = (Act("write", "Write it as a picture", write_diagram),)
        return (
            ("Supply", supply_form),
            ("Motors", motors_list),
            ("Cable", lambda: PowerSection("Cable", "cable", cable, cable_facts)),
            ("Gauges", gauges_section),
            ("Diagram", lambda: PowerSection("Diagram", "diagram", lambda report: (), diagram, written)),
            ("Checks", lambda: PowerSection("Checks", "checks", checks, open_checks)),
        )
