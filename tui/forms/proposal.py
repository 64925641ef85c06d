"""A section that works something out on request, shows what it comes to, and takes it as one edit."""

from __future__ import annotations

from asyncio import to_thread
from collections.abc import Callable
from functools import partial
from operator import methodcaller
from typing import TYPE_CHECKING

from msgspec import Struct
from textual import work
from textual.app import ComposeResult
from textual.widgets import Static

from tui.forms.acts import Act, Acts
from tui.forms.section import Section, hidden_static, put_text
from tui.forms.sight import reveal

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Design
    from model.review import Report


class Offer(Struct, frozen=True, dict=True):
    """What was worked out.

    Attributes:
        label: what the edit is called in the history.
        words: what it comes to, in lines.
        design: the design with it; None where there is nothing to take.
    """

    label: str
    words: str
    design: Design | None


class Way(Struct, frozen=True, dict=True):
    """A way to work something out: a button, and what it does with a report, away from the screen."""

    key: str
    label: str
    find: Callable[[Report], Offer]


class ProposalSection(Section):
    """Figures, buttons that work something out, what came of it, and a button that takes it.

    The first button has the focus first: what is asked for above it has an answer already.

    Args:
        title: in the row of sections.
        facts: figures above, from a report.
        ways: what can be worked out.
        kinds: the kinds of finding that are put right here.
        takes: whether what is worked out can be taken as an edit.
        acts: further buttons.
    """

    def __init__(
        self,
        title: str,
        facts: Callable[[Report], str],
        ways: tuple[Way, ...],
        kinds: tuple[str, ...] = (),
        *,
        takes: bool = True,
        acts: tuple[Act, ...] = (),
    ) -> None:
        self.title, self.facts, self.ways, self.kinds, self.takes = title, facts, ways, kinds, takes
        self.acts = acts
        self.first_selectors = (f"#act-{ways[0].key}", "ActButton")
        self.offer: Offer | None = None
        super().__init__()

    def compose(self) -> ComposeResult:
        """Figures, what is asked for, buttons, what came of it."""
        yield Static("", markup=False, classes="facts")
        yield from self.wishes()
        acts = [Act(way.key, way.label, partial(self._run, way)) for way in self.ways]
        taking = (Act("take", "Take it", methodcaller("take")),) if self.takes else ()
        yield Acts((*acts, *self.acts, *taking))
        yield hidden_static("error")
        yield hidden_static("note")

    def _run(self, way: Way, section: ProposalSection) -> None:
        self.work_out(way)

    def wishes(self) -> ComposeResult:
        """Widgets for what is asked for; none as it stands."""
        yield from ()

    def show(self, report: Report) -> None:
        """Show a new report; what was worked out for another design is forgotten."""
        before, self.report = self.report, report
        put_text(self.query_one(".facts", Static), self.facts(report))
        if before is None or before.design is not report.design:
            self._offered(None)

    def finds(self, report: Report, about: About) -> bool:
        """Whether it is one of the kinds of this section."""
        return about.kind in self.kinds

    @work(group="propose", exclusive=True, exit_on_error=False)
    async def work_out(self, way: Way) -> None:
        """Work something out in a thread, and show it if the design is still the same."""
        report = self.report
        if report is None:
            return
        put_text(self.query_one(".note", Static), "Working it out ...")
        offer = await to_thread(way.find, report)
        if self.report is report:
            self._offered(offer)

    def take(self) -> None:
        """Take what was worked out as one edit."""
        offer = self.offer
        if offer is None or offer.design is None:
            self.say("! There is nothing to take yet: work it out first.")
            return
        taken = offer.design
        self.ask(offer.label, lambda _: taken)

    def _offered(self, offer: Offer | None) -> None:
        self.offer = offer
        note = self.query_one(".note", Static)
        put_text(note, offer.words if offer else "")
        if offer:
            reveal(note)
        for button in self.query("#act-take"):
            button.disabled = offer is None or offer.design is None
