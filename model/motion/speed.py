"""The equation of a vehicle that speeds up: m du/dt = A - B u - C u^2, solved in closed form.

A is the pull held still, B and part of C how the pull falls with speed, the rest of C the drag.  With
u1 > 0 > u2 the roots of A - B u - C u^2 (textbook: separation of variables, partial fractions)

    t(u) = m/(C (u1 - u2)) (ln((u - u2)/(-u2)) - ln((u1 - u)/u1))
    x(u) = m/(C (u1 - u2)) (-u1 ln((u1 - u)/u1) + u2 ln((u - u2)/(-u2)))

Both are reckoned with w = -ln((u1 - u)/u1), how near the top it is, for u itself says little there.  The
same holds for turning, with inertia, moments and angles.
"""

from functools import cached_property
from math import atan, expm1, log, log1p, sqrt

from msgspec import Struct

STEPS = 60
EXACT = 1e-13
"""A share by which a guess may still change."""
NEARLY = -log1p(-0.999999)
"""w of 0.999999 of the top speed, which is reached in no finite time."""


class Push(Struct, frozen=True, dict=True):  # the dict keeps what was worked out once
    """m du/dt = still - slope u - square u^2.

    Attributes:
        mass: with flooding water and added mass [kg], or inertia [kg m2].
        still: A [N] or [N m].
        slope: B; square: C, above 0.
    """

    mass: float
    still: float
    slope: float
    square: float

    @cached_property
    def roots(self) -> tuple[float, float]:
        """u1 and u2."""
        half = self.slope / (2 * self.square)
        root = sqrt(half * half + self.still / self.square)
        return self.still / self.square / (half + root), -half - root

    @property
    def top(self) -> float:
        """The speed that it comes to in the end; 0 where nothing pushes.

        >>> Push(1.0, 4.0, 0.0, 1.0).top
        2.0
        """
        return self.roots[0] if self.still > 0 else 0.0

    def time(self, speed: float) -> float:
        """Time to a speed below the top, from rest.

        >>> round(Push(1.0, 1.0, 0.0, 1.0).time(0.9), 4)  # atanh(0.9)
        1.4722
        """
        return self._time(-log1p(-speed / self.top))

    def distance(self, speed: float) -> float:
        """Distance to a speed below the top, from rest.

        >>> round(Push(1.0, 1.0, 0.0, 1.0).distance(0.9), 4)  # -ln(1 - 0.81)/2
        0.8304
        """
        return self._distance(-log1p(-speed / self.top))

    @cached_property
    def _pace(self) -> float:
        """m/(C (u1 - u2)) [s]."""
        u1, u2 = self.roots
        return self.mass / (self.square * (u1 - u2))

    def _time(self, near: float) -> float:
        u1, u2 = self.roots
        return self._pace * (near + log1p(u1 / u2 * expm1(-near)))

    def _distance(self, near: float) -> float:
        u1, u2 = self.roots
        return self._pace * (u1 * near + u2 * log1p(u1 / u2 * expm1(-near)))

    def _near_after(self, distance: float) -> float:
        """w after a distance from rest, by Newton's rule.

        The first guess is exact where the pull does not fall: u = u1 sqrt(1 - exp(-2 C x/m)).  The distance
        grows ever faster with w, so every guess after it is too far, and they only come down.
        """
        if distance <= 0:
            return 0.0
        u1, u2 = self.roots
        fade = 2 * self.square * distance / self.mass
        near = fade + log1p(sqrt(-expm1(-fade)))
        for _ in range(STEPS):
            speed = -u1 * expm1(-near)
            growth = self.mass * speed / (self.square * (speed - u2))
            step = (self._distance(near) - distance) / growth
            near -= step
            if abs(step) <= EXACT * near:
                break
        return near

    def speed_after(self, distance: float) -> float:
        """Speed after a distance from rest."""
        return -self.top * expm1(-self._near_after(distance))

    def time_over(self, distance: float) -> float:
        """Time for a distance from rest.

        >>> round(Push(1.0, 1.0, 0.0, 1.0).time_over(100.0), 3)  # 100 + ln 2
        100.693
        """
        rest = distance - self._distance(NEARLY)
        if rest > 0:
            return self._time(NEARLY) + rest / self.top
        return self._time(self._near_after(distance))


def stopping(mass: float, speed: float, brake: float, square: float) -> tuple[float, float]:
    """Time and distance to stop from a speed, with a steady pull against it and drag k u^2.

    m du/dt = -(F + k u^2): t = m/sqrt(F k) atan(u sqrt(k/F)), x = m/(2 k) ln(1 + k u^2/F), textbook.

    >>> time, distance = stopping(2.0, 1.0, 1.0, 1.0)
    >>> round(time, 4), round(distance, 4)
    (1.5708, 0.6931)
    """
    share = square * speed**2 / brake
    return mass / sqrt(brake * square) * atan(sqrt(share)), mass / (2 * square) * log(1 + share)


def coasting(mass: float, square: float, share: float = 0.1) -> float:
    """Distance in which drag alone takes the speed down to a share: m/k ln(1/share), textbook.

    >>> round(coasting(2.0, 1.0), 3)
    4.605
    """
    return mass / square * log(1 / share)
