"""The stock: what the team builds with, and what it really measures."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from model.coach.sentences import gone_words
from model.design import Stock, edits
from model.design.edits import Ref
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, TEXT
from tui.forms.listing import Listing, ListSection
from tui.forms.section import FormSection, Section
from tui.pages.choosing import pick_preset
from tui.pages.page import Page
from tui.pages.stock_bought import (
    BOUGHT_COLUMNS,
    FOAM_COLUMNS,
    add_from_preset,
    bought_entries,
    bought_rows,
    foam_entries,
    foam_rows,
)
from tui.pages.stock_box import box_section
from tui.pages.stock_fittings import FITTING_COLUMNS, add_fitting, fitting_entries, fitting_rows
from tui.pages.stock_measure import measure_section
from tui.pages.stock_pipes import PIPE_COLUMNS, fewer_lengths, more_lengths, pipe_entries, pipe_rows

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.presets import Preset
    from model.review import Report

STOCK = Ref("stock")
MEASURING = (
    "Take a ruler and one piece of each kind to the section Measure. It shows how to hold the ruler, and "
    "works out what the cuts need: centre to stop, from the middle of a fitting to the stop in its socket, "
    "and push-in depth, how far a dry pipe really goes in."
)


def range_entries(report: Report) -> tuple[Entry, ...]:
    """The range and the saw."""
    return (
        field(STOCK, "name", "Name of the range", TEXT, help="What this range of pipe is called."),
        field(STOCK, "kerf", "The saw eats", LENGTH),
        field(STOCK, "origin", "Dimensions are from", TEXT),
        field(STOCK, "notes", "Notes", TEXT, help="Anything to remember about this range."),
    )


def range_facts(report: Report) -> str:
    """What the range holds, and how to measure."""
    stock = report.design.stock
    pipes = len(stock.pipes)
    sizes = f"{pipes} pipe {'size' if pipes == 1 else 'sizes'}"
    return f"{sizes}, {len(stock.fittings)} kinds of fitting.\n{MEASURING}"


def choose_stock(section: Section) -> None:
    """Pick a range from the presets."""

    def use(preset: Preset, stock: Stock) -> None:
        gone = gone_words(edits.left_behind(report.design.stock, stock))
        section.ask(f"stock {stock.name}{gone}", lambda design: edits.use_stock(design, stock))

    report = section.report
    if report is not None:
        present = report.design.stock.name
        pick_preset(section, "stock", "Which range of pipe is in your box?", use, present)


def stocked(
    title: str,
    kind: str,
    columns: tuple[Column, ...],
    rows: Callable[[Report], list[Row]],
    entries: Callable[[Report, str], tuple[Entry, ...]],
    acts: tuple[Act, ...] = (),
    add: Callable[[ListSection], None] | None = None,
) -> ListSection:
    """A section for one kind of thing in the box."""

    def name(report: Report, key: str) -> str:
        return str(edits.find(report.design, Ref(kind, key)).name)

    def locate(report: Report, about: About) -> str | None:
        known = {piece.id for piece in edits.pieces(report.design, kind)}
        return about.id if about.kind == kind and about.id in known else None

    return ListSection(
        Listing(
            title=title,
            columns=columns,
            rows=rows,
            entries=entries,
            marks=lambda report, key: (kind, key),
            empty=f"No {kind} yet. Press Add to take one from a preset, then write in your own figures.",
            add=add,
            copy=lambda report, key: (
                f"{name(report, key)} copied",
                lambda design: edits.copy_item(design, Ref(kind, key)),
            ),
            remove=lambda report, key: (
                f"{name(report, key)} removed",
                lambda design: edits.remove_supply(design, Ref(kind, key)),
            ),
            acts=acts,
            locate=locate,
        )
    )


class StockPage(Page):
    """What is in the box."""

    WHY = (
        "Your cuts are only as good as these figures. Choose the range that looks like yours, then "
        "measure one piece of each kind and write in what you found."
    )
    HELP = (
        "Choose the range of pipe and fittings that you can buy. In the section Measure, measure one "
        "piece of each kind: a small drawing shows how to hold the ruler, and every cut follows. What the "
        "maker printed stays beside it and holds again when you press Forget. In the section In the box, "
        "count what you have already: it is used first, and what is missing goes on the bill. A fitting that "
        "the range lacks, from another shop perhaps, is added in the section Fittings.\n\n"
        + MEASURING
        + "\n\nWeigh a fitting on a kitchen "
        "scale. Hang a motor in water from a luggage or kitchen scale to find its weight in water.\n\n"
        "In a table: a adds, c copies, d removes, Enter goes to the fields."
    )

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """The range, and the kinds of thing in the box."""
        lengths = (Act("more", "Sold length +", more_lengths), Act("fewer", "Sold length -", fewer_lengths))
        choose = (Act("stock", "Choose a range", choose_stock),)
        motors, mounts = (
            partial(
                stocked,
                title,
                kind,
                BOUGHT_COLUMNS,
                partial(bought_rows, kind),
                partial(bought_entries, kind),
                add=add_from_preset,
            )
            for title, kind in (("Motors", "motor"), ("Mounts", "mount"))
        )
        return (
            ("Range", lambda: FormSection("Range", range_entries, range_facts, ("stock",), choose)),
            ("Measure", measure_section),
            ("In the box", box_section),
            ("Pipe", lambda: stocked("Pipe", "pipe", PIPE_COLUMNS, pipe_rows, pipe_entries, lengths)),
            (
                "Fittings",
                lambda: stocked(
                    "Fittings", "fitting", FITTING_COLUMNS, fitting_rows, fitting_entries, add=add_fitting
                ),
            ),
            ("Motors", motors),
            ("Mounts", mounts),
            (
                "Foam",
                lambda: stocked("Foam", "foam", FOAM_COLUMNS, foam_rows, foam_entries, add=add_from_preset),
            ),
        )
