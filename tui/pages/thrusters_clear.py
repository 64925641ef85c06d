"""Room round each propeller: the nearest part, its stream, tether and hook, guard, and depth at rest."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design import edits
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import YES_NO
from tui.forms.listing import Listing, ListSection
from tui.pages.words import bare, percent, shown

if TYPE_CHECKING:
    from model.review import Report
    from model.thrust.around import Around
    from model.thrust.clear import Near, Stream

LESS = "!"
"""Stands behind what is less than the coach asks for."""
EMPTY = "No thruster yet: place the motors in the section Thrusters first."
NAMED = 3
"""So many parts in a stream are named."""
LEAST = 0.001
"""A part that costs less of the pull is not named."""


def clear_list() -> ListSection:
    """A row for each propeller."""
    return ListSection(
        Listing(
            title="Clearances",
            columns=(
                Column("Motor"),
                Column("Nearest part"),
                Column("Room", 6, right=True),
                Column("Asked", 6, right=True, least=70),
                Column("Lost", 6, right=True),
                Column("Depth", 6, right=True, least=70),
                Column("Guard", 5),
            ),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("thruster", key),
            empty=EMPTY,
            facts=facts,
            note=note,
        )
    )


def facts(report: Report) -> str:
    """What the columns say."""
    unit = report.design.units
    return (
        f"Room [{unit}] round each propeller, pull lost in its stream, depth at rest; {LESS} is too little."
    )


def found(report: Report) -> dict[str, Around]:
    """What is around each propeller, by the thruster's id."""
    return {each.clear.thruster: each for each in report.survey.around}


def rows(report: Report) -> list[Row]:
    """Each propeller with its nearest part, the worse loss of its stream, and its guard."""
    return [Row(key, cells(report, each)) for key, each in found(report).items()]


def cells(report: Report, each: Around) -> tuple[str, ...]:
    """What stands in one row."""
    near, lacks = each.clear.near, each.lacks
    astern = 0.0 if one_way(report, each.clear.thruster) else each.clear.astern.lost
    lost = max(each.clear.ahead.lost, astern)
    return (
        each.name,
        near.part.name if near else "-",
        less(bare(report, near.room), "part" in lacks) if near else "-",
        bare(report, each.asked),
        percent(lost) if lost >= LEAST else "0 %",
        less(bare(report, each.depth), "depth" in lacks),
        less("yes" if each.guard else "no", "tether" in lacks),
    )


def less(text: str, lacks: bool) -> str:
    """A number, with a sign behind it where it is too small."""
    return f"{text} {LESS}" if lacks else text


def note(report: Report, key: str) -> str:
    """Everything about one propeller, a line for each thing."""
    each = found(report)[key]
    lines = [nearest_words(report, each), tether_words(report, each)]
    if each.hook:
        lines.append(f"Hook: {each.hook.part.name}, {apart(report, each.hook)}.")
    ahead, why = stream_words(each.clear.ahead), one_way(report, key)
    if why:
        lines.append(f"Lost in its stream: {ahead}. It has none astern, for it never runs astern: {why}.")
    else:
        astern = stream_words(each.clear.astern)
        lines.append(f"Lost in its stream ahead: {ahead}; astern: {astern}.")
    lines.append(depth_words(report, each))
    return "\n".join(lines)


def one_way(report: Report, key: str) -> str:
    """Why a thruster never runs astern, in words; "" where it does."""
    return next(drive.one_way for drive in report.survey.drives if drive.thruster == key)


def nearest_words(report: Report, each: Around) -> str:
    """The nearest part beside what is asked."""
    near, asked = each.clear.near, shown(report, each.asked)
    if near is None:
        return f"Nearest: more than 1 m away; asked {asked}."
    return f"Nearest: {near.part.name}, {apart(report, near)}; asked {asked}."


def apart(report: Report, near: Near) -> str:
    """How far something is from the disc."""
    return shown(report, near.room) if near.room > 0 else "in the way of the disc"


def tether_words(report: Report, each: Around) -> str:
    """The tether, straight up from its tie-off, against the disc."""
    tether, room = report.design.arrangement.tether, each.clear.tether
    if tether is None:
        return "Tether: none is tied off yet."
    where = "more than 1 m away" if room is None else shown(report, room)
    if each.tether_asked is None:
        return f"Tether: {where}; the guard keeps it out."
    return f"Tether: {where}; asked without a guard {shown(report, each.tether_asked)}."


def stream_words(stream: Stream) -> str:
    """What is lost, and the parts in the stream with what each costs."""
    named = [loss for loss in stream.losses if loss.lost >= LEAST][:NAMED]
    if not named:
        return "nothing"
    listed = ", ".join(f"{loss.part.name} {percent(loss.lost)}" for loss in named)
    more = len(stream.losses) - len(named)
    if more or len(named) > 1:
        listed = f"{percent(stream.lost)} in all: {listed}{f', {more} more' if more else ''}"
    return listed


def depth_words(report: Report, each: Around) -> str:
    """How deep the disc lies while the vehicle floats at rest."""
    if each.depth is None:
        return "Depth at rest: not known, it does not float."
    where = f"{shown(report, abs(each.depth))} {'under' if each.depth >= 0 else 'above'} water"
    return f"Upper edge at rest: {where}; asked {shown(report, each.depth_asked)}."


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """The guard, which is settled here as well as in the section Thrusters."""
    ref = Ref("thruster", key)
    about = edits.find(report.design, ref).name
    return (field(ref, "guard", "Propeller guard", YES_NO, about=about),)
