"""Findings about the size of the whole vehicle."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding
from model.coach.remedies.size import fit_in_box
from model.coach.say import say
from model.coach.sentences import length
from model.parts import Part
from model.survey import Survey
from model.vectors import AXES

SIZE_WORDS = (("long", "ahead", "aft"), ("wide", "to port", "to starboard"), ("high", "at the top", "below"))


def over_size(survey: Survey) -> Iterator[Finding]:
    """The size box broken along an axis: by what, on which side, and by how much."""
    limit = survey.extents.limit
    if limit is None:
        return
    unit = survey.design.units
    for axis, over in enumerate(survey.extents.over):
        if over:
            word, high_side, low_side = SIZE_WORDS[axis]
            yield say(
                "size.limit-over",
                "must",
                "layout",
                About("axis", AXES[axis]),
                partial(fit_in_box, survey, axis),
                size=length(survey.extents.size[axis], unit),
                axis=word,
                over=length(over, unit),
                limit=length(limit[axis], unit),
                high=outermost(survey, axis, 1).name,
                high_side=high_side,
                low=outermost(survey, axis, -1).name,
                low_side=low_side,
            )


def outermost(survey: Survey, axis: int, side: int) -> Part:
    """The part that reaches furthest along an axis, towards its high (1) or low (-1) side."""
    reaches = [(part, box) for part in survey.parts if (box := part.box)]
    if side > 0:
        return max(reaches, key=lambda reach: reach[1].high[axis])[0]
    return min(reaches, key=lambda reach: reach[1].low[axis])[0]
