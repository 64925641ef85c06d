"""A choice on one line: left and right step through it, Enter opens the list."""

from __future__ import annotations

from typing import Any, ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tui.forms.kinds import Options
from tui.forms.pick import Pick


class Choice(Widget, can_focus=True):
    """Shows the chosen words; one widget, where a drop-down list would be six.

    Args:
        question: what is chosen, for the list.
        options: the words of each choice, and the value that it stands for.
        value: the one that is chosen.
    """

    DEFAULT_CSS = """
    Choice { height: 1; width: 1fr; background: $panel; color: $foreground; padding: 0 1; }
    Choice:focus { background: $primary; color: $text; text-style: bold; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter,space", "open", "Choose", id="choice.open", tooltip="Open the list of choices"),
        Binding("right", "step(1)", "Next", id="choice.next", show=False, tooltip="Take the next choice"),
        Binding(
            "left", "step(-1)", "Previous", id="choice.previous", show=False, tooltip="Take the one before"
        ),
    ]
    value: reactive[Any] = reactive(None)
    options: reactive[Options] = reactive(())

    class Changed(Message):
        """Another value was chosen by the user."""

        def __init__(self, choice: Choice, value: Any) -> None:
            self.choice, self.value = choice, value
            super().__init__()

        @property
        def control(self) -> Choice:
            """The choice that changed."""
            return self.choice

    def __init__(self, question: str, options: Options = (), value: Any = None, **arguments: Any) -> None:
        self.question = question
        super().__init__(**arguments)
        self.set_reactive(Choice.options, options)
        self.set_reactive(Choice.value, value)

    def render(self) -> Content:
        """The chosen words, and a mark that there are more."""
        words = next((words for words, value in self.options if value == self.value), "")
        return Content(f"{words or 'choose'} ▼").truncate(max(1, self.size.width), ellipsis=True)

    def choose(self, value: Any) -> None:
        """Take a value on behalf of the user."""
        if value != self.value:
            self.value = value
            self.post_message(self.Changed(self, value))

    def action_step(self, by: int) -> None:
        """Take the next or the previous value."""
        values = [value for _, value in self.options]
        if values:
            here = values.index(self.value) + by if self.value in values else 0
            self.choose(values[here % len(values)])

    def action_open(self) -> None:
        """Open the list of choices."""

        def picked(answer: tuple[Any] | None) -> None:
            if answer is not None:
                self.choose(answer[0])

        if self.options:
            self.app.push_screen(Pick(self.question, self.options, self.value), picked)

    def on_click(self) -> None:
        """A click opens the list too."""
        self.action_open()
