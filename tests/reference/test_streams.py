"""What stands in a propeller's stream against the stated rule on a dense grid, and against whole boxes."""

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from model.design import Float, Thruster
from model.parts import Cylinder
from model.survey import survey
from model.thrust.stream import Jet
from tests import worked
from tests.reference.streams import lost
from tests.reference.swimmer import Swimmer
from tests.reference.test_motion_swimmer import SUPPLIES, WAYS

RADIUS = 0.025
WATER = ((1.0, 0.0, 0.0), (0.5**0.5, 0.5**0.5, 0.0), (0.5**0.5, 0.0, -(0.5**0.5)))
AXES = (np.array([1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0]))


def millimetres(low, high):
    return st.integers(low, high).map(lambda number: number / 1000)


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from(WATER),
    st.sampled_from(AXES),
    st.tuples(millimetres(-60, 160), millimetres(-60, 60), millimetres(-60, 60)),
    st.sampled_from((0.03, 0.1, 0.4)),
    st.sampled_from((0.0213, 0.028, 0.06)),
    st.floats(-0.5, 0.5),
)
def test_a_round_body_anywhere_in_the_stream(water, axis, off, length, wide, slid):
    """To a fiftieth of the pull, and to far less for what is no wider than the propeller."""
    way = np.array(water)
    middle = off[0] * way + np.array([0.0, off[1], off[2]]) + slid * length * axis
    a, b = middle - length / 2 * axis, middle + length / 2 * axis
    expected = lost(np.zeros(3), way, RADIUS, a, b, wide)
    solid = Cylinder(tuple(map(float, a)), tuple(map(float, b)), wide / 2)
    found = Jet((0.0, 0.0, 0.0), water, RADIUS).lost(solid)
    assert found == pytest.approx(expected, abs=0.02 if wide > 2 * RADIUS else 0.008)


@st.composite
def crowded(draw):
    """A box with motors in the middle of things."""
    items = tuple(
        Thruster(
            id=f"t{number}",
            name=f"t{number}",
            bar=draw(st.sampled_from(("b0", "b3", "b5", "b8"))),
            at=draw(st.sampled_from((0.2, 0.5, 0.8))),
            motor=draw(st.sampled_from(("motor", "big"))),
            to=draw(st.sampled_from(WAYS)),
            offset=tuple(draw(millimetres(-90, 90)) for _ in range(3)),
        )
        for number in range(draw(st.integers(1, 4)))
    )
    foam = (Float(id="f", name="f", foam="noodle", bar="b1", length=0.12),)
    size = [draw(st.sampled_from((0.25, 0.4))) for _ in range(3)]
    return worked.design(worked.box(*size, thrusters=items, floats=foam), supplies=SUPPLIES)


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(crowded())
def test_streams_through_a_whole_vehicle(design):
    """Frame, hubs, foam, and the bodies and propellers of the other motors; each way."""
    found = survey(design)
    swimmer = Swimmer(design, found.balance.density)
    for number, room in enumerate(found.clear):
        assert room.ahead.lost == pytest.approx(swimmer.lost(number, 1), abs=0.02)
        assert room.astern.lost == pytest.approx(swimmer.lost(number, -1), abs=0.02)
