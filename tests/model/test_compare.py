"""Designs side by side, and one at several sizes: against surveys made one by one."""

from itertools import pairwise

import pytest

from model.compare import MEASURES, Standing, beaten, compare, compared
from model.files import load_design
from model.motion.span import Span
from model.presets import built_in_folder
from model.silhouette import silhouettes
from model.solve.sweep import at_size, size_sweep
from model.survey import motion_of, survey

FOLDER = built_in_folder()
NEWT = load_design(FOLDER / "demo" / "newt.toml").design
WIDE = load_design(FOLDER / "starters" / "wide-and-low.toml").design


def standing(name="a", **changes):
    """A standing of made-up numbers."""
    values = {
        "ahead": Span(0.4, 0.3, 0.5),
        "quarter": Span(1.0, 0.9, 1.1),
        "steadiness": 0.5,
        "pitch": Span(2.0, 1.0, 3.0),
        "front": 0.03,
        "mass": 1.5,
        "cost": 50.0,
        "size": (0.4, 0.3, 0.2),
        "fits": True,
        "builds": True,
    }
    return Standing(name, **{**values, **changes})


def test_two_designs_have_the_numbers_of_their_own_surveys():
    result = compare(NEWT, WIDE)
    for design, item in zip((NEWT, WIDE), result.standings, strict=True):
        found, moving = survey(design), motion_of(survey(design))
        assert item.ahead == moving.ahead.top
        assert item.quarter == moving.slower_turn.quarter
        assert item.pitch == moving.driven.pitch
        assert item.steadiness == pytest.approx(found.balance.mass * 9.80665 * found.balance.bg)
        assert item.front == pytest.approx(silhouettes(found.parts).front)
        assert item.cost == found.bill.spent
        assert item.fits
        assert item.builds
    rows = {row.name: row for row in result.rows}
    assert rows["top speed ahead"].best == {0}
    assert rows["steadiness, what rights it lying on its side"].best == {1}
    assert result.beaten == (None, None)


@pytest.mark.parametrize(
    ("change", "who"),
    [
        ({"ahead": Span(0.3, 0.2, 0.4)}, 0),
        ({"ahead": None}, 0),
        ({"quarter": Span(2.0, 1.9, 2.1)}, 0),
        ({"steadiness": 0.3}, 0),
        ({"pitch": Span(-9.0, -10.0, -8.0)}, 0),
        ({"mass": 2.0}, 0),
        ({"cost": 60.0}, 0),
        ({"fits": False}, 0),
        ({"builds": False}, 0),
        ({"ahead": Span(0.3, 0.2, 0.4), "mass": 1.0}, None),
        ({}, None),
        ({"mass": 1.501}, None),
    ],
)
def test_one_that_is_no_better_in_anything_and_worse_in_something_is_beaten(change, who):
    assert beaten([standing(), standing("b", **change)]) == (None, who)


def test_a_number_that_there_is_not_is_a_dash():
    rows = {row.name: row for row in compared([standing(), standing("b", ahead=None, pitch=None)]).rows}
    assert rows["top speed ahead"].texts == ("0.40, 0.30 to 0.50", "-")
    assert rows["top speed ahead"].best == {0}
    assert rows["pitch under full thrust"].texts[1] == "-"
    assert {measure.name for measure in MEASURES} < set(rows)


def test_the_size_sweep_shows_the_trade_in_both_directions():
    sweep = size_sweep(survey(NEWT))
    assert [round(point.factor, 2) for point in sweep.points] == [round(0.7 + 0.05 * n, 2) for n in range(13)]
    standings = [point.standing for point in sweep.points]
    for smaller, larger in pairwise(standings):
        assert smaller.ahead.value > larger.ahead.value  # small is quick
        assert smaller.quarter.value < larger.quarter.value
        assert smaller.steadiness < larger.steadiness  # large is steady
        assert smaller.front < larger.front
        assert smaller.mass < larger.mass
    assert not standings[0].builds  # fittings would collide
    assert standings[6].builds
    assert standings[-1].fits is False  # 600 x 450 x 400 mm is the limit


def test_at_its_own_size_it_is_itself():
    found = survey(NEWT)
    point = at_size(found, 1.0)
    assert point.standing.ahead.value == pytest.approx(motion_of(found).ahead.top.value, rel=1e-9)
    assert point.standing.mass == pytest.approx(found.balance.mass, rel=1e-9)
    assert point.standing.cost == found.bill.spent
    assert point.spare == pytest.approx(found.balance.spare, abs=1e-9)
    assert point.floats_fit


@pytest.mark.parametrize("factor", [0.85, 1.2])
def test_the_floats_are_cut_to_keep_the_spare_buoyancy(factor):
    found = survey(NEWT)
    point = at_size(found, factor)
    assert point.floats_fit
    assert point.spare == pytest.approx(found.balance.spare, abs=1e-6)


def test_floats_that_no_longer_fit_are_said():
    assert not at_size(survey(NEWT), 0.5).floats_fit
