"""A finding: something that the survey flags, in one sentence with its numbers."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Literal, get_args

from model.design import Design

Severity = Literal["must", "should", "tip"]
Step = Literal[
    "brief",
    "stock",
    "layout",
    "fittings",
    "thrusters",
    "gear",
    "wires",
    "floats",
    "holes",
    "money",
    "build",
    "pool day",
]
STEPS: tuple[Step, ...] = get_args(Step)
SEVERITIES: tuple[Severity, ...] = ("must", "should", "tip")


@dataclass(frozen=True, slots=True)
class About:
    """What a finding is about: a kind such as "bar" or "joint", and its id ("" for the whole design)."""

    kind: str
    id: str = ""


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change to the design that would clear a finding.

    Attributes:
        label: says what it does.
        details: what it takes: pieces, cost, change of size; one short line each.
    """

    label: str
    edit: Callable[[Design], Design] = field(compare=False)
    details: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """Something that the survey flags.

    Attributes:
        code: ``topic.noun-problem``; never reused for something else.
        step: the page on which it can be put right.
        message: one sentence for people, with the numbers.
        propose: works out changes that may clear it, the best first; each is still to be proved.
    """

    code: str
    severity: Severity
    step: Step
    about: About
    message: str
    propose: Callable[[], Iterable[Remedy]] = field(default=tuple, compare=False)

    @property
    def may_be_cleared(self) -> bool:
        """Whether there is anything to propose; whether it clears the finding is still to be proved."""
        return self.propose is not tuple

    @property
    def noun(self) -> str:
        """What is wrong, in one word: the noun of its code."""
        return self.code.partition(".")[2].partition("-")[0]

    @property
    def key(self) -> tuple[str, About]:
        """What makes two findings of two reports the same finding."""
        return self.code, self.about
