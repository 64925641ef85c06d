"""Findings about weight, buoyancy and trim."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import Finding, Remedy, Severity
from model.coach.remedies import balance as remedy
from model.coach.remedies.floats import anew
from model.coach.say import WHOLE, say
from model.coach.sentences import grams, length, trim_words
from model.design import COMPARISON_SLACK
from model.survey import Survey
from model.water.balance import GRAVITY
from model.water.depth import spare_at_depth


def spare_buoyancy(survey: Survey) -> Iterator[Finding]:
    """Too heavy, too light, or so much of either that the thrusters cannot fight it."""
    if not survey.parts:
        return
    balance, limits = survey.balance, survey.design.brief.thresholds
    up, down = survey.thrust.up, survey.thrust.down
    values = {
        "net": grams(balance.spare),
        "percent": f"{abs(balance.spare_percent):.1f} %",
        "least": f"{limits.spare_least:g} %",
        "most": f"{limits.spare_most:g} %",
    }
    found: tuple[str, Severity] | None = None
    if balance.net < -up - COMPARISON_SLACK and balance.spare_percent < limits.spare_least:
        found, values["thrust"] = ("balance.thrust-sunk", "must"), grams(up / GRAVITY)
    elif down and balance.net > down + COMPARISON_SLACK:
        found, values["thrust"] = ("balance.thrust-beaten", "must"), grams(down / GRAVITY)
    elif balance.spare < 0:
        found = ("balance.weight-over", "should")
    elif balance.spare_percent < limits.spare_least - COMPARISON_SLACK:
        found = ("balance.lift-little", "should")
    elif balance.spare_percent > limits.spare_most + COMPARISON_SLACK:
        found = ("balance.lift-over", "should")
    elif down and balance.net > down * limits.spare_of_thrust / 100 + COMPARISON_SLACK:
        values |= {
            "thrust": grams(down / GRAVITY),
            "share": f"{100 * balance.net / down:.0f} %",
            "most": f"{limits.spare_of_thrust:g} %",
        }
        found = ("balance.thrust-taken", "should")
    if found:
        code, severity = found
        yield say(code, severity, "floats", WHOLE, partial(_lifted, survey), **values)


def sinks_at_depth(survey: Survey) -> Iterator[Finding]:
    """Lift that is gone at the bottom, where the foam is squeezed."""
    squeeze = survey.design.brief.foam_squeeze
    spare = spare_at_depth(survey.parts, survey.balance, squeeze)
    if survey.balance.spare >= 0 > spare + COMPARISON_SLACK:
        values = {
            "squeeze": f"{squeeze:g} %",
            "lost": grams(survey.balance.spare - spare),
            "net": grams(spare),
        }
        propose = partial(remedy.lift_at_depth, survey, spare)
        yield say("balance.foam-squeezed", "should", "floats", WHOLE, propose, **values)


def trim(survey: Survey) -> Iterator[Finding]:
    """Rolls over, tender, or not level at rest."""
    balance, limits = survey.balance, survey.design.brief.thresholds
    if not survey.parts or not balance.displaced:
        return
    unit = survey.design.units
    if balance.bg <= 0 or balance.pitch is None or balance.roll is None:
        propose = partial(remedy.floats_up, survey)
        yield say("balance.order-inverted", "must", "floats", WHOLE, propose, bg=length(-balance.bg, unit))
        return
    if balance.bg < limits.bg_least - COMPARISON_SLACK:
        values = {"bg": length(balance.bg, unit), "least": length(limits.bg_least, unit)}
        yield say("balance.bg-small", "should", "floats", WHOLE, partial(remedy.floats_up, survey), **values)
    worst = max(abs(balance.pitch), abs(balance.roll))
    if worst > limits.trim_tip + COMPARISON_SLACK:
        severity: Severity = "should" if worst > limits.trim_should + COMPARISON_SLACK else "tip"
        values = {"trim": trim_words(balance.pitch, balance.roll), "limit": f"{limits.trim_tip:g}"}
        yield say("balance.trim-off", severity, "floats", WHOLE, partial(_levelled, survey), **values)


def _lifted(survey: Survey) -> Iterator[Remedy]:
    """The small changes first, and all floats anew where none of them will do."""
    yield from remedy.adjust_lift(survey)
    yield from anew(survey)


def _levelled(survey: Survey) -> Iterator[Remedy]:
    yield from remedy.level(survey)
    yield from anew(survey)
