"""Findings about drilled openings."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies import holes as remedy
from model.coach.say import WHOLE, say
from model.coach.sentences import length
from model.design import COMPARISON_SLACK, Opening
from model.survey import Survey
from model.vectors import unit as unit_vector

DRAIN_REACH = 0.005
"""[m] A hole no higher than this above the lowest point of the pipes still drains them (common practice)."""


def openings(survey: Survey) -> Iterator[Finding]:
    """Openings missing from a flooded frame, or standing in a sealed one."""
    arrangement = survey.arrangement
    if arrangement.bores == "sealed":
        for item in arrangement.openings:
            propose = partial(remedy.stop_up, survey, item)
            yield say(
                "opening.in-sealed", "must", "holes", About("opening", item.id), propose, item=item.name
            )
    elif survey.frame.bars:
        spare = any(joint.match and joint.match.spare for joint in survey.frame.joints.values())
        if not arrangement.openings and not spare:
            yield say("opening.none-flooded", "must", "holes", WHOLE, partial(remedy.let_water_in, survey))
        elif not any(is_drain(survey, item) for item in arrangement.openings):
            yield say("opening.drain-missing", "should", "holes", WHOLE, partial(remedy.drain, survey))


def hole_sizes(survey: Survey) -> Iterator[Finding]:
    """A hole wider than its pipe, or too small to let air pass."""
    unit, least = survey.design.units, survey.design.brief.thresholds.hole_least
    for item in survey.arrangement.openings:
        pipe = survey.frame.bars[item.bar].pipe
        about = About("opening", item.id)
        propose = partial(remedy.redrill, survey, item)
        values = {"item": item.name, "diameter": length(item.diameter, unit)}
        if item.diameter >= pipe.outside_diameter:
            wide = length(pipe.outside_diameter, unit)
            yield say("opening.hole-wide", "must", "holes", about, propose, **values, pipe=wide)
        elif item.diameter < least - COMPARISON_SLACK:
            yield say(
                "opening.hole-small", "tip", "holes", about, propose, **values, least=length(least, unit)
            )


def is_drain(survey: Survey, item: Opening) -> bool:
    """Whether a hole lies at the lowest point of the pipes, and so drains them."""
    lowest = min(
        min(bar.start[2], bar.end[2]) - bar.pipe.outside_diameter / 2 for bar in survey.frame.bars.values()
    )
    bar = survey.frame.bars[item.bar]
    down = -unit_vector(item.face)[2]
    reach = abs(down) if item.through else down
    return bar.point(item.at)[2] - reach * bar.pipe.outside_diameter / 2 <= lowest + DRAIN_REACH
