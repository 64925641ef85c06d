"""The dimensions of a view: overall outside size, and chains from plane to plane."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Literal

from model.drawing.gear import box_corners
from model.drawing.projection import MM, Projection
from model.drawing.scene import Dimension, Point
from model.survey import Survey
from model.units import format_length

CHAIN, OVERALL = 1, 2
"""Lanes: the chain lies next to the vehicle, the overall size outside it."""
SAME = 0.05
"""[mm] Planes closer than this are one line of the chain."""


def dimensions(survey: Survey, view: Projection) -> Iterator[Dimension]:
    """Chains centre to centre, and the overall outside size with hubs, floats and hooks."""
    if survey.extents.box is None:
        return
    low, high = box_corners(survey.extents.box, view)
    centres = [view.point(joint.at) for joint in survey.frame.joints.values() if joint.arms]
    yield from _axis(survey, "u", [point[0] for point in centres], low[0], high[0])
    yield from _axis(survey, "v", [point[1] for point in centres], low[1], high[1])


def plane_lines(centres: list[float]) -> list[float]:
    """The different places in a list [mm], in order."""
    lines: list[float] = []
    for place in sorted(centres):
        if not lines or place - lines[-1] > SAME:
            lines.append(place)
    return lines


def span(points: list[Point]) -> tuple[Point, Point]:
    """The corners around some points [mm]."""
    across, up = zip(*points, strict=True)
    return (min(across), min(up)), (max(across), max(up))


def _axis(
    survey: Survey, axis: Literal["u", "v"], centres: list[float], low: float, high: float
) -> Iterator[Dimension]:
    unit = survey.design.units
    for start, end in pairwise(plane_lines(centres)):
        text = format_length((end - start) / MM, unit, with_unit=False)
        yield Dimension(axis, start, end, CHAIN, text)
    yield Dimension(axis, low, high, OVERALL, format_length((high - low) / MM, unit))
