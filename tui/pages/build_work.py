"""The section Work: the steps of the build, to be ticked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.building.order import build_steps
from model.design.edits.evidence import done_steps, tick, untick
from tui import stamp
from tui.forms.items import Column, Row
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.noting import AUTHOR, author_words

if TYPE_CHECKING:
    from model.building.step import Step
    from model.review import Report
    from model.survey import Survey

DONE, OPEN = "√", "·"


class Work:
    """The steps of the design on screen, kept until it is another design."""

    def __init__(self) -> None:
        self._survey: Survey | None = None
        self._steps: tuple[Step, ...] = ()

    def steps(self, report: Report) -> tuple[Step, ...]:
        """All steps, in the order in which they are done."""
        if report.survey is not self._survey:
            self._survey, self._steps = report.survey, build_steps(report.survey)
        return self._steps

    def step(self, report: Report, key: str) -> Step:
        """The step of a row."""
        return next(step for step in self.steps(report) if step.id == key)

    def rows(self, report: Report) -> list[Row]:
        """A row for each step."""
        done = done_steps(report.design)
        return [
            Row(step.id, (DONE if step.id in done else OPEN, str(number), step.title))
            for number, step in enumerate(self.steps(report), 1)
        ]

    def standing(self, report: Report) -> str:
        """How much is done, and who is at the keyboard."""
        steps, done = self.steps(report), done_steps(report.design)
        ready = sum(step.id in done for step in steps)
        return f"{ready} of {len(steps)} steps are done. {author_words()}"

    def note(self, report: Report, key: str) -> str:
        """Cautions, tool, pieces and check of a step."""
        step = self.step(report, key)
        cautions = [f"SAFETY {words}" for words in step.cautions]
        pieces = [f"  {piece}" for piece in step.pieces]
        return "\n".join([*cautions, f"Tool: {step.tool}", "Pieces:", *pieces, f"Check: {step.check}"])

    def tick(self, report: Report, key: str) -> Asking:
        """The step done, or to be done again."""
        title = self.step(report, key).title
        if key in done_steps(report.design):
            return f"open again: {title}", lambda design: untick(design, key, stamp.now())
        return f"ticked: {title}", lambda design: tick(design, key, stamp.now(), stamp.who())


def work_section() -> ListSection:
    """The section Work."""
    work = Work()
    return ListSection(
        Listing(
            title="Work",
            columns=(Column("Done", 4), Column("", 2, right=True), Column("Step")),
            rows=work.rows,
            entries=lambda report, key: (),
            marks=lambda report, key: ("", ""),
            empty="There is nothing to build yet: choose a frame on the Layout page.",
            tick=work.tick,
            acts=(AUTHOR,),
            facts=work.standing,
            note=work.note,
        )
    )
