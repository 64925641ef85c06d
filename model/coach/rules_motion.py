"""Findings about what full thrust does besides driving: pitch, tipping, pulling to one side, roll."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import Finding, Severity
from model.coach.remedies import thrust as remedy
from model.coach.say import WHOLE, say
from model.coach.sentences import length
from model.design import COMPARISON_SLACK
from model.motion.attitude import couples
from model.motion.body import AHEAD, AS_RECKONED, UP
from model.motion.motion import Motion
from model.motion.span import Span
from model.motion.straight import pulls_along
from model.survey import Survey, motion_of
from model.thrust.moves import USEFUL_LEVER, USEFUL_SHARE
from model.vectors import Vector, dot

FACING = 0.9
"""A thruster that points this much along a way is moved to bring its line in."""
STEADY = 1.5
"""[deg] below which a roll or pitch is not told beside a larger one."""


def handling(survey: Survey) -> Iterator[Finding]:
    """What full thrust does to a vehicle that floats upright; of others the balance speaks first."""
    if not survey.drives or survey.balance.bg <= 0 or survey.balance.mass <= 0:
        return
    moving = motion_of(survey)
    yield from _driven(survey, moving)
    yield from _climbing(survey, moving)
    yield from _one_side(survey, moving)
    yield from _hands(survey, moving)


def _driven(survey: Survey, moving: Motion) -> Iterator[Finding]:
    """The thrust line lies above or below the drag."""
    if moving.driven is None or moving.ahead is None:
        return
    pitch, moment = moving.driven.pitch, couples(moving.body, AHEAD)[0][1]
    severity = _severity(survey, pitch)
    if severity is None:
        return
    lever = _lever(moving, AHEAD, moment)
    propose = partial(remedy.line_up, survey, pushing(survey, AHEAD), lever)
    side = "above" if lever > 0 else "below"
    words = brought([tilt_words(pitch, "bow", "stern")] if pitch else [])
    values = {"pitch": words, "lever": length(abs(lever), survey.design.units)}
    yield say("motion.thrust-pitches", severity, "thrusters", WHOLE, propose, **values, side=side)


def _climbing(survey: Survey, moving: Motion) -> Iterator[Finding]:
    """The upright thrusters lie off the centre, so that it tips when it climbs."""
    if moving.climbing is None:
        return
    pitch, roll = moving.climbing.pitch, moving.climbing.roll
    worst = max((pitch, roll), key=lambda span: 90.0 if span is None else abs(span.value))
    severity = _severity(survey, worst)
    if severity is None:
        return
    moment = couples(moving.body, UP)[0]
    lever = (_lever(moving, UP, -moment[1]), _lever(moving, UP, moment[0]), 0.0)
    propose = partial(remedy.over_centre, survey, pushing(survey, UP), lever)
    named = ((pitch, "bow", "stern"), (roll, "port side", "starboard side"))
    told = [tilt_words(tilt, *ways) for tilt, *ways in named if worst and tilt and abs(tilt.value) > STEADY]
    off = length((lever[0] ** 2 + lever[1] ** 2) ** 0.5, survey.design.units)
    yield say("motion.climb-tips", severity, "thrusters", WHOLE, propose, tilt=brought(told), off=off)


def _one_side(survey: Survey, moving: Motion) -> Iterator[Finding]:
    """Full thrust ahead pulls it to one side."""
    if moving.ahead is None:
        return
    limits, moment = survey.design.brief.thresholds, couples(moving.body, AHEAD)[0][2]
    lever = _lever(moving, AHEAD, -moment)
    share = 100 * moving.held_straight
    if abs(lever) <= USEFUL_LEVER or share <= limits.veer_tip + COMPARISON_SLACK:
        return
    severity: Severity = "should" if share > limits.veer_should + COMPARISON_SLACK else "tip"
    propose = partial(remedy.line_in, survey, pushing(survey, AHEAD), lever)
    values = {
        "side": "port" if moment > 0 else "starboard",
        "off": length(abs(lever), survey.design.units),
        "share": f"{share:.0f} %",
    }
    yield say("motion.thrust-aside", severity, "thrusters", WHOLE, propose, **values)


def _hands(survey: Survey, moving: Motion) -> Iterator[Finding]:
    """The propellers that push ahead turn the same way, or those of one hand outdo the others."""
    ahead = [drive for drive in survey.drives if drive.along[0] > USEFUL_SHARE]
    if len(ahead) < 2 or moving.hand_roll is None:
        return
    limit, roll = survey.design.brief.thresholds.hand_roll, moving.hand_roll.value
    if abs(roll) <= limit + COMPARISON_SLACK:
        return
    side, hand, other = ("port", "left", "right") if roll > 0 else ("starboard", "right", "left")
    if {drive.hand for drive in ahead} == {hand}:
        who = f"All propellers that push ahead are {hand}-handed"
    else:
        who = f"The {hand}-handed propellers outdo the {other}-handed ones"
    propose = partial(remedy.other_hand, survey, tuple(d.thruster for d in ahead if d.hand == hand))
    values = {"roll": f"{abs(roll):.1f}", "side": side, "who": who}
    yield say("motion.hands-alike", "tip", "thrusters", WHOLE, propose, **values)


def _severity(survey: Survey, tilt: Span | None) -> Severity | None:
    limits = survey.design.brief.thresholds
    if tilt is None or abs(tilt.value) > limits.thrust_pitch_should + COMPARISON_SLACK:
        return "should"
    return "tip" if abs(tilt.value) > limits.thrust_pitch_tip + COMPARISON_SLACK else None


def _lever(moving: Motion, along: Vector, moment: float) -> float:
    """How far the pull along a direction acts from where it would balance [m], from its moment [N m]."""
    still, slope, square = pulls_along(moving.body.drives, along, AS_RECKONED)
    run = moving.ahead if along == AHEAD else moving.up
    top = run.push.top if run else 0.0
    pull = still - slope * top - square * top**2
    return moment / pull if pull > 0 else 0.0


def pushing(survey: Survey, along: Vector) -> tuple[str, ...]:
    """The thrusters that point along a direction, either way."""
    return tuple(drive.thruster for drive in survey.drives if abs(dot(drive.along, along)) > FACING)


def tilt_words(tilt: Span, high: str, low: str) -> str:
    """A tilt in words."""
    return f"{high if tilt.value > 0 else low} up {abs(tilt.value):.0f} degrees"


def brought(tilts: list[str]) -> str:
    """What full thrust does, from the tilts in words; none where it is more than rights it.

    >>> brought(["bow up 12 degrees"]), brought([])
    ('brings the bow up 12 degrees', 'turns it right over')
    """
    return f"brings the {' and '.join(tilts)}" if tilts else "turns it right over"
