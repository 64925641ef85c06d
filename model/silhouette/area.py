"""The area of many outlines together, each spot counted once.

Level lines are laid through the view; on each, the pieces inside outlines are joined, and their
length is integrated over the height.  Between two heights where an outline begins or ends the
length is smooth but for a square root at the ends, which the substitution v = middle + half sin(phi)
takes away; Gauss and Legendre's rule of eight points does the rest.  What all lines of such a strip
cross alike, as bars that lie level or stand upright, is joined once for all of them.
"""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import cos, pi, sin

from msgspec import Struct

from model.parts import Part
from model.silhouette.outline import VIEWS, Outline, outline

NODES = (0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363)
WEIGHTS = (0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763)
"""Gauss-Legendre, eight points, Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4."""
LINES = tuple(
    (sin(phi), share * cos(phi) * pi / 2)
    for node, share in zip(NODES, WEIGHTS, strict=True)
    for phi in (-node * pi / 2, node * pi / 2)
)
"""Where the level lines lie between -1 and 1, and how much each counts."""
ALL_LINES = sum(share for _, share in LINES)
"""How much all of them count together."""
STRIPS = 24
"""Into how many strips the whole height is cut at least, for where outlines cross."""
SAME_HEIGHT = 1e-7  # [m]
Span = tuple[float, float]
"""Where a level line enters and leaves [m]."""


class Silhouettes(Struct, frozen=True):
    """The areas [m2] that the vehicle shows head on, side on and from above."""

    front: float
    side: float
    top: float


def silhouettes(parts: Iterable[Part]) -> Silhouettes:
    """What the outside of all parts covers in the three views."""
    solids = {solid for part in parts for solid in part.solids}
    areas = {name: union_area({outline(solid, view) for solid in solids}) for name, view in VIEWS.items()}
    return Silhouettes(areas["front"], areas["side"], areas["top"])


def union_area(outlines: Iterable[Outline]) -> float:
    """The area [m2] that some outlines cover together."""
    shapes = [(shape.low, shape.high, shape) for shape in outlines]
    heights = _heights([edge for low, high, shape in shapes for edge in (low, *shape.bends, high)])
    total = 0.0
    for bottom, top in pairwise(heights):
        middle, half = (bottom + top) / 2, (top - bottom) / 2
        inside = [shape for low, high, shape in shapes if low < middle < high]
        steady = joined(shape.steady for shape in inside if shape.steady)
        moving = [shape for shape in inside if not (shape.steady or _hidden(shape, steady))]
        if moving:
            lines = (([*steady, *_spans(moving, middle + half * at)], share) for at, share in LINES)
            total += half * sum(share * _covered(spans) for spans, share in lines)
        elif steady:
            total += half * ALL_LINES * _covered(steady)
    return total


def _heights(edges: list[float]) -> list[float]:
    """The heights between which the length is smooth, none further apart than a strip."""
    ordered = sorted(edges)
    heights: list[float] = []
    strip = (ordered[-1] - ordered[0]) / STRIPS if ordered else 0.0
    for edge in ordered:
        if heights and edge - heights[-1] < SAME_HEIGHT:
            continue
        if heights:
            count = int((edge - heights[-1]) / strip)
            start, step = heights[-1], (edge - heights[-1]) / (count + 1)
            heights += [start + step * number for number in range(1, count + 1)]
        heights.append(edge)
    return heights


def _hidden(shape: Outline, spans: Iterable[Span]) -> bool:
    """Whether one of some spans that hold all over a strip covers a shape wherever it lies in it."""
    left, right = shape.sides
    return any(low <= left and right <= high for low, high in spans)


def _spans(shapes: Iterable[Outline], height: float) -> Iterator[Span]:
    return (span for shape in shapes if (span := shape.span(height)))


def joined(spans: Iterable[Span]) -> list[Span]:
    """Spans from left to right, those that meet as one."""
    result: list[Span] = []
    reach = float("-inf")
    for low, high in sorted(spans):
        if low > reach:
            result.append((low, high))
            reach = high
        elif high > reach:
            result[-1] = (result[-1][0], high)
            reach = high
    return result


def _covered(spans: Iterable[Span]) -> float:
    """The length [m] that some spans cover together."""
    length, reach = 0.0, float("-inf")
    for low, high in sorted(spans):
        if high > reach:
            length += high - max(low, reach)
            reach = high
    return length
