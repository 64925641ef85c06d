"""The three single lines: what is open and what is spent, the next thing to do, the keys."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual import events
from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from tui.actions import FOOTER, Action
from tui.guide import next_thing
from tui.phrases import money_text

if TYPE_CHECKING:
    from tui.guide import Shown

GAP = "  "
SOON = "The numbers are being worked out ..."
MORE = " ..."
SAID_MOST = 2
"""Lines."""


class TitleLine(Widget):
    """The name of the design, whether it is saved, and what is spent."""

    shown: reactive[Shown | None] = reactive(None)
    saving: reactive[str] = reactive("")

    def render(self) -> Content:
        """Name and saving to the left, money to the right; the name gives way."""
        if self.shown is None:
            return Content("Poolwright")
        money = money_text(self.shown.report.survey) if self.shown.ready else ""
        left = f"Poolwright: {self.shown.report.design.title}"
        room = self.size.width - len(money) - len(self.saving) - 4
        if len(left) > room:
            left = left[: max(room - 1, 0)] + "…"
        start = f"{left}  {self.saving}"
        return Content.assemble((start, "bold"), " " * (self.size.width - len(start) - len(money)), money)


class NextLine(Widget):
    """What was just done or refused, and the next thing to do."""

    shown: reactive[Shown | None] = reactive(None)
    said: reactive[str] = reactive("")

    def render(self) -> Content:
        """What was said takes two lines at most, so that the next thing is always there."""
        if self.shown is None or not self.shown.ready:
            return Content(SOON)
        width, height = max(self.content_size.width, 1), max(self.content_size.height, 1)
        said = Content(self.said).wrap(width)[:SAID_MOST] if self.said else []
        lines = [*said, *Content.assemble(("Next: ", "bold"), next_thing(self.shown).text).wrap(width)]
        if len(lines) > height:
            lines[height - 1 :] = [Content(f"{lines[height - 1].plain.rstrip()[: width - len(MORE)]}{MORE}")]
        return Content("\n").join(lines)


class KeyLine(Widget):
    """The keys at the foot of the screen; what cannot be done now is dimmed, a click does it."""

    dimmed: reactive[frozenset[str]] = reactive(frozenset())
    look: reactive[str] = reactive("Look")
    """What F4 shows next."""

    def render(self) -> Content:
        """Each key in bold with what it does."""
        return Content(GAP).join(self._piece(action) for action in FOOTER)

    def _piece(self, action: Action) -> Content:
        dim = "dim" if action.call in self.dimmed else ""
        return Content.assemble((action.key_name, f"bold {dim}".strip()), (f" {self._word(action)}", dim))

    def _word(self, action: Action) -> str:
        return self.look if action.call == "look" else action.footer

    async def on_click(self, event: events.Click) -> None:
        """Do what stands under the pointer."""
        edge = 0
        for action in FOOTER:
            edge += len(action.key_name) + 1 + len(self._word(action)) + len(GAP)
            if event.x < edge:
                await self.screen.run_action(action.action)
                return
