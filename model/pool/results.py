"""Trials beside the model: the difference, and what is to be thought of it."""

from msgspec import Struct

from model.design import Trial, TrialKind
from model.pool.expected import COURSE, expected
from model.pool.kinds import KINDS
from model.survey import Survey


class Result(Struct, frozen=True):
    """One trial beside what the model says now.

    Attributes:
        model: in SI; None where the model says nothing.
        newest: whether no later trial of the same thing stands.
    """

    trial: Trial
    model: float | None
    newest: bool

    @property
    def difference(self) -> float | None:
        """Measured less model, in SI."""
        return None if self.model is None else self.trial.value - self.model

    @property
    def share(self) -> float | None:
        """The difference as a share of the model's value."""
        return None if self.model is None or not self.model else (self.difference or 0.0) / abs(self.model)


def results(survey: Survey) -> tuple[Result, ...]:
    """All trials that stand, in the order in which they were made."""
    standing = [trial for trial in survey.design.evidence.trials if trial.stands]
    last = {(trial.kind, trial.about): trial.id for trial in standing}
    return tuple(
        Result(trial, model_of(survey, trial), last[trial.kind, trial.about] == trial.id)
        for trial in standing
    )


def newest(survey: Survey) -> dict[TrialKind, Result]:
    """The last result of each kind."""
    return {result.trial.kind: result for result in results(survey) if result.newest}


def model_of(survey: Survey, trial: Trial) -> float | None:
    """What the model says now of what a trial measured, in SI."""
    return expected(survey, trial.kind, over=trial.over or COURSE, about=trial.about)


def difference_words(survey: Survey, result: Result) -> str:
    """How far a trial is off the model, in words."""
    if result.difference is None:
        return "the model says nothing of it"
    unit, kind = survey.design.units, KINDS[result.trial.kind]
    value = result.difference
    if result.trial.kind in ("pitch", "roll"):
        way = ("bow" if result.trial.kind == "pitch" else "port side") + (
            " higher" if value > 0 else " lower"
        )
        return f"{abs(value):.1f} degrees {way}" if abs(value) >= 0.05 else "as the model says"
    amount = kind.words(abs(value), unit).split(",")[0]
    if kind.words(0.0, unit).split(",")[0] == amount:
        return "as the model says"
    share = f" ({abs(result.share):.0%})" if result.share is not None and result.trial.kind != "spare" else ""
    return f"{amount} {'more' if value > 0 else 'less'}{share}"
