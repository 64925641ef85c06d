"""Remedies for air and water in the pipes: the fewest holes that let them out."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.holes import drain as drain_low
from model.design import Design
from model.solve.hole_words import drilling_words
from model.solve.holes import Drilling, fewest
from model.survey import Survey


def let_out(survey: Survey) -> tuple[Remedy, ...]:
    """The fewest holes beside those that there are; or all holes drilled anew, where that is fewer."""
    remedies = []
    added = fewest(survey)
    if added is not None and added.openings:
        remedies.append(_drilled(survey, added, f"Drill {_holes(added)} more"))
    anew = fewest(survey, keep=False)
    if anew is not None and anew.openings:
        remedies.append(_drilled(survey, anew, f"Drill {_holes(anew)} in place of all there are"))
    return tuple(remedies)


def drain(survey: Survey) -> tuple[Remedy, ...]:
    """A drain under a lowest bar, or the fewest holes that leave neither air nor water."""
    return (*drain_low(survey), *let_out(survey))


def _holes(drilling: Drilling) -> str:
    count = len(drilling.openings)
    return f"{count} {'hole' if count == 1 else 'holes'}"


def _drilled(survey: Survey, drilling: Drilling, label: str) -> Remedy:
    return Remedy(label, partial(_apply, drilling=drilling), tuple(drilling_words(survey, drilling)))


def _apply(design: Design, drilling: Drilling) -> Design:
    return drilling.apply(design)
