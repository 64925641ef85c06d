"""Findings about what the vehicle carries, and how easily it is tipped."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import Finding, Severity
from model.coach.remedies import load as remedy
from model.coach.remedies.balance import floats_up
from model.coach.say import WHOLE, say
from model.coach.sentences import grams, length, trim_words
from model.design import COMPARISON_SLACK
from model.survey import Survey
from model.water.balance import GRAVITY
from model.water.righting import Loaded, hook_place, with_load
from model.water.stability import TILTER, tilt_by


def easily_tipped(survey: Survey) -> Iterator[Finding]:
    """A small weight at arm's length tilts it too far."""
    most = survey.design.brief.thresholds.tip_most
    if survey.balance.bg <= 0 or not survey.balance.mass:
        return
    angle = tilt_by(survey.balance, *TILTER)
    if angle > most + COMPARISON_SLACK:
        weight, lever = TILTER
        values = {
            "weight": grams(weight),
            "lever": length(lever, survey.design.units),
            "angle": f"{angle:.0f}",
            "most": f"{most:g}",
        }
        yield say("balance.weight-tips", "should", "floats", WHOLE, partial(floats_up, survey), **values)


def load(survey: Survey) -> Iterator[Finding]:
    """The heaviest load of the brief: no hook for it, too heavy for the thrusters, or tipping it too far."""
    wanted = survey.design.brief.load
    if wanted is None:
        return
    hook = hook_place(survey.arrangement, survey.frame)
    if hook is None:
        propose = partial(remedy.hook_on, survey)
        yield say("load.hook-missing", "should", "gear", WHOLE, propose, load=wanted.name)
        return
    loaded = with_load(survey.balance, survey.thrust, wanted.in_water(survey.balance.density), hook)
    yield from _lift(survey, wanted.name, loaded)
    yield from _tilt(survey, wanted.name, loaded)


def _lift(survey: Survey, name: str, loaded: Loaded) -> Iterator[Finding]:
    limits = survey.design.brief.thresholds
    if loaded.margin is None or loaded.margin >= limits.lift_tip - COMPARISON_SLACK:
        return
    severity: Severity = "tip"
    if loaded.margin < limits.lift_should - COMPARISON_SLACK:
        severity = "should" if loaded.margin >= 1 - COMPARISON_SLACK else "must"
    values = {
        "needed": grams(loaded.needed / GRAVITY),
        "up": grams(survey.thrust.up / GRAVITY),
        "share": f"{loaded.margin:.1f}",
        "least": f"{limits.lift_tip:g}",
    }
    propose = partial(remedy.stronger, survey)
    yield say("load.lift-weak", severity, "thrusters", WHOLE, propose, load=name, **values)


def _tilt(survey: Survey, name: str, loaded: Loaded) -> Iterator[Finding]:
    limits = survey.design.brief.thresholds
    angles = [abs(angle) for angle in (loaded.pitch, loaded.roll) if angle is not None]
    worst = max(angles) if angles else 180.0
    if worst > limits.load_tip + COMPARISON_SLACK:
        severity: Severity = "should" if worst > limits.load_should + COMPARISON_SLACK else "tip"
        trim = trim_words(loaded.pitch, loaded.roll)
        propose = partial(remedy.hook_under_middle, survey)
        yield say("load.trim-off", severity, "gear", WHOLE, propose, load=name, trim=trim)
