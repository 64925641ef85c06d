"""Where the numbers on thrust, motion and power come from: every one of them with its source and spread."""

import pytest

from model.explain_motion import motion_quantities
from model.survey import survey
from tests.model.thrust_cases import GOOD, port, starboard, swimmer, upright


def told(*thrusters, **items):
    """The quantities of a box by name."""
    return {one.name: one for one in motion_quantities(survey(swimmer(*thrusters, **items)))}


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_every_number_says_how_it_was_made(unit):
    for one in motion_quantities(survey(GOOD.but(units=unit))):
        assert one.name
        assert one.text
        assert one.formula
        assert one.source


def test_what_no_thruster_makes_is_left_out():
    level = told(port(), starboard())
    assert "top speed ahead" in level
    assert "top speed up" not in level
    assert "quarter turn on the spot" in level
    lifting = told(upright())
    assert "top speed ahead" not in lifting
    assert told() == {}


def test_a_pull_says_whose_it_is_and_what_arrives():
    """Without a wiring the volts are those of the test, and nothing stands in the stream: 3 N and 2 N."""
    pull = told(port(), starboard(), power=None)["pull of port motor"]
    assert pull.text == "3.00 N ahead, 2.00 N astern"
    assert ("volts that arrive", "12.0 V") in pull.inputs
    assert pull.source == "the stock's value for this kind of motor"


def test_a_wiring_says_volts_and_amps_of_each_motor():
    current = told(port(), starboard())["current with all motors on"]
    assert [name for name, _ in current.inputs] == ["port motor", "starboard motor"]
    assert current.spread == "currents as measured"
    assert "current with all motors on" not in told(port(), starboard(), power=None)
