"""A few words, asked for in a field of their own."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import HorizontalGroup, Vertical
from textual.widgets import Button, Input, Static

from tui.dialogs.dialog import Dialog
from tui.dialogs.field import Field

LONGEST = 120


class WordsDialog(Dialog[str | None]):
    """Gives what was typed, or None for Esc.

    Args:
        question: what is asked.
        suggestion: what stands in the field.
        hint: a sentence under it.
    """

    BINDINGS: list[BindingType] = [("escape", "dismiss(None)", "Back")]

    def __init__(self, question: str, suggestion: str = "", hint: str = "") -> None:
        self.question, self.suggestion, self.hint = question, suggestion, hint
        super().__init__()

    def compose(self) -> ComposeResult:
        """The question, the field, the hint, the buttons."""
        with Vertical(classes="box"):
            yield Static(self.question, markup=False, classes="title")
            yield Field(self.suggestion, max_length=LONGEST, id="words")
            yield Static(self.hint, markup=False, classes="hint")
            with HorizontalGroup(classes="answers"):
                yield Button("Take it", id="go", compact=True)
                yield Button("Back (Esc)", id="back", compact=True)

    def on_input_submitted(self) -> None:
        """Give the words."""
        self.dismiss(self.query_one(Input).value.strip())

    def on_button_pressed(self, event: Button.Pressed) -> None:
        """Give the words, or go back."""
        self.dismiss(self.query_one(Input).value.strip() if event.button.id == "go" else None)
