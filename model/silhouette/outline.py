"""The outlines of solids seen along an axis.

A round solid seen aslant is the hull of the two ellipses that its ends show; end on it is a disc,
from the side a rectangle.  All outlines are convex, so a level line crosses each in one piece.
"""

from collections.abc import Iterator
from functools import cached_property
from math import cos, hypot, pi, sin, sqrt

from msgspec import Struct

from model.parts import Cylinder, Solid
from model.vectors import norm, sub

VIEWS = {"front": (1, 2), "side": (0, 2), "top": (0, 1)}
"""The two axes that each view shows: across the page, and up it."""
FLAT = 1e-9
"""[m] A height below this is none."""
ROUND = 96
"""Points that stand for an ellipse where only points can be told."""


class Outline(Struct, frozen=True, dict=True):  # the dict keeps its shape once it was worked out
    """A convex outline: an ellipse carried along from one centre to another [m].

    Attributes:
        start, end: the centres, across and up.
        a, b, c: the ellipse, as the symmetric matrix M = [[a, b], [b, c]] [m2]; x' M^-1 x = 1 on it.
    """

    start: tuple[float, float]
    end: tuple[float, float]
    a: float
    b: float
    c: float

    @property
    def low(self) -> float:
        """Its lowest height [m]."""
        return min(self.start[1], self.end[1]) - self._root

    @property
    def high(self) -> float:
        """Its greatest height [m]."""
        return max(self.start[1], self.end[1]) + self._root

    @cached_property
    def sides(self) -> tuple[float, float]:
        """How far it reaches across: from and to [m]."""
        reach = sqrt(self.a)
        return min(self.start[0], self.end[0]) - reach, max(self.start[0], self.end[0]) + reach

    def span(self, height: float) -> tuple[float, float] | None:
        """Where a level line crosses it: from and to [m], or None where it passes by.

        The ends are the least and the greatest of centre and ellipse together over the way from
        one centre to the other; both are convex in it, so the best place is where their slopes
        agree, or at an end.
        """
        (u, v), (du, dv), root = self.start, self._run, self._root
        if root < FLAT:  # ends that are seen as level lines
            reach = sqrt(self.a)
            if not min(v, v + dv) <= height <= max(v, v + dv):
                return None
            middle = u + (du * (height - v) / dv if dv else 0.0)
            return middle - reach, middle + reach
        lean, bulge = self._lean_and_bulge
        if abs(dv) < FLAT:
            t = height - v
            if abs(t) > root:
                return None
            middle, half = lean * t, bulge * sqrt(1 - (t / root) ** 2)
            return min(u, u + du) + middle - half, max(u, u + du) + middle + half
        low = max(-root, height - max(v, v + dv))
        high = min(root, height - min(v, v + dv))
        if low > high:
            return None
        slope, best = du / dv, self._touch
        ends = []
        for sign in (-1.0, 1.0):
            t = min(max(sign * best, low), high)
            half = bulge * sqrt(max(0.0, 1 - (t / root) ** 2))
            ends.append(u + slope * (height - v - t) + lean * t + sign * half)
        return ends[0], ends[1]

    @cached_property
    def steady(self) -> tuple[float, float] | None:
        """Where every level line crosses it: from and to [m], or None where they do not all cross it alike.

        They do where a bar is seen that lies level or stands upright.
        """
        (du, dv), root = self._run, self._root
        upright = root < FLAT and du == 0
        level = root >= FLAT > abs(dv) and self._lean_and_bulge == (0.0, 0.0)
        return self.span(self.start[1] + dv / 2) if upright or level else None

    @property
    def bends(self) -> tuple[float, ...]:
        """The heights [m] where its round ends go over into its straight sides."""
        if self.c < FLAT**2 or abs(self.end[1] - self.start[1]) < FLAT:
            return ()
        touch = self._touch
        return tuple(v + t for v in (self.start[1], self.end[1]) for t in (-touch, touch))

    @cached_property
    def _run(self) -> tuple[float, float]:
        """The way from its first centre to the other."""
        return sub2(self.end, self.start)

    @cached_property
    def _root(self) -> float:
        """Half the height of the ellipse [m]."""
        return sqrt(self.c)

    @cached_property
    def _lean_and_bulge(self) -> tuple[float, float]:
        """How the ellipse leans, and how wide it is at the height of its centre."""
        return self.b / self.c, sqrt(max(0.0, self.a - self.b * self.b / self.c))

    @cached_property
    def _touch(self) -> float:
        """The height above the centre [m] where the line along its far side touches the ellipse."""
        (du, dv), root = self._run, self._root
        lean, bulge = self._lean_and_bulge
        pull = (lean - du / dv) * root
        return root * pull / hypot(pull, bulge) if pull or bulge else 0.0

    @property
    def is_disc(self) -> bool:
        """Whether it is a circle in one place."""
        apart = hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])
        return apart < FLAT and abs(self.b) < FLAT**2 and abs(self.a - self.c) < FLAT**2

    def points(self) -> Iterator[tuple[float, float]]:
        """Points whose hull is the outline, or is outside it by less than a thousandth of its ellipse [m]."""
        bulge = max(0.0, self.a * self.c - self.b * self.b)
        count = ROUND if bulge > FLAT**4 else 2
        grow = 1 / cos(pi / ROUND) if count == ROUND else 1.0
        for number in range(count):
            angle = 2 * pi * number / count
            step = self._on_ellipse(angle, bulge)
            for u, v in {self.start, self.end}:
                yield u + grow * step[0], v + grow * step[1]

    def _on_ellipse(self, angle: float, bulge: float) -> tuple[float, float]:
        """A point of the ellipse about the origin: Cholesky's root of the matrix turns the circle into it."""
        x, y = cos(angle), sin(angle)
        if self.a < FLAT**2:
            return 0.0, sqrt(self.c) * x
        root = sqrt(self.a)
        return root * x, self.b / root * x + sqrt(bulge) / root * y


def sub2(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    """The step from b to a."""
    return a[0] - b[0], a[1] - b[1]


def outline(solid: Solid, view: tuple[int, int]) -> Outline:
    """What a solid shows along the axis that a view leaves out; a block counts as its rectangle."""
    across, up = view
    if isinstance(solid, Cylinder):
        along = sub(solid.end, solid.start)
        length = norm(along) or 1.0
        n, m = along[across] / length, along[up] / length
        square = solid.radius**2
        return Outline(
            (solid.start[across], solid.start[up]),
            (solid.end[across], solid.end[up]),
            max(0.0, square * (1 - n * n)),
            -square * n * m,
            max(0.0, square * (1 - m * m)),
        )
    (u, v), (width, height) = _two(solid.centre, view), _two(solid.size, view)
    return Outline((u, v - height / 2), (u, v + height / 2), (width / 2) ** 2, 0.0, 0.0)


def _two(values: tuple[float, float, float], view: tuple[int, int]) -> tuple[float, float]:
    return values[view[0]], values[view[1]]
