"""What was spent, what is still to be paid for, and what that leaves of the limit."""

from collections import Counter
from collections.abc import Iterable

from msgspec import Struct

from model.design import COMPARISON_SLACK, Design, Expense
from model.money.bill import Bill, Line


class Shopping(Struct, frozen=True):
    """A line of the shopping list: what the design needs, less what the ledger says is bought."""

    line: Line
    bought: int

    @property
    def key(self) -> str:
        """What an expense names to pay for this line."""
        return line_key(self.line)

    @property
    def quantity(self) -> int:
        """How many are still to be bought."""
        return max(0, self.line.quantity - self.bought)

    @property
    def total(self) -> float:
        """What they cost."""
        return round(self.line.each * self.quantity, 2)


class Ledger(Struct, frozen=True):
    """The money of a design.

    Attributes:
        lines: the expenses that stand, in the order in which they were noted.
        to_buy: the shopping list.
        spent: what counts of the expenses.
        given: what given things would have cost; part of ``spent`` only where the brief says so.
        free: what was spent on what does not count.
        committed: what counts of the shopping list.
        limit: of the brief, or None.
    """

    lines: tuple[Expense, ...]
    to_buy: tuple[Shopping, ...]
    spent: float
    given: float
    free: float
    committed: float
    limit: float | None
    currency: str

    @property
    def left(self) -> float | None:
        """What is left of the limit once all is bought, below zero if it is broken; None without a limit."""
        return None if self.limit is None else round(self.limit - self.spent - self.committed, 2)

    @property
    def over(self) -> bool:
        """Whether what is spent and what is still to be bought break the limit."""
        return self.left is not None and self.left < -COMPARISON_SLACK


def line_key(line: Line) -> str:
    """How an expense names a line of the shopping list.

    >>> line_key(Line("fitting", "tee", "tee", 4, 0.5, True))
    'fitting tee'
    """
    return f"{line.kind} {line.id}"


def ledger(design: Design, bill: Bill) -> Ledger:
    """The money of a design, from its bill and its evidence."""
    lines = tuple(line for line in design.evidence.ledger if line.stands)
    bought = Counter[str]()
    for line in lines:
        bought[line.line] += line.quantity
    to_buy = tuple(Shopping(line, bought[line_key(line)]) for line in bill.lines)
    return Ledger(
        lines=lines,
        to_buy=to_buy,
        spent=_sum(line.amount for line in lines if counts(line, design)),
        given=_sum(line.amount for line in lines if line.given),
        free=_sum(line.amount for line in lines if not line.given and not line.counts),
        committed=_sum(item.total for item in to_buy if item.line.counts),
        limit=bill.limit,
        currency=bill.currency,
    )


def counts(line: Expense, design: Design) -> bool:
    """Whether an expense counts against the limit: given things only where the brief says so."""
    return line.counts and (design.brief.given_counts or not line.given)


def without_receipt(design: Design) -> tuple[Expense, ...]:
    """Expenses that stand, were paid for and have neither the number nor the picture of a receipt."""
    return tuple(
        line
        for line in design.evidence.ledger
        if line.stands and not line.given and not line.receipt.strip() and not line.picture.strip()
    )


def receipts_twice(design: Design) -> tuple[tuple[Expense, Expense], ...]:
    """Pairs of expenses that look like one receipt noted twice.

    One receipt may stand for several things, so that only lines of one shop, one receipt, one amount and one
    thing are the same.
    """
    first: dict[tuple[str, str, float, str], Expense] = {}
    pairs = []
    for line in design.evidence.ledger:
        if line.stands and line.receipt.strip():
            words = (line.shop, line.receipt, line.what)
            shop, receipt, what = (word.strip().casefold() for word in words)
            other = first.setdefault((shop, receipt, line.amount, what), line)
            if other is not line:
                pairs.append((other, line))
    return tuple(pairs)


def _sum(amounts: Iterable[float]) -> float:
    return round(sum(amounts), 2)
