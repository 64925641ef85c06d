"""Planes that follow sawn pieces, against numpy's least squares."""

from itertools import pairwise
from random import Random
from time import perf_counter

import numpy as np
import pytest

from model.frame.sawn import Span, held_planes, least_squares


def solved(spans):
    """Positions and misfits by numpy, the planes in the order of their names."""
    names = sorted({end for span in spans for end in (span.low, span.high)})
    rows = np.zeros((len(spans), len(names)))
    for row, span in zip(rows, spans, strict=True):
        row[names.index(span.high)] += 1
        row[names.index(span.low)] -= 1
    wanted = np.array([span.distance for span in spans])
    at = np.linalg.lstsq(rows, wanted, rcond=None)[0]
    return names, at, rows @ at - wanted


@pytest.mark.parametrize("seed", range(25))
def test_pieces_that_disagree_lie_at_the_least_squares(seed):
    dice = Random(seed)
    names = [f"p{n}" for n in range(dice.randint(2, 12))]
    spans = [Span(a, b, dice.uniform(0.05, 0.3)) for a, b in pairwise(names)]
    for _ in range(dice.randint(1, 20)):
        a, b = dice.sample(names, 2)
        spans.append(Span(a, b, dice.uniform(-0.5, 0.5)))
    found = least_squares(spans)
    order, at, _ = solved(spans)
    expected = at - at[order.index(spans[0].low)]
    assert [found[name] for name in order] == pytest.approx(list(expected), abs=1e-9)


def test_pieces_that_agree_are_met_exactly():
    spans = [Span("a", "b", 0.1), Span("b", "c", 0.2), Span("a", "c", 0.3)]
    assert least_squares(spans) == pytest.approx({"a": 0.0, "b": 0.1, "c": 0.3}, abs=1e-12)


def test_the_plane_nearest_to_the_middle_stays():
    at = {"a": 0.0, "b": 0.1, "c": 0.4}
    assert held_planes(at, [Span("a", "b", 0.15)], at) == {"a": -0.05, "b": 0.1, "c": 0.4}
    assert held_planes(at, [Span("b", "c", 0.25)], at) == {"a": 0.0, "b": 0.1, "c": 0.35}


def test_planes_equally_far_from_the_middle_give_way_alike():
    at = {"a": -0.2, "b": 0.2, "idle": 5.0}
    assert held_planes(at, [Span("a", "b", 0.3)], ("a", "b")) == {"a": -0.15, "b": 0.15, "idle": 5.0}


def test_groups_that_share_no_plane_move_apart_from_each_other():
    at = {"a": -0.3, "b": -0.1, "c": 0.1, "d": 0.3}
    after = held_planes(at, [Span("a", "b", 0.1), Span("c", "d", 0.25)], at)
    assert after == {"a": -0.2, "b": -0.1, "c": 0.1, "d": 0.35}


def test_two_thousand_sawn_pieces_that_disagree_are_solved_in_time():
    """At the least squares the misfits pull at no plane: the normal equations, to rounding."""
    dice = Random(5)
    spans = [Span(f"p{n}", f"p{n + 1}", 0.1) for n in range(1000)]
    spans += [Span(f"p{n}", f"p{n + 2}", 0.2 + dice.uniform(-1e-3, 1e-3)) for n in range(999)]
    began = perf_counter()
    at = least_squares(spans)
    assert perf_counter() - began < 1.0
    pull = dict.fromkeys(at, 0.0)
    for span in spans:
        misfit = at[span.high] - at[span.low] - span.distance
        pull[span.high] += misfit
        pull[span.low] -= misfit
    assert max(map(abs, pull.values())) < 1e-11
