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

ROOMY = 150
"""Columns from which each step has its number before it."""
LONGEST = max(len(step.title) for step in STEPS)
SHORTEST = 3
"""Letters of a title, at the least; the open step always has all of its."""


class StepBar(Widget):
    """Every step with its mark; the open one stands in brackets, a click opens one."""

    shown: reactive[Shown | None] = reactive(None)

    @property
    def longest(self) -> int:
        """How many letters of a title there is room for, the open one apart."""
        for letters in range(LONGEST, SHORTEST, -1):
            row = self.gap.join(text for _, text in self._pieces(letters))
            if len(row) <= self.size.width:
                return letters
        return SHORTEST

    @property
    def gap(self) -> str:
        """What stands between two steps."""
        return "  " if self.size.width >= ROOMY else " "

    def pieces(self) -> list[tuple[Step, str]]:
        """Each step with its text in the bar."""
        return self._pieces(self.longest)

    def _pieces(self, letters: int) -> list[tuple[Step, str]]:
        shown = self.shown
        return [] if shown is None else [(step, self._piece(step, shown, letters)) for step in STEPS]

    def _piece(self, step: Step, shown: Shown, letters: int) -> str:
        mark = step_state(shown, step)[0]
        title = step.title if step.key == shown.step else step.title[:letters].rstrip()
        roomy = self.size.width >= ROOMY
        text = f"{STEPS.index(step) + 1} {title} {mark}" if roomy else f"{title}{mark}"
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
