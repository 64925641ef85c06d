"""The ledger as a table of comma-separated values, out and in.

RFC 4180; a spreadsheet of a country with decimal commas writes semicolons, which are read as well.
"""

import csv
from collections.abc import Mapping
from datetime import datetime
from io import StringIO

from msgspec import Struct
from pydantic import ValidationError

from model.design import Design, Expense
from model.design.edits.core import changed, plain
from model.design.edits.evidence import PREFIXES
from model.errors import LengthError
from model.units import parse_number

COLUMNS = (
    "date", "shop", "what", "amount", "given", "counts", "receipt", "picture", "list line", "quantity",
    "who", "taken back",
)  # fmt: skip
YES = {"yes", "y", "true", "1", "x"}
NO = {"no", "n", "false", "0", ""}
FORMULA = ("=", "+", "-", "@", "\t", "\r")
ROWS_MOST = 20_000


class Read(Struct, frozen=True):
    """What a table gave: the lines, and a sentence for each row that could not be read."""

    lines: tuple[Expense, ...]
    problems: tuple[str, ...]


def ledger_csv(design: Design) -> str:
    """The ledger as a table, what was taken back included."""
    rows: list[tuple[str, ...]] = [COLUMNS]
    for line in design.evidence.ledger:
        rows.append(
            (
                line.when, line.shop, line.what, f"{line.amount:.2f}", _yes(line.given), _yes(line.counts),
                line.receipt, line.picture, line.line, str(line.quantity), line.who, line.taken_back or "",
            )
        )  # fmt: skip
    return csv_text(rows)


def csv_text(rows: list[tuple[str, ...]]) -> str:
    """Rows as a table; a text that a spreadsheet would run as a formula gets an apostrophe before it."""
    out = StringIO()
    writer = csv.writer(out)
    writer.writerows([[_safe(cell) for cell in row] for row in rows])
    return out.getvalue()


def read_ledger_csv(text: str, taken: set[str] | None = None) -> Read:
    """The lines of a table; a bad row is named and left out, and the others are read.

    Args:
        text: the whole table; its first row names the columns, at least "date", "what" and "amount".
        taken: ids that are not free any more.
    """
    try:
        rows = list(csv.reader(StringIO(text.removeprefix("\ufeff")), delimiter=_delimiter(text)))
    except csv.Error as problem:
        return Read((), (f"the table cannot be read: {problem}",))
    if not rows:
        return Read((), ("the table is empty; expected a first row with date, what, amount",))
    names = [name.strip().lower() for name in rows[0]]
    missing = [name for name in ("date", "what", "amount") if name not in names]
    if missing:
        found = ", ".join(names) or "nothing"
        return Read((), (f"row 1: no column {', '.join(missing)}; found {found[:200]}",))
    if len(rows) > ROWS_MOST:
        return Read((), (f"{len(rows)} rows; at most {ROWS_MOST} are read at once",))
    return _read(names, rows, set(taken or ()))


def with_ledger_of(design: Design, text: str) -> tuple[Design, tuple[str, ...]]:
    """The design with the lines of a table added, and what is to be said about its rows.

    A line that stands in the ledger already is not added again.
    """
    there = design.evidence.ledger
    read = read_ledger_csv(text, {line.id for line in there})
    known = {_content(line) for line in there}
    fresh = tuple(line for line in read.lines if _content(line) not in known)
    double = len(read.lines) - len(fresh)
    said = (*read.problems, *((f"{double} rows stand in the ledger already",) if double else ()))
    evidence = changed(design.evidence, ledger=(*there, *fresh))
    result: Design = changed(design, evidence=evidence)
    return result, said


def _read(names: list[str], rows: list[list[str]], taken: set[str]) -> Read:
    lines: list[Expense] = []
    problems: list[str] = []
    number = len(taken) + 1
    for place, row in enumerate(rows[1:], 2):
        if not any(cell.strip() for cell in row):
            continue
        while f"{PREFIXES['ledger']}{number}" in taken:
            number += 1
        cells = dict(zip(names, (cell.strip() for cell in row), strict=False))
        try:
            lines.append(_expense(cells, f"{PREFIXES['ledger']}{number}"))
            number += 1
        except (LengthError, ValidationError) as problem:
            why = plain(problem) if isinstance(problem, ValidationError) else str(problem)
            problems.append(f"row {place}: {why}")
    return Read(tuple(lines), tuple(problems))


def _expense(cells: Mapping[str, str], id: str) -> Expense:
    """One row.

    Raises:
        LengthError, ValidationError: something in it cannot be read.
    """
    return Expense(
        id=id,
        when=_day(cells["date"]),
        what=_plain(cells["what"]),
        amount=_amount(cells["amount"]),
        shop=_plain(cells.get("shop", "")),
        given=_flag(cells, "given", False),
        counts=_flag(cells, "counts", True),
        receipt=_plain(cells.get("receipt", "")),
        picture=_plain(cells.get("picture", "")),
        line=_plain(cells.get("list line", "")),
        quantity=_whole(cells.get("quantity", "")),
        who=_plain(cells.get("who", "")),
        taken_back=cells.get("taken back") or None,
    )


def _amount(text: str) -> float:
    if not text:
        raise LengthError("the amount is empty; write it like 8.60 or 8,60")
    return parse_number(text)


def _whole(text: str) -> int:
    if not text:
        return 1
    if not text.isdecimal():
        raise LengthError(f"the quantity is '{text[:40]}'; write a whole number")
    return int(text)


def _day(text: str) -> str:
    """A day as it stands, or turned round from 14.03.2026, which cannot be read in another way."""
    if text.count(".") == 2:
        try:
            return datetime.strptime(text, "%d.%m.%Y").date().isoformat()
        except ValueError:
            return text
    return text


def _flag(cells: Mapping[str, str], name: str, usual: bool) -> bool:
    word = cells.get(name, "").lower()
    if word in YES:
        return True
    if word in NO:
        return usual if word == "" else False
    raise LengthError(f"the column {name} says '{word[:40]}'; write yes or no")


def _delimiter(text: str) -> str:
    first = text.split("\n", 1)[0]
    return max(",;\t", key=first.count)


def _safe(cell: str) -> str:
    return f"'{cell}" if cell.lstrip("'").startswith(FORMULA) else cell


def _plain(cell: str) -> str:
    return cell[1:] if cell.startswith("'") and cell.lstrip("'").startswith(FORMULA) else cell


def _yes(value: bool) -> str:
    return "yes" if value else "no"


def _content(line: Expense) -> tuple[object, ...]:
    return tuple(getattr(line, name) for name in type(line).model_fields if name not in ("id", "taken_back"))
