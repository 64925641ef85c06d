"""The fittings: which one sits at each joint, and how many of each."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from typing import TYPE_CHECKING

from model.design.edits import Ref
from model.frame.layout import JointPlace
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import TEXT, Chosen, choice
from tui.forms.listing import Listing, ListSection
from tui.forms.section import Section
from tui.pages.fittings_choices import (
    NONE_FITS,
    directions,
    fitting_options,
    joint_note,
    ways_to_rebuild,
    words_of,
)
from tui.pages.page import Page
from tui.pages.words import JOININGS

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report


def joint_rows(report: Report) -> list[Row]:
    """Each joint with the fitting that sits there."""
    return [
        Row(
            joint.id,
            (
                joint.name,
                joint.match.fitting.name if joint.match else NONE_FITS,
                _spare(joint),
                directions(joint),
            ),
        )
        for joint in report.survey.frame.joints.values()
    ]


def _spare(joint: JointPlace) -> str:
    if joint.match is None or not joint.match.spare:
        return "-"
    return words_of(joint.match.spare)


def joint_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Name and pick of a joint."""
    ref = Ref("joint", key)
    joint = report.survey.frame.joints[key]
    return (
        field(
            ref, "fitting", "Fitting", Chosen(lambda report: fitting_options(report, key)), about=joint.name
        ),
        field(ref, "joining", "Held", choice(("as the rest", None), *JOININGS), about=joint.name),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=joint.name),
    )


def count_rows(report: Report) -> list[Row]:
    """How many of each fitting the frame takes."""
    joints: dict[str, list[str]] = defaultdict(list)
    for joint in report.survey.frame.joints.values():
        if joint.match:
            joints[joint.match.fitting.id].append(joint.name)
    return [
        Row(
            fitting.id,
            (fitting.name, str(len(joints[fitting.id])), f"{fitting.price:g}", ", ".join(joints[fitting.id])),
        )
        for fitting in report.design.stock.fittings
        if fitting.id in joints
    ]


def count_note(report: Report, key: str) -> str:
    """At which joints a fitting sits."""
    names = [
        joint.name
        for joint in report.survey.frame.joints.values()
        if joint.match and joint.match.fitting.id == key
    ]
    return f"Sits at: {', '.join(names)}."


def locate_joint(report: Report, about: About) -> str | None:
    """The row of a joint, or the first joint of a bar."""
    frame = report.survey.frame
    if about.kind == "joint" and about.id in frame.joints:
        return about.id
    bar = frame.bars.get(about.id) if about.kind == "bar" else None
    return bar.joints[0] if bar else None


def locate_fitting(report: Report, about: About) -> str | None:
    """The row of a kind of fitting."""
    counted = {row.key for row in count_rows(report)}
    return about.id if about.kind == "fitting" and about.id in counted else None


JOINTS = Listing(
    title="Joints",
    columns=(
        Column("Joint"),
        Column("Fitting", 16),
        Column("Spare socket", 12),
        Column("Bars leave", 24, least=74),
    ),
    rows=joint_rows,
    entries=joint_entries,
    marks=lambda report, key: ("joint", key),
    empty="No joints yet. Bars bring them: add bars on the Layout page.",
    acts=(Act("ways", "Ways to rebuild it", ways_to_rebuild),),
    note=joint_note,
    locate=locate_joint,
)
COUNT = Listing(
    title="Count",
    columns=(
        Column("Fitting"),
        Column("Pieces", 6, right=True),
        Column("Each", 7, right=True),
        Column("At", 30, least=70),
    ),
    rows=count_rows,
    entries=lambda report, key: (),
    marks=lambda report, key: ("fitting", key),
    empty="No fittings yet. Bars bring them: add bars on the Layout page.",
    note=count_note,
    locate=locate_fitting,
)


class FittingsPage(Page):
    """Which fitting sits where."""

    WHY = (
        "The bars at a joint decide what fits there; left open, the best is used. "
        "A spare socket sticks out and lets water in."
    )
    SAFETY = (
        "Fit dry first: a mallet, not your palm, and no face above the joint. Cement only when all is "
        "square: primer and solvent cement in moving air, gloves and eye protection, away from flames, "
        "an adult there. Never heat PVC to bend or free it. Read the maker's label; your school's rules "
        "come first."
    )
    HELP = (
        "Each joint gets the fitting of your stock that fits the directions of its bars under some turn. "
        "Every one that fits is listed with price, weight and spare sockets, the best first; pick another "
        "if you have it in the box. Where none fits, press 'Ways to rebuild it': each way says which pieces "
        "it takes, what they cost and how the size changes, before you take one.\n\n"
        "Names in shops vary: look at where the sockets point, not at the name.\n\n"
        "The section Count says how many of each you need.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Joints and the count."""
        return (
            ("Joints", lambda: ListSection(JOINTS)),
            ("Count", lambda: ListSection(COUNT)),
        )
