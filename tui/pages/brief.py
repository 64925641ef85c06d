"""The brief: the rules and the task."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, get_args

from model.design import Design, Load, Water, edits
from model.design.brief import AttitudeName
from model.design.edits import WATERS, Ref
from model.design.edits.core import changed
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.kinds import (
    LENGTH,
    LONG_TEXT,
    MASS,
    MONEY,
    NAMES,
    PAIR,
    SIZES,
    TEXT,
    Chosen,
    Options,
    Several,
    choice,
    number,
)
from tui.forms.section import FormSection, Section
from tui.pages.choosing import pick_preset
from tui.pages.page import Page
from tui.pages.words import in_unit, money, sizes

if TYPE_CHECKING:
    from collections.abc import Callable

    from model.presets import Preset
    from model.review import Report

BRIEF, DESIGN, WATER, COACH = Ref("brief"), Ref("design"), Ref("water"), Ref("thresholds")
MOVES: Options = tuple((move, move) for move in ("ahead", "astern", "up", "down", "turn", "sideways"))
ATTITUDES: Options = tuple(
    (name.rstrip(" 0123456789").replace(" side", ""), name) for name in get_args(AttitudeName)
)
COACH_FIELDS = (
    ("trim_tip", "Trim that gets a tip", number("deg"),
     "At rest, tilted by more than this, the coach gives a tip."),
    ("trim_should", "Trim to be put right", number("deg"),
     "At rest, tilted by more than this, the coach says that it should be put right."),
    ("spare_least", "Least spare lift", number("%"),
     "A share of the weight of water that the whole vehicle displaces. Below it the coach speaks."),
    ("spare_most", "Most spare lift", number("%"),
     "A share of the weight of water that the whole vehicle displaces. Above it the coach speaks."),
    ("spare_of_thrust", "Most, of down thrust", number("%"),
     "Spare lift holds it back when it dives: the most, as a share of what the thrusters push down with."),
    ("bg_least", "Least BG", LENGTH,
     "BG is how far the lift point lies above the balance point. Below this it rolls over too easily."),
    ("hole_least", "Smallest hole", LENGTH, "In a smaller hole the skin of the water holds the air back."),
    ("astern_share", "Astern, next to ahead", number(),
     "Pull astern beside pull ahead, where nobody measured it: 0.6 is usual, 1 is as strong as ahead."),
)  # fmt: skip

SQUEEZE = (
    "Deep water squeezes soft foam, and it lifts less. How much of its size it loses at the deepest point, "
    "in percent: 0 for hard foam or a shallow pool, about 3 at 3 m."
)


def rules(report: Report) -> tuple[Entry, ...]:
    """What the organiser limits."""
    example = in_unit(report, "500 x 400 x 300", "20 x 16 x 12")
    return (
        field(BRIEF, "title", "Name of the task", TEXT),
        field(
            BRIEF,
            "size_limit",
            "Size limit, l x w x h",
            SIZES,
            optional=True,
            help=f"The whole vehicle must fit in this box, like {example}. Empty: no limit.",
        ),
        field(
            BRIEF,
            "spending_limit",
            "Spending limit",
            MONEY,
            optional=True,
            help="The most that may be spent on what counts. Empty: no limit.",
        ),
        field(
            BRIEF,
            "currency",
            "Money is called",
            TEXT,
            help="What you pay in, as it is written behind a price.",
        ),
        field(
            BRIEF,
            "materials",
            "Allowed pipe",
            NAMES,
            help="The pipe materials that are allowed, with commas: PVC, CPVC. Empty: any.",
        ),
        field(BRIEF, "moves", "Thrust needed", Several(MOVES)),
        field(DESIGN, "units", "Lengths in", choice(("mm", "mm"), ("inches", "in"))),
    )


def more(report: Report) -> tuple[Entry, ...]:
    """Rules that only some tasks have."""
    load = report.design.brief.load
    heaviest = Entry(
        key="load",
        label="Heaviest lift",
        kind=MASS,
        get=lambda report: report.design.brief.load and report.design.brief.load.mass,
        edit=lambda mass: lambda design: set_load(design, mass),
        help="The heaviest thing that it must lift. Empty: it lifts nothing.",
        optional=True,
        field=("load", "mass"),
    )
    weighed = () if load is None else (_weighed(load),)
    return (
        heaviest,
        *weighed,
        field(
            BRIEF,
            "hoop",
            "Hoop, inside",
            LENGTH,
            optional=True,
            help="Inside diameter of a hoop that it must pass through. Empty: none.",
        ),
        field(
            BRIEF,
            "gate",
            "Gate, w x h",
            PAIR,
            optional=True,
            help="Inside width x height of a gate that it must pass through, like 400 x 300. Empty: none.",
        ),
        field(BRIEF, "foam_squeeze", "Foam shrinks at depth", number("%"), help=SQUEEZE),
        field(
            BRIEF,
            "supply_limit",
            "Highest voltage",
            number("V"),
            optional=True,
            help="The highest voltage that the rules allow, as printed on a battery. Empty: no limit.",
        ),
    )


def set_load(design: Design, mass: float | None) -> Design:
    """The heaviest thing to lift, or none."""
    load = design.brief.load
    if mass is None:
        return edits.set_field(design, BRIEF, "load", None)
    return edits.set_field(design, BRIEF, "load", changed(load or Load(mass=0.0), mass=mass))


def _weighed(load: Load) -> Entry:
    return Entry(
        key="load-weighed",
        label="Weighed in",
        kind=choice(("water", "water"), ("air", "air")),
        get=lambda report: (
            load.weighed if report.design.brief.load is None else report.design.brief.load.weighed
        ),
        edit=lambda where: (
            lambda design: edits.set_field(
                design, BRIEF, "load", (design.brief.load or load).but(weighed=where)
            )
        ),
        help="Whether that is its weight in air or hung in water.",
    )


def task(report: Report) -> tuple[Entry, ...]:
    """What is to be done, by whom."""
    return (
        field(
            DESIGN, "title", "Name of the vehicle", TEXT, help="What you call the vehicle; sheets carry it."
        ),
        field(DESIGN, "team", "Team", TEXT, help="Who builds it."),
        field(BRIEF, "task", "The task", LONG_TEXT),
        field(BRIEF, "notes", "Notes on the rules", LONG_TEXT),
        field(BRIEF, "origin", "The rules come from", TEXT),
        field(DESIGN, "notes", "Notes on the design", LONG_TEXT),
    )


def water(report: Report) -> tuple[Entry, ...]:
    """The water of the run."""
    usual = Entry(
        key="water-usual",
        label="Water",
        kind=Chosen(_waters),
        get=lambda report: report.design.brief.water,
        edit=lambda chosen: lambda design: edits.set_field(design, BRIEF, "water", chosen),
        help="Salt water and cold water carry more. Choose one, then write what you measured below.",
    )
    return (
        usual,
        field(WATER, "temperature", "Temperature", number("deg C")),
        field(WATER, "salinity", "Salt", number("g/kg")),
        field(
            BRIEF,
            "attitudes",
            "Air out when it lies",
            Several(ATTITUDES),
            help="The pipes must lose their air when it lies so. None ticked: all of them.",
        ),
    )


def _waters(report: Report) -> Options:
    present: Water = report.design.brief.water
    own = () if present in WATERS else ((f"{present.name}, as below", present),)
    return (*((each.name, each) for each in WATERS), *own)


def coach(report: Report) -> tuple[Entry, ...]:
    """When the coach speaks."""
    return tuple(field(COACH, name, label, kind, help=help_) for name, label, kind, help_ in COACH_FIELDS)


def choose_brief(section: Section) -> None:
    """Pick a ready brief, or the empty one to copy the organiser's rules into."""

    def use(preset: Preset, brief: Any) -> None:
        section.ask(f"brief {preset.title}", lambda design: edits.use_brief(design, brief))

    present = section.report.design.brief.title if section.report else ""
    pick_preset(section, "brief", "Which rules do you work to?", use, present)


def standing(report: Report) -> str:
    """How the vehicle stands against the two limits."""
    survey, brief = report.survey, report.design.brief
    limit = f" of {money(report, brief.spending_limit)}" if brief.spending_limit is not None else ""
    return (
        f"Now: {sizes(report, survey.extents.size)} overall, {money(report, survey.bill.spent)}{limit} spent."
    )


class BriefPage(Page):
    """What the organiser asks for."""

    WHY = (
        "Copy the rules here first: everything later is checked against them. "
        "Leave a rule empty and it is off."
    )
    HELP = (
        "The brief holds the rules of the day. Choose a ready brief, or the empty one, and copy the "
        "organiser's rules into it. A rule that is left empty is off.\n\n"
        "Sizes are written length x width x height: 500 x 400 x 300, or 20 x 16 x 12 in. "
        "Lengths may be 86, 8.6 cm, 8,6 cm or 3 3/8 in.\n\n"
        "The section Coach holds the values at which the coach begins to speak; leave them unless "
        "your mentor says otherwise."
    )

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Rules, task, water, coach."""
        ready = (Act("brief", "Choose a brief", choose_brief),)
        return (
            (
                "Rules",
                lambda: FormSection("Rules", rules, standing, ("brief", "vehicle", "design", ""), ready),
            ),
            ("More rules", lambda: FormSection("More rules", more, kinds=("load", "hoop", "gate", "supply"))),
            ("Task", lambda: FormSection("Task", task)),
            ("Course", _course),
            ("Water", lambda: FormSection("Water", water, kinds=("water",))),
            ("Coach", lambda: FormSection("Coach", coach, kinds=("thresholds",))),
        )


def _course() -> Section:
    from tui.pages.brief_course import course_list  # it brings the motion in

    return course_list()
