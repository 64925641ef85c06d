"""Findings about what the vehicle must pass through, and how nearly it fits its size box."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies.passage import inside, narrow
from model.coach.say import say
from model.coach.sentences import length
from model.design import COMPARISON_SLACK
from model.hoop import smallest_gate, smallest_hoop
from model.survey import Survey
from model.tolerance import size_errors
from model.vectors import AXES

SIZES = ("length", "width", "height")
NEAR = 0.1
"""[m] Room so wide that no build comes out of it needs no closer look."""


def near_size(survey: Survey) -> Iterator[Finding]:
    """A size inside its limit by less than the build may come out wrong."""
    sizes, unit = survey.extents, survey.design.units
    if sizes.limit is None or not survey.parts:
        return
    rooms = [most - size for most, size in zip(sizes.limit, sizes.size, strict=True)]
    if not any(-COMPARISON_SLACK <= room < NEAR for room in rooms):
        return
    limits = survey.design.brief.thresholds
    found = size_errors(survey.arrangement, survey.frame, survey.parts, sizes, limits)
    for axis, (room, error) in enumerate(zip(rooms, found, strict=True)):
        if -COMPARISON_SLACK <= room < error.errors.rss - COMPARISON_SLACK:
            yield say(
                "size.limit-near",
                "tip",
                "layout",
                About("axis", AXES[axis]),
                partial(inside, survey, axis, sizes.limit[axis] - error.errors.rss),
                size=SIZES[axis],
                room=length(max(0.0, room), unit),
                limit=length(sizes.limit[axis], unit),
                rss=length(error.errors.rss, unit),
                worst=length(error.errors.worst, unit),
                chance=f"{100 * (error.chance or 0):.0f} %",
            )


def tight_hoop(survey: Survey) -> Iterator[Finding]:
    """A hoop or a gate that the front of the vehicle does not pass through."""
    brief, unit = survey.design.brief, survey.design.units
    hoop = smallest_hoop(survey.parts) if brief.hoop is not None else None
    if hoop is not None and brief.hoop is not None and hoop.diameter > brief.hoop + COMPARISON_SLACK:
        values = {"size": length(hoop.diameter, unit), "limit": length(brief.hoop, unit)}
        propose = partial(narrow, survey, {1: brief.hoop / hoop.diameter, 2: brief.hoop / hoop.diameter})
        over = length(hoop.diameter - brief.hoop, unit)
        yield say("size.hoop-tight", "must", "layout", About("hoop"), propose, **values, over=over)
    gate = smallest_gate(survey.parts) if brief.gate is not None else None
    if gate is None or brief.gate is None:
        return
    for axis, size, most in zip((1, 2), gate, brief.gate, strict=True):
        if size > most + COMPARISON_SLACK:
            values = {
                "size": length(size, unit),
                "limit": length(most, unit),
                "way": ("", "wide", "high")[axis],
            }
            propose = partial(narrow, survey, {axis: most / size})
            over = length(size - most, unit)
            about = About("gate", AXES[axis])
            yield say("size.gate-tight", "must", "layout", about, propose, **values, over=over)
