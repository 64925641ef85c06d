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
        self.keys: tuple[str, ...] = ()
        self.shown: tuple[Report, tuple[Entry, ...]] | None = None
        super().__init__()

    @property
    def rows(self) -> list[FieldRow]:
        """The rows from top to bottom."""
        return [row for row in self.children if isinstance(row, FieldRow)]

    def show(self, report: Report, entries: tuple[Entry, ...]) -> None:
        """Show these entries with their values in a report."""
        self.shown = report, entries
        if tuple(entry.key for entry in entries) != self.keys:
            self.keys = tuple(entry.key for entry in entries)
            self.call_later(self._rebuild)
            return
        for row, entry in zip(self.rows, entries, strict=False):  # none yet while they are being mounted
            row.show(report, entry)

    def repaint(self) -> None:
        """Put back the values of the design, save where something is being typed."""
        for row in self.rows:
            if not row.pending:
                row.repaint()

    async def _rebuild(self) -> None:
        await self.remove_children()
        if self.shown is None or self.rows:
            return
        report, entries = self.shown
        await self.mount_all([FieldRow(entry, report) for entry in entries])
        self.show(*self.shown)
