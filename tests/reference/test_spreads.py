"""Tilt, veer and roll under full thrust with how far they may be off, from the independent simulation.

Each cause is moved alone and the offs on each side add up as the root of the sum of squares: drag of pipes
0.75 to 1.10, of motors and foam 0.8 to 1.2, of the tether 0.5 to 1.2; pulls of the stock 15 % either way;
speed at which they end 1.77 to 2.38 for 2.05; mass is of no moment; BG 3 mm either way; motors of one kind
10 % unlike (common practice).
"""

from math import asin, degrees, hypot

import numpy as np
import pytest

from model.design import Float, Tether, Thruster
from model.motion.motion import AHEAD
from model.motion.straight import run
from model.survey import motion_of, survey
from tests import worked
from tests.model.thrust_cases import swimmer, upright
from tests.reference.swimmer import Swimmer, direction
from tests.reference.test_motion_swimmer import SUPPLIES

CAUSES = (
    {"pipes": 0.75, "bodies": 0.80, "tether": 0.50},
    {"pipes": 1.10, "bodies": 1.20, "tether": 1.20},
    {"pull": 0.85},
    {"pull": 1.15},
    {"gone": 1.77 / 2.05},
    {"gone": 2.38 / 2.05},
)
X, Z = direction("+x"), direction("+z")
GRAVITY = 9.80665


def thruster(name, bar, offset, **more):
    return Thruster(**{"id": name, "name": name, "bar": bar, "motor": "motor", "offset": offset, **more})


def box(*thrusters, **items):
    """A box with foam high up, so that it floats upright."""
    foam = tuple(Float(id=bar, name=bar, foam="noodle", bar=bar, length=0.2) for bar in ("b1", "b3"))
    return worked.design(worked.box(thrusters=thrusters, floats=foam, **items), supplies=SUPPLIES)


LOW_LINE = (thruster("p", "b2", (0, 0.1, -0.05)), thruster("s", "b0", (0, -0.1, -0.05)))
DESIGNS = {
    "two": box(*LOW_LINE),
    "one to starboard": box(thruster("s", "b0", (0, -0.1, 0.1))),
    "unlike": box(thruster("p", "b2", (0, 0.1, 0.1)), thruster("s", "b0", (0, -0.1, 0.1), motor="big")),
    "backwards": box(thruster("p", "b2", (0, 0.1, 0.1), to="-x"), thruster("s", "b0", (0, -0.12, 0.1))),
    "with a tether": box(
        *LOW_LINE,
        tether=Tether(
            id="c", name="c", bar="b0", diameter=0.008, hanging=1.0, mass_per_m=0.06, mass_in_water_per_m=0.01
        ),
    ),
}


def spread(value, others):
    """Least and most."""
    offs = [other - value for other in others]
    return value - hypot(*(off for off in offs if off < 0)), value + hypot(*(off for off in offs if off > 0))


@pytest.mark.parametrize("name", DESIGNS)
def test_the_pitch_under_full_thrust(name):
    found = survey(DESIGNS[name])
    mover, balance = Swimmer(DESIGNS[name], found.balance.density), found.balance

    def tilt(moment, bg=balance.bg):
        return degrees(asin(-moment / (balance.mass * GRAVITY * bg)))

    usual = mover.couple(X)[1]
    others = [tilt(mover.otherwise(**cause).couple(X)[1]) for cause in CAUSES]
    others += [tilt(usual, balance.bg + off) for off in (-0.003, 0.003)]
    pitch, (low, high) = motion_of(found).driven.pitch, spread(tilt(usual), others)
    assert pitch.value == pytest.approx(tilt(usual), rel=0.02, abs=0.05)
    assert (pitch.low, pitch.high) == pytest.approx((low, high), rel=0.03, abs=0.1)
    assert pitch.high - pitch.low > 0.1


def per_metre(mover, moment=None):
    """Degrees to port in each metre: where the drag of turning, at top speed, holds the couple."""
    speed = mover.top(X)
    wanted = mover.couple(X)[2] if moment is None else moment
    straight = mover.drag(speed * X, np.zeros(3))[1][2]

    def held(rate):
        return straight - mover.drag(speed * X, rate * Z)[1][2]

    low, high = -5.0, 5.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if held(middle) < wanted else (low, middle)
    return degrees(low) / speed


@pytest.mark.parametrize("name", DESIGNS)
def test_the_pull_to_one_side(name):
    found = survey(DESIGNS[name])
    mover = Swimmer(DESIGNS[name], found.balance.density)
    moment, velocity = mover.couple(X)[2], mover.top(X) * X
    ones = np.diag(mover.orders(X))
    unlike = 0.10 * hypot(*(mover.thrust(one, velocity, np.zeros(3))[1][2] for one in ones))
    usual = per_metre(mover)
    others = [per_metre(mover.otherwise(**cause)) for cause in CAUSES]
    others += [per_metre(mover, moment + off) for off in (-unlike, unlike)]
    veer, (low, high) = motion_of(found).veer, spread(usual, others)
    room = 0.05 * (high - low) + 0.2  # the model fits the drag of turning at two rates
    assert veer.value == pytest.approx(usual, rel=0.06, abs=room)
    assert (veer.low, veer.high) == pytest.approx((low, high), rel=0.08, abs=room)
    assert veer.low < veer.value < veer.high


def test_the_roll_from_propellers_of_one_hand():
    """Torque 0.115 T D, 0.09 to 0.14 over the B-series; pull 15 %; two of 3 N and 50 mm leave 34.5 mN m."""
    pair = tuple(item.but(hand="right") for item in LOW_LINE)
    found = survey(box(*pair))
    steady = found.balance.mass * GRAVITY

    def roll(share, pull=3.0, bg=found.balance.bg):
        return degrees(asin(-2 * share * pull * 0.05 / (steady * bg)))

    usual, bg = roll(0.115), found.balance.bg
    others = [roll(0.09), roll(0.14), roll(0.115, 3.45), roll(0.115, 2.55)]
    others += [roll(0.115, bg=bg - 0.003), roll(0.115, bg=bg + 0.003)]
    unlike = 0.10 * 2**0.5 / 2  # of the two together, each 10 % off on its own
    others += [roll(0.115 * (1 - unlike)), roll(0.115 * (1 + unlike))]
    rolled = motion_of(found).hand_roll
    assert rolled.value == pytest.approx(usual, rel=1e-6)
    assert (rolled.low, rolled.high) == pytest.approx(spread(usual, others), rel=1e-6)
    cancelled = motion_of(survey(box(LOW_LINE[0].but(hand="left"), LOW_LINE[1].but(hand="right")))).hand_roll
    assert cancelled.value == pytest.approx(0.0, abs=1e-9)
    assert cancelled.high == -cancelled.low == pytest.approx(roll(0.115 * unlike) * -1, rel=1e-6)
    unknown = box(LOW_LINE[0].but(hand="left"), LOW_LINE[1])
    assert motion_of(survey(unknown)).hand_roll is None


def test_a_spread_goes_to_both_sides_of_a_pull_that_is_even():
    moving = motion_of(survey(DESIGNS["two"]))
    assert run(moving.body, AHEAD) is not None
    assert moving.veer.low < 0 < moving.veer.high
    assert moving.veer.sides("to port", "to starboard", "degrees").count("degrees") == 2


@pytest.mark.parametrize(("ahead", "sign"), [(0.4, 1), (-0.4, -1)])
def test_a_tilt_that_nearly_turns_it_over_may_come_out_lying_on_its_end_and_no_further(ahead, sign):
    tilt = motion_of(survey(swimmer(upright(offset=(ahead, 0.15, 0))))).climbing.pitch
    least, most = sorted((abs(tilt.low), abs(tilt.high)))
    assert sign * tilt.value > 60
    assert least < abs(tilt.value) < most == 90
    assert min(sign * tilt.low, sign * tilt.high) > 0
