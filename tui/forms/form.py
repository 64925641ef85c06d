"""A form: rows for the entries of one record at a time."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.containers import Vertical

from tui.forms.entry import Entry
from tui.forms.row import FieldRow

if TYPE_CHECKING:
    from model.review import Report


class Form(Vertical):
    """Shows entries; the rows stay where the new entries have the same keys."""

    DEFAULT_CSS = "Form { height: auto; }"

    def __init__(self) -> None:
        self.rows: list[FieldRow] = []
        """From top to bottom."""
        super().__init__()

    def show(self, report: Report, entries: tuple[Entry, ...]) -> None:
        """Show these entries with their values in a report."""
        if [entry.key for entry in entries] != [row.entry.key for row in self.rows]:
            self.remove_children()
            self.rows = [FieldRow(entry, report) for entry in entries]
            self.mount_all(self.rows)
            return
        for row, entry in zip(self.rows, entries, strict=True):
            row.show(report, entry)

    def repaint(self) -> None:
        """Put back the values of the design, save where something is being typed."""
        for row in self.rows:
            if not row.pending:
                row.repaint()
