"""Propellers against momentum theory's published exercises and the B-series polynomials."""

from math import pi

import numpy as np
import pytest

from model.design import Motor, Pull, Thruster
from model.thrust.propeller import (
    ideal_efficiency,
    pull_left,
    shaft_watts_for,
    static_pull,
    zero_thrust_speed,
)
from model.thrust.rated import rated
from tests import worked
from tests.reference.b_series import pull_over_advance, thrust_coefficient, zero_thrust_advance

EXERCISES = ((2.5, 700e3, 12.3, 0.745, 11.56e6), (1.5, 350e3, 12.3, 0.693, 6.21e6))
"""Ship-propeller exercises: D [m], T [N], u [m/s], ideal efficiency, power [W]; sea water of 1025 kg/m3."""
STATIC = (
    (5, 0.05, 1.0, 4.6),
    (10, 0.05, 1.0, 7.3),
    (20, 0.05, 1.0, 11.6),
    (5, 0.05, 0.5, 2.9),
    (20, 0.05, 0.5, 7.3),
)
"""Shaft W, D [m], figure of merit, pull held still [N] in water of 998 kg/m3: (2 rho A (FM P)^2)^(1/3)."""
B_SERIES = ((0.6, 0.207, 0.7), (0.8, 0.278, 0.91), (1.0, 0.342, 1.11), (0.6, 0.233, 0.68), (0.8, 0.322, 0.88))
"""P/D, K_T at rest and J at no thrust, 2 and 3 blades (Oosterveld and van Oossanen 1975)."""
MOTOR = worked.SUPPLIES.motors[0]


@pytest.mark.parametrize(("diameter", "pull", "speed", "efficiency", "power"), EXERCISES)
def test_exercises_of_momentum_theory(diameter, pull, speed, efficiency, power):
    found = ideal_efficiency(pull, speed, diameter, 1025)
    assert found == pytest.approx(efficiency, rel=1e-3)
    assert pull * speed / found == pytest.approx(power, rel=2e-3)


@pytest.mark.parametrize(("watts", "diameter", "merit", "pull"), STATIC)
def test_pull_held_still(watts, diameter, merit, pull):
    assert static_pull(watts, diameter, 998, merit) == pytest.approx(pull, abs=0.05)
    assert shaft_watts_for(static_pull(watts, diameter, 998, merit), diameter, 998, merit) == pytest.approx(
        watts
    )


@pytest.mark.parametrize(("share", "left"), [(0, 1), (0.25, 0.80), (0.5, 0.56), (0.75, 0.29), (1, 0)])
def test_the_pull_falls_as_in_the_b_series(share, left):
    assert pull_left(share) == pytest.approx(left, abs=0.012)


def test_the_pull_falls_as_the_polynomials_of_the_b_series_say():
    """The mean of six propellers; a quadratic, which a run can be solved with, comes as near as this."""
    for share in np.linspace(0, 1, 21):
        assert pull_left(share) == pytest.approx(pull_over_advance(share), abs=0.014)
    for share in (0.02, 0.05, 0.1):  # the first of the fall, which counts where weight takes most of the pull
        assert 1 - pull_left(share) == pytest.approx(1 - pull_over_advance(share), rel=0.05)


@pytest.mark.parametrize(
    ("propeller", "k_t", "advance"),
    [((0.6, 0.3, 2), 0.207, 0.70), ((1.0, 0.3, 2), 0.342, 1.11), ((0.8, 0.5, 3), 0.322, 0.88)],
)
def test_the_polynomials_are_typed_as_they_are_published(propeller, k_t, advance):
    assert thrust_coefficient(0.0, *propeller) == pytest.approx(k_t, abs=0.0006)
    assert zero_thrust_advance(*propeller) == pytest.approx(advance, abs=0.006)


@pytest.mark.parametrize(("_pitch", "k_t", "advance"), B_SERIES)
def test_the_speed_without_pull_lies_in_the_spread_of_the_b_series(_pitch, k_t, advance):
    """At n rev/s the pull is K_T rho n^2 D^4, gone at J n D: the turning speed drops out."""
    turns, diameter = 40.0, 0.05
    pull = k_t * 998 * turns**2 * diameter**4
    gone = advance * turns * diameter
    assert gone / zero_thrust_speed(pull, diameter, 998) == pytest.approx(1, abs=0.17)


def thruster(**changes):
    return Thruster(id="t", name="t", bar="b0", motor="motor", **changes)


def test_the_teams_own_pull_test_goes_before_the_stock():
    """A spring scale that reads 2.5 N ahead beats the stock's 3 N; astern keeps the stock's 2 : 3."""
    found = rated(thruster(pull=Pull(ahead=2.5, volts=11.0)), MOTOR, 0.6, 1000)
    assert (found.ahead, found.volts, found.source) == (2.5, 11.0, "own pull test")
    assert found.astern == pytest.approx(2.5 * 2 / 3)
    assert found.spread < rated(thruster(), MOTOR, 0.6, 1000).spread


def test_a_pull_that_nobody_measured_comes_from_shaft_power_with_the_stated_merit():
    motor = Motor.model_validate(
        {**dict(MOTOR), "thrust_ahead": 0.0, "thrust_astern": None, "shaft_watts": 10.0}
    )
    found = rated(thruster(), motor, 0.6, 998)
    assert found.source == "shaft power"
    assert found.ahead == pytest.approx((2 * 998 * pi / 4 * 0.05**2 * (0.4 * 10) ** 2) ** (1 / 3))
    assert found.astern == pytest.approx(0.6 * found.ahead)


def test_a_motor_of_which_nothing_is_known_pulls_nothing():
    motor = Motor.model_validate({**dict(MOTOR), "thrust_ahead": 0.0, "thrust_astern": None})
    found = rated(thruster(), motor, 0.6, 998)
    assert (found.ahead, found.astern, found.source) == (0.0, 0.0, "nothing")


def test_a_pull_below_zero_is_refused():
    with pytest.raises(ValueError, match="greater than or equal to 0"):
        Pull(ahead=-1.0)
