"""The branch of each motor: its fuse, cores and switch, and what arrives at its end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design import edits
from model.design.edits import Ref
from model.errors import LengthError
from model.power.diagram import branch_words
from model.power.stall import stall_of, stall_words
from model.thrust.moves import stuck
from tui.forms.entry import Entry, inner
from tui.forms.items import Column, Row
from tui.forms.kinds import NAMES, Typed, choice, number, read_names
from tui.forms.listing import Listing, ListSection

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Thruster
    from model.power.circuit import Load
    from model.power.wiring import Wiring
    from model.review import Report
    from model.units import Unit

SWITCHES = choice(*((each, each) for each in ("reversing switch", "on-off switch", "controller")))
EMPTY = "No thruster yet: place the motors on the page Thrusters first."


def read_colours(text: str, unit: Unit) -> tuple[str, ...]:
    """The colours of two cores.

    Raises:
        LengthError: there are not two.
    """
    colours = read_names(text.replace(" and ", ","), unit)
    if len(colours) != 2:
        raise LengthError(f"'{text}' is not two colours; write first + then -, like red, black")
    return colours


COLOURS = Typed(NAMES.show, read_colours)


def motors_list() -> ListSection:
    """A row for each motor; motors are added on the page of the thrusters."""
    return ListSection(
        Listing(
            title="Motors",
            columns=(
                Column("Motor"),
                Column("Volts", 6, right=True),
                Column("Amps", 5, right=True),
                Column("Lost", 5, right=True),
                Column("Fuse", 9, right=True),
            ),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("thruster", key),
            empty=EMPTY,
            note=note,
            locate=locate,
        )
    )


def rows(report: Report) -> list[Row]:
    """What arrives at each motor, all of them running."""
    return [_row(report, item) for item in report.design.arrangement.thrusters]


def _row(report: Report, item: Thruster) -> Row:
    wires, power, own = report.survey.wiring, report.design.arrangement.power, item.branch.fuse
    main = power is not None and power.main_fuse is not None
    fuse = f"{own:g} A" if own else "main only" if main else "NONE"
    load = load_of(wires, item.id)
    if wires is None or load is None:
        return Row(item.id, (item.name, "-", "-", "-", fuse))
    lost = f"{100 * wires.lost[item.id]:.0f} %"
    return Row(item.id, (item.name, f"{load.volts:.1f}", f"{load.amps:.1f}", lost, fuse))


def load_of(wires: Wiring | None, thruster: str) -> Load | None:
    """Volts and current of one motor, where a wiring is planned."""
    return next((load for load in wires.loads if load.thruster == thruster), None) if wires else None


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What a branch has of its own."""
    ref = Ref("thruster", key)
    about = edits.find(report.design, ref).name
    return (
        inner(
            ref,
            "branch",
            "fuse",
            "Its own fuse",
            number("A"),
            help="The fuse of this motor alone. Empty: the main fuse has to do.",
            optional=True,
            about=about,
        ),
        inner(
            ref,
            "branch",
            "colours",
            "Core colours",
            COLOURS,
            help="Of + and -, with a comma: red, black. Write them down before the cable is cut.",
            about=about,
        ),
        inner(
            ref,
            "branch",
            "switching",
            "Switched by",
            SWITCHES,
            help="A reversing switch or a controller turns it round; an on-off switch runs it ahead only.",
            about=about,
        ),
        inner(ref, "branch", "core_area", "Copper of its cores", number("mm2"), optional=True, about=about),
    )


def note(report: Report, key: str) -> str:
    """From the control box to this motor, and what happens if its propeller is held fast."""
    wires, power = report.survey.wiring, report.design.arrangement.power
    if wires is None or power is None:
        return "No wiring planned yet: press Plan the wiring in the section Supply."
    item = edits.find(report.design, Ref("thruster", key))
    return f"{branch_words(item, power, report.design.units)}.\n{held_fast(report, wires, key)}"


def held_fast(report: Report, wires: Wiring, key: str) -> str:
    """What flows while the propeller of one motor cannot turn."""
    loads = {load.thruster: load for load in wires.stalled(key)}
    if loads.pop(key, None) is None:
        return ""
    fuse = stall_words(stall_of(report.design.arrangement, wires, key))
    others = ", ".join(
        f"{item.name} gets {loads[item.id].volts:.1f} V"
        for item in report.design.arrangement.thrusters
        if item.id in loads
    )
    rest = f"; {others}" if others else ""
    return f"Propeller held fast: {fuse}{rest}."


def locate(report: Report, about: About) -> str | None:
    """The motor that a finding is about, or the first whose switch keeps the vehicle from a move."""
    if about.kind == "move":
        survey = report.survey
        held = stuck(survey.drives, survey.balance.g, survey.thrust.lacks(about.id))
        return held[0].thruster if held else None
    return about.id if about.kind == "thruster" else None
