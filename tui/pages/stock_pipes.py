"""The pipe of the stock: what is measured of it, and the lengths on sale."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from model.design import Pipe, edits
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, MONEY, TEXT, YES_NO, number
from tui.pages.words import bare

if TYPE_CHECKING:
    from model.review import Report

PIPE_COLUMNS = (
    Column("Pipe"),
    Column("Outside", 8, right=True),
    Column("Bore", 7, right=True),
    Column("Push-in", 7, right=True),
    Column("Of", 8, least=70),
)


def pipe_rows(report: Report) -> list[Row]:
    """Each pipe size."""
    return [
        Row(
            pipe.id,
            (
                pipe.name,
                bare(report, pipe.outside_diameter),
                bare(report, pipe.bore),
                bare(report, pipe.insertion),
                pipe.material,
            ),
        )
        for pipe in report.design.stock.pipes
    ]


def pipe_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """What is measured of a pipe, and the lengths on sale."""
    ref = Ref("pipe", key)
    pipe: Pipe = edits.find(report.design, ref)
    about = pipe.name
    fixed = (
        field(ref, "insertion", "Push-in depth", LENGTH, about=about),
        field(ref, "outside_diameter", "Outside diameter", LENGTH, about=about),
        field(ref, "bore", "Bore", LENGTH, about=about),
        field(ref, "name", "Name", TEXT, help="What this size is called.", about=about),
        field(ref, "material", "Material", TEXT, about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
    )
    sticks = tuple(entry for number in range(len(pipe.sticks)) for entry in _stick_entries(pipe, number))
    more = (
        field(ref, "density", "Plastic weighs", number("kg/m3"), about=about),
        field(ref, "source", "Figures are from", TEXT, help="Where these figures come from.", about=about),
    )
    return (*fixed, *sticks, *more)


def _stick_entries(pipe: Pipe, number_: int) -> tuple[Entry, Entry]:
    def entry(name: str, label: str, kind: Any, help_: str) -> Entry:
        return Entry(
            key=f"stick-{number_}-{name}",
            label=f"{label} {number_ + 1}",
            kind=kind,
            get=lambda report: getattr(edits.find(report.design, Ref("pipe", pipe.id)).sticks[number_], name),
            edit=lambda value: lambda design: edits.set_stick(design, pipe.id, number_, **{name: value}),
            help=help_,
            about=pipe.name,
        )

    return (
        entry("length", "Sold length", LENGTH, "A length in which this pipe is sold."),
        entry("price", "Price of length", MONEY, "The price of one such length."),
    )


def more_lengths(section: Any) -> None:
    """One more length on sale."""
    if key := section.table.chosen:
        section.ask("a length on sale added", lambda design: edits.add_stick(design, key))


def fewer_lengths(section: Any) -> None:
    """The last length on sale taken out."""
    if (key := section.table.chosen) and section.report:
        last = len(edits.find(section.report.design, Ref("pipe", key)).sticks) - 1
        section.ask("a length on sale removed", lambda design: edits.remove_stick(design, key, last))
