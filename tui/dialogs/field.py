"""A field to type in, in front of the session: Esc brings back what stood there, as on the pages."""

from __future__ import annotations

from typing import Any, ClassVar

from textual.binding import Binding, BindingType
from textual.widgets import Input


class Field(Input):
    """Textual's field; the first Esc forgets what was typed, the next one goes back.

    Args:
        value: what stands there at first.
    """

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "escape", "give_up", "As it was", id="field.back", show=False, tooltip="Forget what was typed"
        )
    ]

    def __init__(self, value: str = "", **arguments: Any) -> None:
        self.before = value
        super().__init__(value, **arguments)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Esc belongs to the field only while something else stands in it."""
        return action != "give_up" or self.value != self.before

    def action_give_up(self) -> None:
        """Put back what stood there, and stay."""
        self.value = self.before
