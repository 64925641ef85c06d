"""How much of a round bore lies above a level, in closed form; exact but for rounding.

A bore of radius R runs from s = 0 to its length; along it the water surface stands x(s) R from the
axis, square to it and upwards.  A cross-section then has air over a(x) = acos x - x sqrt(1 - x^2) [R2]
(circular segment, any handbook), and with x falling evenly along the bore the volume and its moments are
differences of the antiderivatives below (integrated by parts; checked in tests against slicing).
"""

from functools import lru_cache
from itertools import pairwise
from math import acos, asin, atan2, copysign, cos, hypot, pi, remainder, sin, sqrt

from model.vectors import Vector

UPRIGHT = 1e-9
"""Across-ness below which a bore counts as upright; keeps the slope finite, and 1e-20 m3 exact."""
EVEN = 1e-4
"""A surface that shifts by less than this [R] along a bore counts as parallel to it."""
GAUSS = (
    (-0.8611363116, 0.3478548451),
    (-0.3399810436, 0.6521451549),
    (0.3399810436, 0.6521451549),
    (0.8611363116, 0.3478548451),
)
"""Gauss-Legendre, four points: places and weights (Abramowitz and Stegun, table 25.4)."""


def segment(x: float) -> float:
    """Area [R2] of the part of a circle of radius 1 that lies above x.

    >>> round(segment(0.0), 4), segment(1.5)
    (1.5708, 0.0)
    """
    if x >= 1:
        return 0.0
    return pi if x <= -1 else acos(x) - x * sqrt(1 - x * x)


def _area(x: float) -> float:
    """Antiderivative of the segment's area."""
    if x >= 1:
        return 0.0
    if x <= -1:
        return pi * x
    q = sqrt(1 - x * x)
    return x * acos(x) - q + q * q * q / 3


def _area_times_x(x: float) -> float:
    """Antiderivative of x times the segment's area."""
    if x >= 1:
        return pi / 16
    if x <= -1:
        return 7 * pi / 16 + pi * (x * x - 1) / 2
    q, a = sqrt(1 - x * x), asin(x)
    return x * x / 2 * acos(x) + (a - x * q) / 4 - (a - x * q * (1 - 2 * x * x)) / 8


def _height(x: float) -> float:
    """Antiderivative of sqrt(1 - x^2)^3, which is 3/2 of the segment's moment about the axis."""
    if abs(x) >= 1:
        return copysign(3 * pi / 16, x)
    q = sqrt(1 - x * x)
    return x * q * q * q / 4 + 3 / 8 * (x * q + asin(x))


def volume_above(radius: float, length: float, low: float, rise: float, across: float, level: float) -> float:
    """Volume [m3] of a bore above a level.

    Args:
        radius, length: of the bore [m].
        low: height of the axis at its start [m].
        rise: how far the axis climbs per metre of it, -1 to 1.
        across: sqrt(1 - rise^2).
        level: height of the water surface [m].

    >>> round(volume_above(0.01, 0.1, 0.0, 0.0, 1.0, 0.0) * 1e6, 3)
    15.708
    """
    across = max(across, UPRIGHT)
    x = (level - low) / (across * radius)
    slope = rise / (across * radius)
    if abs(slope * length) < EVEN:
        return radius * radius * segment(x - slope * length / 2) * length
    return radius * radius / slope * (_area(x) - _area(x - slope * length))


def moments_above(
    radius: float, length: float, low: float, rise: float, across: float, level: float
) -> tuple[float, float, float]:
    """Volume [m3] above a level, and its moments [m4]: along the axis from the start, and upwards across it.

    Arguments as for ``volume_above``.
    """
    across = max(across, UPRIGHT)
    x = (level - low) / (across * radius)
    slope = rise / (across * radius)
    square = radius * radius
    if abs(slope * length) < EVEN:
        middle = x - slope * length / 2
        volume = square * segment(middle) * length
        q = sqrt(max(0.0, 1 - middle * middle))
        return volume, volume * length / 2, 2 / 3 * square * radius * q * q * q * length
    end = x - slope * length
    area = _area(x) - _area(end)
    along = x * area - (_area_times_x(x) - _area_times_x(end))
    up = _height(x) - _height(end)
    return square / slope * area, square / slope**2 * along, 2 / 3 * square * radius / slope * up


def overlap_above(toward: Vector, level: float) -> float:
    """Volume [R3] above a level that two half-bores of radius 1 at right angles share, to 0.002 R3.

    Args:
        toward: "up" along the first bore, along the second, and square to both.
        level: height of the surface over the point where their axes meet [R].

    Slices along both axes are squares of side cos(phase); between the phases at which the level touches a
    corner of the square the share above it is smooth, and four Gauss points a stretch are enough.

    >>> round(overlap_above((0.0, 0.0, 1.0), -2.0), 3), round(overlap_above((0.0, 0.0, 1.0), 0.0), 3)
    (1.333, 0.667)
    """
    a, b, across = toward
    return _overlap_above(max(a, b), min(a, b), abs(across), level)


@lru_cache(maxsize=4096)
def _overlap_above(a: float, b: float, across: float, level: float) -> float:
    """The same whichever bore is the first, and on either side of them: many corners of a frame are alike."""
    rising, falling = max(0.0, a) + max(0.0, b), min(0.0, a) + min(0.0, b)
    inner = (*_touching(rising, across, level), *_touching(falling, across, level))
    edges = sorted((-pi / 2, 0.0, *inner, pi / 2))
    total = 0.0
    for first, last in pairwise(edges):
        half, middle = (last - first) / 2, (first + last) / 2
        for place, weight in GAUSS if half > EVEN else ():
            phase = middle + half * place
            side = cos(phase)
            above = _square_above(a * side, b * side, level - across * sin(phase))
            total += weight * half * side * side * side * above
    return total


def _touching(along: float, across: float, level: float) -> list[float]:
    """The phases between -pi/2 and pi/2 at which ``along cos + across sin`` is the level."""
    reach = hypot(along, across)
    if abs(level) >= reach:
        return []
    turn, lean = asin(level / reach), atan2(along, across)
    phases = (remainder(turn - lean, 2 * pi), remainder(pi - turn - lean, 2 * pi))
    return [phase for phase in phases if abs(phase) < pi / 2]


def _square_above(p: float, q: float, c: float) -> float:
    """Share of the unit square where p s + q t is above c."""
    if p < 0:
        p, c = -p, c - p
    if q < 0:
        q, c = -q, c - q
    if max(p, q) < 1e-12:
        return 1.0 if c < 0 else 0.0
    if min(p, q) < 1e-9 * max(p, q):
        return 1 - min(1.0, max(0.0, c / max(p, q)))
    below = _ramp(c) - _ramp(c - p) - _ramp(c - q) + _ramp(c - p - q)
    return 1 - below / (2 * p * q)


def _ramp(c: float) -> float:
    return c * c if c > 0 else 0.0
