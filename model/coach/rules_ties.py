"""Findings about the drilled holes of the ties that hold a thruster."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Severity
from model.coach.remedies import thrust as remedy
from model.coach.say import say
from model.coach.sentences import length
from model.design import COMPARISON_SLACK, Thruster, TieHole
from model.frame.layout import BarPlace
from model.solve.hole_words import face_words
from model.survey import Survey
from model.thrust.hole_edits import across
from model.thrust.mounts import tied
from model.thrust.tie_holes import TIE_WIDTH
from model.vectors import dot

TIES = 2
"""One tie alone is a hinge (common practice)."""


def tie_holes(survey: Survey) -> Iterator[Finding]:
    """A single tie, ties on one side only, holes that no drill could make, that weaken, or are too small."""
    for item in tied(survey.design, survey.arrangement):
        if item.tie_holes:
            yield from _holes(survey, item, survey.frame.bars[item.bar])


def _holes(survey: Survey, item: Thruster, bar: BarPlace) -> Iterator[Finding]:
    about = About("thruster", item.id)
    propose = partial(remedy.plan_holes, survey, item)
    values = {"thruster": item.name, "bar": bar.name}
    if len(item.tie_holes) < TIES:
        yield say("thruster.tie-alone", "should", "thrusters", about, propose, **values)
    elif aside := _aside(item, bar):
        near = length(aside, survey.design.units)
        yield say("thruster.tie-aside", "should", "thrusters", about, propose, **values, near=near)
    codes: set[str] = set()
    for hole in item.tie_holes:
        found = _hole(survey, hole, bar)
        if found is not None and found[0] not in codes:
            code, severity, more = found
            codes.add(code)
            yield say(f"thruster.{code}", severity, "thrusters", about, propose, **values, **more)


def _aside(item: Thruster, bar: BarPlace) -> float:
    """How far from the middle of a motor the nearest hole lies [m] where all lie to one side; else 0.

    Ties on both sides of the middle hold each other; on one side alone they are the hinge of what sticks out
    and lets it slide out lengthwise (common practice, no source).
    """
    places = [hole.along - dot(item.offset, bar.along) for hole in item.tie_holes]
    return max(0.0, min(places) + COMPARISON_SLACK, COMPARISON_SLACK - max(places))


def _hole(survey: Survey, hole: TieHole, bar: BarPlace) -> tuple[str, Severity, dict[str, str]] | None:
    """What is wrong with one hole: the end of a code, how bad, and its numbers."""
    unit, most = survey.design.units, survey.design.brief.thresholds.hole_most
    outside = bar.pipe.outside_diameter
    sizes = {"diameter": length(hole.diameter, unit), "pipe": length(outside, unit)}
    if not across(hole.face, bar):
        return "tie-along", "must", {"face": face_words(hole.face)}
    if hole.diameter >= outside:
        return "tie-wide", "must", sizes
    if hole.diameter > outside * most / 100 + COMPARISON_SLACK:
        return "tie-large", "should", {**sizes, "most": f"{most:g} %"}
    if hole.diameter < TIE_WIDTH - COMPARISON_SLACK:
        return "tie-small", "should", {**sizes, "tie": length(TIE_WIDTH, unit)}
    return None
