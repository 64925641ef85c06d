"""The row of sections of a page: one widget, left and right change the section."""

from __future__ import annotations

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.events import Click
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive
from textual.widget import Widget


class SectionBar(Widget, can_focus=True):
    """Titles in a row; the open one stands in brackets, so that no colour is needed to see it."""

    DEFAULT_CSS = """
    SectionBar { height: auto; width: 1fr; }
    SectionBar:focus { text-style: bold; background: $primary; color: $text; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "right", "turn(1)", "Next section", id="sections.next", tooltip="The next section of this page"
        ),
        Binding(
            "left", "turn(-1)", "Section before", id="sections.before", show=False, tooltip="The one before"
        ),
        Binding(
            "enter,down", "enter", "Into the section", id="sections.enter", show=False, tooltip="Go into it"
        ),
    ]
    open: reactive[int] = reactive(0)

    class Turned(Message):
        """Another section is wanted."""

        def __init__(self, number: int) -> None:
            self.number = number
            super().__init__()

    class Entered(Message):
        """The open section is to get the focus."""

    def __init__(self, titles: tuple[str, ...]) -> None:
        self.titles = titles
        super().__init__()

    def _lines(self, width: int) -> list[list[tuple[int, str]]]:
        """The titles, in as many lines as the width needs."""
        lines: list[list[tuple[int, str]]] = [[]]
        used = 0
        for number, title in enumerate(self.titles):
            words = f"[{title}]" if number == self.open else f" {title} "
            if used + len(words) > width and lines[-1]:
                lines.append([])
                used = 0
            lines[-1].append((number, words))
            used += len(words)
        return lines

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as the titles need."""
        return len(self._lines(width))

    def render(self) -> Content:
        """The titles; plain text, since brackets mean nothing here."""
        lines = self._lines(self.size.width)
        return Content("\n".join("".join(words for _, words in line) for line in lines))

    def action_turn(self, by: int) -> None:
        """Ask for the next section or the one before."""
        self.post_message(self.Turned((self.open + by) % len(self.titles)))

    def action_enter(self) -> None:
        """Ask for the focus to go into the section."""
        self.post_message(self.Entered())

    def on_click(self, event: Click) -> None:
        """Ask for the section under the mouse."""
        lines, place = self._lines(self.size.width), event.x
        for number, words in lines[min(event.y, len(lines) - 1)]:
            if place < len(words):
                self.post_message(self.Turned(number))
                return
            place -= len(words)
