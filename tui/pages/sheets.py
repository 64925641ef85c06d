"""The section Sheets: what is printed, and the button that makes it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.widgets import Static

from tui.dialogs.sheets import WHAT
from tui.forms.acts import Act, Acts
from tui.forms.section import Section, hidden_static, put_text
from tui.messages import SheetsRequested

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

KEY = "Shift+F4 makes them from every page; so does the list of all actions, F12."


class SheetsSection(Section):
    """What the sheets are, and how they are made."""

    title = "Sheets"

    def compose(self) -> ComposeResult:
        """What is made, and the button."""
        yield Static("", markup=False, classes="facts")
        yield Acts(
            (Act("sheets", "Make the sheets", lambda section: section.post_message(SheetsRequested())),)
        )
        yield hidden_static("error")
        yield Static(KEY, markup=False, classes="hint")

    def show(self, report: Report) -> None:
        """What is made; what must be put right before anything is sawn."""
        self.report = report
        musts = len(report.musts)
        first = f"\n{musts} findings must be put right before anything is sawn." if musts else ""
        put_text(self.query_one(".facts", Static), f"{WHAT}{first}")

    def finds(self, report: Report, about: About) -> bool:
        """Nothing is put right here."""
        return False
