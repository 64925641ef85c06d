"""The equation of a vehicle that speeds up: m du/dt = A - B u - C u^2, solved in closed form.

A is the pull held still, B and part of C how the pull falls with speed, the rest of C the drag.  With
u1 > 0 > u2 the roots of A - B u - C u^2 (textbook: separation of variables, partial fractions)

    t(u) = m/(C (u1 - u2)) (ln((u - u2)/(-u2)) - ln((u1 - u)/u1))
    x(u) = m/(C (u1 - u2)) (-u1 ln((u1 - u)/u1) + u2 ln((u - u2)/(-u2)))

The same holds for turning, with inertia, moments and angles.
"""

from math import atan, expm1, log, sqrt

from msgspec import Struct

STEPS = 60
NEARLY = 0.999999
"""Of the top speed, which is reached in no finite time."""


class Push(Struct, frozen=True):
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

    @property
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
        u1, u2 = self.roots
        return self.mass / (self.square * (u1 - u2)) * (log((speed - u2) / -u2) - log((u1 - speed) / u1))

    def distance(self, speed: float) -> float:
        """Distance to a speed below the top, from rest.

        >>> round(Push(1.0, 1.0, 0.0, 1.0).distance(0.9), 4)  # -ln(1 - 0.81)/2
        0.8304
        """
        u1, u2 = self.roots
        parts = -u1 * log((u1 - speed) / u1) + u2 * log((speed - u2) / -u2)
        return self.mass / (self.square * (u1 - u2)) * parts

    def speed_after(self, distance: float) -> float:
        """Speed after a distance from rest, by Newton's rule held between rest and the top speed.

        The first guess is exact where the pull does not fall: u = u1 sqrt(1 - exp(-2 C x/m)).
        """
        top = self.top
        low, high = 0.0, top
        speed = top * sqrt(-expm1(-2 * self.square * distance / self.mass))
        for _ in range(STEPS):
            if speed >= top * (1 - 1e-15):
                return high
            miss = self.distance(speed) - distance
            low, high = (low, speed) if miss > 0 else (speed, high)
            pull = self.still - self.slope * speed - self.square * speed * speed
            better = speed - miss * pull / (self.mass * speed) if speed > 0 else high / 2
            if not low < better < high:
                better = (low + high) / 2
            if abs(better - speed) <= 1e-13 * top:
                break
            speed = better
        return speed

    def time_over(self, distance: float) -> float:
        """Time for a distance from rest.

        >>> round(Push(1.0, 1.0, 0.0, 1.0).time_over(100.0), 3)  # 100 + ln 2
        100.693
        """
        fastest = NEARLY * self.top
        rest = distance - self.distance(fastest)
        if rest > 0:
            return self.time(fastest) + rest / self.top
        return self.time(min(fastest, self.speed_after(distance)))


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
