"""The report on a design: its survey and the coach's findings, and remedies proved on demand."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import TYPE_CHECKING

from msgspec import Struct
from pydantic import ValidationError

from model.design import Design
from model.errors import EditError

if TYPE_CHECKING:
    from model.coach.finding import About, Finding, Remedy
    from model.survey import Survey


class Report(Struct, frozen=True, dict=True):  # the dict keeps what was worked out
    """What the screens, the sheets and the command line show of one design.

    Survey and findings are worked out when they are first asked for, and what works them out is
    loaded only then: a page can show the design before that.
    """

    design: Design

    @cached_property
    def survey(self) -> Survey:
        """All numbers."""
        from model.survey import survey

        return survey(self.design)

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What the coach says of them."""
        from model.coach.coach import findings

        return findings(self.survey)

    @cached_property
    def work_open(self) -> dict[str, int]:
        """How much is to be ticked yet, by the step of the coach on which it is ticked."""
        from model.building.order import build_steps
        from model.design.edits.evidence import done_steps
        from model.pool.checklist import still_open

        done = done_steps(self.design)
        building = sum(step.id not in done for step in build_steps(self.survey))
        return {"build": building, "pool day": still_open(self.design, self.survey)}

    @property
    def ready(self) -> bool:
        """Whether everything is worked out, so that asking for it takes no time."""
        return "findings" in self.__dict__

    def work_out(self) -> None:
        """Work everything out now."""
        _ = self.findings

    @property
    def musts(self) -> tuple[Finding, ...]:
        """The findings that must be put right."""
        return tuple(finding for finding in self.findings if finding.severity == "must")

    @property
    def verdict(self) -> str:
        """ "ready" where nothing must be put right, else "fix"."""
        return "fix" if self.musts else "ready"


def review(design: Design) -> Report:
    """The report on a design, with everything worked out."""
    report = Report(design)
    report.work_out()
    return report


def proven_remedy(report: Report, finding: Finding) -> Remedy | None:
    """The first remedy that really clears a finding without a new must, or None.

    Each candidate is applied to the design of the report and the result reviewed.
    """
    return next(proven_remedies(report, finding), None)


def proven_remedies(report: Report, finding: Finding) -> Iterator[Remedy]:
    """The remedies that really clear a finding without a new must, the best first, to choose from."""
    before = {other.key for other in report.musts}
    for remedy in finding.propose():
        after = after_remedy(report.design, remedy)
        if after and _clears(finding, before, after):
            yield remedy


def after_remedy(design: Design, remedy: Remedy) -> Report | None:
    """The report on a design with a remedy applied, or None where the result is not a valid design."""
    try:
        return review(remedy.edit(design))
    except (EditError, ValidationError):
        return None


def _clears(finding: Finding, before: set[tuple[str, About]], after: Report) -> bool:
    remains = {other.key for other in after.findings}
    new_musts = {other.key for other in after.musts} - before
    return finding.key not in remains and not new_musts
