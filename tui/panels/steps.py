"""The list of steps with their states: down the side on a wide screen, one line on a small one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual import events
from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from tui.guide import step_state
from tui.messages import StepRequested
from tui.steps import BY_KEY, STEPS, Step

if TYPE_CHECKING:
    from tui.guide import Shown


class StepList(OptionList):
    """The steps one below the other; Enter or a click opens one."""

    shown: reactive[Shown | None] = reactive(None, init=False)

    def __init__(self) -> None:
        super().__init__(*(Option(step.title, id=step.key) for step in STEPS), id="steps", compact=True)
        self.border_title = "Steps"

    def watch_shown(self, shown: Shown | None) -> None:
        """Write the states anew, and put the bar on the open step."""
        if shown is None:
            return
        for step in STEPS:
            self.replace_option_prompt(step.key, self._line(step, shown))
        self.highlighted = STEPS.index(BY_KEY[shown.step])

    def _line(self, step: Step, shown: Shown) -> Content:
        mark, words = step_state(shown, step)
        here = "►" if step.key == shown.step else " "
        style = "$text-error" if mark.startswith("!") else ""
        detail = words if mark.startswith("!") else mark
        return Content.assemble(f"{here}{STEPS.index(step) + 1} {step.title:<10}", (f"{detail:>9}", style))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Ask for the page of the step."""
        event.stop()
        if event.option_id:
            self.post_message(StepRequested(event.option_id))


class StepBar(Widget):
    """The steps in one line; a click opens one."""

    shown: reactive[Shown | None] = reactive(None)

    def pieces(self) -> list[tuple[Step, str]]:
        """Each step with its text in the bar; the open step stands in brackets."""
        if self.shown is None:
            return []
        return [(step, self._piece(step, self.shown)) for step in STEPS]

    def _piece(self, step: Step, shown: Shown) -> str:
        text = step.title + step_state(shown, step)[0]
        return f"[{text}]" if step.key == shown.step else text

    def render(self) -> Content:
        """All the pieces, a space between them."""
        return Content(" ").join(Content.styled(text, self._style(text)) for _, text in self.pieces())

    def _style(self, text: str) -> str:
        if text.startswith("["):
            return "reverse"
        return "$text-error" if "!" in text else ""

    def on_click(self, event: events.Click) -> None:
        """Open the step under the pointer."""
        edge = 0
        for step, text in self.pieces():
            edge += len(text) + 1
            if event.x < edge:
                self.post_message(StepRequested(step.key))
                return
