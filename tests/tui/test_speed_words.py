"""The section Speed says tilt and veer with how far they may be off, and never a bare sign."""

import re

from model.review import Report
from model.survey import motion_of, survey
from tests.model.thrust_cases import GOOD, ONE_WAY, port, starboard, swimmer, upright
from tui.pages.thrusters_speed import speeds


def lines(design):
    return speeds(Report(design)).splitlines()


def told(design, words):
    return next(line for line in lines(design) if words in line)


def test_tilt_and_veer_stand_with_their_spread():
    pitch, veer = motion_of(survey(GOOD)).driven.pitch, motion_of(survey(GOOD)).veer
    assert pitch.low < pitch.value < pitch.high
    tilt = told(GOOD, "Full thrust ahead tilts it")
    assert re.fullmatch(r"Full thrust ahead tilts it [\d.]+° bow (up|down), .*[\d.]+° bow (up|down)", tilt)
    numbers = {f"{abs(number):.1f}" for number in (pitch.value, pitch.low, pitch.high)}
    assert {*re.findall(r"[\d.]+", tilt)} == numbers
    turned = told(GOOD, "Each metre at full thrust")
    assert f"{abs(veer.low):.0f}° to starboard to {veer.high:.0f}° to port" in turned


def test_a_single_motor_pulls_to_one_side_whatever_is_unsure():
    turned = told(swimmer(starboard()), "Each metre at full thrust")
    assert re.fullmatch(r"Each metre at full thrust turns it \d+° to port, \d+ to \d+° to port", turned)


def test_holding_it_straight_takes_a_share_of_the_steering():
    """Two like motors at unlike arms: the further one is out, the more it turns the vehicle."""
    words = "holding it straight takes"
    assert told(swimmer(starboard()), words).endswith("100 % of what turns it")
    assert told(GOOD, words).endswith(" 0 % of what turns it")
    shares = [
        float(re.search(r"takes (\d+) %", told(swimmer(port(offset=(0, out, 0.1)), starboard()), words))[1])
        for out in (0.06, 0.10, 0.14)
    ]
    assert 0 == shares[0] < shares[1] < shares[2] < 50


def test_turns_have_their_rate_and_what_they_slide():
    motion = motion_of(survey(GOOD))
    rate, slide = motion.port.rate, motion.drift
    after = lines(GOOD)[lines(GOOD).index(told(GOOD, "A quarter turn to port")) + 1]
    assert [*map(float, re.findall(r"[\d.]+", after))] == [
        round(n) for n in (rate.value, rate.low, rate.high)
    ]
    assert slide.low <= slide.value <= slide.high
    assert f"it ends {slide.value:.2f} m" in told(GOOD, "off its spot")
    alone = motion_of(survey(swimmer(starboard())))  # a motor on one side takes it along
    assert alone.drift.value > 3 * slide.value
    assert not any("off its spot" in line for line in lines(swimmer(starboard(branch=ONE_WAY))))


def test_what_is_left_of_the_propellers_torque():
    """A left-handed propeller turns the vehicle clockwise as seen from behind: port side up."""
    words = "left of the propellers' torque rolls it"
    assert re.search(r"rolls it 0\.0° port side up", told(GOOD, words)), "one of each hand"
    alike = swimmer(port(), starboard(hand="left"))
    assert re.search(
        r"rolls it [1-9][\d.]*° port side up, [\d.]+ to [\d.]+° port side up", told(alike, words)
    )
    assert not any(words in line for line in lines(swimmer(port(hand=None), starboard())))


def test_what_turns_over_has_no_angle():
    words = lines(swimmer(upright(offset=(0.9, 0.15, 0))))
    assert "Full thrust up turns it over" in words


def test_motors_that_only_run_ahead_do_not_stop_it():
    one_way = swimmer(port(branch=ONE_WAY), starboard(branch=ONE_WAY))
    assert not any("stops within" in line for line in lines(one_way))
    assert any("cannot brake" in line and "rolls out" in line for line in lines(one_way))
    assert any("stops within" in line for line in lines(GOOD))
