"""A table of items, repainted in place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from msgspec import Struct
from rich.console import JustifyMethod
from rich.text import Text
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import DataTable
from textual.widgets.data_table import RowDoesNotExist

from tui.forms.shortening import told_apart

PADDING = 2
SCROLLBAR = 1
NARROWEST = 6
MOST_LINES = {True: 10, False: 6}
"""Of a table with its heading, on a tall screen or not; a longer one scrolls, so that the form below it
stays in sight."""


class Column(Struct, frozen=True):
    """A column of a table.

    Attributes:
        width: in cells, at the most; 0 takes what the others leave.
        least: the width of the whole table from which this column is shown.
        right: whether it holds numbers, which stand to the right.
    """

    label: str
    width: int = 0
    right: bool = False
    least: int = 0


class Row(Struct, frozen=True):
    """A row of a table: its key and the text of its cells."""

    key: str
    cells: tuple[str, ...]


class ItemTable(DataTable[Text]):
    """Rows that can be chosen; what else can be done with one is asked of the section around it."""

    DEFAULT_CSS = """
    ItemTable { height: 1; overflow-x: hidden; scrollbar-size-vertical: 1; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("a,insert,plus", "ask('add')", "Add", id="items.add", tooltip="Add one more"),
        Binding("c", "ask('copy')", "Copy", id="items.copy", tooltip="Add one like this"),
        Binding("d,delete,minus", "ask('remove')", "Remove", id="items.remove", tooltip="Take this one away"),
        Binding("space", "ask('tick')", "Tick", id="items.tick", tooltip="Tick it, or take the tick away"),
        Binding("right", "nudge(1)", "Move on", id="items.on", show=False, tooltip="Move it along its bar"),
        Binding("left", "nudge(-1)", "Move back", id="items.back", show=False, tooltip="Move it back"),
    ]

    class Asked(Message):
        """Something is to be done with the chosen row: add, copy, remove, tick, or move by a step."""

        def __init__(self, what: str, step: int = 0) -> None:
            self.what, self.step = what, step
            super().__init__()

    def __init__(self, columns: Sequence[Column]) -> None:
        self.plan = tuple(columns)
        self.shown: tuple[Row, ...] = ()
        self._width = 0
        self._given: dict[int, int] = {}
        """The width of each column that is shown."""
        super().__init__(cursor_type="row", show_row_labels=False)

    @property
    def chosen(self) -> str | None:
        """The key of the row under the cursor."""
        if 0 <= self.cursor_row < len(self.shown):
            return self.shown[self.cursor_row].key
        return None

    @property
    def _most_lines(self) -> int:
        return MOST_LINES[self.screen.has_class("-tall")]

    def show(self, rows: Sequence[Row]) -> None:
        """Show these rows; the cursor stays on its item while that is there."""
        before, self_rows = self.shown, tuple(rows)
        same = [row.key for row in before] == [row.key for row in self_rows]
        if not self.columns or not same or self._widths(self_rows) != self._given:
            self._fill(self_rows)
            return
        self.shown = self_rows
        for number in self._given:
            was, now = self._column(before, number), self._column(self_rows, number)
            for row, old, new in zip(self_rows, was, now, strict=True):
                if old != new:
                    self.update_cell(row.key, str(number), self._cell(number, new))

    def choose(self, key: str) -> bool:
        """Put the cursor on a row; whether it is there."""
        try:
            self.move_cursor(row=self.get_row_index(key))
        except RowDoesNotExist:
            return False
        return True

    def on_resize(self) -> None:
        """The widths follow the room that there is."""
        if self.shown and self.size.width != self._width:
            self._fill(self.shown)

    def action_ask(self, what: str) -> None:
        """Ask for what a key stands for."""
        self.post_message(self.Asked(what))

    def action_nudge(self, step: int) -> None:
        """Ask to move the item one step."""
        self.post_message(self.Asked("nudge", step))

    def _fill(self, rows: tuple[Row, ...]) -> None:
        kept, place = self.chosen, self.cursor_row
        self._width = self.size.width
        with self.prevent(DataTable.RowHighlighted):
            self.clear(columns=True)
            self._given = self._widths(rows)
            for number, width in self._given.items():
                column = self.plan[number]
                label = Text(column.label, justify="right" if column.right else "left")
                self.add_column(label, width=width, key=str(number))
            self.shown = rows
            self.styles.height = min(self._most_lines, 1 + len(rows))
            columns = [[self._cell(n, text) for text in self._column(rows, n)] for n in self._given]
            for number, row in enumerate(rows):
                self.add_row(*(column[number] for column in columns), key=row.key)
            if kept is None or not self.choose(kept):
                self.move_cursor(row=min(max(place, 0), max(len(rows) - 1, 0)))
        self.post_message(self.Filled())

    def _widths(self, rows: Sequence[Row]) -> dict[int, int]:
        """The width of each column that there is room for; what one does not need goes to the names."""
        seen = [n for n, column in enumerate(self.plan) if self._width >= column.least]
        widths = {n: self._needed(rows, n) if self.plan[n].width else 0 for n in seen}
        rest = self._width - SCROLLBAR - sum(widths.values()) - PADDING * len(widths)
        stretch = max(NARROWEST, rest // max(1, sum(not width for width in widths.values())))
        return {n: width or stretch for n, width in widths.items()}

    def _needed(self, rows: Sequence[Row], number: int) -> int:
        column = self.plan[number]
        longest = max((len(" ".join(row.cells[number].split())) for row in rows), default=0)
        return min(column.width, max(len(column.label), longest, 1))

    def _column(self, rows: Sequence[Row], number: int) -> list[str]:
        """What stands in a column; names that are too long are cut so that they can be told apart."""
        texts = [" ".join(row.cells[number].split()) for row in rows]
        return texts if self.plan[number].right else told_apart(texts, self._given[number])

    def _cell(self, number: int, text: str) -> Text:
        justify: JustifyMethod = "right" if self.plan[number].right else "left"
        return Text(text, justify=justify, overflow="ellipsis", no_wrap=True)

    class Filled(Message):
        """Rows came or went."""
