"""Pieces that are sawn already: the planes at their ends follow them, and the rest is fitted round.

Each sawn bar fixes the distance between two planes.  Where several disagree, the planes lie where
the squares of the misfits add up to the least (least squares, Gauss and Legendre).
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from model.units import snap

SAME = 1e-6
"""[m] Planes whose distances from the middle differ by less than this are equally far from it."""
CLOSE_ENOUGH = 1e-13
"""[m] Where the search for the least squares ends."""


@dataclass(frozen=True, slots=True)
class Span:
    """Two planes that must lie a distance [m] apart: ``high`` that far beyond ``low``."""

    low: str
    high: str
    distance: float


def held_planes(at: Mapping[str, float], spans: Iterable[Span], used: Iterable[str]) -> dict[str, float]:
    """Where the parallel planes of one kind lie [m] so that sawn pieces fit between them.

    Of planes that hang together by spans the one nearest to the middle of the frame stays where it
    is; where two are equally far from it, the middle between them stays.

    Args:
        at: where each plane is drawn [m], by its id.
        spans: the distances that are given.
        used: ids of the planes that carry joints, between whose outermost the middle lies.
    """
    result = dict(at)
    places = [at[plane] for plane in used]
    middle = (min(places) + max(places)) / 2 if places else 0.0
    for group in _groups(spans):
        fitted = least_squares(group)
        shift = _shift(at, fitted, middle)
        result |= {plane: snap(place + shift) for plane, place in fitted.items()}
    return result


def _shift(at: Mapping[str, float], fitted: Mapping[str, float], middle: float) -> float:
    """How far [m] to move a fitted group so that its planes nearest to the middle stay."""
    nearest = min(abs(at[plane] - middle) for plane in fitted)
    held = [plane for plane in fitted if abs(at[plane] - middle) < nearest + SAME]
    return sum(at[plane] - fitted[plane] for plane in held) / len(held)


def _groups(spans: Iterable[Span]) -> list[list[Span]]:
    """The spans that hang together by planes they share."""
    leader: dict[str, str] = {}

    def lead(plane: str) -> str:
        while (above := leader.setdefault(plane, plane)) != plane:
            leader[plane] = leader[above]
            plane = leader[plane]
        return plane

    listed = list(spans)
    for span in listed:
        leader[lead(span.low)] = lead(span.high)
    groups: dict[str, list[Span]] = defaultdict(list)
    for span in listed:
        groups[lead(span.low)].append(span)
    return list(groups.values())


def least_squares(spans: list[Span]) -> dict[str, float]:
    """Positions [m] of planes that hang together, up to a shift, with the least squares of misfits.

    Exact where no spans disagree; otherwise by conjugate gradients (Hestenes and Stiefel, 1952).

    >>> least_squares([Span("a", "b", 2.0), Span("a", "b", 4.0)])
    {'a': 0.0, 'b': 3.0}
    """
    at = _along_spans(spans)
    rest = _pull(spans, at, 1.0)
    way, square = dict(rest), sum(value * value for value in rest.values())
    for _ in range(len(at)):
        if square <= CLOSE_ENOUGH**2:
            break
        stiff = _pull(spans, way, 0.0)
        step = square / -sum(way[plane] * stiff[plane] for plane in at)
        at = {plane: place + step * way[plane] for plane, place in at.items()}
        rest = {plane: value + step * stiff[plane] for plane, value in rest.items()}
        before, square = square, sum(value * value for value in rest.values())
        way = {plane: rest[plane] + square / before * way[plane] for plane in at}
    start = at[spans[0].low]
    return {plane: place - start for plane, place in at.items()}


def _along_spans(spans: list[Span]) -> dict[str, float]:
    """Positions from plane to plane along the spans, each taken at its word where it is met first."""
    steps: dict[str, list[tuple[str, float]]] = defaultdict(list)
    for span in spans:
        steps[span.low].append((span.high, span.distance))
        steps[span.high].append((span.low, -span.distance))
    at, waiting = {spans[0].low: 0.0}, [spans[0].low]
    while waiting:
        here = waiting.pop()
        for there, step in steps[here]:
            if there not in at:
                at[there] = at[here] + step
                waiting.append(there)
    return at


def _pull(spans: list[Span], at: Mapping[str, float], share: float) -> dict[str, float]:
    """How strongly the misfits pull at each plane, with the given distances counted at a share."""
    pull = dict.fromkeys(at, 0.0)
    for span in spans:
        misfit = share * span.distance - (at[span.high] - at[span.low])
        pull[span.high] += misfit
        pull[span.low] -= misfit
    return pull
