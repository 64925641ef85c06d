"""All actions in one list, found by typing a part of the name."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import Input, OptionList, Static
from textual.widgets.option_list import Option

from tui.actions import ACTIONS, GO, Action, to_section
from tui.dialogs.dialog import Dialog
from tui.dialogs.field import Field
from tui.steps import STEPS


class Palette(Dialog[str | None]):
    """Gives the call of the action that was picked, or None.

    Args:
        dimmed: calls of the actions that cannot be done now.
    """

    BINDINGS: list[BindingType] = [
        ("escape,f12", "dismiss(None)", "Back"),
        Binding("down", "move('cursor_down')", "Next", show=False),
        Binding("up", "move('cursor_up')", "Previous", show=False),
        Binding("pagedown", "move('page_down')", "Further down", show=False),
        Binding("pageup", "move('page_up')", "Further up", show=False),
    ]

    def __init__(self, dimmed: frozenset[str]) -> None:
        self.dimmed = dimmed
        self.all: tuple[Action, ...] = ()
        super().__init__()

    def compose(self) -> ComposeResult:
        """A field to type in, the list, and what the action under the bar does."""
        with Vertical(classes="box tall"):
            yield Field(placeholder="Type a part of the name, then Enter", id="part")
            yield OptionList(id="found", compact=True)
            yield Static("", id="about", classes="hint", markup=False)

    def on_mount(self) -> None:
        """Show every action; the sections are asked of their pages, which takes some 50 ms the first time."""
        sections = (to_section(step, title) for step in STEPS for title in step.sections())
        self.all = (*ACTIONS, *GO, *sections)
        self._list("")

    def on_input_changed(self, event: Input.Changed) -> None:
        """Show the actions whose name or help has every word that was typed."""
        self._list(event.value)

    def on_input_submitted(self) -> None:
        """Pick the one under the bar."""
        found = self.query_one(OptionList)
        if found.highlighted is not None:
            found.action_select()

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Say what the action under the bar does."""
        helps = {action.action: action.help for action in self.all}
        self.query_one("#about", Static).update(Content(helps.get(event.option_id or "", "")))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Give what was picked."""
        self.dismiss(event.option_id)

    def action_move(self, where: str) -> None:
        """Move the bar while the focus stays in the field."""
        getattr(self.query_one(OptionList), f"action_{where}")()

    def _list(self, typed: str) -> None:
        words = typed.lower().split()
        found = self.query_one(OptionList)
        found.clear_options()
        for action in sorted(self.all, key=lambda each: not _has(words, each.label)):  # the name comes first
            if action.call != "palette" and _has(words, f"{action.label} {action.help}"):
                found.add_option(Option(_line(action), id=action.action, disabled=action.call in self.dimmed))
        found.action_first()


def _has(words: list[str], text: str) -> bool:
    """Whether every word is part of a text."""
    return all(word in text.lower() for word in words)


def _line(action: Action) -> Content:
    return Content.assemble((f"{action.key_name:<10}", "bold"), action.label)
