"""Tolerances against a Monte Carlo run: pieces are sawn and pushed in wrong by chance, and measured.

Errors are normal, with the cutting error and the push-in scatter as three standard deviations.
The rows of bars and the corners of the rectangles are set by hand here.
"""

from itertools import product
from math import hypot, sqrt

import numpy as np
import pytest

from model.design import Attachment, Brief, Thresholds
from model.survey import survey
from model.tolerance import chance_over, rectangles, size_errors
from tests import worked

DRAWS = 200_000
CUT, PUSH = 0.0016, 0.003
LIMITS = Thresholds(cut_error=CUT, insertion_scatter=PUSH)


def errors_of(design):
    found = survey(design)
    return size_errors(found.arrangement, found.frame, found.parts, found.extents, design.brief.thresholds)


def limited(design, *limit):
    return design.but(brief=Brief(size_limit=limit, thresholds=LIMITS))


def sawn(dice, bars=1):
    """How far a row of bars comes out too long [m]: one cut and two dry ends each."""
    cuts = dice.normal(0, CUT / 3, (DRAWS, bars)).sum(axis=1)
    return cuts + dice.normal(0, PUSH / 3, (DRAWS, 2 * bars)).sum(axis=1)


def test_one_bar_as_the_formula_says():
    """A side is off by t + 2e at worst and by sqrt(t^2 + 2 e^2) as root-sum-square."""
    length, width, height = errors_of(limited(worked.design(worked.box()), 1, 1, 1))
    for found in (length, width, height):
        assert len(found.bars) == 1
        assert found.errors.worst == pytest.approx(CUT + 2 * PUSH)
        assert found.errors.rss == pytest.approx(sqrt(CUT**2 + 2 * PUSH**2))


@pytest.mark.parametrize("margin", [-0.002, 0.0, 0.001, 0.003])
def test_the_chance_that_the_limit_is_broken(margin):
    design = worked.design(worked.box())
    size = survey(design).extents.size
    design = limited(design, size[0] + margin, size[1] + 1, size[2] + 0.002)
    dice = np.random.default_rng(7)
    broken = (sawn(dice) > margin) | (sawn(dice) > 0.002)
    found = errors_of(design)
    assert chance_over(found) == pytest.approx(broken.mean(), abs=0.005)


def test_bars_in_a_row_add_up():
    """A mid station makes two bars of the length, with four dry ends."""
    bars = [
        *[((0, y, 0), (1, y, 0)) for y in (0, 1)],
        *[((1, y, 0), (2, y, 0)) for y in (0, 1)],
        *[((x, 0, 0), (x, 1, 0)) for x in (0, 1, 2)],
    ]
    run = worked.arrangement((-0.2, 0.0, 0.2), (-0.15, 0.15), (0.0,), bars)
    length, width, _ = errors_of(limited(worked.design(run), 1, 1, 1))
    assert (len(length.bars), len(width.bars)) == (2, 1)
    assert length.errors.worst == pytest.approx(2 * (CUT + 2 * PUSH))
    spread = sawn(np.random.default_rng(3), bars=2).std()
    assert length.errors.rss / 3 == pytest.approx(spread, rel=0.01)


def test_the_fewest_bars_set_a_size():
    """The starboard side is three bars long and the port side two: two bars are what the length hangs on."""
    port = [((0, 1, 0), (3, 1, 0)), ((3, 1, 0), (4, 1, 0))]
    starboard = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 0, 0)), ((2, 0, 0), (4, 0, 0))]
    across = [((x, 0, 0), (x, 1, 0)) for x in (0, 4)]
    run = worked.arrangement((-0.4, -0.2, 0.0, 0.1, 0.4), (-0.15, 0.15), (0.0,), [*port, *starboard, *across])
    assert errors_of(limited(worked.design(run), 1, 1, 1))[0].bars == ("b0", "b1")


def test_cement_and_a_sawn_piece_leave_less_to_chance():
    run = worked.box()
    cemented = limited(worked.design(run.but(joining="cemented")), 1, 1, 1)
    assert errors_of(cemented)[0].errors.worst == pytest.approx(CUT)
    bars = tuple(bar.but(sawn=0.35) for bar in run.bars)
    assert errors_of(limited(worked.design(run.but(bars=bars)), 1, 1, 1))[0].errors.worst == pytest.approx(
        2 * PUSH
    )


def diagonals(a, b, offs):
    """The difference of the diagonals of a frame with one square corner and four wrong sides [m]."""
    bottom, right, top, left = (side + off for side, off in zip((a, b, a, b), offs, strict=True))
    # the far corner lies where circles about the two known corners cross
    x0, y0, x1, y1 = bottom, 0 * bottom, 0 * left, left
    between = np.hypot(x1 - x0, y1 - y0)
    along = (right**2 - top**2 + between**2) / (2 * between)
    up = np.sqrt(right**2 - along**2)
    x = x0 + along * (x1 - x0) / between + up * (y1 - y0) / between
    y = y0 + along * (y1 - y0) / between - up * (x1 - x0) / between
    return np.hypot(x, y) - between


def test_the_diagonals_of_a_rectangle():
    """The greatest difference over all wrong sides, and its scatter."""
    shapes = rectangles(survey(worked.design(worked.box(0.4, 0.3, 0.2))).frame, LIMITS)
    assert sorted(tuple(round(side, 6) for side in shape.sides) for shape in shapes) == sorted(
        2 * [(0.4, 0.3)] + 2 * [(0.4, 0.2)] + 2 * [(0.3, 0.2)]
    )
    dice = np.random.default_rng(11)
    for shape in shapes:
        a, b = shape.sides
        differences = diagonals(a, b, [sawn(dice) for _ in range(4)])
        assert shape.diagonals.rss / 3 == pytest.approx(differences.std(), rel=0.01)
        off = CUT + 2 * PUSH
        tenth = np.array(list(product((-off / 10, off / 10), repeat=4))).T  # so small that first order is all
        assert shape.diagonals.worst == pytest.approx(10 * abs(diagonals(a, b, tenth)).max(), rel=0.005)
        assert shape.diagonals.worst == pytest.approx(2 * off * (a + b) / hypot(a, b), rel=1e-9)


def test_a_part_that_reaches_past_the_frame_hangs_on_its_bar():
    """A long part on the foremost crossbar is the length alone: no bar runs between its ends."""
    run = worked.box(0.1, 0.3, 0.2)
    hook = Attachment(id="a1", name="long", bar="b6", size=(1.0, 0.02, 0.02), mass=0.1, mass_in_water=0.05)
    design = limited(worked.design(run.but(attachments=(hook,))), 2, 2, 2)
    assert errors_of(design)[0].bars == ()
    assert errors_of(design)[0].chance == 0.0
