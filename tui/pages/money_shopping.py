"""The section To buy: the shopping list, less what is in the box and what is paid."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from model.design.edits.evidence import note_expense
from model.money.ledger import Ledger, Shopping, ledger
from tui import stamp
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import MONEY, TEXT, Kind, number_text
from tui.forms.listing import Listing, ListSection
from tui.pages.noting import AUTHOR
from tui.pages.words import money

if TYPE_CHECKING:
    from model.design import Design
    from model.design.edits import Edit
    from model.review import Report


def ledger_of(report: Report) -> Ledger:
    """The money of the design on screen."""
    return ledger(report.design, report.survey.bill)


def ledger_words(report: Report) -> str:
    """Spent, still to buy, left."""
    found = ledger_of(report)
    words = f"Spent {money(report, found.spent)}, still to buy {money(report, found.committed)}"
    if found.left is None:
        rest = "; the brief sets no limit."
    else:
        after = f"{money(report, abs(found.left))} {'TOO MUCH' if found.left < 0 else 'left'}"
        rest = f", of {money(report, found.limit)}: {after}."
    return f"{words}{rest}{_apart(report, found)}"


def _apart(report: Report, found: Ledger) -> str:
    """What does not count, and what was given."""
    free = f" Not counted: {money(report, found.free)}." if found.free else ""
    given = f" Given: worth {money(report, found.given)}." if found.given else ""
    return f"{free}{given}"


class Shop:
    """The shopping list; it remembers the shop and the receipt from one line to the next."""

    def __init__(self) -> None:
        self.shop = self.receipt = ""

    def section(self) -> ListSection:
        """The section To buy."""
        return ListSection(
            Listing(
                title="To buy",
                columns=(
                    Column("What"),
                    Column("Needed", 6, right=True),
                    Column("Paid", 5, right=True),
                    Column("To buy", 6, right=True),
                    Column("Each", 7, right=True, least=60),
                    Column("Costs", 8, right=True),
                ),
                rows=rows,
                entries=self.entries,
                marks=lambda report, key: _marks(key),
                empty="Nothing to buy yet.",
                acts=(AUTHOR,),
                facts=ledger_words,
            )
        )

    def entries(self, report: Report, key: str) -> tuple[Entry, ...]:
        """What was paid for the line, where, on which receipt."""
        item = _item(report, key)
        paid = Entry(
            key="paid",
            label=f"Paid for {item.quantity or item.line.quantity} of it",
            kind=MONEY,
            get=lambda report: None,
            edit=lambda amount: lambda design: self.pay(design, item, amount),
            help="Enter notes it in the ledger with today's date; there it can be put right.",
            optional=True,
            about=item.line.name,
            field=("ledger", "amount"),
        )
        return (
            self._kept("shop", "Shop", TEXT, "Where you are; it stays for the next line."),
            self._kept("receipt", "Receipt number", TEXT, "On the slip; it stays for the next line."),
            paid,
        )

    def _kept(self, name: str, label: str, kind: Kind, help_: str) -> Entry:
        """A word that is kept here and changes nothing in the design."""

        def edit(value: Any) -> Edit:
            setattr(self, name, value)
            return lambda design: design

        return Entry(f"shop-{name}", label, kind, lambda report: getattr(self, name), edit, help_)

    def pay(self, design: Design, item: Shopping, amount: float | None) -> Design:
        """The line noted as bought."""
        if amount is None:
            return design
        return note_expense(
            design,
            stamp.today(),
            item.line.name,
            amount,
            shop=self.shop,
            receipt=self.receipt,
            counts=item.line.counts,
            line=item.key,
            quantity=item.quantity or item.line.quantity,
            who=stamp.who(),
        )


shopping_section: Callable[[], ListSection] = lambda: Shop().section()  # noqa: E731


def rows(report: Report) -> list[Row]:
    """The lines of the list."""
    return [Row(item.key, _cells(item)) for item in ledger_of(report).to_buy]


def _cells(item: Shopping) -> tuple[str, ...]:
    line = item.line
    each, total = number_text(line.each, 2), number_text(item.total, 2)
    return line.name, str(line.quantity), str(item.bought), str(item.quantity), each, total


def _item(report: Report, key: str) -> Shopping:
    return next(item for item in ledger_of(report).to_buy if item.key == key)


def _marks(key: str) -> tuple[str, str]:
    kind, _, identity = key.partition(" ")
    return kind, identity
