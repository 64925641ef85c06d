"""At which value the coach begins to speak: silent at the limit, heard just beyond it.

The results are put in by hand, so that each stands exactly at its limit (values of the usual thresholds:
common practice, or derived for a vehicle of about 2.5 kg with BG 40 mm).
"""

from collections.abc import Callable, Iterator
from math import radians, tan

import pytest
from msgspec.structs import replace

from model.coach import rules_balance, rules_load
from model.coach.finding import Finding
from model.design import Brief, Thresholds
from model.design.brief import Load
from model.files import load_design
from model.presets import built_in_folder
from model.review import proven_remedy, review
from model.survey import Survey, survey
from model.water.balance import Balance
from tests.model.coach_cases import box, gear

G = 9.80665
BASE = survey(box())
Rule = Callable[[Survey], Iterator[Finding]]


def results(*, up: float = 0.0, down: float = 0.0, brief: Brief | None = None, **balance: object) -> Survey:
    """2.5 kg of vehicle in water of 1000 kg/m3, 1 % of spare buoyancy, BG 40 mm, level, or as asked."""
    usual = {
        "mass": 2.475,
        "displaced": 0.0025,
        "density": 1000.0,
        "g": (0.0, 0.0, 0.0),
        "b": (0.0, 0.0, 0.04),
        "bg": 0.04,
        "pitch": 0.0,
        "roll": 0.0,
    }
    design = BASE.design.but(brief=brief or Brief())
    thrust = replace(
        BASE.thrust, up=up, down=down, pushes=((((0.0, 0.0, 0.0), (0.0, 0.0, up))),) if up else ()
    )
    return replace(BASE, design=design, balance=Balance(**{**usual, **balance}), thrust=thrust)


def heard(rule: Rule, found: Survey) -> list[tuple[str, str]]:
    return [(finding.code, finding.severity) for finding in rule(found)]


def said(rule: Rule, found: Survey) -> str:
    return " ".join(finding.message for finding in rule(found))


def spare(percent: float, **more: float) -> Survey:
    """With a share of spare buoyancy [%]."""
    return results(mass=2.5 * (1 - percent / 100), **more)


@pytest.mark.parametrize(
    ("percent", "codes"),
    [
        (-2.0, [("balance.thrust-sunk", "must")]),
        (0.0, [("balance.lift-little", "should")]),
        (0.299, [("balance.lift-little", "should")]),
        (0.3, []),
        (1.0, []),
        (3.0, []),
        (3.001, [("balance.lift-over", "should")]),
    ],
)
def test_spare_buoyancy_from_0_3_to_3_per_cent_is_well(percent: float, codes: list[tuple[str, str]]):
    assert heard(rules_balance.spare_buoyancy, spare(percent)) == codes


def test_what_sinks_should_float_and_must_where_the_thrusters_cannot_bring_it_back():
    """2 % of 2.5 kg are 50 g, 0.490 N."""
    sinks = {"percent": -2.0}
    assert heard(rules_balance.spare_buoyancy, spare(**sinks, up=0.05 * G)) == [
        ("balance.weight-over", "should")
    ]
    assert heard(rules_balance.spare_buoyancy, spare(**sinks, up=0.048 * G)) == [
        ("balance.thrust-sunk", "must")
    ]
    assert "sinks with 50 g (2.0 % of what it displaces)" in said(
        rules_balance.spare_buoyancy, spare(**sinks, up=1.0)
    )
    assert "sinks with 50 g, more than the 48 g" in said(
        rules_balance.spare_buoyancy, spare(**sinks, up=0.048 * G)
    )


def test_what_floats_up_leaves_three_quarters_of_the_down_thrust():
    """1 % of 2.5 kg are 25 g: a quarter of 100 g of thrust, more than a quarter of 99 g, more than 24 g."""
    assert heard(rules_balance.spare_buoyancy, spare(1.0, down=0.1 * G)) == []
    assert heard(rules_balance.spare_buoyancy, spare(1.0, down=0.099 * G)) == [
        ("balance.thrust-taken", "should")
    ]
    assert heard(rules_balance.spare_buoyancy, spare(1.0, down=0.025 * G)) == [
        ("balance.thrust-taken", "should")
    ]
    assert heard(rules_balance.spare_buoyancy, spare(1.0, down=0.024 * G)) == [
        ("balance.thrust-beaten", "must")
    ]
    message = said(rules_balance.spare_buoyancy, spare(1.0, down=0.05 * G))
    assert "floats up with 25 g, 50 % of the 50 g that push it down: at most 25 %" in message
    assert "25 g, more than the 24 g" in said(rules_balance.spare_buoyancy, spare(1.0, down=0.024 * G))


@pytest.mark.parametrize(
    ("pitch", "roll", "codes"),
    [
        (5.0, -5.0, []),
        (5.01, 0.0, [("balance.trim-off", "tip")]),
        (0.0, -5.01, [("balance.trim-off", "tip")]),
        (10.0, 0.0, [("balance.trim-off", "tip")]),
        (0.0, 10.01, [("balance.trim-off", "should")]),
        (-30.0, 0.0, [("balance.trim-off", "should")]),
    ],
)
def test_trim_over_5_degrees_is_a_tip_and_over_10_should_be_put_right(pitch, roll, codes):
    assert heard(rules_balance.trim, results(pitch=pitch, roll=roll)) == codes


def test_trim_is_told_by_the_side_that_is_up():
    assert "bow up 6.0 degrees; within 5 degrees" in said(rules_balance.trim, results(pitch=6.0))
    assert "stern up 12.3 degrees, port side up 2.0" in said(
        rules_balance.trim, results(pitch=-12.3, roll=2.0)
    )
    assert "starboard side up 7.0 degrees" in said(rules_balance.trim, results(roll=-7.0))


@pytest.mark.parametrize(
    ("bg", "codes"),
    [
        (0.020, []),
        (0.0199, [("balance.bg-small", "should")]),
        (0.0001, [("balance.bg-small", "should")]),
        (0.0, [("balance.order-inverted", "must")]),
        (-0.03, [("balance.order-inverted", "must")]),
    ],
)
def test_lift_less_than_20_mm_above_weight_is_tender_and_below_it_rolls_over(bg, codes):
    assert heard(rules_balance.trim, results(bg=bg)) == codes


def test_lift_and_weight_tell_how_far_they_are_apart():
    assert "lift is 30 mm below" in said(rules_balance.trim, results(bg=-0.03))
    assert "acts only 15 mm above its weight, and 20 mm is" in said(rules_balance.trim, results(bg=0.015))


def test_a_small_weight_at_arms_length_tilts_it_10_degrees_at_most():
    """50 g at 150 mm: tan(10 deg) = 0.05 x 0.15 / (M BG), so M BG = 42.53 g m."""
    enough = 0.05 * 0.15 / tan(radians(10)) / 2.475
    assert heard(rules_load.easily_tipped, results(bg=enough)) == []
    assert heard(rules_load.easily_tipped, results(bg=enough * 0.99)) == [("balance.weight-tips", "should")]
    assert "50 g hung 150 mm from the middle tilts it 14 degrees" in said(
        rules_load.easily_tipped, results(bg=0.012)
    )


def test_a_brief_may_set_each_of_these_values():
    strict = Brief(thresholds=Thresholds(trim_tip=1.0, bg_least=0.05, spare_least=1.5))
    assert heard(rules_balance.trim, results(pitch=2.0, brief=strict)) == [
        ("balance.bg-small", "should"),
        ("balance.trim-off", "tip"),
    ]
    assert heard(rules_balance.spare_buoyancy, results(brief=strict)) == [("balance.lift-little", "should")]


def loaded(up: float, mass: float = 0.2, **hook: object) -> Survey:
    """200 g in water to lift with 25 g to spare, so 175 g of pull; the hook hangs under the middle."""
    design = box(attachments=(gear(kind="hook", bar="b0", offset=(0.0, 0.15, 0.0), **hook),))
    held = survey(design)
    found = results(up=up, brief=Brief(load=Load(name="crate", mass=mass)))
    return replace(found, arrangement=held.arrangement, frame=held.frame)


@pytest.mark.parametrize(
    ("share", "codes"),
    [
        (1.5, []),
        (1.49, [("load.lift-weak", "tip")]),
        (1.2, [("load.lift-weak", "tip")]),
        (1.19, [("load.lift-weak", "should")]),
        (1.0, [("load.lift-weak", "should")]),
        (0.99, [("load.lift-weak", "must")]),
    ],
)
def test_a_load_asks_for_half_as_much_pull_again(share: float, codes: list[tuple[str, str]]):
    found = [
        pair for pair in heard(rules_load.load, loaded(share * 0.175 * G)) if pair[0] == "load.lift-weak"
    ]
    assert found == codes
    if codes:
        message = said(rules_load.load, loaded(share * 0.175 * G))
        assert "Lifting crate needs 175 g of pull" in message
        assert f"the thrusters pull {share * 175:.0f} g up, {share:.1f} times" in message


def test_a_load_under_the_middle_keeps_it_level_and_one_ahead_of_it_does_not():
    """The hook is 100 mm below G and 200 mm ahead of it; B pulls with 2.5 kg at 40 mm.

    200 g: tan = 0.2 x 0.2 / (2.5 x 0.04 + 0.2 x 0.1), 18.4 degrees; 300 g: 0.06 / 0.13, 24.8 degrees.
    """
    assert heard(rules_load.load, loaded(5.0)) == []
    assert heard(rules_load.load, loaded(5.0, at=1.0)) == [("load.trim-off", "tip")]
    assert "on the hook it lies stern up 18.4 degrees" in said(rules_load.load, loaded(5.0, at=1.0))
    assert heard(rules_load.load, loaded(5.0, mass=0.3, at=1.0)) == [("load.trim-off", "should")]
    assert "stern up 24.8 degrees" in said(rules_load.load, loaded(5.0, mass=0.3, at=1.0))


def test_a_load_without_a_hook_is_told():
    found = results(up=5.0, brief=Brief(load=Load(name="crate", mass=0.2)))
    assert heard(rules_load.load, found) == [("load.hook-missing", "should")]
    assert heard(rules_load.load, results(up=5.0)) == []


def test_a_hook_is_added_low_and_near_the_middle():
    newt = load_design(built_in_folder() / "demo" / "newt.toml").design
    rules = newt.brief.but(load=Load(name="crate", mass=0.05))
    report = review(newt.but(brief=rules).arranged(attachments=()))
    remedy = proven_remedy(report, next(f for f in report.findings if f.code == "load.hook-missing"))
    (hook,) = remedy.edit(report.design).arrangement.attachments
    bars = report.survey.frame.bars
    assert bars[hook.bar].point(0.5)[2] == min(bar.point(0.5)[2] for bar in bars.values())


def test_an_empty_design_has_no_weight_to_judge():
    bare = survey(box().arranged(bars=(), joints=(), openings=()))
    assert heard(rules_balance.spare_buoyancy, bare) == []
    assert heard(rules_balance.trim, bare) == []
