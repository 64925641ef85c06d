"""Findings about measurements on the real thing that are off the model."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import Finding, Remedy, Severity
from model.coach.say import WHOLE, say
from model.coach.sentences import trim_words
from model.design import COMPARISON_SLACK
from model.pool.corrections import correction
from model.pool.kinds import KINDS
from model.pool.results import Result, newest
from model.survey import Survey


def weight(survey: Survey) -> Iterator[Finding]:
    """Dry weight off the model."""
    result = newest(survey).get("weight")
    if result is None or result.share is None:
        return
    limits, share = survey.design.brief.thresholds, abs(result.share) * 100
    if share > limits.trial_mass_tip + COMPARISON_SLACK:
        severity: Severity = "should" if share > limits.trial_mass_should + COMPARISON_SLACK else "tip"
        values = _words(survey, result) | {"share": f"{share:.0f} %"}
        yield say("trial.weight-off", severity, "pool day", WHOLE, tuple, **values)


def trim(survey: Survey) -> Iterator[Finding]:
    """Trim at rest off the model."""
    found = newest(survey)
    pitch, roll = found.get("pitch"), found.get("roll")
    most = survey.design.brief.thresholds.trial_trim
    off = [abs(result.difference) for result in (pitch, roll) if result and result.difference is not None]
    if off and max(off) > most + COMPARISON_SLACK:
        measured = trim_words(pitch.trial.value if pitch else 0.0, roll.trial.value if roll else 0.0)
        model = trim_words(survey.balance.pitch, survey.balance.roll)
        yield say("trial.trim-off", "tip", "pool day", WHOLE, tuple, measured=measured, model=model)


def spare(survey: Survey) -> Iterator[Finding]:
    """Spare buoyancy off the model."""
    result = newest(survey).get("spare")
    displaced = survey.balance.displaced * survey.balance.density
    if result is None or result.difference is None or not displaced:
        return
    share = 100 * abs(result.difference) / displaced
    if share > survey.design.brief.thresholds.trial_spare + COMPARISON_SLACK:
        values = _words(survey, result) | {"share": f"{share:.1f} %"}
        propose = partial(_correct, survey, result)
        yield say("trial.spare-off", "should", "pool day", WHOLE, propose, **values)


def _correct(survey: Survey, result: Result) -> tuple[Remedy, ...]:
    found = correction(survey, result)
    return (Remedy(found.label, found.edit, (found.why,)),) if found else ()


def _words(survey: Survey, result: Result) -> dict[str, str]:
    words, unit = KINDS[result.trial.kind].words, survey.design.units
    return {"measured": words(result.trial.value, unit), "model": words(result.model or 0.0, unit)}
