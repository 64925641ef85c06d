"""The steps with their states, in one line above the page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual import events
from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from tui.guide import step_state
from tui.messages import StepRequested
from tui.steps import STEPS, Step

if TYPE_CHECKING:
    from tui.guide import Shown

ROOMY = 110
"""Columns from which each step has its number before it."""


class StepBar(Widget):
    """Every step with its mark; the open one stands in brackets, a click opens one."""

    shown: reactive[Shown | None] = reactive(None)

    @property
    def gap(self) -> str:
        """What stands between two steps."""
        return "  " if self.size.width >= ROOMY else " "

    def pieces(self) -> list[tuple[Step, str]]:
        """Each step with its text in the bar."""
        if self.shown is None:
            return []
        return [(step, self._piece(step, self.shown)) for step in STEPS]

    def _piece(self, step: Step, shown: Shown) -> str:
        mark = step_state(shown, step)[0]
        roomy = self.size.width >= ROOMY
        text = f"{STEPS.index(step) + 1} {step.title} {mark}" if roomy else f"{step.title}{mark}"
        return f"[{text}]" if step.key == shown.step else text

    def render(self) -> Content:
        """All the pieces in a row."""
        return Content(self.gap).join(Content.styled(text, _style(text)) for _, text in self.pieces())

    def on_click(self, event: events.Click) -> None:
        """Open the step under the pointer."""
        edge = 0
        for step, text in self.pieces():
            edge += len(text) + len(self.gap)
            if event.x < edge:
                self.post_message(StepRequested(step.key))
                return


def _style(text: str) -> str:
    if text.startswith("["):
        return "reverse"
    return "bold $text-error" if "!" in text else ""
