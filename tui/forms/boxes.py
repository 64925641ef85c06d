"""Boxes to tick, one or several beside each other, that can be read without colour."""

from __future__ import annotations

from typing import Any, ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Click
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget

from tui.forms.kinds import Options

COLUMNS_MOST = 3
GAP = 2
MARKS = {True: "[x]", False: "[ ]"}


class Boxes(Widget, can_focus=True):
    """Shows ``[x]`` or ``[ ]`` before each of its words; all of them are one widget.

    Args:
        options: the words beside each box, and the value that it stands for.
        ticked: the values that are ticked.
    """

    DEFAULT_CSS = """
    Boxes { height: auto; }
    Boxes:focus { background: $primary 30%; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,enter", "tick", "Tick", id="boxes.tick", tooltip="Tick it, or take the tick away"),
        Binding("right", "step(1)", "Next box", id="boxes.next", show=False, tooltip="The next box"),
        Binding("left", "step(-1)", "Box before", id="boxes.before", show=False, tooltip="The box before"),
    ]
    ticked: reactive[tuple[Any, ...]] = reactive(())
    at: reactive[int] = reactive(0)
    """The box that a key ticks, by number."""

    class Changed(Message):
        """A box was ticked, or its tick taken away, by the user."""

        def __init__(self, boxes: Boxes) -> None:
            self.boxes = boxes
            super().__init__()

        @property
        def control(self) -> Boxes:
            """The boxes of which one changed."""
            return self.boxes

    def __init__(self, options: Options, ticked: tuple[Any, ...]) -> None:
        self.options = options
        self._longest = max(len(words) for words, _ in options) + len(MARKS[True]) + GAP
        super().__init__()
        self.set_reactive(Boxes.ticked, ticked)

    def columns(self, width: int) -> int:
        """How many boxes stand beside each other."""
        return max(1, min(COLUMNS_MOST, len(self.options), width // self._longest))

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as the boxes take."""
        return -(-len(self.options) // self.columns(width))

    def render(self) -> Content:
        """The boxes in rows, the one that a key ticks told by its look."""
        columns = self.columns(self.size.width)
        pieces = [self._piece(number, self.size.width // columns) for number in range(len(self.options))]
        rows = [pieces[start : start + columns] for start in range(0, len(pieces), columns)]
        return Content("\n").join(Content("").join(row) for row in rows)

    def _piece(self, number: int, room: int) -> Content:
        words, value = self.options[number]
        text = f"{MARKS[value in self.ticked]} {words}"
        chosen = self.has_focus and number == self.at
        return Content.assemble((text, "bold reverse" if chosen else ""), " " * (room - len(text)))

    def tick(self, number: int) -> None:
        """Tick a box on behalf of the user, or take its tick away."""
        value = self.options[number][1]
        kept = {*self.ticked} ^ {value}
        self.ticked = tuple(each for _, each in self.options if each in kept)
        self.post_message(self.Changed(self))

    def action_tick(self) -> None:
        """Tick the box that is chosen, or take its tick away."""
        self.tick(self.at)

    def action_step(self, by: int) -> None:
        """Go to the next box, or the one before."""
        self.at = (self.at + by) % len(self.options)

    def on_click(self, event: Click) -> None:
        """A click ticks the box under the pointer."""
        columns = self.columns(self.size.width)
        number = event.y * columns + min(event.x // max(1, self.size.width // columns), columns - 1)
        if 0 <= number < len(self.options):
            self.at = number
            self.tick(number)
