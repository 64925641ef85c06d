"""A section with a table of items and, below it, the form of the chosen one."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from operator import methodcaller
from typing import TYPE_CHECKING

from msgspec import Struct, field
from textual.app import ComposeResult
from textual.widget import Widget
from textual.widgets import DataTable, Static

from tui.forms.acts import Act, Acts
from tui.forms.entry import Entry
from tui.forms.form import Form
from tui.forms.items import Column, ItemTable, Row
from tui.forms.section import Section, hidden_static, put_text
from tui.messages import MarkRequested

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design.edits import Edit
    from model.review import Report

Asking = tuple[str, "Edit"]
"""What an edit is called in the history, and the edit."""


class Listing(Struct, frozen=True, dict=True):
    """What a list section shows and can do.

    Attributes:
        title: in the row of sections.
        columns: of the table; one without a width takes what is left.
        rows: the rows in a report.
        entries: the form of the row with a key.
        marks: the kind and id that a key stands for in the drawing, and the kinds of finding.
        empty: what to do while there is nothing.
        add: adds one more, which may ask for more first.
        copy, remove: what is asked for, given the key of the chosen row.
        removing: what its button says, a verb; its key is d whatever the verb.
        tick: marks the row of a key as done, or takes the mark away.
        nudge: moves the item of a key by a number of steps.
        acts: buttons besides Add, Copy and Remove.
        facts: derived numbers above the table.
        note: derived numbers of the chosen row, above its form.
        locate: the key of the row that a finding is about.
    """

    title: str
    columns: tuple[Column, ...]
    rows: Callable[[Report], Sequence[Row]]
    entries: Callable[[Report, str], tuple[Entry, ...]]
    marks: Callable[[Report, str], tuple[str, str]]
    empty: str
    add: Callable[[ListSection], None] | None = None
    copy: Callable[[Report, str], Asking] | None = None
    remove: Callable[[Report, str], Asking] | None = None
    removing: str = "Remove"
    tick: Callable[[Report, str], Asking] | None = None
    nudge: Callable[[Report, str, int], Asking] | None = None
    acts: tuple[Act, ...] = ()
    facts: Callable[[Report], str] | None = None
    note: Callable[[Report, str], str] | None = None
    locate: Callable[[Report, About], str | None] = field(default=lambda report, about: None)


class ListSection(Section):
    """A table of items with buttons, and the form of the chosen item below."""

    DEFAULT_CSS = """
    ListSection .empty { display: none; }
    ListSection.-empty ItemTable, ListSection.-empty Form { display: none; }
    ListSection.-empty .empty { display: block; }
    .-tall ListSection Form { margin-top: 1; }
    """

    def __init__(self, listing: Listing) -> None:
        self.listing, self.title = listing, listing.title
        self._wanted: str | None = None
        super().__init__()

    def compose(self) -> ComposeResult:
        """Figures, table, buttons, the line of a refusal, form."""
        if self.listing.facts:
            yield Static("", markup=False, classes="facts")
        yield Static(self.listing.empty, markup=False, classes="empty")
        yield ItemTable(self.listing.columns)
        yield Acts((*self._own_acts(), *self.listing.acts))
        yield hidden_static("error")
        if self.listing.note:
            yield hidden_static("note")
        yield Form()

    def _own_acts(self) -> list[Act]:
        named = (("add", "Add"), ("copy", "Copy"), ("remove", self.listing.removing), ("tick", "Tick"))
        return [
            Act(what, label, methodcaller("do", what)) for what, label in named if getattr(self.listing, what)
        ]

    def help_of(self, widget: Widget) -> str:
        """What a field is for, or what the keys do while the table has the focus."""
        return self._tip() if widget is self.table else super().help_of(widget)

    def _tip(self) -> str:
        able = [
            words
            for what, words in (
                ("add", "a adds"),
                ("copy", "c copies"),
                ("remove", f"d {self.listing.removing.lower()}s"),
                ("tick", "Space ticks"),
                ("nudge", "left and right move it"),
            )
            if getattr(self.listing, what)
        ]
        return f"Enter goes to the fields{''.join(f', {each}' for each in able)}."

    @property
    def table(self) -> ItemTable:
        """The table of items."""
        return self.query_one(ItemTable)

    def show(self, report: Report) -> None:
        """Show a new report."""
        before, self.report = self.report, report
        rows = tuple(self.listing.rows(report))
        self.set_class(not rows, "-empty")
        if self.listing.facts:
            put_text(self.query_one(".facts", Static), self.listing.facts(report))
        put_text(self.query_one(".error", Static), "")
        known = {row.key for row in self.table.shown}
        fresh = [row.key for row in rows if row.key not in known]
        self.table.show(rows)
        if before is not None and len(fresh) == 1:
            self._wanted = fresh[0]
        if self._wanted and self.table.choose(self._wanted):
            self._wanted = None
        self._show_form()

    def _show_form(self) -> None:
        chosen = self.table.chosen
        if self.listing.note:
            words = self.listing.note(self.report, chosen) if self.report and chosen else ""
            put_text(self.query_one(".note", Static), words)
        if self.report is not None and chosen is not None:
            self.query_one(Form).show(self.report, self.listing.entries(self.report, chosen))

    def finds(self, report: Report, about: About) -> bool:
        """Whether a row stands for what a finding is about."""
        return self.listing.locate(report, about) is not None

    def point_at(self, about: About) -> None:
        """Choose the row that a finding is about."""
        key = self.listing.locate(self.report, about) if self.report else None
        if key is not None and not self.table.choose(key):
            self._wanted = key
        self.focus_first()

    def on_data_table_row_highlighted(self, event: DataTable.RowHighlighted) -> None:
        """Show the item in the form, and mark it in the drawing."""
        event.stop()
        self._show_form()
        if self.table.has_focus:
            self._mark()

    def on_item_table_filled(self, event: ItemTable.Filled) -> None:
        """The row under the cursor may be another one now."""
        event.stop()
        self._show_form()

    def on_data_table_row_selected(self, event: DataTable.RowSelected) -> None:
        """Enter goes to the first field of the item."""
        event.stop()
        for row in self.query_one(Form).rows:
            row.editor.focus()
            return

    def on_descendant_focus(self) -> None:
        """Mark what is being worked on."""
        self._mark()

    def _mark(self) -> None:
        chosen = self.table.chosen
        if self.report is not None and chosen is not None:
            self.post_message(MarkRequested(*self.listing.marks(self.report, chosen)))

    def on_item_table_asked(self, event: ItemTable.Asked) -> None:
        """Do what a key of the table stands for."""
        event.stop()
        self.do(event.what, event.step)

    def do(self, what: str, step: int = 0) -> None:
        """Ask for one more, a copy, a removal or a step along the bar."""
        report, chosen = self.report, self.table.chosen
        if what == "add" and self.listing.add and report:
            self.listing.add(self)
        elif what == "nudge" and self.listing.nudge and report and chosen:
            self.ask(*self.listing.nudge(report, chosen, step))
        elif what in ("copy", "remove", "tick") and report and chosen:
            asking = getattr(self.listing, what)
            if asking:
                self.ask(*asking(report, chosen))
