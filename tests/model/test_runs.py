"""A run on paper: hand-worked and stepped by scipy from the equation's own numbers."""

import pytest
from scipy.integrate import solve_ivp

from model.design import Brief, Leg, Load
from model.files import load_design
from model.motion.attitude import AHEAD
from model.motion.straight import pushes_along
from model.presets import built_in_folder
from model.runs import leg_words, run_time
from model.survey import motion_of, survey
from model.vectors import scale
from tests.model.thrust_cases import port, starboard, swimmer, upright


def timed(*legs, thrusters=None, **rules):
    """A box on a course."""
    pair = (port(), starboard(), upright()) if thrusters is None else thrusters
    return survey(swimmer(*pair, brief=Brief(course=legs, **rules)))


@pytest.mark.parametrize("way", [0.05, 0.3, 3.0])
def test_a_straight_leg_is_driven_and_braked(way):
    """Full ahead until the motors, turned round, just stop it at the end; the switch is sought by halving."""
    found = timed(Leg(ahead=way))
    body = motion_of(found).body
    push, brake = pushes_along(body, AHEAD)[0], pushes_along(body, scale(AHEAD, -1))[0].still
    drag = sum(body.drag_ahead)

    def drive(switch):
        def ahead(_, s):
            return [s[1], (push.still - push.slope * s[1] - push.square * s[1] ** 2) / push.mass]

        def back(_, s):
            return [s[1], -(brake + drag * s[1] ** 2) / push.mass]

        def stopped(_, s):
            return s[1]

        stopped.terminal = True
        first = solve_ivp(ahead, (0, switch), [0, 0], rtol=1e-9, atol=1e-12)
        rest = solve_ivp(back, (0, 100), first.y[:, -1], events=stopped, rtol=1e-9, atol=1e-12)
        return rest.y[0][-1], switch + rest.t[-1]

    low, high = 0.0, 100.0
    for _ in range(50):
        middle = (low + high) / 2
        low, high = (middle, high) if drive(middle)[0] < way else (low, middle)
    assert run_time(found).total.value == pytest.approx(drive(low)[1], rel=0.01)


def test_a_course_is_the_sum_of_its_legs_and_waits():
    found = timed(Leg(ahead=2.0, wait=5.0), Leg(turn=90), Leg(climb=-0.5))
    result = run_time(found)
    assert result.total.value == pytest.approx(sum(leg.time.value for leg in result.legs))
    assert result.total.low < result.total.value < result.total.high
    assert [leg.problem for leg in result.legs] == ["", "", ""]
    assert run_time(timed(Leg(ahead=2.0))).total.value == pytest.approx(result.legs[0].time.value - 5.0)


def test_twice_as_far_takes_less_than_twice_as_long():
    once, twice = (run_time(timed(Leg(turn=angle))).total.value for angle in (90, 180))
    assert once < twice < 2 * once


def test_a_load_slows_the_climb():
    newt = load_design(built_in_folder() / "demo" / "newt.toml").design
    legs = (Leg(climb=1.0), Leg(climb=1.0, loaded=True))
    brief = newt.brief.but(course=legs, load=Load(mass=0.05))
    bare, loaded = run_time(survey(newt.but(brief=brief))).legs
    assert loaded.time.value > bare.time.value


def test_what_cannot_be_done_is_said():
    result = run_time(timed(Leg(ahead=1.0), Leg(turn=90), Leg(climb=-1.0), thrusters=()))
    assert [leg.problem for leg in result.legs] == [
        "no thruster drives it ahead",
        "the thrusters cannot turn it",
        "the thrusters cannot push it down",
    ]
    assert result.total is None


def test_without_a_course_there_is_no_time():
    result = run_time(timed())
    assert result.legs == ()
    assert result.total is None


def test_a_leg_in_words():
    assert leg_words(Leg()) == "nothing"
    assert leg_words(Leg(climb=0.5, loaded=True)) == "0.5 m up, with the load"
