"""Times to flood and to drain of real pipes, against quadrature of the textbook formulas."""

from math import pi, sqrt

import pytest
from scipy.integrate import quad

from model.design import Opening
from model.frame.layout import lay_out
from model.water.air.attitudes import LEVEL, Attitude
from model.water.air.flow import draining, flooding
from model.water.air.network import network_of
from tests.worked import arrangement, design

INCH, G = 0.0254, 9.80665
BORE, WALL, HIGH = 0.301 * INCH, 0.562 * INCH, 0.4
"""Radius of the bore, end wall of a cap, and height of the pipe from centre to centre [m]."""
WATER, AIR, DRILLED, DIAMETER = 996.5, 1.184, 0.65, 0.006


def upright(*shares):
    """A capped upright pipe with holes in its side."""
    run = arrangement((0.0,), (0.0,), (0.0, HIGH), [((0, 0, 0), (0, 0, 1))])
    holes = tuple(
        Opening(id=f"o{n}", name=f"hole {n}", bar="b0", at=share, face="+x", diameter=DIAMETER)
        for n, share in enumerate(shares)
    )
    drawn = design(run.but(openings=holes))
    return network_of(lay_out(drawn, drawn.arrangement), holes)


def pace(surface, low, high, entering, leaving):
    """Seconds for each metre that the surface rises: two equal holes in series."""
    area, head = pi / 4 * DIAMETER**2, high - max(low, surface)
    flow = DRILLED * area * sqrt(2 * G * abs(WATER - AIR) * head / (entering + leaving))
    return pi * BORE**2 / flow


def until(low, high, entering, leaving):
    """Seconds for 95 % of what can be filled, up to the top of the high hole's rim."""
    top = high + DIAMETER / 2
    full = WALL + 0.95 * (top - WALL)
    return quad(pace, WALL, full, args=(low, high, entering, leaving), points=[low])[0]


def test_an_upright_pipe_floods():
    """Water in at 100 mm, air out at 380 mm."""
    flow = flooding(upright(0.25, 0.95), LEVEL.up, WATER)
    assert flow.volume == pytest.approx(pi * BORE**2 * (0.38 + DIAMETER / 2 - WALL))
    assert flow.seconds == pytest.approx(until(0.1, 0.38, WATER, AIR), rel=0.02)


def test_an_upright_pipe_drains():
    """Air in at 300 mm, water out at 20 mm: the flooding of the pipe turned over, by air."""
    flow = draining(upright(0.05, 0.75), LEVEL.up, WATER)
    assert flow.volume == pytest.approx(pi * BORE**2 * (0.38 + DIAMETER / 2 - WALL))
    assert flow.seconds == pytest.approx(until(0.1, 0.38, AIR, WATER), rel=0.02)


def test_it_drains_as_fast_as_it_floods_where_the_holes_mirror_each_other():
    """The same two holes in series either way, and the same head: to 95 % the surfaces mirror too."""
    network = upright(0.1, 0.9)
    there, back = flooding(network, LEVEL.up, WATER), draining(network, LEVEL.up, WATER)
    assert there.seconds == pytest.approx(back.seconds, rel=1e-6)


def test_holes_at_one_height_give_no_flow_and_a_tilt_does():
    network = upright(0.5)
    assert flooding(network, LEVEL.up, WATER).seconds is None
    level = upright(0.3, 0.7)
    assert flooding(level, Attitude("on its side", 90, 0).up, WATER).seconds is None
    assert flooding(level, Attitude("nearly", 80, 0).up, WATER).seconds is not None


def test_a_pipe_without_holes_neither_floods_nor_drains():
    flow = flooding(upright(), LEVEL.up, WATER)
    assert (flow.volume, flow.seconds) == (0.0, 0.0)
