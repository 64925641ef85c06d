"""The equation of speeding up and stopping: closed forms against scipy and textbook limits."""

from math import atanh, log, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from model.motion.span import spanned
from model.motion.speed import Push, coasting, stopping

PUSHES = st.builds(
    Push,
    mass=st.floats(0.3, 30),
    still=st.floats(0.1, 40),
    slope=st.floats(0, 20),
    square=st.floats(0.5, 200),
)


@settings(max_examples=40, deadline=None)
@given(PUSHES, st.sampled_from((0.5, 0.9, 0.99)))
def test_time_and_distance_are_what_scipy_steps_to(push, share):
    goal = share * push.top

    def there(_, state):
        return state[1] - goal

    there.terminal = True

    def rates(_, s):
        return [s[1], (push.still - push.slope * s[1] - push.square * s[1] ** 2) / push.mass]

    run = solve_ivp(rates, (0, 1e4), [0, 0], events=there, rtol=1e-9, atol=1e-12)
    assert push.still - push.slope * push.top - push.square * push.top**2 == pytest.approx(0, abs=1e-9)
    assert push.time(goal) == pytest.approx(run.t[-1], rel=1e-5)
    assert push.distance(goal) == pytest.approx(run.y[0][-1], rel=1e-4)
    assert push.speed_after(push.distance(goal)) == pytest.approx(goal, rel=1e-9)
    assert push.time_over(push.distance(goal)) == pytest.approx(push.time(goal), rel=1e-6)


@given(st.floats(0.5, 20), st.floats(0.1, 20), st.floats(0.5, 100))
def test_without_a_slope_it_is_the_falling_body_with_drag(mass, force, k):
    """u1 = sqrt(F/k), t = m/sqrt(F k) atanh(u/u1), x = -m/(2k) ln(1 - (u/u1)^2): textbook."""
    push = Push(mass, force, 0.0, k)
    assert push.top == pytest.approx(sqrt(force / k))
    assert push.time(0.9 * push.top) == pytest.approx(mass / sqrt(force * k) * atanh(0.9))
    assert push.distance(0.9 * push.top) == pytest.approx(-mass / (2 * k) * log(1 - 0.81))


@settings(max_examples=30, deadline=None)
@given(st.floats(0.3, 20), st.floats(0.05, 2), st.floats(0.1, 20), st.floats(0.5, 100))
def test_stopping_is_what_scipy_steps_to(mass, speed, brake, k):
    def stopped(_, state):
        return state[1]

    stopped.terminal = True

    def rates(_, s):
        return [s[1], -(brake + k * s[1] ** 2) / mass]

    run = solve_ivp(rates, (0, 1e4), [0, speed], events=stopped, rtol=1e-9, atol=1e-12)
    time, distance = stopping(mass, speed, brake, k)
    assert time == pytest.approx(run.t[-1], rel=1e-5)
    assert distance == pytest.approx(run.y[0][-1], rel=1e-5)


@given(st.floats(0.3, 20), st.floats(0.5, 100))
def test_coasting_to_a_tenth(mass, k):
    assert coasting(mass, k) == pytest.approx(mass / k * log(10))


def test_nothing_that_pushes_has_no_top_speed():
    assert Push(1.0, 0.0, 1.0, 1.0).top == 0.0


@given(st.floats(-10, 10), st.lists(st.floats(-10, 10), max_size=8))
def test_a_span_holds_its_value_and_each_cause_alone(value, variants):
    span = spanned(value, variants)
    assert span.low <= span.value <= span.high
    for variant in variants:
        assert span.low - 1e-9 <= variant <= span.high + 1e-9
