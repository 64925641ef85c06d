"""The bars of the layout: their lengths, and how they come and go."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from itertools import product
from math import prod
from typing import TYPE_CHECKING

from model.design import edits, plane_groups
from model.design.edits import PLANE_KINDS, Crossing, Ref, crossing_name
from model.design.edits.bars import slanting_ends, straight_ends
from model.frame.held import give_up_piece, saw_to
from model.frame.layout import BarPlace
from model.sizing import set_cut, set_showing, set_spacing_of
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import DERIVED_LENGTH, LENGTH, TEXT, Options
from tui.forms.listing import Asking, Listing, ListSection
from tui.messages import DrawRequested
from tui.pages.choosing import pieces_of
from tui.pages.words import bare, shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Design
    from model.design.edits import Edit
    from model.review import Report

LISTED_MOST = 300
"""Crossings that are listed at the most; a longer list helps nobody."""


def bar_rows(report: Report) -> list[Row]:
    """Each bar with its lengths."""
    frame = report.survey.frame
    return [
        Row(
            bar.id,
            (
                bar.letter,
                bar.name,
                " - ".join(frame.joints[joint].name for joint in bar.joints),
                bare(report, bar.spacing),
                bare(report, bar.exposed),
                bare(report, bar.cut),
            ),
        )
        for bar in frame.bars.values()
    ]


def bar_note(report: Report, key: str) -> str:
    """Where a bar runs and what is fixed to it."""
    frame = report.survey.frame
    bar = frame.bars[key]
    ends = " to ".join(f"'{frame.joints[joint].name}'" for joint in bar.joints)
    fixed = ", ".join(item.name for item in edits.fixed_to(report.design, key))
    sawn = f" Already sawn: {shown(report, bar.sawn)}." if bar.sawn is not None else ""
    return f"Runs from {ends}" + (f"; carries {fixed}." if fixed else ".") + sawn


def bar_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Name, pipe, and three ways to drive the length of a bar."""
    ref = Ref("bar", key)
    bar = report.survey.frame.bars[key]
    return (
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=bar.name),
        field(ref, "pipe", "Pipe", pieces_of("pipe", "first of the stock"), about=bar.name),
        _length_entry(bar, "cut", "Cut", set_cut),
        _length_entry(bar, "spacing", "Centre to centre", set_spacing_of),
        _length_entry(bar, "exposed", "Pipe still showing", set_showing),
        _sawn_entry(bar),
    )


def _length_entry(bar: BarPlace, name: str, label: str, resize: Callable[..., Design]) -> Entry:
    return Entry(
        key=f"bar-{name}",
        label=label,
        kind=DERIVED_LENGTH,
        get=lambda report: getattr(report.survey.frame.bars[bar.id], name),
        edit=lambda wanted: lambda design: resize(design, bar.id, wanted, "low"),
        help=f"Change any of the three lengths: planes move, and bars of letter {bar.letter} that lie the "
        "same way stay alike.",
        about=bar.name,
    )


def _sawn_entry(bar: BarPlace) -> Entry:
    def held(length: float | None) -> Edit:
        if length is None:
            return partial(give_up_piece, bar=bar.id)
        return partial(saw_to, bar=bar.id, length=length)

    return Entry(
        key="bar-sawn",
        label="Already sawn to",
        kind=LENGTH,
        get=lambda report: report.survey.frame.bars[bar.id].sawn,
        edit=held,
        help="You have the piece: write its length, and the planes follow it. Empty: not sawn yet.",
        optional=True,
        about=bar.name,
    )


def add_bar(section: ListSection) -> None:
    """Ask for two crossings, and put a bar between them."""
    report = section.report
    if report is None or prod(map(len, plane_groups(report.design.arrangement))) < 2:
        section.say(
            "! A bar needs two crossings; add stations, sides and levels in the section Planes first."
        )
        return

    def second(start: Crossing) -> None:
        question, options = bar_ends(report, start)
        section.pick(question, options, lambda end: finish(start, end))

    def finish(start: Crossing, end: Crossing) -> None:
        section.ask("bar added", lambda design: edits.add_bar(design, start, end))

    _pick_start(section, report, second)


def _pick_start(section: ListSection, report: Report, then: Callable[[Crossing], None]) -> None:
    """Pick a crossing: from a list of all of them, or plane by plane where that would be too long."""
    groups = plane_groups(report.design.arrangement)

    def on_planes(*planes: str) -> None:
        if len(planes) == len(PLANE_KINDS):
            then((planes[0], planes[1], planes[2]))
            return
        kind = PLANE_KINDS[len(planes)]
        options: Options = tuple(
            (f"{plane.name} at {shown(report, plane.at)}", plane.id)
            for plane in edits.ordered_planes(report.design, kind)
        )
        section.pick(
            f"Where does the bar start? On which {kind}?", options, lambda plane: on_planes(*planes, plane)
        )

    if prod(map(len, groups)) > LISTED_MOST:
        on_planes()
        return
    options: Options = tuple(
        (crossing_name(report.design.arrangement, at), at)
        for at in product(*([plane.id for plane in group] for group in groups))
    )
    section.pick("Where does the bar start? Station, side, level:", options, then)


def bar_ends(report: Report, start: Crossing) -> tuple[str, Options]:
    """The question where a bar from a crossing ends, and what may be picked.

    First what is in line with it, then what is at 45 degrees in a main plane; of many the nearest.
    """
    question = "Where does it end? Crossings in one line, then those at 45 degrees."
    ends = _ends(report, start)
    if len(ends) > LISTED_MOST:
        question += f" The nearest {LISTED_MOST}."
        nearest = sorted(ends, key=lambda end: _away(report, start, end[0]))[:LISTED_MOST]
        kept = set(nearest)
        ends = [end for end in ends if end in kept]
    run = report.design.arrangement
    return question, tuple((f"{crossing_name(run, end)}{words}", end) for end, words in ends)


def _ends(report: Report, start: Crossing) -> list[tuple[Crossing, str]]:
    """Every crossing where a bar from one may end, by its place, with what is said of it."""
    at = report.survey.frame.planes

    def by_place(ends: Iterable[Crossing]) -> list[Crossing]:
        return sorted(ends, key=lambda end: tuple(at[plane] for plane in end))

    straight = [(end, "") for end in by_place(straight_ends(report.design, start))]
    slanting = by_place(slanting_ends(report.design, start))
    return [*straight, *((end, ", at 45 degrees") for end in slanting)]


def _away(report: Report, start: Crossing, end: Crossing) -> float:
    """How far two crossings lie apart along the longest way [m]."""
    at = report.survey.frame.planes
    return max(abs(at[a] - at[b]) for a, b in zip(start, end, strict=True))


def split_bar(section: ListSection) -> None:
    """Ask for a plane that crosses the bar, and split it there."""
    report, key = section.report, section.table.chosen
    if report is None or key is None:
        return
    planes = _planes_across(report, key)
    if not planes:
        section.say("! No plane crosses this bar between its ends; add one in the section Planes first.")
        return
    name = report.survey.frame.bars[key].name
    section.pick(
        f"Split '{name}' with a tee at which plane?",
        planes,
        lambda plane: section.ask(f"bar {name} split", lambda design: edits.split_bar(design, key, plane)),
    )


def _planes_across(report: Report, key: str) -> Options:
    bar = report.survey.frame.bars[key]
    found = []
    for number, kind in enumerate(PLANE_KINDS):
        low, high = sorted((bar.start[number], bar.end[number]))
        found += [
            (f"{kind} {plane.name} at {shown(report, plane.at)}", plane.id)
            for plane in edits.ordered_planes(report.design, kind)
            if low < plane.at < high
        ]
    return tuple(found)


def to_the_other_side(section: ListSection) -> None:
    """The same bar on the other side of the vehicle."""
    report, key = section.report, section.table.chosen
    if report is not None and key is not None:
        name = report.survey.frame.bars[key].name
        section.ask(f"bar {name} copied across", lambda design: edits.copy_bar_across(design, key))


def mirror(section: ListSection) -> None:
    """The chosen bar on the other side too, or one side made like the other."""
    options: Options = (
        ("this bar also on the other side", None),
        ("port side as it is, starboard made like it", "port"),
        ("starboard side as it is, port made like it", "starboard"),
    )

    def then(hand: edits.Hand | None) -> None:
        if hand is None:
            to_the_other_side(section)
        else:
            section.ask(f"{hand} side mirrored", lambda design: edits.mirror_sides(design, hand))

    section.pick("What is to be alike on both sides?", options, then)


def remove_bar(report: Report, key: str) -> Asking:
    """A bar with what is fixed to it."""
    name = report.survey.frame.bars[key].name
    count = len(edits.fixed_to(report.design, key))
    things = f" with {count} {'thing' if count == 1 else 'things'} on it" if count else ""
    return f"bar {name} removed{things}", lambda design: edits.remove_bar(design, key)


def locate_bar(report: Report, about: About) -> str | None:
    """The bar itself, or the first one at a joint."""
    frame = report.survey.frame
    if about.kind == "bar" and about.id in frame.bars:
        return about.id
    joint = frame.joints.get(about.id) if about.kind == "joint" else None
    return joint.arms[0].bar if joint and joint.arms else None


BARS = Listing(
    title="Bars",
    columns=(
        Column("", 2),
        Column("Bar"),
        Column("From - to", least=70),
        Column("Centres", 9, right=True),
        Column("Showing", 9, right=True),
        Column("Cut", 9, right=True),
    ),
    rows=bar_rows,
    entries=bar_entries,
    marks=lambda report, key: ("bar", key),
    empty="No bars yet. Press Add and choose two crossings of planes.",
    add=add_bar,
    remove=remove_bar,
    acts=(
        Act("split", "Split", split_bar),
        Act("mirror", "Mirror", mirror),
        Act("draw", "Draw", lambda section: section.post_message(DrawRequested())),
    ),
    note=bar_note,
    locate=locate_bar,
)
