"""Where a number comes from: the formula in words, what went in, the source, and how sure it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Button, OptionList, Static
from textual.widgets.option_list import Option

from tui.dialogs.dialog import Dialog

if TYPE_CHECKING:
    from model.quantity import Quantity


class OriginsDialog(Dialog[None]):
    """The headline numbers in a list, and under it the story of the one under the bar.

    Args:
        quantities: the numbers, in the order of the steps.
        first: how the name of the number begins that the bar starts on; "" for the first of all.
    """

    BINDINGS: list[BindingType] = [("escape", "dismiss(None)", "Close")]

    def __init__(self, quantities: tuple[Quantity, ...], first: str = "") -> None:
        self.quantities, self.first = quantities, first
        super().__init__()

    def compose(self) -> ComposeResult:
        """The list above, the story below."""
        with Vertical(classes="box tall"):
            yield Static("Where a number comes from", classes="title", markup=False)
            yield OptionList(
                *(Option(_line(quantity)) for quantity in self.quantities), id="numbers", compact=True
            )
            with VerticalScroll(id="story"):
                yield Static("", id="origin", markup=False)
            yield Button("Close (Esc)", compact=True, classes="close")

    def on_mount(self) -> None:
        """Begin with the number that belongs to what was in front."""
        listed = self.query_one(OptionList)
        places = (n for n, each in enumerate(self.quantities) if each.name.startswith(self.first))
        listed.highlighted = next(places, 0) if self.quantities else None
        listed.focus()

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Tell the story of the number under the bar."""
        self.query_one("#origin", Static).update(story(self.quantities[event.option_index]))
        self.query_one("#story", VerticalScroll).scroll_home(animate=False)

    def on_button_pressed(self) -> None:
        """Close it."""
        self.dismiss(None)


def _line(quantity: Quantity) -> Content:
    return Content.assemble(quantity.name, ": ", (quantity.text, "bold"))


def story(quantity: Quantity) -> Content:
    """The formula, what went in, the source and the spread of a number, a line each."""
    lines = [f"How: {quantity.formula}."]
    lines += [f"  {name}: {value}" for name, value in quantity.inputs]
    lines.append(f"From: {quantity.source}.")
    if quantity.spread:
        lines.append(f"How sure: {quantity.spread}.")
    return Content("\n".join(lines))
