"""Remedies for a bill over the limit."""

from model.coach.finding import Remedy
from model.design import Design
from model.fittings.match import catalogue
from model.frame.layout import ways
from model.survey import Survey


def cheaper(survey: Survey) -> tuple[Remedy, ...]:
    """Let the coach choose the cheapest fittings, where dearer ones were picked."""
    catalog = catalogue(survey.design.stock)
    for joint in survey.frame.joints.values():
        needed = ways(joint.arms)
        best = catalog.match(needed, None) if needed else None
        if joint.match and best and best.fitting.price < joint.match.fitting.price:
            return (Remedy("Use the cheapest fitting at every joint", _unpicked),)
    return ()


def _unpicked(design: Design) -> Design:
    return design.arranged(joints=tuple(joint.but(fitting=None) for joint in design.arrangement.joints))
