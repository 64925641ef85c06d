"""A question with a few answers, each a button."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import HorizontalGroup, VerticalScroll
from textual.widgets import Button, Static

from tui.dialogs.dialog import Dialog


class Ask(Dialog[str | None]):
    """Asks one question; gives the key of the answer, or None for Esc.

    Args:
        question: what is asked, in plain sentences.
        answers: key and text of each answer; the first has the focus.
    """

    BINDINGS: list[BindingType] = [
        ("escape", "dismiss(None)", "Back"),
        ("left", "app.focus_previous", "Previous answer"),
        ("right", "app.focus_next", "Next answer"),
    ]

    def __init__(self, question: str, answers: dict[str, str]) -> None:
        self.question, self.answers = question, answers
        super().__init__()

    def compose(self) -> ComposeResult:
        """The question above the answers."""
        with VerticalScroll(classes="box", can_focus=False):
            yield Static(self.question, markup=False, classes="question")
            with HorizontalGroup(classes="answers"):
                for key, text in self.answers.items():
                    yield Button(text, id=key, compact=True)

    def on_button_pressed(self, event: Button.Pressed) -> None:
        """Give the answer."""
        self.dismiss(event.button.id)
