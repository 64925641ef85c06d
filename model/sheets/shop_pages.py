"""Pages for the shop: what to buy, and what is spent."""

from model.design import Expense
from model.money.ledger import Ledger, counts, ledger
from model.money.shopping import PipePlan
from model.sheets.blocks import Block, Heading, Page, Table, Words
from model.survey import Survey
from model.units import format_length

Row = tuple[str, ...]
COLUMNS = ("what", "how many", "each", "together", "counts", "got it")


def shopping_rows(survey: Survey, plan: PipePlan) -> tuple[Row, ...]:
    """What is still to be bought: what, how many, each, together, whether it counts."""
    found = ledger(survey.design, survey.bill)
    unit = survey.design.units
    rows: list[Row] = []
    for item in found.to_buy:
        if item.line.kind == "pipe" and not item.bought and len(survey.frame.bars):
            sticks = [stick for stick in plan.to_buy if stick.pipe.id == item.line.id]
            if sum(stick.quantity for stick in sticks) == item.line.quantity:
                rows += [
                    _row(
                        f"{s.pipe.name}, {format_length(s.length, unit)} long",
                        s.quantity,
                        s.each,
                        item.line.counts,
                    )
                    for s in sticks
                ]
                continue
        if item.quantity:
            rows.append(_row(item.line.name, item.quantity, item.line.each, item.line.counts))
    return tuple(rows)


def _row(what: str, quantity: int, each: float, counted: bool) -> Row:
    return what, str(quantity), f"{each:.2f}", f"{each * quantity:.2f}", "yes" if counted else "no"


def shopping_list(survey: Survey, plan: PipePlan) -> Page:
    """What to buy, and what that leaves."""
    found = ledger(survey.design, survey.bill)
    rows = tuple((*row, "[ ]") for row in shopping_rows(survey, plan))
    blocks: list[Block] = [
        Table(COLUMNS, rows, (0.46, 0.12, 0.11, 0.13, 0.09, 0.09), (1, 2, 3))
        if rows
        else Words("Nothing is left to buy."),
        Words(standing_words(found)),
        Words("Ask for a receipt, write its number in the ledger the same day, and keep a picture of it."),
    ]
    used = [
        f"{item.name} ({min(item.needed, item.held)})"
        for item in survey.in_box.fittings
        if item.needed and item.held
    ]
    if used:
        blocks.append(Heading("From your box"))
        blocks.append(Words(", ".join(used)))
    return Page("shopping-list", "Shopping list", tuple(blocks))


def standing_words(found: Ledger) -> str:
    """Spent, still to buy and left, in one sentence."""
    money = found.currency
    words = f"Spent {found.spent:.2f} {money}; still to buy {found.committed:.2f} {money}"
    if found.left is None or found.limit is None:
        return f"{words}; the brief sets no limit."
    after = f"{abs(found.left):.2f} {money} {'left' if found.left >= 0 else 'TOO MUCH'}"
    return f"{words}; of a limit of {found.limit:.2f} {money} that makes {after}."


def ledger_table(survey: Survey) -> Table:
    """The whole ledger, what was taken back included."""
    rows = tuple(_expense(line, survey) for line in survey.design.evidence.ledger)
    columns = ("date", "what for", "shop", "amount", "counts", "receipt", "who")
    return Table(columns, rows, (0.13, 0.25, 0.17, 0.11, 0.1, 0.14, 0.1), (3,))


def _expense(line: Expense, survey: Survey) -> Row:
    amount = f"{line.amount:.2f}" + (" (given, estimate)" if line.given else "")
    what = line.what if line.stands else f"{line.what} (taken back {line.taken_back})"
    receipt = ", ".join(word for word in (line.receipt, line.picture) if word) or "none"
    return (
        line.when,
        what,
        line.shop,
        amount,
        "yes" if counts(line, survey.design) else "no",
        receipt,
        line.who,
    )
