"""All ways to put one thing right, with pieces, cost and change of size, before one is taken."""

from __future__ import annotations

from asyncio import to_thread
from typing import TYPE_CHECKING

from textual import work
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Vertical
from textual.content import Content
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from tui.dialogs.dialog import Dialog

if TYPE_CHECKING:
    from model.coach.finding import Finding, Remedy
    from model.review import Report

LOOKING = "Looking for ways that really work ..."
NONE = "No single change puts this right. Change the bars at this joint, or choose another range of fittings."


class WaysDialog(Dialog["Remedy | None"]):
    """Lists the proven ways as they are found, and under them what the one under the bar takes.

    Args:
        report: the design as it is.
        finding: what is to be put right.
    """

    DEFAULT_CSS = """
    WaysDialog OptionList { height: auto; max-height: 8; background: $surface; }
    WaysDialog #takes { height: 5; margin-top: 1; }
    """
    BINDINGS: list[BindingType] = [("escape", "dismiss(None)", "Back")]

    def __init__(self, report: Report, finding: Finding) -> None:
        self.report, self.finding = report, finding
        self.found: list[Remedy] = []
        super().__init__()

    def compose(self) -> ComposeResult:
        """What is wrong, the ways, what the chosen one takes."""
        with Vertical(classes="box"):
            yield Static(self.finding.message, markup=False, classes="question")
            yield OptionList(id="ways", markup=False, compact=True)
            yield Static(LOOKING, markup=False, id="takes")
            yield Static("Enter takes it (F2 takes it back), Esc goes back", markup=False, classes="hint")

    def on_mount(self) -> None:
        """Begin to look."""
        self.query_one(OptionList).focus()
        self._look()

    @work(exclusive=True, exit_on_error=False)
    async def _look(self) -> None:
        """Prove the ways one by one, and list each as soon as it is proved."""
        from model.review import proven_remedies

        ways, listed = proven_remedies(self.report, self.finding), self.query_one(OptionList)
        while (remedy := await to_thread(next, ways, None)) is not None:
            self.found.append(remedy)
            listed.add_option(Option(Content(remedy.label)))
            if len(self.found) == 1:
                listed.highlighted = 0
        if not self.found:
            self.query_one("#takes", Static).update(NONE)

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        """Say what the way under the bar takes."""
        details = self.found[event.option_index].details
        self.query_one("#takes", Static).update("\n".join(f"{line}." for line in details))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Give the way that was chosen."""
        self.dismiss(self.found[event.option_index])
