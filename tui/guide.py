"""The one line that always says the next thing to do, and the state of each step in words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from msgspec import Struct, field

from tui.steps import BY_KEY, STEPS, Step, after, page_of

if TYPE_CHECKING:
    from model.coach.finding import About, Finding, Remedy
    from model.review import Report

    Key = tuple[str, About]


MARKS = (
    ("!2", "Two things must be fixed on this step."),
    ("·", "You have not opened it yet."),
    ("~", "Not all of its work is ticked yet."),
    ("√", "Opened, and nothing must be fixed."),
)
"""What stands behind a step, and what it means."""
HANDS_ON = ("build", "pool")
"""Steps that are not done by having been looked at."""


class Shown(Struct, frozen=True):
    """What the session shows just now; every panel is bound to it.

    Attributes:
        step: the key of the step whose page is open.
        seen: the keys of the steps that the team has opened.
        proofs: what is known of remedies, by the key of the finding; None: nothing clears it.
        everywhere: whether the findings of every step are listed, or of this one.
        ready: whether the report is worked out; before that only the design is shown.
    """

    report: Report
    step: str
    seen: frozenset[str] = frozenset()
    proofs: Mapping[Key, Remedy | None] = field(default_factory=dict)
    everywhere: bool = False
    ready: bool = True

    @property
    def listed(self) -> tuple[Finding, ...]:
        """The findings to list, the worst first, in the order of the steps."""
        found = self.report.findings
        return tuple(found) if self.everywhere else tuple(f for f in found if page_of(f.step) == self.step)

    def remedy(self, finding: Finding) -> Remedy | None:
        """The proved remedy of a finding, as far as it is known yet."""
        return self.proofs.get(finding.key)


class NextThing(Struct, frozen=True):
    """The next thing to do: a sentence, and what F3 and F5 act on."""

    text: str
    step: str
    finding: Finding | None = None


def musts(report: Report, step: str) -> int:
    """How many findings of a step must be fixed."""
    return sum(page_of(finding.step) == step and finding.severity == "must" for finding in report.findings)


def work_left(report: Report, step: str) -> int:
    """How much is to be ticked yet on a step that is done with the hands; 0 on the others."""
    if step not in HANDS_ON:
        return 0
    return sum(left for of, left in report.work_open.items() if page_of(of) == step)


def step_state(shown: Shown, step: Step) -> tuple[str, str]:
    """The state of a step: its mark in the list, and the same in words."""
    if not shown.ready:
        return "", ""
    count = musts(shown.report, step.key)
    if count:
        return f"!{count}", f"{count} to fix"
    if step.key not in shown.seen:
        return "·", "not seen yet"
    left = work_left(shown.report, step.key)
    return ("~", f"{left} to tick") if left else ("√", "nothing to fix")


def next_thing(shown: Shown) -> NextThing:
    """What must be fixed on the open page; else the earliest step with work left; else what should be."""
    for step in (BY_KEY[shown.step], *STEPS):
        for finding in shown.report.findings:
            if page_of(finding.step) == step.key and finding.severity == "must":
                return _about(finding, shown)
        if step.key not in shown.seen:
            return NextThing(f"{_way(step, shown)} {step.purpose}", step.key)
    for finding in shown.report.findings:
        if finding.severity == "should":
            return _about(finding, shown)
    tips = sum(finding.severity == "tip" for finding in shown.report.findings)
    more = f" There {'is one tip' if tips == 1 else f'are {tips} tips'} left to read." if tips else ""
    return NextThing(f"Nothing must be fixed: this design is ready to build.{more}", shown.step)


def _way(step: Step, shown: Shown) -> str:
    """How to open a step."""
    if after(shown.step) == step:
        return f"F9 opens the next step, {step.title}."
    return f"Open the step {step.title} (F12, or click it)."


def _about(finding: Finding, shown: Shown) -> NextThing:
    """What to press stands first, since a long sentence may not fit."""
    remedy = shown.remedy(finding)
    if remedy:
        press = f"F5 takes this remedy: {remedy.label}. "
    elif page_of(finding.step) != shown.step:
        press = f"F3 goes to {BY_KEY[page_of(finding.step)].title}. "
    else:
        press = ""
    return NextThing(f"{press}{finding.severity.upper()}: {finding.message}", page_of(finding.step), finding)
