"""The steps with their states, in one line above the page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual import events
from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from tui.guide import step_state
from tui.messages import StepRequested
from tui.steps import BY_KEY, STEPS, Step

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
    def gap(self) -> str:
        """What stands between two steps."""
        return "  " if self.size.width >= ROOMY else " "

    def pieces(self) -> list[tuple[Step, str]]:
        """Each step with its text in the bar; titles are cut where there is no room for all of each."""
        shown = self.shown
        if shown is None:
            return []
        roomy = self.size.width >= ROOMY
        texts = {}
        for number, step in enumerate(STEPS, 1):
            text = f"{number} {{}} " if roomy else "{}"
            text += step_state(shown, step)[0]
            texts[step] = f"[{text}]" if step.key == shown.step else text
        room = self.size.width - sum(map(len, texts.values())) - len(self.gap) * (len(STEPS) - 1)
        titles = share(room + len("{}") * len(STEPS), BY_KEY[shown.step])
        return [(step, text.format(titles[step])) for step, text in texts.items()]

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


def share(room: int, whole: Step) -> dict[Step, str]:
    """The titles of the steps in a number of columns: a letter more for each in turn while there is room.

    One step has its whole title in any case.  What becomes whole with the next letter is served first.
    """
    letters = dict.fromkeys(STEPS, SHORTEST) | {whole: LONGEST}
    for more in range(SHORTEST + 1, LONGEST + 1):
        for step in sorted(STEPS, key=lambda each: len(each.title) > more):
            longer = letters | {step: max(more, letters[step])}
            if sum(len(_cut(*each)) for each in longer.items()) <= room:
                letters = longer
    return {step: _cut(step, count) for step, count in letters.items()}


def _cut(step: Step, letters: int) -> str:
    """The beginning of a title, without a scrap of a second word."""
    title = step.title
    return title if len(title) <= letters else title[:letters].partition(" ")[0]


def _style(text: str) -> str:
    if text.startswith("["):
        return "reverse"
    return "bold $text-error" if "!" in text else ""
