"""Evidence: what was bought, ticked, measured, tried and decided.

It stands beside the decisions.  Nothing in it is ever taken out: what turns out wrong, or is undone,
is marked as taken back.  Times and authors are given by whoever calls; the model has no clock.
"""

from datetime import datetime
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, StringConstraints

from model.design.measures import Depth, Id, Money, Name, Once, Plausible, Run, Size, Text
from model.design.record import Record

WHEN_LENGTHS = (10, 16)


def _when(text: str) -> str:
    try:
        datetime.fromisoformat(text)
    except ValueError:
        raise ValueError("a day is written like 2026-03-14, with a time like 2026-03-14 15:30") from None
    if len(text) not in WHEN_LENGTHS:
        raise ValueError("a day is written like 2026-03-14, with a time like 2026-03-14 15:30")
    return text.replace("T", " ")


When = Annotated[str, StringConstraints(max_length=16), AfterValidator(_when), Once()]
"""A day, or a day and a time, as 2026-03-14 or 2026-03-14 15:30."""
Word = Annotated[str, StringConstraints(max_length=120), Once()]
TrialKind = Literal[
    "weight",
    "spare",
    "pitch",
    "roll",
    "pull ahead",
    "pull astern",
    "pull up",
    "course",
    "quarter turn",
    "battery",
    "showing",
    "foam",
]


class Noted(Record):
    """Something that was noted at a time by somebody."""

    id: Id
    when: When
    who: Word = ""
    """Who noted it."""
    taken_back: When | None = None
    """When it was taken back; empty while it stands."""

    @property
    def stands(self) -> bool:
        """Whether it was not taken back."""
        return self.taken_back is None


class Expense(Noted):
    """A line of the ledger: something bought, or given."""

    what: Name
    """What it is for."""
    shop: Word = ""
    """Where it was bought, or who gave it."""
    amount: Annotated[Money, Plausible(0.0, above=True)]
    """What was paid; for something given, what it would have cost."""
    given: bool = False
    """Whether it was given, so that the amount is an estimate."""
    counts: bool = True
    """Whether it counts against the spending limit."""
    receipt: Word = ""
    """The number on the receipt."""
    picture: Word = ""
    """The file name of the picture of the receipt."""
    line: Word = ""
    """The line of the shopping list that it pays for, as "fitting tee"; empty where it is for none."""
    quantity: Annotated[int, Field(ge=0, le=10_000), Plausible(1)] = 1
    """How many of that line."""


class Tick(Noted):
    """A step of the build that is done."""

    step: Word
    """Which step, by its id."""


class MeasuredCut(Noted):
    """The length of a piece of pipe after it was sawn."""

    bar: Id
    length: Size
    """As it was measured."""
    planned: Depth
    """As the cut list had it."""
    kept: bool = False
    """Whether the team builds with it although it is off its plan."""


class Trial(Noted):
    """A measurement on the real thing, and what the model said then."""

    kind: TrialKind
    value: Annotated[float, Field(ge=-1e6, le=1e6)]
    """In SI: kg, N, deg, s; minutes for the battery, m for pipe still showing."""
    model: float | None = None
    """What the model said when it was noted, in the same unit; empty where it said nothing."""
    over: Annotated[Run, Plausible(0.0, 200.0, above=True)] = 0.0
    """Length of the course, or of the piece of foam."""
    about: Word = ""
    """The bar, foam or thruster that was measured, by its id; empty for the whole vehicle."""
    notes: Text = ""


class Decision(Noted):
    """A decision as it was made."""

    what: Word
    """What was changed."""
    before: Word = ""
    """What it was."""
    after: Word = ""
    """What it is now."""
    why: Text = ""
    """Why, in the team's own words."""


class Evidence(Record):
    """All evidence of one design, each kind in the order in which it was noted."""

    ledger: tuple[Expense, ...] = ()
    ticks: tuple[Tick, ...] = ()
    cuts: tuple[MeasuredCut, ...] = ()
    trials: tuple[Trial, ...] = ()
    log: tuple[Decision, ...] = ()
