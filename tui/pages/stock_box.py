"""The section In the box: what there is already, what is missing, what is left over."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Any

from model.coach.say import WHOLE
from model.coach.sentences import counted, listed
from model.design import edits
from model.design.edits import Ref
from model.vehicle.choices import use_box
from tui.forms.acts import Act
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import COUNT, LENGTH, YES_NO
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.choosing import pieces_of
from tui.pages.words import shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

PIECE = "piece"
"""Keys of pieces of pipe are this and their number; those of fittings are their ids."""


def box_rows(report: Report) -> list[Row]:
    """Every fitting of the stock, then the pieces of pipe."""
    counts = {count.id: count for count in report.survey.in_box.fittings}
    return [
        *(_fitting_row(fitting.id, fitting.name, counts) for fitting in report.design.stock.fittings),
        *(_piece_row(report, number) for number in range(len(report.design.stock.on_hand.pieces))),
    ]


def _fitting_row(fitting: str, name: str, counts: Any) -> Row:
    count = counts.get(fitting)
    numbers = (count.held, count.needed, count.missing, count.left) if count else (0, 0, 0, 0)
    return Row(f"fitting:{fitting}", (name, *(str(number) if number else "-" for number in numbers)))


def _piece_row(report: Report, number: int) -> Row:
    piece = report.design.stock.on_hand.pieces[number]
    name = edits.find(report.design, Ref("pipe", piece.pipe)).name
    used, left = report.survey.in_box.taken(piece.pipe, piece.length)
    words = f"{shown(report, piece.length)} of {name}"
    return Row(f"{PIECE}:{number}", (words, str(piece.count), str(used), "-", str(left)))


def standing(report: Report) -> str:
    """What is missing and what is left over, in two sentences."""
    box = report.survey.in_box
    hand = report.design.stock.on_hand
    if not hand.fittings and not hand.pieces:
        return (
            "Count what you have already: write how many of each fitting, and press Add for a piece of pipe. "
            f"It is used first; what is missing goes on the bill.{_not_counted(report)}"
        )
    pipes = {pipe.id: pipe.name for pipe in report.design.stock.pipes}
    missing = [f"{item.missing} x {item.name}" for item in box.fittings if item.missing]
    missing += [
        f"{len(cuts)} {'cut' if len(cuts) == 1 else 'cuts'} of {pipes[pipe]}"
        for pipe, cuts in box.to_buy.items()
        if cuts
    ]
    left = [f"{item.left} x {item.name}" for item in box.fittings if item.left]
    left += [f"{count} x {shown(report, length)} of {pipes[pipe]}" for pipe, length, count in box.unused]
    rests = [shown(report, stick.rest) for stick in box.sticks]
    offcuts = f" Ends of sawn pieces: {listed(rests)}." if rests else ""
    none, open_yet = ["nothing"], _not_counted(report)
    return f"Missing: {listed(missing or none)}. Left over: {listed(left or none)}.{offcuts}{open_yet}"


def _not_counted(report: Report) -> str:
    """What cannot be counted yet, since no fitting fits there."""
    box = report.survey.in_box
    things = [counted(n, word) for n, word in ((box.joints_open, "joint"), (box.bars_open, "bar")) if n]
    return f" Not counted yet: {listed(things)}, where no fitting fits." if things else ""


def box_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """The count of a fitting, or what a piece of pipe is; and whether the box is all there is."""
    kind, _, identity = key.partition(":")
    mine = _piece_entries(int(identity)) if kind == PIECE else (_count_entry(report, identity),)
    only = Entry(
        key="box-only",
        label="Nothing can be bought",
        kind=YES_NO,
        get=lambda report: report.design.stock.on_hand.only,
        edit=lambda only: lambda design: edits.box_is_all(design, only),
        help="Yes: the box is all there is, as in a workshop, and the coach says what is missing.",
    )
    return (*mine, only)


def _count_entry(report: Report, fitting: str) -> Entry:
    def get(report: Report) -> int:
        held = report.design.stock.on_hand.fittings
        return next((item.count for item in held if item.fitting == fitting), 0)

    name = str(edits.find(report.design, Ref("fitting", fitting)).name)
    return Entry(
        key="box-count",
        label="In the box",
        kind=COUNT,
        get=get,
        edit=lambda count: lambda design: edits.set_held(design, fitting, count),
        help="How many of it you have already.",
        about=name,
    )


def _piece_entries(number: int) -> tuple[Entry, ...]:
    def entry(name: str, label: str, kind: Any, help_: str) -> Entry:
        return Entry(
            key=f"box-{name}",
            label=label,
            kind=kind,
            get=lambda report: getattr(report.design.stock.on_hand.pieces[number], name),
            edit=lambda value: lambda design: edits.set_held_piece(design, number, **{name: value}),
            help=help_,
            about="a piece in the box",
        )

    return (
        entry("length", "Long", LENGTH, "How long each of these pieces is."),
        entry("count", "Pieces of it", COUNT, "How many pieces of this length you have."),
        entry("pipe", "Pipe", pieces_of("pipe"), "Which size of pipe it is."),
    )


def add_piece(section: ListSection) -> None:
    """One more piece of pipe; its length is written in the form."""
    section.ask("a piece of pipe put in the box", edits.add_held_piece)


def remove_held(report: Report, key: str) -> Asking:
    """A piece of pipe, or all of a fitting, taken off the list."""
    kind, _, identity = key.partition(":")
    if kind == PIECE:
        return "a piece of pipe out of the box", partial(edits.remove_held_piece, number=int(identity))
    name = edits.find(report.design, Ref("fitting", identity)).name
    return f"{name} out of the box", lambda design: edits.set_held(design, identity, 0)


def use_the_box(section: ListSection) -> None:
    """Give the joints fittings from the box, as long as there are any."""
    report = section.report
    if report is not None:
        joints = tuple(report.survey.frame.joints.values())
        section.ask("fittings from the box used first", lambda design: use_box(design, joints))


def locate_held(report: Report, about: About) -> str | None:
    """The first row, for what the box lacks."""
    return next((row.key for row in box_rows(report)), None) if about == WHOLE else None


def marked(report: Report, key: str) -> tuple[str, str]:
    """What a row stands for."""
    kind, _, identity = key.partition(":")
    return (kind, identity)


BOX = Listing(
    title="In the box",
    columns=(
        Column("In the box"),
        Column("Have", 5, right=True),
        Column("Need", 5, right=True),
        Column("Buy", 5, right=True),
        Column("Left", 5, right=True),
    ),
    rows=box_rows,
    entries=box_entries,
    marks=marked,
    empty="The stock has no fittings yet: choose a range first.",
    add=add_piece,
    remove=remove_held,
    acts=(Act("use-box", "Use the box first", use_the_box),),
    facts=standing,
    locate=locate_held,
)


def box_section() -> ListSection:
    """The section In the box."""
    return ListSection(BOX)
