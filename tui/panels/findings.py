"""The findings, each with a word for how much it matters and the remedy that would clear it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.binding import Binding
from textual.content import Content
from textual.reactive import reactive
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from tui.guide import nothing_here
from tui.messages import PlaceRequested, RemedyRequested
from tui.steps import BY_KEY, page_of

if TYPE_CHECKING:
    from model.coach.finding import Finding
    from tui.guide import Shown

KEYS = "F5 takes its remedy, Enter shows the place"
STYLES = {"must": "bold $text-error", "should": "bold $text-warning", "tip": "bold"}


class FindingsPanel(OptionList):
    """The findings of the open step, or of every step."""

    BINDINGS = [
        Binding("r", "remedy", "Take the remedy", show=False, tooltip="The same as F5 on this finding."),
        Binding("a", "screen.everywhere", "All steps or this one", show=False),
    ]

    shown: reactive[Shown | None] = reactive(None, init=False)

    def watch_shown(self, shown: Shown | None) -> None:
        """List the findings anew; the bar stays on the one it was on."""
        if shown is None or not shown.ready:
            return
        before = self.chosen.key if self.chosen else None
        self.findings = shown.listed
        self._list([self._prompt(finding, shown) for finding in self.findings] or [self._nothing(shown)])
        keys = [finding.key for finding in self.findings]
        self.highlighted = keys.index(before) if before in keys else (0 if keys else None)
        self.border_title = "Findings of every step" if shown.everywhere else "Findings of this step"
        self._say_below()

    def _say_below(self) -> None:
        """What the keys do while the list has the focus; else how many findings stand elsewhere."""
        elsewhere = len(self.shown.report.findings) - len(self.findings) if self.shown else 0
        words = KEYS if self.has_focus and self.findings else ""
        self.border_subtitle = words or (f"{elsewhere} on other steps" if elsewhere else "")

    def watch_has_focus(self, _has_focus: bool) -> None:
        """F5 acts on the finding under the bar while the list has the focus."""
        super().watch_has_focus(_has_focus)
        self._say_below()

    def __init__(self) -> None:
        self.findings: tuple[Finding, ...] = ()
        self._prompts: list[Content] = []
        super().__init__(id="findings", compact=True)

    @property
    def chosen(self) -> Finding | None:
        """The finding under the bar."""
        place = self.highlighted
        return self.findings[place] if place is not None and place < len(self.findings) else None

    def _list(self, prompts: list[Content]) -> None:
        """Show these; what is the same already stays, since a new list has the whole screen laid out."""
        before, self._prompts = self._prompts, prompts
        if len(before) != len(prompts) or not self.findings:
            if before != prompts:
                self.clear_options()
                self.add_options(Option(prompt, disabled=not self.findings) for prompt in prompts)
            return
        for number, (old, new) in enumerate(zip(before, prompts, strict=True)):
            if old != new:
                self.replace_option_prompt_at_index(number, new)

    def _prompt(self, finding: Finding, shown: Shown) -> Content:
        where = f"{BY_KEY[page_of(finding.step)].title}: " if shown.everywhere else ""
        word = (finding.severity.upper(), STYLES[finding.severity])
        return Content.assemble(word, f" {where}{finding.message}", (self._offer(finding, shown), "italic"))

    def _offer(self, finding: Finding, shown: Shown) -> str:
        """The line of the remedy, there already while it is being looked for."""
        if finding.may_be_cleared and finding.key not in shown.proofs:
            return "\n  looking for a remedy ..."
        remedy = shown.remedy(finding)
        return f"\n  remedy: {remedy.label}" if remedy else "\n  no remedy is known"

    def _nothing(self, shown: Shown) -> Content:
        everywhere = shown.everywhere or not shown.report.findings
        return Content("Nothing is wrong anywhere." if everywhere else nothing_here(shown))

    def action_remedy(self) -> None:
        """Ask for the remedy of the finding under the bar."""
        if self.chosen:
            self.post_message(RemedyRequested(self.chosen))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Ask for the place of the finding."""
        event.stop()
        if self.chosen:
            self.post_message(PlaceRequested(self.chosen))
