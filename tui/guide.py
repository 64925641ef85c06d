"""The one line that always says the next thing to do, and the state of each step in words."""

from __future__ import annotations

from collections import Counter
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
    ("no mark", "You have not opened it yet."),
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

    def hopeless(self, finding: Finding) -> bool:
        """Whether it is known that no remedy clears a finding."""
        return not self.proofs.get(finding.key, finding.may_be_cleared)


class NextThing(Struct, frozen=True):
    """The next thing to do.

    Attributes:
        text: in words, with the key that helps.
        step: the key of the step that F3 opens where there is no place to show.
        finding: what F5 clears, if its remedy is known.
        place: the finding whose place F3 shows.
    """

    text: str
    step: str
    finding: Finding | None = None
    place: Finding | None = None


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
        return "", "not seen yet"
    left = work_left(shown.report, step.key)
    return ("~", f"{left} to tick") if left else ("√", "nothing to fix")


def next_thing(shown: Shown) -> NextThing:
    """What must be fixed on the steps that were opened, this one first; then steps; then what should be."""
    found = shown.report.to_do
    musts_seen = [
        finding
        for step in dict.fromkeys((BY_KEY[shown.step], *STEPS))
        for finding in found
        if finding.severity == "must" and page_of(finding.step) == step.key and step.key in shown.seen
    ]
    if musts_seen:
        return _first_of(musts_seen, shown)
    unseen = next((step for step in STEPS if step.key not in shown.seen), None)
    if unseen:
        return _onward(unseen, shown, found)
    left = [finding for finding in found if finding.severity == "should"]
    return _first_of(left, shown) if left else _read(list(found), shown)


def _onward(step: Step, shown: Shown, found: tuple[Finding, ...]) -> NextThing:
    """Go on to a step; before that, take a remedy on this one; what must be fixed later is a key away."""
    forward = step == after(shown.step)
    way = (
        f"F9 opens the next step, {step.title}."
        if forward
        else f"F3 opens a step not seen yet, {step.title}."
    )
    here = (f for f in found if page_of(f.step) == shown.step and not shown.hopeless(f))
    finding = next(here, None)
    remedy = shown.remedy(finding) if finding else None
    first = f"Before that F5 takes a remedy here: {remedy.label}." if remedy else step.purpose
    place = next((other for other in found if other.severity == "must"), None) if forward else None
    return NextThing(f"{way} {first}", step.key, finding, place)


def _first_of(findings: list[Finding], shown: Shown) -> NextThing:
    """The first that may have a remedy, or else the first: what to press, what it is, what is left."""
    able = [finding for finding in findings if not shown.hopeless(finding)]
    finding = (able or findings)[0]
    passed = Counter(page_of(other.step) for other in findings[: findings.index(finding)])
    others = ", ".join(f"{count} on {BY_KEY[step].title}" for step, count in passed.items())
    without = f" (No remedy is known for {others}.)" if others else ""
    text = f"{_press(finding, shown)}{finding.severity.upper()}: {finding.message}{without}"
    if finding.severity == "should" and not able:
        words = shown.report.verdict_words
        text = f"{words[:1].upper()}{words[1:]}. {text}"
    return NextThing(text, page_of(finding.step), finding, finding)


def _read(tips: list[Finding], shown: Shown) -> NextThing:
    """Nothing is left but tips."""
    done = "Nothing must be fixed: this design is ready to build."
    if not tips:
        return NextThing(done, shown.step)
    tip = next((tip for tip in tips if not shown.hopeless(tip)), tips[0])
    step = page_of(tip.step)
    count = "There is one tip" if len(tips) == 1 else f"There are {len(tips)} tips"
    which = "it" if len(tips) == 1 else "the first"
    where = f"{count} left to read: F3 shows {which}, on {BY_KEY[step].title}."
    remedy = shown.remedy(tip)
    taken = f" F5 takes its remedy: {remedy.label}." if remedy else ""
    return NextThing(f"{done} {where}{taken}", step, tip, tip)


def _press(finding: Finding, shown: Shown) -> str:
    """What to press stands first, since a long sentence may not fit."""
    remedy, step = shown.remedy(finding), page_of(finding.step)
    if remedy:
        return f"F5 takes this remedy: {remedy.label}. "
    if step != shown.step:
        return f"F3 goes to {BY_KEY[step].title}. "
    return "F3 shows the place. "


def no_remedy(shown: Shown, finding: Finding | None) -> str:
    """Why F5 takes nothing: of the finding that it acts on, or of none."""
    if finding is not None:
        if not shown.hopeless(finding):
            return "A remedy is being looked for; F5 takes it when it stands here."
        there = page_of(finding.step)
        way = "shows the place" if there == shown.step else f"goes to {BY_KEY[there].title}"
        return f"No remedy is known for this one; F3 {way}."
    return nothing_here(shown)


def nothing_here(shown: Shown) -> str:
    """That the open step has nothing to fix, and where F3 goes."""
    here = "Nothing to fix on this step"
    thing = next_thing(shown)
    elsewhere = [(step.title, count) for step in STEPS if (count := musts(shown.report, step.key))]
    if thing.place is not None and elsewhere:
        places = ", ".join(f"{count} on {title}" for title, count in elsewhere)
        return f"{here}; {places}: F3 goes {'there' if len(elsewhere) == 1 else 'to the first'}."
    if thing.step != shown.step and thing.place is None:
        key = "F9" if BY_KEY[thing.step] == after(shown.step) else "F3"
        return f"{here}. {key} opens {BY_KEY[thing.step].title}."
    return f"{here}." if shown.report.findings else "There is nothing to fix anywhere."
