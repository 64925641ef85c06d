"""The holes for the ties, one by one: where each is drilled, from which side, and how wide."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from model.design import edits
from model.design.edits import Ref
from model.thrust.hole_edits import across, add_hole, change_hole, place_hole, remove_hole
from model.thrust.mounts import tied
from model.thrust.tie_holes import TIE_HOLE, from_sawn_end, hole_key, hole_of_key
from tui.forms.acts import Act
from tui.forms.entry import Entry, help_of
from tui.forms.items import Column, Row
from tui.forms.kinds import DERIVED_LENGTH, LENGTH, Chosen, Options
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.fixed import STEP
from tui.pages.thrusters_mounts import hole_words, plan_the_holes, plans_of
from tui.pages.words import FACES, bare, direction_words, shown

if TYPE_CHECKING:
    from typing import Any

    from model.design import Design, TieHole
    from model.design.edits import Edit
    from model.review import Report

EMPTY = "No holes for ties yet. Press Plan the holes for the usual two, or Add for one of your own."
NO_TIES = "! No motor is held by ties: choose such a mount in the section Thrusters."
FACTS = (
    "Two ties hold a motor, each through a hole in its pipe. Clamp the pipe in a notched block and wear "
    "eye protection at the drill."
)


def ties_list() -> ListSection:
    """A row for each hole that is planned."""
    return ListSection(
        Listing(
            title="Tie holes",
            columns=(
                Column("Motor"),
                Column("Through", 14, least=64),
                Column("From end", 9, right=True),
                Column("Side", 14),
                Column("Drill", 7, right=True),
            ),
            rows=rows,
            entries=entries,
            marks=lambda report, key: (TIE_HOLE, key),
            empty=EMPTY,
            add=add,
            remove=removed,
            nudge=nudged,
            acts=(Act("holes", "Plan the holes", plan_the_holes),),
            facts=lambda report: FACTS,
            note=note,
        )
    )


def rows(report: Report) -> list[Row]:
    """Each planned hole: motor, pipe, distance from the sawn end, side and drill."""
    plans = plans_of(report)
    return [
        Row(
            hole_key(item.id, number),
            (
                item.name,
                hole.bar_name,
                bare(report, hole.from_end),
                face_of(hole.face),
                bare(report, hole.diameter),
            ),
        )
        for item in tied(report.design, report.design.arrangement)
        if item.tie_holes
        for number, hole in enumerate(plans[item.id].holes)
    ]


def face_of(face: str) -> str:
    """A side of a pipe in words."""
    return FACES.get(face, direction_words(face))


def note(report: Report, key: str) -> str:
    """The hole as it is drilled, and whether a drill and a hand reach it."""
    thruster, number = hole_of_key(key)
    return f"{hole_words(report, plans_of(report)[thruster].holes[number])}."


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Distance from the end, side and diameter of one hole."""
    thruster, number = hole_of_key(key)
    item = edits.find(report.design, Ref("thruster", thruster))
    bar = report.survey.frame.bars[item.bar]
    about = f"{item.name}, hole {number + 1}"

    def get(report: Report, field: str) -> Any:
        return getattr(_hole(report.design, key), field)

    def set_to(field: str) -> Any:
        return lambda value: partial(change_hole, thruster=thruster, number=number, **{field: value})

    def move(value: float) -> Edit:
        return lambda design: place_hole(design, thruster, number, value)

    return (
        Entry(
            key="tie-from-end",
            label="From the sawn end",
            kind=DERIVED_LENGTH,
            get=lambda report: from_end(report, key),
            edit=move,
            help=f"From the sawn end at {report.survey.frame.joints[bar.joints[0]].name}. "
            "In the table, left and right move it.",
            about=about,
        ),
        Entry(
            key="tie-face",
            label="Drilled from",
            kind=Chosen(lambda report: sides(report, key)),
            get=partial(get, field="face"),
            edit=set_to("face"),
            help=help_of("tie_hole", "face"),
            about=about,
        ),
        Entry(
            key="tie-diameter",
            label="Drill",
            kind=LENGTH,
            get=partial(get, field="diameter"),
            edit=set_to("diameter"),
            help="Wide enough for the tie: 6 mm for one that is 4.8 mm wide.",
            about=about,
        ),
    )


def from_end(report: Report, key: str) -> float:
    """From the sawn end of its pipe to the middle of a hole [m]."""
    item = edits.find(report.design, Ref("thruster", hole_of_key(key)[0]))
    return from_sawn_end(_hole(report.design, key), item, report.survey.frame.bars[item.bar])


def _hole(design: Design, key: str) -> TieHole:
    thruster, number = hole_of_key(key)
    hole: TieHole = edits.find(design, Ref("thruster", thruster)).tie_holes[number]
    return hole


def sides(report: Report, key: str) -> Options:
    """The sides that a drill can go through, and the present one."""
    thruster, _ = hole_of_key(key)
    bar = report.survey.frame.bars[edits.find(report.design, Ref("thruster", thruster)).bar]
    present = _hole(report.design, key).face
    named = {face: words for face, words in FACES.items() if across(face, bar) or face == present}
    named.setdefault(present, face_of(present))
    return tuple((words, face) for face, words in named.items())


def add(section: ListSection) -> None:
    """One more hole; for which motor is asked where several are held by ties."""
    report, chosen = section.report, section.table.chosen
    if report is None:
        return
    motors = tied(report.design, report.design.arrangement)
    if not motors:
        section.say(NO_TIES)
    elif len(motors) == 1:
        add_to(section, motors[0].id)
    else:
        options = tuple((item.name, item.id) for item in motors)
        present = hole_of_key(chosen)[0] if chosen else None
        section.pick("For which motor?", options, partial(add_to, section), present)


def add_to(section: ListSection, thruster: str) -> None:
    """One more hole for a motor."""
    if section.report is None:
        return
    name = edits.find(section.report.design, Ref("thruster", thruster)).name
    section.ask(f"hole for {name} added", lambda design: add_hole(design, thruster))


def removed(report: Report, key: str) -> Asking:
    """A hole left out."""
    thruster, number = hole_of_key(key)
    name = edits.find(report.design, Ref("thruster", thruster)).name
    return f"hole {number + 1} of {name} removed", partial(remove_hole, thruster=thruster, number=number)


def nudged(report: Report, key: str, steps: int) -> Asking:
    """A hole moved a little along its pipe."""
    thruster, number = hole_of_key(key)
    name, by = edits.find(report.design, Ref("thruster", thruster)).name, steps * STEP[report.design.units]
    way = "on" if steps > 0 else "back"
    label = f"hole {number + 1} of {name} {shown(report, abs(by))} {way}"
    along = _hole(report.design, key).along + by
    return label, partial(change_hole, thruster=thruster, number=number, along=along)
