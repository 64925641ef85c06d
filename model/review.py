"""The report on a design: its survey and the coach's findings, and remedies proved on demand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cached_property, reduce
from itertools import islice
from typing import TYPE_CHECKING

from msgspec import Struct
from pydantic import ValidationError

from model.design import Design
from model.errors import EditError

if TYPE_CHECKING:
    from model.coach.finding import Finding, Remedy, Severity
    from model.survey import Survey

BARRED: dict[Severity, Severity] = {"must": "must", "should": "should", "tip": "should"}
"""What a remedy for a finding may not bring anew: that, and what is worse."""
SHUNNED: dict[Severity, Severity] = {"must": "should", "should": "should", "tip": "tip"}
"""What the best remedy does not bring anew, where there is a choice."""
COMPARED = 4
"""The best is looked for among so many proved remedies."""
FOLLOWED = 4
"""So many candidates that do harm are tried together with so many remedies for the harm."""

READABLE = 160
"""A label of more letters is told in short, with the rest in its details."""


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

    @cached_property
    def to_do(self) -> tuple[Finding, ...]:
        """The findings in the order in which they are best put right.

        What must be comes first, step by step, since each step builds on the one before.  Of the rest
        lift and trim come first: what already floats level is kept level by every later proof, while
        what lies crooked could be made to lie worse by any of them.
        """
        return tuple(sorted(self.findings, key=_turn))

    @property
    def verdict(self) -> str:
        """ "ready" where nothing must be put right, else "fix"."""
        return "fix" if self.musts else "ready"

    @property
    def verdict_words(self) -> str:
        """The verdict for people: how much must be put right, or what should be and on which step."""
        count = len(self.musts)
        if count:
            return f"not ready: {count} {'thing' if count == 1 else 'things'} must be put right"
        left = Counter(f"{f.noun} ({f.step})" for f in self.to_do if f.severity == "should")
        if not left:
            return "ready to build"
        things = "1 thing" if left.total() == 1 else f"{left.total()} things"
        named = ", ".join(f"{number} x {what}" if number > 1 else what for what, number in left.items())
        return f"ready to build; {things} should be put right: {named}"


def _turn(finding: Finding) -> tuple[int, bool]:
    from model.coach.finding import SEVERITIES

    afloat = finding.severity != "must" and finding.code.startswith("balance.")
    return SEVERITIES.index(finding.severity), not afloat


def review(design: Design) -> Report:
    """The report on a design, with everything worked out."""
    report = Report(design)
    report.work_out()
    return report


def proven_remedy(report: Report, finding: Finding) -> Remedy | None:
    """The best remedy that is proved to clear a finding, or None.

    That is the first of `proven_remedies` that brings nothing new of what is told next to it either:
    a must no new should, a tip no new tip; else the first that brings the least of it among a few.
    """
    best: tuple[int, Remedy] | None = None
    for remedy, after in islice(_proved(report, finding), COMPARED):
        harm = len(worse(report, after, SHUNNED[finding.severity]))
        if not harm:
            return remedy
        if best is None or harm < best[0]:
            best = harm, remedy
    return best[1] if best else None


def proven_remedies(report: Report, finding: Finding) -> Iterator[Remedy]:
    """The remedies that are proved to clear a finding, the best first, to choose from.

    Each candidate is applied to the design of the report and the result reviewed: the finding is gone,
    and nothing as bad has come, or grown to that: no must, and no should either unless for a must.  So
    remedies that are taken one after the other never undo each other, and come to an end.  Where every
    candidate brings something of the kind, that is cleared in the same change, if it can be.
    """
    return (remedy for remedy, _ in _proved(report, finding))


def worse(before: Report, after: Report, least: Severity) -> tuple[Finding, ...]:
    """The findings at least so severe that have come, or have grown to that, from one report to another."""
    from model.coach.finding import SEVERITIES

    severity = {finding.key: SEVERITIES.index(finding.severity) for finding in reversed(before.findings)}
    none, most = len(SEVERITIES), SEVERITIES.index(least)
    return tuple(
        finding
        for finding in after.findings
        if (now := SEVERITIES.index(finding.severity)) <= most and now < severity.get(finding.key, none)
    )


def _proved(report: Report, finding: Finding) -> Iterator[tuple[Remedy, Report]]:
    """The proved remedies with what comes of them."""
    spoiled: list[tuple[Remedy, Report, tuple[Finding, ...]]] = []
    proved = False
    for remedy in finding.propose():
        after = _clearing(report, finding, remedy)
        if after is None:
            continue
        harm = worse(report, after, BARRED[finding.severity])
        if harm:
            spoiled.append((remedy, after, harm))
        else:
            proved = True
            yield remedy, after
    if not proved:
        for first, after, harm in sorted(spoiled, key=lambda each: len(each[2]))[:FOLLOWED]:
            yield from _followed(report, finding, first, after, harm)


def _followed(
    report: Report, finding: Finding, first: Remedy, between: Report, harm: tuple[Finding, ...]
) -> Iterator[tuple[Remedy, Report]]:
    """A remedy together with those that clear the harm it does, one by one."""
    chain, whole, after = [first], first, between
    for _ in range(min(len(harm), FOLLOWED)):
        for second in islice(harm[0].propose(), FOLLOWED):
            both = _in_turn([*chain, second])
            here = _clearing(report, finding, both)
            left = worse(report, here, BARRED[finding.severity]) if here else harm
            if here and len(left) < len(harm):
                chain, whole, after, harm = [*chain, second], both, here, left
                break
        else:
            return
        if not harm:
            yield whole, after
            return


def _in_turn(chain: list[Remedy]) -> Remedy:
    """Remedies one after the other; where all their labels would be too long, the details name them."""
    from model.coach.finding import Remedy
    from model.coach.sentences import counted

    first, *others = chain
    small = [f"{each.label[:1].lower()}{each.label[1:]}" for each in others]
    label = ", then: ".join([first.label, *small])
    details = tuple(detail for each in chain for detail in each.details)
    if len(label) > READABLE:
        count = counted(len(others), "change")
        label = f"{first.label}, then {count} more that this needs"
        details = (*(each.label for each in others), *details)
    return Remedy(label, lambda design: reduce(lambda here, each: each.edit(here), chain, design), details)


def _clearing(report: Report, finding: Finding, remedy: Remedy) -> Report | None:
    """The report on the design with a remedy applied, or None where the finding is still there."""
    after = after_remedy(report.design, remedy)
    return after if after and finding.key not in {other.key for other in after.findings} else None


def after_remedy(design: Design, remedy: Remedy) -> Report | None:
    """The report on a design with a remedy applied, or None where the result is not a valid design."""
    try:
        return review(remedy.edit(design))
    except (EditError, ValidationError):
        return None
