"""Balance and thrust over small lists of parts worked out by hand."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.design import Motor, Thruster
from model.parts import Part
from model.survey import survey
from model.thrust.moves import ways_of
from model.thrust.rated import rated
from model.water.balance import GRAVITY, balance
from tests import worked

QUICK = settings(max_examples=50, deadline=None)
numbers = st.floats(-1, 1).map(lambda x: round(x, 6))
places = st.tuples(numbers, numbers, numbers)
lumps = st.lists(
    st.builds(
        lambda mass, volume, g, b: Part("attachment", "p", "p", mass, volume, g, b, ()),
        st.floats(0.01, 5),
        st.floats(1e-5, 5e-3),
        places,
        places,
    ),
    min_size=1,
    max_size=8,
)


def lump(mass: float, volume: float, at=(0.0, 0.0, 0.0)) -> Part:
    return Part("attachment", "p", "p", mass, volume, at, at, ())


def test_two_weights_balance_at_the_lever_rule():
    results = balance([lump(3.0, 0.001, (0, 0, 0)), lump(1.0, 0.003, (0.4, 0, 0.4))], 1000.0)
    assert results.g == pytest.approx((0.1, 0, 0.1))
    assert results.b == pytest.approx((0.3, 0, 0.3))
    assert results.spare == pytest.approx(0.0)
    assert results.bg == pytest.approx(0.2 * 2**0.5)
    assert results.pitch == pytest.approx(45.0)  # lift ahead of weight: bow up


def test_spare_buoyancy_in_newtons_grams_and_per_cent():
    results = balance([lump(2.0, 0.0021)], 1000.0)
    assert (results.spare, results.spare_percent) == (pytest.approx(0.1), pytest.approx(100 * 0.1 / 2.1))
    assert results.net == pytest.approx(0.1 * 9.80665)
    assert GRAVITY == 9.80665  # standard gravity, 3rd General Conference on Weights and Measures


def test_nothing_at_all_is_no_error():
    results = balance([], 1000.0)
    assert (results.mass, results.displaced, results.net, results.spare_percent) == (0, 0, 0, 0)
    assert (results.pitch, results.roll) == (None, None)


@QUICK
@given(lumps, places)
def test_moved_as_a_whole_only_the_centres_move(parts, by):
    def moved(at):
        return tuple(a + b for a, b in zip(at, by, strict=True))

    shifted = [
        Part("attachment", "p", "p", p.mass, p.volume, moved(p.mass_centre), moved(p.volume_centre), ())
        for p in parts
    ]
    a, b = balance(parts, 998.0), balance(shifted, 998.0)
    assert (b.mass, b.displaced) == (a.mass, a.displaced)
    assert b.g == pytest.approx(moved(a.g), abs=1e-9)
    assert b.bg == pytest.approx(a.bg, abs=1e-9)


@QUICK
@given(lumps, st.floats(0.1, 10))
def test_made_larger_in_proportion_bg_grows_with_it_and_the_trim_stays(parts, factor):
    """Weights and volumes with the cube, lengths with the factor."""

    def grown(at):
        return tuple(factor * a for a in at)

    larger = [
        Part(
            "attachment",
            "p",
            "p",
            p.mass * factor**3,
            p.volume * factor**3,
            grown(p.mass_centre),
            grown(p.volume_centre),
            (),
        )
        for p in parts
    ]
    a, b = balance(parts, 998.0), balance(larger, 998.0)
    assert b.bg == pytest.approx(factor * a.bg, abs=1e-9)
    assert b.spare == pytest.approx(factor**3 * a.spare, rel=1e-6, abs=1e-9)
    assert b.spare_percent == pytest.approx(a.spare_percent, abs=1e-6)


@pytest.mark.parametrize(
    ("lever", "force", "ways"),
    [
        ((0, 0, 0), (2, 0, 0), {"ahead"}),
        ((0, 0.2, 0), (2, 0, 0), {"ahead", "turn to starboard"}),  # pushed ahead on its port side
        ((0, -0.2, 0), (2, 0, 0), {"ahead", "turn to port"}),
        ((0, 0, 0.2), (-2, 0, 0), {"astern"}),
        ((0.3, 0, 0), (0, 0, 1), {"up"}),
        ((0, 0, 0), (0, -1, 0), {"to starboard"}),
        ((0, 0, 0), (0, 1, 0), {"to port"}),
        ((0.3, 0, 0), (0, -1, 0), {"to starboard", "turn to starboard"}),
        ((0, 0, 0), (0.7, 0, -0.7), {"ahead", "down"}),
        ((0, 0.009, 0), (1, 0, 0), {"ahead"}),
        ((0, 0, 0), (0, 0, 0), set()),
    ],
)
def test_what_a_push_does(lever, force, ways):
    assert set(ways_of(lever, force)) == ways


def test_up_and_down_thrust_add_up_over_the_thrusters_and_astern_is_weaker():
    """Two motors of 3 N ahead and 2 N astern: one points up, one at 45 degrees ahead and down."""
    items = (
        Thruster(id="a", name="a", bar="b0", motor="motor", to="+z", offset=(0.0, -0.1, 0.0)),
        Thruster(id="b", name="b", bar="b2", motor="motor", to="+x-z", offset=(0.0, 0.1, 0.0)),
    )  # well outside the box, so that nothing stands in their streams
    found = survey(worked.design(worked.box(thrusters=items))).thrust
    assert found.up == pytest.approx(3 + 2 * 0.5**0.5)
    assert found.down == pytest.approx(2 + 3 * 0.5**0.5)
    assert {"up", "down", "ahead", "astern", "turn"} == found.moves


def test_astern_is_a_share_of_ahead_only_where_it_was_not_measured():
    motor = worked.SUPPLIES.motors[0]
    thruster = Thruster(id="t", name="t", bar="b", motor="motor")
    known = rated(thruster, motor, 0.6, 1000.0)
    assert (known.ahead, known.astern) == (3.0, 2.0)
    unknown = rated(thruster, Motor.model_validate({**dict(motor), "thrust_astern": None}), 0.6, 1000.0)
    assert (unknown.ahead, unknown.astern) == pytest.approx((3.0, 1.8))
