"""Boxes with any number of thrusters in any direction against an independent simulation.

Thrusters stand anywhere, in each other's streams and in the frame's, and half of the boxes have a wiring
(one that loses no volts) with switches that turn a motor round or not.

Speeds agree within a flat 2 %, also where weight takes nearly all of the pull: there a hundredth of the pull
is much of what is left, so the simulation takes the pull from the B-series' polynomials and not from straight
lines between printed points; and it works out itself what each stream loses.
"""

import numpy as np
import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from model.design import Battery, Branch, Float, Motor, Power, Tether, Thruster
from model.motion.attitude import couples
from model.motion.motion import AHEAD, ASTERN, DOWN, UP
from model.motion.path import REST, rates, step
from model.motion.straight import run
from model.motion.turning import turn
from model.survey import motion_of, survey
from tests import worked
from tests.reference.swimmer import Swimmer, direction

WAYS = ("+x", "-x", "+y", "-y", "+z", "-z", "+x+y", "+x-z", "-x+z", "+y+z", "-x-y")
HEIGHTS = (-0.05, 0.0, 0.04)
SLOW = settings(
    max_examples=8,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),  # to shrink a simulation takes minutes
    suppress_health_check=[HealthCheck.too_slow],
)
MOTORS = (
    worked.SUPPLIES.motors[0],
    Motor(
        id="big",
        name="big",
        mass=0.25,
        mass_in_water=0.12,
        body_diameter=0.044,
        body_length=0.095,
        propeller_diameter=0.06,
        thrust_ahead=5.5,
        thrust_astern=3.1,
    ),
)
SUPPLIES = worked.SUPPLIES.but(motors=MOTORS)
SWITCHES = ("reversing switch", "on-off switch", "controller")
LOSSLESS = Power(battery=Battery(resistance=0.0), lead_length=0.0, length=0.0, plugs=0, contact=0.0)
"""All 12 V of the motors' test arrive."""


@st.composite
def boxes(draw):
    """A box of any size with 0 to 6 thrusters, outside it or within."""
    count = draw(st.integers(0, 6))
    thrusters = []
    for number in range(count):
        side = draw(st.sampled_from((-1, 1)))
        thrusters.append(
            Thruster(
                id=f"t{number}",
                name=f"t{number}",
                bar=draw(st.sampled_from(("b0", "b1", "b2", "b3"))),
                at=draw(st.sampled_from((0.3, 0.5, 0.7))),
                motor=draw(st.sampled_from(("motor", "big"))),
                to=draw(st.sampled_from(WAYS)),
                offset=(
                    0.25 * number - 0.6,
                    side * (0.35 + 0.25 * number),
                    draw(st.sampled_from((-0.05, 0.0, 0.04))),
                ),
                branch=Branch(switching=draw(st.sampled_from(SWITCHES))),
            )
        )
    floats = (Float(id="f", name="f", foam="noodle", bar="b1", length=draw(st.sampled_from((0.05, 0.12)))),)
    tether = Tether(
        id="c", name="c", bar="b5", at=draw(st.sampled_from((0.3, 0.5))), diameter=0.008,
        hanging=draw(st.sampled_from((0.0, 1.5, 3.0))), mass_per_m=0.06, mass_in_water_per_m=0.01,
    )  # fmt: skip
    size = [draw(st.sampled_from((0.25, 0.4, 0.6))) for _ in range(3)]
    items = {"thrusters": tuple(thrusters), "floats": floats}
    if draw(st.booleans()):
        items["tether"] = tether
    if draw(st.booleans()):
        items["power"] = LOSSLESS
    return worked.design(worked.box(*size, **items), supplies=SUPPLIES)


def both(design):
    """The model's motion and the independent one, in the same water."""
    found = survey(design)
    return found, motion_of(found), Swimmer(design, found.balance.density)


@SLOW
@given(boxes())
def test_mass_and_g_are_those_of_the_raw_numbers(design):
    found, _, swimmer = both(design)
    assert found.balance.mass == pytest.approx(swimmer.mass, rel=1e-6)
    assert found.balance.g == pytest.approx(tuple(swimmer.g), abs=1e-6)


@SLOW
@given(boxes())
def test_top_speeds_times_and_distances(design):
    found, moving, swimmer = both(design)
    for way, text in ((AHEAD, "+x"), (ASTERN, "-x"), (UP, "+z"), (DOWN, "-z")):
        vector = direction(text)
        net = found.balance.net
        result = run(moving.body, way)
        pushes = swimmer.thrust(swimmer.orders(vector), np.zeros(3), np.zeros(3))[0] @ vector
        if result is None:
            assert pushes <= 0 or pushes + net * vector[2] <= 0
            continue
        assert result.top.value == pytest.approx(swimmer.top(vector, net), rel=0.02)
        assert result.top.low < result.top.value < result.top.high
        if vector[2] == 0:
            mass = moving.body.carried + swimmer.added(vector)
            assert result.push.mass == pytest.approx(mass, rel=1e-6)
            time, distance = swimmer.to_ninety(vector, mass)
            assert result.time.value == pytest.approx(time, rel=0.03)
            assert result.distance.value == pytest.approx(distance, rel=0.03)


@SLOW
@given(boxes())
def test_a_quarter_turn(design):
    _, moving, swimmer = both(design)
    for to_port in (True, False):
        result = turn(moving.body, to_port=to_port)
        if result is not None:
            # the pull falls along a curve here and along the published points there
            expected = swimmer.quarter(moving.body.inertia.zz, to_port)
            assert result.quarter.value == pytest.approx(expected, rel=0.04)


@SLOW
@given(boxes())
def test_the_couple_of_thrust_and_drag(design):
    """To 2 %; where motors on long arms nearly cancel, to 1 % of the moment of one of them.

    Two of 5.5 N on arms of 1 m leave 0.1 N m, say; each pull is known to 1.4 % of that at rest (the curve of
    ``pull_left`` against the B-series, see ``test_propeller``), which is 0.08 N m of moment.
    """
    found, moving, swimmer = both(design)
    for way, text in ((AHEAD, "+x"), (UP, "+z")):
        if run(moving.body, way) is not None:
            vector = direction(text)
            expected = swimmer.couple(vector, found.balance.net)
            velocity = swimmer.top(vector, found.balance.net) * vector
            orders = np.diag(swimmer.orders(vector))
            one = max(np.abs(swimmer.thrust(order, velocity, np.zeros(3))[1]).max() for order in orders)
            room = max(0.02 * np.abs(expected).max(), 0.01 * one) + 1e-4
            assert couples(moving.body, way)[0] == pytest.approx(tuple(expected), abs=room)


@SLOW
@given(boxes())
def test_the_turn_in_each_metre_that_holds_what_pulls_it_aside(design):
    """The rate at which the drag of turning, at top speed, is as much as the couple of thrust and drag."""
    _, moving, swimmer = both(design)
    if moving.ahead is None:
        return
    speed, moment = moving.ahead.top.value, couples(moving.body, AHEAD)[0][2]
    velocity = np.array([speed, 0.0, 0.0])

    def left(rate):
        turned, straight = (swimmer.drag(velocity, np.array([0.0, 0.0, r]))[1][2] for r in (rate, 0.0))
        return moment + turned - straight

    expected = brentq(left, *sorted((0.0, np.copysign(500.0, moment))))
    assert moving.veer.value == pytest.approx(np.degrees(expected) / speed, rel=0.015, abs=0.05)


@SLOW
@given(boxes(), st.sampled_from(((1, -1), (1, 1), (-1, 0))))
def test_the_curve_in_the_level_plane(design, senses):
    """Two seconds at any orders, stepped by our own rule and by scipy's."""
    _, moving, swimmer = both(design)
    level = [abs(drive[1][2]) < 0.01 for drive in swimmer.drives]
    order = [senses[n % 2] if flat else 0 for n, flat in enumerate(level)]
    names = [drive.thruster for drive in moving.body.drives]
    state = REST
    for _ in range(40):
        state = step(moving.body, dict(zip(names, order, strict=True)), state, 0.05)
    masses = (
        moving.body.carried + swimmer.added(direction("+x")),
        moving.body.carried + swimmer.added(direction("+y")),
        moving.body.inertia.zz,
    )
    expected = swimmer.planar(order, masses, 2.0)
    assert state == pytest.approx(tuple(expected), rel=0.05, abs=0.02)


@SLOW
@given(boxes())
def test_how_far_a_quarter_turn_slides_off_its_spot(design):
    """To a tenth and 10 mm: what motors on both sides leave is small beside their pulls, known to 1.4 %."""
    _, moving, swimmer = both(design)
    slower = moving.slower_turn
    if slower is None:
        return
    masses = (
        moving.body.carried + swimmer.added(direction("+x")),
        moving.body.carried + swimmer.added(direction("+y")),
        moving.body.inertia.zz,
    )
    expected = swimmer.drift(slower is moving.port, masses, 3 * slower.quarter.value)
    if expected is None or moving.drift is None:
        assert expected is moving.drift
    else:
        assert moving.drift.value == pytest.approx(expected, rel=0.1, abs=0.01)


speeds = st.floats(-0.5, 0.5).map(lambda x: round(x, 3))


@SLOW
@given(boxes(), speeds, speeds, speeds)
def test_a_vehicle_that_slides_is_turned_by_the_water_it_carries(design, u, v, r):
    """Kirchhoff: added mass that differs along the axes turns it by (m_x - m_y) u v; motors off."""
    _, moving, swimmer = both(design)
    body = moving.body
    force, moment = swimmer.drag(np.array([u, v, 0.0]), np.array([0.0, 0.0, r]))
    mx = body.carried + swimmer.added(direction("+x"))
    my = body.carried + swimmer.added(direction("+y"))
    expected = (
        (force[0] + my * v * r) / mx,
        (force[1] - mx * u * r) / my,
        (moment[2] + (mx - my) * u * v) / body.inertia.zz,
    )
    assert rates(body, {}, (0.0, 0.0, 0.0, u, v, r))[3:] == pytest.approx(expected, rel=0.01, abs=0.003)
