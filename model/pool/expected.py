"""What the model says of each thing that a trial can measure."""

from model.design import TrialKind
from model.survey import Survey, motion_of
from model.vehicle.pipework import disc

COURSE = 3.0
"""[m] The length that speed is measured over where nothing else is said."""


def expected(survey: Survey, kind: TrialKind, *, over: float = COURSE, about: str = "") -> float | None:
    """The model's value in SI, or None where it has none.

    Args:
        over: the length of the course, or of the piece of foam [m].
        about: the id of the bar or foam.
    """
    if kind in ("weight", "spare", "pitch", "roll"):
        return _floating(survey, kind)
    if kind in ("course", "quarter turn"):
        return _moving(survey, kind, over or COURSE)
    if kind == "showing":
        bar = survey.frame.bars.get(about)
        return None if bar is None or bar.cut is None else bar.cut - sum(bar.insertions)
    if kind == "foam":
        return _foam(survey, about, over)
    if kind == "battery":
        return survey.wiring.minutes if survey.wiring else None
    return _pull(survey, kind)


def _floating(survey: Survey, kind: str) -> float | None:
    balance = survey.balance
    if not survey.parts:
        return None
    if kind in ("pitch", "roll"):
        return balance.pitch if kind == "pitch" else balance.roll
    return balance.mass if kind == "weight" else balance.spare


def _moving(survey: Survey, kind: str, over: float) -> float | None:
    motion = motion_of(survey)
    if kind == "course":
        return motion.ahead.push.time_over(over) if motion.ahead else None
    turn = motion.slower_turn
    return turn.quarter.value if turn else None


def _foam(survey: Survey, about: str, over: float) -> float | None:
    foam = next((foam for foam in survey.design.supplies.foams if foam.id == about), None)
    if foam is None or over <= 0:
        return None
    return (disc(foam.outside_diameter) - disc(foam.hole)) * over * foam.density


def _pull(survey: Survey, kind: str) -> float | None:
    """What all thrusters pull one way together, held still [N]."""
    axis, sign = {"pull ahead": (0, 1), "pull astern": (0, -1), "pull up": (2, 1)}[kind]
    total = 0.0
    for drive in survey.drives:
        share = drive.along[axis] * sign
        total += drive.ahead * share if share > 0 else -drive.astern * share
    return total if total > 1e-9 else None
