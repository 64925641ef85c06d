"""The money: what is still to be bought, what was spent, how the pipe is cut, and the rules."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from model.design.edits import Ref
from tui.forms.entry import Entry, field
from tui.forms.kinds import MONEY, TEXT, YES_NO
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.money_cutting import cutting_section
from tui.pages.money_ledger import ledger_section
from tui.pages.money_prices import LINES
from tui.pages.money_shopping import ledger_words, shopping_section
from tui.pages.page import Page

if TYPE_CHECKING:
    from model.review import Report

BRIEF = Ref("brief")


def rules(report: Report) -> tuple[Entry, ...]:
    """The limit, the currency, and the rules that the brief may switch on."""
    return (
        field(BRIEF, "spending_limit", "Spending limit", MONEY, optional=True),
        field(BRIEF, "currency", "Money is called", TEXT),
        field(BRIEF, "receipts_required", "Each line needs receipt", YES_NO),
        field(BRIEF, "given_counts", "Given things count", YES_NO),
        field(BRIEF, "same_frame", "Two runs, same frame", YES_NO),
    )


class MoneyPage(Page):
    """Shopping list, ledger, cutting plan, prices, rules."""

    WHY = (
        "The list follows the design, less what is in your box and what is paid. Write each purchase down "
        "the day it is made, with its receipt."
    )
    HELP = (
        "To buy is the shopping list: what the design needs, less what is in the box and what the ledger "
        "says is bought. Choose a line, press Enter, write what was paid for it: it goes into the ledger. "
        "Shop and receipt stay for the next line, since one receipt often pays for several.\n\n"
        "Ledger is every purchase with date, shop, amount, receipt and the file of its picture. Something "
        "given has an estimate as its amount. What is taken back stays in the notebook, struck out. CSV out "
        "writes it beside the design for a spreadsheet, CSV in reads one.\n\n"
        "Cutting works out how the pieces go into the sticks at the least cost. Prices are those of the "
        "stock and of the gear. Rules holds the limit, and the rules that your brief has.\n\n"
        "Enter goes to the fields."
    )

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """The list, the ledger, the cutting plan, the prices, the rules."""
        kinds = ("brief", "bill", "money", "design", "")
        return (
            ("To buy", shopping_section),
            ("Ledger", ledger_section),
            ("Cutting", cutting_section),
            ("Prices", lambda: ListSection(LINES)),
            ("Rules", lambda: FormSection("Rules", rules, ledger_words, kinds)),
        )
