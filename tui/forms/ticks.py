"""A list in which several things can be ticked: a tick is a letter in brackets, never a colour alone."""

from __future__ import annotations

from collections.abc import Iterable
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from tui.forms.boxes import MARKS


class Ticks(OptionList):
    """Space or Enter ticks the thing under the cursor, or takes the tick away."""

    DEFAULT_CSS = """
    Ticks { height: auto; max-height: 5; border: none; padding: 0; }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space", "select", "Tick", id="ticks.tick", tooltip="Tick it, or take the tick away")
    ]

    def __init__(self, *, id: str) -> None:
        self.names: dict[str, str] = {}
        self.ticked: set[str] = set()
        super().__init__(id=id, compact=True, markup=False)

    def fill(self, named: Iterable[tuple[str, str]], ticked: Iterable[str]) -> None:
        """Show these things, each an id and a name, with some of them ticked."""
        self.names = dict(named)
        self.ticked = set(ticked) & self.names.keys()
        self.clear_options()
        self.add_options([Option(self._line(key), id=key) for key in self.names])

    def on_focus(self) -> None:
        """Begin at the first thing, so that the first Space ticks it."""
        if self.highlighted is None:
            self.action_first()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Tick it, or take the tick away."""
        event.stop()
        key = event.option_id or ""
        self.ticked ^= {key}
        self.replace_option_prompt(key, self._line(key))

    def _line(self, key: str) -> Content:
        return Content(f"{MARKS[key in self.ticked]} {self.names[key]}")
