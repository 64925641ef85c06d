"""Pieces that are sawn already: the planes at their ends follow them, and the rest is fitted round.

Each sawn bar fixes the distance between two planes.  Where several disagree, the planes lie where
the squares of the misfits add up to the least (least squares, Gauss and Legendre).
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from heapq import heapify, heappop, heappush

from msgspec import Struct

from model.units import snap

SAME = 1e-6
"""[m] Planes whose distances from the middle differ by less than this are equally far from it."""


class Span(Struct, frozen=True):
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

    Each plane lies at the mean of where its spans put it.  Planes are taken out one by one, those
    with the fewest neighbours first, and their neighbours tied to each other instead, as a star of
    springs is replaced by a mesh; then they are put back in turn.

    >>> least_squares([Span("a", "b", 2.0), Span("a", "b", 4.0)])
    {'a': 0.0, 'b': 3.0}
    """
    ties, pull = _springs(spans)
    waiting = [(len(near), plane) for plane, near in ties.items()]
    heapify(waiting)
    taken: list[tuple[str, dict[str, float], float]] = []
    while len(ties) > 1:
        count, plane = heappop(waiting)
        if plane not in ties or count != len(ties[plane]):
            continue  # taken out, or tied anew since
        near = ties.pop(plane)
        taken.append((plane, near, pull[plane]))
        for neighbour in _mesh(ties, pull, plane, near):
            heappush(waiting, (len(ties[neighbour]), neighbour))
    at = dict.fromkeys(ties, 0.0)
    for plane, near, force in reversed(taken):
        at[plane] = (force + sum(tie * at[other] for other, tie in near.items())) / sum(near.values())
    return {plane: place - at[spans[0].low] + 0.0 for plane, place in sorted(at.items())}


def _springs(spans: list[Span]) -> tuple[dict[str, dict[str, float]], dict[str, float]]:
    """How strongly planes are tied to each other, and how far the spans push each to its high side."""
    ties: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    pull: dict[str, float] = defaultdict(float)
    for span in spans:
        ties[span.low][span.high] += 1.0
        ties[span.high][span.low] += 1.0
        pull[span.high] += span.distance
        pull[span.low] -= span.distance
    return dict(ties), pull


def _mesh(
    ties: dict[str, dict[str, float]], pull: dict[str, float], plane: str, near: Mapping[str, float]
) -> list[str]:
    """Ties a plane's neighbours to each other in its place; the neighbours."""
    total = sum(near.values())
    for first, tie in near.items():
        del ties[first][plane]
        pull[first] += pull[plane] * tie / total
        for second, other in near.items():
            if second != first:
                ties[first][second] += tie * other / total
    return list(near)
