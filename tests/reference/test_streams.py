"""What stands in a propeller's stream against the stated rule on a dense grid, and against whole boxes."""

import numpy as np
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from shapely import Point, box

from model.design import Float, Thruster
from model.parts import Block, Cylinder
from model.survey import survey
from model.thrust.stream import Jet
from tests import worked
from tests.reference.streams import lost, weights
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


SIZES = (0.004, 0.02, 0.05, 0.12, 0.3)


@settings(max_examples=150, deadline=None)
@given(
    st.tuples(millimetres(-60, 160), millimetres(-70, 70), millimetres(-70, 70)),
    st.tuples(*[st.sampled_from(SIZES)] * 3),
)
def test_a_block_anywhere_in_the_stream_by_exact_areas(centre, size):
    """The rectangle of the block cut by the circle of the stream at the depth of its middle (shapely)."""
    found = Jet((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), RADIUS).lost(Block(centre, size))
    behind, aside, up = centre
    if not -2 * RADIUS < behind < 6 * RADIUS:
        assert found == pytest.approx(0.0, abs=1e-6) or min(abs(behind + 0.05), abs(behind - 0.15)) < 1e-6
        return
    speed = 1 + behind / (behind**2 + RADIUS**2) ** 0.5
    circle = Point(0, 0).buffer(RADIUS / speed**0.5, quad_segs=500)
    rectangle = box(aside - size[1] / 2, up - size[2] / 2, aside + size[1] / 2, up + size[2] / 2)
    expected = 1.1 * rectangle.intersection(circle).area / (np.pi * RADIUS**2) * speed**2 / 4
    assert found == pytest.approx(expected, abs=0.006)


@settings(max_examples=80, deadline=None)
@given(
    st.sampled_from(WATER[1:]),
    st.tuples(millimetres(-60, 160), millimetres(-70, 70), millimetres(-70, 70)),
    st.tuples(*[st.sampled_from(SIZES)] * 3),
)
@example((0.5**0.5, 0.5**0.5, 0.0), (0.0, 0.051, 0.0), (0.3, 0.3, 0.02))
def test_a_block_in_a_slanting_stream(water, centre, size):
    """The same by a fine grid over the rectangle that lies most across the stream."""
    way = np.array(water)
    long, wide = sorted(range(3), key=lambda axis: round(abs(way[axis]), 9))[:2]
    steps = (np.arange(601) + 0.5) / 601 - 0.5
    points = np.tile(np.array(centre), (601, 601, 1))
    points[..., long] += steps[:, None] * size[long]
    points[..., wide] += steps[None, :] * size[wide]
    area = sum(abs(way[n]) * size[n - 1] * size[n - 2] for n in range(3))
    expected = 1.1 * area * weights(points, way, RADIUS).mean() / (np.pi * RADIUS**2)
    assert Jet((0.0, 0.0, 0.0), water, RADIUS).lost(Block(centre, size)) == pytest.approx(expected, abs=0.02)


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
