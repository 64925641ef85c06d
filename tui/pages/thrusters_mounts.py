"""How each motor is held: holes, ties and reach, with weight and price; and what its own pull test said."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from model.building.fitting_steps import side_words
from model.coach.remedies.thrust import plan_holes
from model.design import edits
from model.design.edits import Ref
from model.thrust.mounts import mount_plans
from model.units import format_length, format_mass
from tui.forms.acts import Act
from tui.forms.entry import Entry, help_of
from tui.forms.items import Column, Row
from tui.forms.kinds import Typed, number
from tui.forms.listing import Listing, ListSection
from tui.pages.words import money

if TYPE_CHECKING:
    from model.design import Design
    from model.design.edits import Edit
    from model.review import Report
    from model.thrust.mounts import HolePlace, MountPlan

FIELDS = (
    ("ahead", "Pull ahead", "N"),
    ("astern", "Pull astern", "N"),
    ("volts", "Volts at the motor", "V"),
    ("amps", "Current in the test", "A"),
)
FIRST = "ahead"
"""Without it there is no pull test."""
FACTS = (
    "Pull test: hold the motor in a deep bucket with a spring scale, at the volts of the day, and write "
    "the pull in newtons (100 g on the scale is 0.98 N). Hands clear of the propeller."
)
EMPTY = "No thruster yet: place the motors in the section Thrusters first."


def mounts_list() -> ListSection:
    """A row for each motor."""
    return ListSection(
        Listing(
            title="Mounts",
            columns=(
                Column("Motor"),
                Column("Held by", 24, least=72),
                Column("Holes", 9),
                Column("Pull", 8, right=True),
            ),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("thruster", key),
            empty=EMPTY,
            acts=(Act("holes", "Plan the holes", plan_the_holes),),
            facts=lambda report: FACTS,
            note=note,
        )
    )


def plans_of(report: Report) -> dict[str, MountPlan]:
    """How each motor with a mount is held, by its id."""
    survey = report.survey
    plans = mount_plans(survey.design, survey.arrangement, survey.frame, survey.parts)
    return {plan.thruster: plan for plan in plans}


def rows(report: Report) -> list[Row]:
    """Each motor with its mount, its holes and its pull."""
    made, plans = [], plans_of(report)
    for item in report.design.arrangement.thrusters:
        plan = plans.get(item.id)
        drilled = "-" if plan is None or not plan.holes else "planned" if plan.planned else "to plan"
        pull = f"{item.pull.ahead:.2f} N" if item.pull else "-"
        made.append(Row(item.id, (item.name, plan.mount.name if plan else "nothing yet", drilled, pull)))
    return made


def note(report: Report, key: str) -> str:
    """The plan of one mount, a line for each thing."""
    plan = plans_of(report).get(key)
    if plan is None:
        return "Nothing holds it yet: choose a mount in the section Thrusters."
    lines = [", ".join(f"{count} x {thing}" for count, thing in plan.parts)]
    lines.append(f"{format_mass(plan.mass)} and {money(report, plan.price)} for the mount as it is bought")
    lines += [hole_words(report, hole) for hole in plan.holes]
    if plan.hub is not None:
        lines.append("A fitting is in the way: slide the motor to bare pipe.")
    if plan.mount.method == "stub":
        lines.append(f"An end of its bar has {'an' if plan.socket else 'no'} empty socket for the stub.")
    return "\n".join(line for line in lines if line)


def hole_words(report: Report, hole: HolePlace) -> str:
    """Where a hole goes, and who can reach it."""
    unit = report.design.units
    reach = {
        (True, True): "a drill and a hand can reach it",
        (True, False): "a hand can reach it, a drill only before the frame is put together",
        (False, True): "a drill can reach it, a hand with a tie cannot",
        (False, False): "neither a drill nor a hand can reach it in the frame",
    }[hole.hand, hole.tool]
    return (
        f"Hole of {format_length(hole.diameter, unit)} through {hole.bar_name}: "
        f"{format_length(hole.from_end, unit)} from its sawn end at {hole.end}, "
        f"on the {side_words(hole.face)}; {reach}"
    )


def plan_the_holes(section: ListSection) -> None:
    """Plan the holes of the first motor that has none yet."""
    report = section.report
    if report is None:
        return
    plans = plans_of(report)
    for item in report.design.arrangement.thrusters:
        plan = plans.get(item.id)
        if plan is None or plan.planned:
            continue
        for remedy in plan_holes(report.survey, item):
            section.ask(remedy.label, remedy.edit)
            return
    section.say("! No motor has holes left to plan: only ties need them.")


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """The pull test; all but the first once there is one."""
    ref = Ref("thruster", key)
    item = edits.find(report.design, ref)
    fields = FIELDS if item.pull else FIELDS[:1]
    return tuple(_entry(ref, name, label, number(unit), item.name) for name, label, unit in fields)


def _entry(ref: Ref, name: str, label: str, kind: Typed, about: str) -> Entry:
    def get(report: Report) -> Any:
        pull = edits.find(report.design, ref).pull
        return getattr(pull, name) if pull else None

    def edit(value: Any) -> Edit:
        return lambda design: set_pull(design, ref, name, value)

    return Entry(
        key=f"pull-{name}",
        label=label,
        kind=kind,
        get=get,
        edit=edit,
        help=help_of("pull", name),
        optional=name != "volts",
        about=about,
    )


def set_pull(design: Design, ref: Ref, name: str, value: Any) -> Design:
    """One field of a motor's pull test set; without its pull ahead there is no test.

    Raises:
        EditError: the value is not allowed.
    """
    if edits.find(design, ref).pull is not None and not (name == FIRST and value is None):
        return edits.set_inner(design, ref, "pull", name, value)
    return edits.set_field(design, ref, "pull", None if value is None else {name: value})
