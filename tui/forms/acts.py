"""The buttons of a section: what each does is given, and they stand beside each other."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, ClassVar

from msgspec import Struct
from textual.binding import Binding, BindingType
from textual.containers import HorizontalGroup
from textual.content import Content
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget


class Act(Struct, frozen=True, dict=True):
    """A button of a section.

    Attributes:
        key: tells the buttons of a section apart.
        label: what stands on it.
        run: does it, given the section.
    """

    key: str
    label: str
    run: Callable[[Any], None]


class ActButton(Widget, can_focus=True):
    """A button in one line; Enter, Space or a click runs its act.

    Textual's own brings two hundred lines of style, which a page would wait for.
    """

    DEFAULT_CSS = """
    ActButton { width: auto; height: 1; padding: 0 1; margin-right: 2; background: $surface; }
    ActButton { text-style: bold; }
    ActButton:hover { background: $panel; }
    ActButton:disabled { text-style: dim; }
    ActButton:focus { text-style: bold reverse; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "enter,space", "press", "Press", id="act.press", show=False, tooltip="Do what the button says"
        )
    ]
    label: reactive[str] = reactive("", layout=True)

    class Pressed(Message):
        """The button was pressed."""

        def __init__(self, act: Act) -> None:
            self.act = act
            super().__init__()

    def __init__(self, act: Act) -> None:
        self.act = act
        super().__init__(id=f"act-{act.key}")
        self.set_reactive(ActButton.label, act.label)

    def render(self) -> Content:
        """The label, as plain text."""
        return Content(self.label)

    def action_press(self) -> None:
        """Ask for what the button says."""
        self.post_message(self.Pressed(self.act))

    def on_click(self) -> None:
        """A click presses it."""
        self.action_press()


class Acts(HorizontalGroup):
    """The buttons of a section beside each other."""

    def __init__(self, acts: tuple[Act, ...]) -> None:
        super().__init__(*(ActButton(act) for act in acts))
