"""The section Prices: a line for each thing that the design needs, with its price."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from model.design import edits
from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import MONEY, YES_NO, number_text
from tui.forms.listing import Listing
from tui.pages.words import money, shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report


def rows(report: Report) -> list[Row]:
    """The lines of the bill."""
    return [
        Row(
            f"{line.kind}:{line.id}",
            (
                line.name,
                str(line.quantity),
                number_text(line.each, 2),
                number_text(line.total, 2),
                "yes" if line.counts else "no",
            ),
        )
        for line in report.survey.bill.lines
    ]


def standing(report: Report) -> str:
    """Spent, limit, left."""
    bill = report.survey.bill
    free = f" {money(report, bill.free)} more do not count." if bill.free else ""
    unsold = ", ".join(edits.find(report.design, Ref("pipe", pipe)).name for pipe in bill.unsold)
    missing = (
        f"\nNo length on sale is long enough for: {unsold}. Add one on the Stock page." if unsold else ""
    )
    if bill.left is None:
        return f"It costs {money(report, bill.spent)}; the brief sets no limit.{free}{missing}"
    left = f"{money(report, abs(bill.left))} {'too much' if bill.left < 0 else 'left'}"
    return f"It costs {money(report, bill.spent)} of {money(report, bill.limit)}: {left}.{free}{missing}"


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """The price where it lives, and whether it counts."""
    kind, _, identity = key.partition(":")
    ref = Ref(kind, identity)
    about = edits.find(report.design, ref).name
    counts = field(ref, "counts", "Counts on the bill", YES_NO, about=about)
    if kind == "pipe":
        sticks = range(len(edits.find(report.design, ref).sticks))
        return (*(_stick_price(report, identity, stick) for stick in sticks), replace(counts, key="counts"))
    label = "Price of one tube" if kind == "foam" else "Price of one"
    price = field(ref, "price", label, MONEY, help="What you pay for one.", about=about)
    return replace(price, key="price"), replace(counts, key="counts")


def _stick_price(report: Report, pipe: str, stick: int) -> Entry:
    record = edits.find(report.design, Ref("pipe", pipe))

    def get(report: Report) -> Any:
        return edits.find(report.design, Ref("pipe", pipe)).sticks[stick].price

    return Entry(
        key=f"stick-{stick}",
        label=f"Price of {shown(report, record.sticks[stick].length)}",
        kind=MONEY,
        get=get,
        edit=lambda price: lambda design: edits.set_stick(design, pipe, stick, price=price),
        help="The price of one whole length; pipe is bought in whole lengths.",
        about=record.name,
        field=("stick", "price"),
    )


def locate(report: Report, about: About) -> str | None:
    """The line of a thing; of the whole bill, the dearest line."""
    lines = report.survey.bill.lines
    key = f"{about.kind}:{about.id}"
    return next((key for line in lines if key == f"{line.kind}:{line.id}"), None)


LINES = Listing(
    title="Prices",
    columns=(
        Column("What"),
        Column("Pieces", 6, right=True),
        Column("Each", 8, right=True),
        Column("Total", 8, right=True),
        Column("Counts", 6),
    ),
    rows=rows,
    entries=entries,
    marks=lambda report, key: (key.partition(":")[0], key.partition(":")[2]),
    empty="Nothing to buy yet.",
    facts=standing,
    locate=locate,
)
