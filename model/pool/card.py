"""The card to take to the pool: what the model expects, and room for what is measured."""

from collections.abc import Iterator

from msgspec import Struct

from model.design import TrialKind
from model.pool.expected import COURSE, expected
from model.pool.kinds import KINDS
from model.survey import Survey, motion_of
from model.units import format_length, format_mass

ORDER: tuple[TrialKind, ...] = (
    "weight", "spare", "pitch", "roll", "pull ahead", "pull astern", "pull up", "course", "quarter turn",
    "battery",
)  # fmt: skip


class CardLine(Struct, frozen=True):
    """One thing to measure.

    Attributes:
        model: what to expect, in words; spread: how sure that is, "" where nothing is said.
        measured: what was measured last, in words, or "".
    """

    kind: TrialKind
    title: str
    model: str
    spread: str
    how: str
    measured: str


def pool_card(survey: Survey) -> tuple[CardLine, ...]:
    """Everything to measure on a pool day, in the order in which it is done."""
    last = {trial.kind: trial for trial in survey.design.evidence.trials if trial.stands}
    unit = survey.design.units
    lines = []
    for kind in ORDER:
        about = KINDS[kind]
        trial = last.get(kind)
        over = (trial.over if trial else 0.0) or COURSE
        value = expected(survey, kind, over=over)
        title = about.title
        if kind == "course":
            title = f"time over {over:.3g} m" if unit == "mm" else f"time over {format_length(over, unit)}"
        words = "the model has no value" if value is None else about.words(value, unit)
        measured = about.words(trial.value, unit) if trial else ""
        lines.append(CardLine(kind, title, words, _spread(survey, kind), about.how, measured))
    return tuple(lines)


def _spread(survey: Survey, kind: TrialKind) -> str:
    """How far the real thing may be off, where the survey says it."""
    unsure = survey.spread
    if kind == "spare":
        return f"give or take {format_mass(unsure.spare)}"
    if kind in ("pitch", "roll"):
        return f"give or take {unsure.pitch if kind == 'pitch' else unsure.roll:.1f} degrees"
    if kind in ("course", "quarter turn"):
        motion = motion_of(survey)
        if kind == "course" and motion.ahead:
            return f"top speed {motion.ahead.top.text('m/s')}"
        turn = motion.slower_turn
        if kind == "quarter turn" and turn:
            return f"{turn.quarter.low:.1f} to {turn.quarter.high:.1f} s"
    return ""


def kit_words(survey: Survey) -> Iterator[str]:
    """What to bring to trim with."""
    kit = survey.kit
    if kit.washers:
        washer = survey.design.supplies.washer
        yield f"{kit.washers} {washer.name} of {format_mass(washer.mass)}"
    if kit.foam and kit.foam_length:
        foam = next(foam for foam in survey.design.supplies.foams if foam.id == kit.foam)
        yield f"{format_length(kit.foam_length, survey.design.units)} of {foam.name} to cut from"
    yield "spring scale or luggage scale, tape measure, stopwatch, spare ties, side cutter, towel"
