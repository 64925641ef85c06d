"""The course of the task, leg by leg, with the time that each takes on paper."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Any

from model.design import edits
from model.design.brief import Leg
from model.design.edits import Ref
from model.design.edits.core import changed
from model.runs import leg_words, run_time
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, YES_NO, Kind, number
from tui.forms.listing import Asking, Listing, ListSection

if TYPE_CHECKING:
    from model.design import Design
    from model.design.edits import Edit
    from model.review import Report

BRIEF = Ref("brief")
FIELDS: tuple[tuple[str, str, Kind], ...] = (
    ("ahead", "Straight ahead", LENGTH),
    ("turn", "Turn on the spot", number("deg")),
    ("climb", "Climb (minus: dive)", LENGTH),
    ("loaded", "Load on the hook", YES_NO),
    ("wait", "Wait at its end", number("s")),
)
FIRST = Leg(ahead=1.0)
"""A leg to begin with: a metre ahead."""


def course_list() -> ListSection:
    """A row for each leg."""
    return ListSection(
        Listing(
            title="Course",
            columns=(Column("Leg"), Column("Time on paper", 24, right=True)),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("course", key),
            empty="No course yet: press Add, once for each leg of the run.",
            add=add_leg,
            copy=copy_leg,
            remove=remove_leg,
            facts=total,
        )
    )


def rows(report: Report) -> list[Row]:
    """Each leg in words, with its time and how far that may be off."""
    return [
        Row(str(place), (leg.words, leg.time.text("s") if leg.time else leg.problem))
        for place, leg in enumerate(run_time(report.survey).legs)
    ]


def total(report: Report) -> str:
    """The time over all."""
    if not report.design.brief.course:
        return (
            "The run of the task in legs: straight lengths, turns, climbs. The time follows from the thrust."
        )
    timed = run_time(report.survey)
    over = timed.total.text("s") if timed.total else "not possible yet"
    return f"The whole run on paper: {over} (best guess, lowest to highest)."


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What a leg is made of."""
    return tuple(_entry(int(key), *each) for each in FIELDS)


def _entry(place: int, name: str, label: str, kind: Kind) -> Entry:
    def edit(value: Any) -> Edit:
        return lambda design: set_leg(design, place, name, value)

    return Entry(
        key=f"leg-{name}",
        label=label,
        kind=kind,
        get=lambda report: getattr(report.design.brief.course[place], name),
        edit=edit,
        field=("leg", name),
        about=f"leg {place + 1}",
    )


def set_leg(design: Design, place: int, name: str, value: Any) -> Design:
    """One field of one leg set.

    Raises:
        EditError: the value is not allowed.
    """
    legs = list(design.brief.course)
    legs[place] = changed(legs[place], **{name: value})
    return with_course(design, legs)


def with_course(design: Design, legs: list[Leg]) -> Design:
    """The design with another course."""
    return edits.set_field(design, BRIEF, "course", tuple(legs))


def add_leg(section: ListSection) -> None:
    """One more leg at the end."""
    section.ask("a leg added", lambda design: with_course(design, [*design.brief.course, FIRST]))


def copy_leg(report: Report, key: str) -> Asking:
    """The same leg once more, behind it."""

    def copied(design: Design, place: int) -> Design:
        legs = list(design.brief.course)
        return with_course(design, [*legs[: place + 1], *legs[place:]])

    return f"leg {int(key) + 1} copied", partial(copied, place=int(key))


def remove_leg(report: Report, key: str) -> Asking:
    """A leg left out."""

    def removed(design: Design, place: int) -> Design:
        legs = list(design.brief.course)
        return with_course(design, legs[:place] + legs[place + 1 :])

    words = leg_words(report.design.brief.course[int(key)])
    return f"leg {int(key) + 1} left out ({words})", partial(removed, place=int(key))
