"""A table of items, repainted in place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from msgspec import Struct
from rich.text import Text
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import DataTable
from textual.widgets.data_table import RowDoesNotExist

PADDING = 2
SCROLLBAR = 1
NARROWEST = 6
MOST_LINES = {True: 10, False: 6}
"""Of a table with its heading, on a tall screen or not; a longer one scrolls, so that the form below it
stays in sight."""


class Column(Struct, frozen=True):
    """A column of a table.

    Attributes:
        width: in cells; 0 takes what the others leave.
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
        if not self.columns or [row.key for row in before] != [row.key for row in self_rows]:
            self._fill(self_rows)
            return
        self.shown = self_rows
        for old, new in zip(before, self_rows, strict=True):
            for number, (was, now) in enumerate(zip(old.cells, new.cells, strict=True)):
                if was != now and str(number) in self.columns:
                    self.update_cell(new.key, str(number), self._cell(number, now))

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
            seen = [n for n, column in enumerate(self.plan) if self._width >= column.least]
            for number in seen:
                column = self.plan[number]
                self.add_column(
                    Text(column.label, justify="right" if column.right else "left"),
                    width=column.width or self._stretch(seen),
                    key=str(number),
                )
            self.shown = rows
            self.styles.height = min(self._most_lines, 1 + len(rows))
            for row in rows:
                self.add_row(*(self._cell(n, row.cells[n]) for n in seen), key=row.key)
            if kept is None or not self.choose(kept):
                self.move_cursor(row=min(max(place, 0), max(len(rows) - 1, 0)))
        self.post_message(self.Filled())

    def _stretch(self, seen: list[int]) -> int:
        columns = [self.plan[number] for number in seen]
        rest = self._width - SCROLLBAR - sum(column.width for column in columns) - PADDING * len(columns)
        return max(NARROWEST, rest // max(1, sum(not column.width for column in columns)))

    def _cell(self, number: int, text: str) -> Text:
        right = self.plan[number].right
        words = " ".join(text.split())
        return Text(words, justify="right" if right else "left", overflow="ellipsis", no_wrap=True)

    class Filled(Message):
        """Rows came or went."""
