"""The coach on thrusters, motion and wires: each finding on a design that has it, silent beside it."""

import pytest

from model.design import Branch, Brief, Thresholds
from model.review import after_remedy, proven_remedy, review
from model.survey import motion_of, survey
from model.thrust.around import around
from tests.model.thrust_cases import (
    CASES,
    GOOD,
    HANDS,
    SETTLED,
    cable,
    port,
    starboard,
    swimmer,
    upright,
    wired,
)

OURS = {case.code for case in CASES}


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.code)
def test_a_finding_speaks_with_its_numbers(case):
    found = [f for f in review(case.shows).findings if f.code == case.code]
    assert found, [f.code for f in review(case.shows).findings]
    wanted = next(f for f in found if (f.about.kind, f.about.id) == case.about)
    assert wanted.severity == case.severity
    for word in case.words:
        assert word in wanted.message, wanted.message


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.code)
def test_it_is_silent_beside_it(case):
    assert [f.message for f in review(case.silent).findings if f.code == case.code] == []


@pytest.mark.parametrize("case", [case for case in CASES if case.remedied], ids=lambda case: case.code)
def test_its_remedy_clears_it(case):
    report = review(case.shows)
    found = next(f for f in report.findings if f.code == case.code)
    remedy = proven_remedy(report, found)
    assert remedy is not None
    after = after_remedy(case.shows, remedy)
    assert found.key not in {other.key for other in after.findings}


def test_a_good_vehicle_hears_none_of_them():
    assert [f.message for f in review(GOOD).findings if f.code in OURS] == []


def nearby(found):
    """What is around the first propeller."""
    limits = found.design.brief.thresholds
    return around(limits, found.arrangement, found.frame, found.parts, found.balance)[0]


BLOCKED = swimmer(upright(bar="b1", offset=(0, 0, -0.04)))
SHALLOW = swimmer(port(bar="b3", offset=(0, 0.06, -0.06)), starboard(bar="b1", offset=(0, -0.06, -0.06)))
THIN = wired(SETTLED.but(core_area=0.205, length=20.0))
LIMITS = (
    ("motion.thrust-pitches", swimmer(port(offset=(0, 0.06, -0.06)), starboard(offset=(0, -0.06, -0.06))),
     lambda found: abs(motion_of(found).driven.pitch.value), ("thrust_pitch_tip", "thrust_pitch_should")),
    ("motion.climb-tips", swimmer(upright(offset=(0.15, 0.15, 0))),
     lambda found: abs(motion_of(found).climbing.pitch.value), ("thrust_pitch_tip", "thrust_pitch_should")),
    ("motion.hands-alike", HANDS, lambda found: abs(motion_of(found).hand_roll.value), ("hand_roll",)),
    ("thruster.stream-blocked", BLOCKED,
     lambda found: 100 * max(found.clear[0].ahead.lost, found.clear[0].astern.lost),
     ("stream_tip", "stream_should")),
    ("power.volts-lost", THIN, lambda found: 100 * max(found.wiring.lost.values()),
     ("volts_tip", "volts_should")),
)  # fmt: skip
LEAST = (
    ("thruster.disc-shallow", SHALLOW, lambda found: nearby(found).depth / 0.05, "depth_least"),
    ("thruster.disc-near", swimmer(port(offset=(0, 0.0417, 0)), starboard()),
     lambda found: nearby(found).clear.near.room, "disc_should"),
    ("thruster.tether-near", swimmer(upright(bar="b4", at=0.4, offset=(0.06, 0, 0)), tether=cable()),
     lambda found: nearby(found).clear.tether, "disc_tether"),
    ("power.fuse-small", wired(SETTLED, Branch(fuse=2.0)),
     lambda found: 2.0 / found.wiring.loads[0].amps, "fuse_least"),
)  # fmt: skip
"""Code, a design, what is judged in the unit of its threshold, and the threshold's name."""


def heard(design, code, **limits):
    """How loudly the coach speaks with some thresholds in the brief."""
    brief = design.brief.but(thresholds=Thresholds(**limits))
    return {f.severity for f in review(design.but(brief=brief)).findings if f.code == code}


@pytest.mark.parametrize(("code", "design", "value", "names"), LIMITS, ids=[case[0] for case in LIMITS])
def test_it_speaks_just_over_its_limit_and_not_just_under(code, design, value, names):
    """Which number counts, and on which side, as DEFAULTS has it: over the limit, a tip and then a should."""
    at = value(survey(design))
    over, under = at * 1.001, at * 0.999
    if len(names) == 1:
        assert heard(design, code, **{names[0]: over}) == set()
        assert heard(design, code, **{names[0]: under}) == {"tip"}
        return
    tip, should = names
    assert heard(design, code, **{tip: over, should: 2 * over}) == set()
    assert heard(design, code, **{tip: under, should: over}) == {"tip"}
    assert heard(design, code, **{tip: under / 2, should: under}) == {"should"}


@pytest.mark.parametrize(("code", "design", "value", "name"), LEAST, ids=[case[0] for case in LEAST])
def test_it_speaks_just_under_its_least_and_not_just_over(code, design, value, name):
    at = value(survey(design))
    assert heard(design, code, **{name: at * 0.999, "disc_share": 0.1}) == set()
    assert heard(design, code, **{name: at * 1.001, "disc_share": 0.1}) == {"should"}


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("thrust_pitch_tip", 10.0), ("thrust_pitch_should", 20.0), ("hand_roll", 3.0), ("disc_should", 0.010),
        ("disc_share", 15.0), ("disc_must", 0.003), ("disc_tether", 0.050), ("stream_tip", 10.0),
        ("stream_should", 20.0), ("depth_least", 1.0), ("volts_tip", 20.0), ("volts_should", 35.0),
        ("fuse_least", 1.25), ("astern_share", 0.6), ("lift_tip", 1.5), ("lift_should", 1.2),
    ],
)  # fmt: skip
def test_the_usual_limits_are_those_that_were_agreed(field, value):
    """DEFAULTS: common practice, or derived for a vehicle of about 2.5 kg."""
    assert getattr(Brief().thresholds, field) == value
