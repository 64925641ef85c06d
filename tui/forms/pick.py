"""A list to pick one thing from, over the page."""

from __future__ import annotations

from typing import Any, ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.events import Key
from textual.screen import ModalScreen
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from tui.forms.kinds import Options


class Pick(ModalScreen[tuple[Any] | None]):
    """Picks one value; gives it in a tuple of its own, or None for Esc.

    Args:
        question: what is picked, in a few words.
        options: the words and values; a letter jumps to the next that starts with it.
        present: the value that the cursor starts on.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        ("escape", "dismiss(None)", "Back"),
        ("left", "dismiss(None)", "Back"),
    ]

    def __init__(self, question: str, options: Options, present: Any = None) -> None:
        self.question, self.options, self.present = question, options, present
        super().__init__(classes="dialog pick")

    def compose(self) -> ComposeResult:
        """The question above the list."""
        with Vertical(classes="box"):
            yield Static(self.question, markup=False, classes="question")
            yield OptionList(
                *(Option(Content(self._words(*each))) for each in self.options), markup=False, compact=True
            )
            yield Static("Enter picks, Esc goes back, a letter jumps", markup=False, classes="hint")

    def _words(self, words: str, value: Any) -> str:
        return f"{words} (in use)" if value is not None and value == self.present else words

    def on_mount(self) -> None:
        """Put the cursor on the present value."""
        places = [n for n, (_, value) in enumerate(self.options) if value == self.present]
        self.query_one(OptionList).highlighted = places[0] if places else 0

    def on_key(self, event: Key) -> None:
        """A letter jumps to the next option that starts with it."""
        if not (event.character and event.character.isalnum()):
            return
        listed = self.query_one(OptionList)
        count, here = len(self.options), listed.highlighted or 0
        for step in range(1, count + 1):
            words = self.options[(here + step) % count][0]
            if words.lower().startswith(event.character.lower()):
                listed.highlighted = (here + step) % count
                event.stop()
                return

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Give the value that was picked."""
        self.dismiss((self.options[event.option_index][1],))
