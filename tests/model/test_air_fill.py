"""How much of a bore lies above a level: closed forms against slicing, chance and symmetry."""

from math import cos, pi, radians, sin, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some
from scipy.integrate import quad

from model.water.air.fill import moments_above, overlap_above, segment, volume_above

RADIUS, LENGTH = 0.0076, 0.15
tilts = some.floats(-90, 90)
levels = some.floats(-0.2, 0.2)


def by_slicing(rise, across, level, count=20_000):
    """Volume and moments above a level: many thin slices, each a circular segment from its chord."""
    s = (np.arange(count) + 0.5) * LENGTH / count
    chord = np.clip((level - s * rise) / max(across, 1e-12) / RADIUS, -1, 1)
    half = np.arccos(chord)
    area = RADIUS**2 * (half - np.sin(half) * np.cos(half))
    lift = 2 / 3 * RADIUS**3 * np.sin(half) ** 3
    return np.array([area.sum(), (area * s).sum(), lift.sum()]) * LENGTH / count


@given(tilts, levels)
def test_volume_and_moments_are_those_of_thin_slices(tilt, level):
    rise, across = sin(radians(tilt)), cos(radians(tilt))
    ours = moments_above(RADIUS, LENGTH, 0.0, rise, across, level)
    sliced = by_slicing(rise, across, level)
    whole = pi * RADIUS**2 * LENGTH
    scales = (whole, whole * LENGTH, whole * RADIUS)
    assert all(abs(a - b) < 2e-4 * scale for a, b, scale in zip(ours, sliced, scales, strict=True))


@given(tilts, levels)
def test_the_volume_alone_is_the_same(tilt, level):
    rise, across = sin(radians(tilt)), cos(radians(tilt))
    volume = moments_above(RADIUS, LENGTH, 0.0, rise, across, level)[0]
    assert volume_above(RADIUS, LENGTH, 0.0, rise, across, level) == pytest.approx(volume, abs=1e-15)


@given(tilts, levels)
def test_above_and_below_make_the_whole(tilt, level):
    """What is above a level from one end is below it when the bore is turned over."""
    rise, across = sin(radians(tilt)), cos(radians(tilt))
    above = volume_above(RADIUS, LENGTH, 0.0, rise, across, level)
    below = volume_above(RADIUS, LENGTH, 0.0, -rise, across, -level)
    assert above + below == pytest.approx(pi * RADIUS**2 * LENGTH, abs=1e-12)


def test_a_level_bore_half_full():
    assert volume_above(0.01, 0.2, 0.0, 0.0, 1.0, 0.0) == pytest.approx(pi / 2 * 0.01**2 * 0.2)


def test_an_upright_bore_is_a_measuring_glass():
    assert volume_above(0.01, 0.2, 0.0, 1.0, 0.0, 0.15) == pytest.approx(pi * 0.01**2 * 0.05)


def test_the_ungula_of_the_handbooks():
    """A wedge with its edge on a diameter: volume 2/3 r^2 h (Archimedes' hoof, any handbook of solids)."""
    radius, height = 0.01, 0.012
    slope = height / radius
    across = 1 / sqrt(1 + slope**2)
    # the bore's axis is tilted so that a level through its first end's middle leaves at its far rim
    rise = -across / slope
    assert volume_above(radius, 0.5, 0.0, rise, across, 0.0) == pytest.approx(
        2 / 3 * radius**2 * height, rel=1e-6
    )


@pytest.mark.parametrize("x", [-1.0, -0.3, 0.0, 0.4, 0.99])
def test_a_segment_is_the_integral_of_its_chords(x):
    assert segment(x) == pytest.approx(quad(lambda y: 2 * sqrt(1 - y * y), x, 1)[0], abs=1e-7)


@given(
    some.tuples(*[some.floats(-1, 1)] * 3).filter(lambda v: sum(c * c for c in v) > 0.01),
    some.floats(-1.5, 1.5),
)
def test_the_room_that_two_bores_share(direction, level):
    """Against a million points: half-bores along x and y, with a level square to any direction."""
    up = np.array(direction) / np.linalg.norm(direction)
    grid = (np.arange(60) + 0.5) / 60
    s, t, w = np.meshgrid(grid, grid, np.concatenate([-grid[::-1], grid]), indexing="ij")
    inside = (s * s + w * w < 1) & (t * t + w * w < 1)
    above = inside & (s * up[0] + t * up[1] + w * up[2] > level)
    assert overlap_above(tuple(up), level) == pytest.approx(above.sum() / 60**3, abs=0.03)
