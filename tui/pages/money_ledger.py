"""The section Ledger: every purchase, as it was made; out to a spreadsheet and in from one."""

from __future__ import annotations

from asyncio import to_thread
from pathlib import Path
from typing import TYPE_CHECKING

from model.design.edits.evidence import note_expense
from model.errors import FileProblem
from model.money.ledger import Ledger, without_receipt
from model.money.ledger_csv import ledger_csv, with_ledger_of
from tui import stamp
from tui.forms.acts import Act
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import COUNT, MONEY, TEXT, YES_NO, Chosen, Options, number_text
from tui.forms.listing import Listing, ListSection
from tui.messages import WriteRequested
from tui.pages.money_shopping import ledger_of, ledger_words
from tui.pages.noting import back, noted, noted_entry

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Expense
    from model.review import Report

LINES_MOST = 100
"""So many of the newest lines are listed; the others are in the sum, the sheets and the CSV."""
SAID_MOST = 2
NEW = "something bought"


def ledger_section() -> ListSection:
    """The section Ledger."""
    return ListSection(
        Listing(
            title="Ledger",
            columns=(
                Column("Date", 10),
                Column("What for"),
                Column("Shop", 12, least=66),
                Column("Amount", 9, right=True),
                Column("Receipt", 8),
            ),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("", ""),
            empty="Nothing is noted yet. Add a line here, or pay for one on the list To buy.",
            add=add,
            remove=back("ledger", "line of the ledger taken back"),
            removing="Take back",
            acts=(Act("csv-out", "CSV out", write_csv), Act("csv-in", "CSV in", read_csv)),
            facts=standing,
            locate=locate,
        )
    )


def standing(report: Report) -> str:
    """Spent, still to buy, left; and what has no receipt where one is asked for."""
    found, missing = ledger_of(report), len(without_receipt(report.design))
    asked = report.design.brief.receipts_required and missing
    receipts = f" {missing} without a receipt." if asked else ""
    return f"{ledger_words(report)}{receipts}{_older(found)}"


def _older(found: Ledger) -> str:
    more = len(found.lines) - LINES_MOST
    return f" The newest {LINES_MOST} lines are listed; {more} older ones are in the CSV." if more > 0 else ""


def rows(report: Report) -> list[Row]:
    """The lines that stand, the newest first."""
    newest = reversed(ledger_of(report).lines[-LINES_MOST:])
    return [Row(line.id, _cells(line)) for line in newest]


def _cells(line: Expense) -> tuple[str, ...]:
    amount = number_text(line.amount, 2) + (" est." if line.given else "")
    return line.when[:10], line.what, line.shop, amount, line.receipt or line.picture or "none"


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Everything that is noted of one purchase."""
    line = noted(report, "ledger", key)
    if line is None:
        return ()
    return (
        noted_entry("ledger", line, "what", "What for", TEXT),
        noted_entry("ledger", line, "amount", "Amount", MONEY),
        noted_entry("ledger", line, "shop", "Shop, or who gave it", TEXT),
        noted_entry("ledger", line, "receipt", "Receipt number", TEXT),
        noted_entry("ledger", line, "picture", "Picture file", TEXT),
        noted_entry("ledger", line, "when", "Date", TEXT, help="The day it was bought, as 2026-03-14."),
        noted_entry("ledger", line, "given", "It was given", YES_NO),
        noted_entry("ledger", line, "counts", "Counts", YES_NO),
        noted_entry("ledger", line, "line", "Pays for", Chosen(_list_lines)),
        noted_entry("ledger", line, "quantity", "How many of it", COUNT),
    )


def _list_lines(report: Report) -> Options:
    listed: Options = tuple((item.line.name, item.key) for item in ledger_of(report).to_buy)
    return (("nothing on the list", ""), *listed)


def add(section: ListSection) -> None:
    """One more line, of today; the rest is written in its form."""
    section.ask(
        "a line in the ledger",
        lambda design: note_expense(design, stamp.today(), NEW, 0.0, who=stamp.who()),
    )


def write_csv(section: ListSection) -> None:
    """The ledger beside the design, for a spreadsheet."""
    if section.report:
        section.post_message(WriteRequested("ledger.csv", ledger_csv(section.report.design)))


def read_csv(section: ListSection) -> None:
    """Lines from a table; what cannot be read is named, and the rest is taken."""
    from tui.dialogs.files import FileDialog

    async def attempt(path: Path) -> str:
        return await _take(section, path)

    question = "Which table of purchases? (CSV with the columns date, what, amount)"
    section.app.push_screen(FileDialog(question, "Take it in", Path.cwd(), attempt, ".csv"))


async def _take(section: ListSection, path: Path) -> str:
    """Take the lines of a file; a sentence where there is nothing to take."""
    report = section.report
    if report is None:
        return ""
    try:
        text = await to_thread(_text, path)
    except FileProblem as problem:
        return str(problem)
    design, said = await to_thread(with_ledger_of, report.design, text)
    words = "; ".join(said[:SAID_MOST]) + (f"; and {len(said) - SAID_MOST} more" if said[SAID_MOST:] else "")
    count = len(design.evidence.ledger) - len(report.design.evidence.ledger)
    if not count:
        return f"Nothing was taken from {path.name}: {words or 'it has no lines'}."
    section.ask(f"{count} lines from {path.name}", lambda now: with_ledger_of(now, text)[0])
    section.say(f"! Left out of {path.name}: {words}." if words else "")
    return ""


def _text(path: Path) -> str:
    from model.reading import read_bytes

    data = read_bytes(path)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")  # what spreadsheets of one system still write


def locate(report: Report, about: About) -> str | None:
    """The line that a finding is about."""
    return about.id if about.kind == "expense" and noted(report, "ledger", about.id) else None
