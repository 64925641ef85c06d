"""Trim against the textbook rule: a body under water comes to rest with B straight above G.

tan(theta) = m x / (M BG), the inclining rule of naval architecture with M in B, since a submerged body
has no waterline.
"""

from math import atan, cos, degrees, radians, sin, tan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.parts import Part
from model.water.balance import balance, rest

DENSITY = 1000.0


def lump(mass: float, volume: float, at: tuple[float, float, float]) -> Part:
    return Part("attachment", "l", "lump", mass, volume, at, at, ())


def vehicle(weight_at: tuple[float, float, float]):
    """4 kg and 4 litres, B at the zero point, G 50 mm below it; 0.1 kg of it stands at a place."""
    hull = lump(0.0, 0.004, (0, 0, 0))
    rest_of_it = lump(3.9, 0.0, (0, 0, -0.05))
    return balance([hull, rest_of_it, lump(0.1, 0.0, weight_at)], DENSITY)


def test_a_small_weight_is_moved_ahead():
    """4 kg, BG 50 mm, 0.100 kg moved 0.200 m: 5.71 degrees, by hand: atan(0.1 x 0.2 / (4 x 0.05))."""
    expected = degrees(atan(0.1 * 0.2 / (4 * 0.05)))
    assert expected == pytest.approx(5.71, abs=0.005)
    before, ahead = vehicle((0, 0, -0.05)), vehicle((0.2, 0, -0.05))
    assert (before.pitch, before.roll) == (0.0, 0.0)
    assert before.bg == pytest.approx(0.05)
    assert ahead.pitch == pytest.approx(-expected)  # a heavy bow goes down
    assert vehicle((-0.2, 0, -0.05)).pitch == pytest.approx(expected)


def test_a_small_weight_is_moved_to_port():
    to_port = vehicle((0, 0.2, -0.05))
    assert to_port.roll == pytest.approx(-degrees(atan(0.1 * 0.2 / (4 * 0.05))))  # port side down
    assert to_port.pitch == pytest.approx(0.0)


def test_a_float_is_moved_to_starboard_and_port_goes_down():
    hull, foam = lump(4.0, 0.0038, (0, 0, -0.05)), lump(0.0, 0.0002, (0, -0.1, 0.0))
    results = balance([hull, foam], DENSITY)
    assert results.roll is not None
    assert results.roll < 0
    assert tan(radians(results.roll)) == pytest.approx(-0.0002 * 0.1 / 0.0002 / 0.05)


def turned_to_rest(pitch: float, roll: float) -> np.ndarray:
    """Body to world: first rolled about the keel line (port up > 0), then the bow lifted (bow up > 0)."""
    p, r = radians(pitch), radians(roll)
    rolled = np.array([[1, 0, 0], [0, cos(r), -sin(r)], [0, sin(r), cos(r)]])
    pitched = np.array([[cos(p), 0, -sin(p)], [0, 1, 0], [sin(p), 0, cos(p)]])
    return pitched @ rolled


@given(st.tuples(*[st.floats(-0.2, 0.2)] * 3).filter(lambda lever: np.linalg.norm(lever) > 1e-3))
def test_turned_by_its_trim_a_body_has_b_straight_above_g(lever: tuple[float, float, float]):
    pitch, roll = rest(lever)
    assert pitch is not None
    assert roll is not None
    world = turned_to_rest(pitch, roll) @ np.array(lever)
    np.testing.assert_allclose(world, [0, 0, np.linalg.norm(lever)], atol=1e-8)


def test_b_below_g_is_upside_down_and_b_in_g_rests_anyhow():
    upset = balance([lump(4.0, 0.0, (0, 0, 0.05)), lump(0.0, 0.004, (0, 0, 0))], DENSITY)
    assert upset.bg == pytest.approx(-0.05)
    assert abs(upset.roll or 0.0) == pytest.approx(180.0)
    assert rest((0.0, 0.0, 0.0)) == (None, None)
