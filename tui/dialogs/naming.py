"""The name of a new design."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import HorizontalGroup, Vertical
from textual.content import Content
from textual.widgets import Button, Input, Static

from tui.dialogs.dialog import Dialog
from tui.dialogs.field import Field

LONGEST = 80


class NamingDialog(Dialog[str | None]):
    """Gives the name, or None for Esc.

    Args:
        suggestion: what stands in the field.
        where: where it will be saved, to be said.
    """

    BINDINGS: list[BindingType] = [("escape", "dismiss(None)", "Back")]

    def __init__(self, suggestion: str, where: str) -> None:
        self.suggestion, self.where = suggestion, where
        super().__init__()

    def compose(self) -> ComposeResult:
        """The question, the field, where it will be saved."""
        with Vertical(classes="box"):
            yield Static("What is your vehicle called?", classes="title")
            yield Field(self.suggestion, max_length=LONGEST, id="name")
            yield Static(Content(f"It is saved by itself, {self.where}."), classes="hint")
            with HorizontalGroup(classes="answers"):
                yield Button("Begin", id="go", compact=True)
                yield Button("Back (Esc)", id="back", compact=True)

    def on_input_submitted(self) -> None:
        """Take the name."""
        name = self.query_one(Input).value.strip()
        self.dismiss(name or self.suggestion)

    def on_button_pressed(self, event: Button.Pressed) -> None:
        """Take the name, or go back."""
        if event.button.id == "go":
            self.on_input_submitted()
        else:
            self.dismiss(None)
