"""Pieces of foam and weight on their places, and how the vehicle would float with them."""

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import atan2, degrees, hypot

from msgspec import Struct

from model.parts import Cylinder
from model.solve.places import Place
from model.vectors import Vector, add, scale

LEVEL = 2.0
"""[deg] Trim aimed at (DEFAULTS)."""
UNIT_OF_LIFT = 0.030
"""[kg] A miss of this much lift is as bad as one of LEVEL degrees."""
SCRAP = 0.025
"""[m] Foam shorter than this is awkward to cut and hold (common practice, no source)."""
STRIDE = 0.010
"""[m] The most that a piece slides in one step."""
STRIDES = (1, 3, 10)
"""Steps that a piece grows or slides at once in the search."""


class Aim(Struct, frozen=True):
    """What the solver aims at.

    Attributes:
        low, high: least and most spare buoyancy [kg].
        least, most: the same as shares of what is displaced; the tighter of the two counts.
        bg: least height of B above G [m].
    """

    low: float
    high: float
    least: float
    most: float
    bg: float

    def window(self, lifted: float) -> tuple[float, float]:
        """Least and most spare buoyancy [kg] of a vehicle that displaces a mass of water [kg]."""
        low = max(self.low, self.least * lifted)
        return low, max(low, min(self.high, self.most * lifted))


class Rest(Struct, frozen=True):
    """The vehicle without what is solved for: mass [kg], volume [m3], their moments, and the water."""

    mass: float
    volume: float
    mass_moment: Vector
    volume_moment: Vector
    density: float


class Piece(Struct, frozen=True):
    """Steps of foam or weight on a place, with the middle at a distance along its bar [m]."""

    place: Place
    steps: int
    middle: float

    @property
    def length(self) -> float:
        """[m]"""
        return self.steps * self.place.step

    @property
    def solid(self) -> Cylinder:
        """The room that the piece takes."""
        return self.place.solid(self.middle - self.length / 2, self.middle + self.length / 2)

    @property
    def at(self) -> Vector:
        """The middle of the piece [m]."""
        return add(self.place.origin, scale(self.place.along, self.middle))

    def grown(self, by: int) -> "Piece | None":
        """The piece some steps longer, slid to stay on its stretch; None where it cannot be."""
        steps = self.steps + by
        if not 0 <= steps <= self.place.most:
            return None
        return _on_stretch(self.place, steps, self.middle)

    def slid(self, by: float) -> "Piece | None":
        """The piece moved along its bar [m]; None where it does not move."""
        moved = _on_stretch(self.place, self.steps, self.middle + by)
        return moved if moved.middle != self.middle else None


def _on_stretch(place: Place, steps: int, middle: float) -> Piece:
    half = steps * place.step / 2
    low, high = place.low + half, place.high - half
    return Piece(place, steps, min(max(middle, low), max(low, high)))


class Outcome(Struct, frozen=True):
    """How the vehicle floats: water displaced and spare buoyancy [kg], tilt [deg], BG [m]."""

    lifted: float
    spare: float
    tilt: float
    bg: float


def outcome(rest: Rest, pieces: Sequence[Piece]) -> Outcome:
    """How the vehicle floats with some pieces."""
    mass, volume = rest.mass, rest.volume
    mx, my, mz = rest.mass_moment
    vx, vy, vz = rest.volume_moment
    for piece in pieces:
        if not piece.steps:
            continue
        m, v = piece.steps * piece.place.mass, piece.steps * piece.place.volume
        x, y, z = piece.at
        mass, volume = mass + m, volume + v
        mx, my, mz = mx + m * x, my + m * y, mz + m * z
        vx, vy, vz = vx + v * x, vy + v * y, vz + v * z
    x, y, z = vx / volume - mx / mass, vy / volume - my / mass, vz / volume - mz / mass
    bg = hypot(x, y, z) if z > 0 else z
    lifted = rest.density * volume
    return Outcome(lifted, lifted - mass, degrees(atan2(hypot(x, y), z)), bg)


def score(rest: Rest, aim: Aim, pieces: Sequence[Piece]) -> tuple[float, float]:
    """What is wrong with some pieces, the less the better: what misses the aim, then how far from ideal."""
    got = outcome(rest, pieces)
    least, most = aim.window(got.lifted)
    lift = max(0.0, least - got.spare, got.spare - most) / UNIT_OF_LIFT
    tilt = max(0.0, got.tilt - LEVEL) / LEVEL
    low = max(0.0, aim.bg - got.bg) / aim.bg
    used = sum(1 for piece in pieces if piece.steps)
    scraps = sum(1 for piece in pieces if piece.place.kind == "float" and 0 < piece.length < SCRAP)
    ideal = abs(got.spare - (least + most) / 2) / UNIT_OF_LIFT + got.tilt / LEVEL + 0.3 * used + scraps
    return round(lift + tilt + low, 6), ideal


def neighbours(pieces: Sequence[Piece]) -> Iterator[tuple[Piece, ...]]:
    """All that is one move away: a piece longer, shorter or slid, or length traded between two."""
    for number, piece in enumerate(pieces):
        stride = min(piece.place.step, STRIDE)
        for size in STRIDES:
            for sign in (1, -1):
                changed = piece.grown(sign * size)
                if changed:
                    yield (*pieces[:number], changed, *pieces[number + 1 :])
                moved = piece.slid(sign * size * stride) if piece.steps else None
                if moved:
                    yield (*pieces[:number], moved, *pieces[number + 1 :])
    yield from _pairs(pieces)


def _pairs(pieces: Sequence[Piece]) -> Iterator[tuple[Piece, ...]]:
    """Two pieces grown or shortened together, or length traded between them."""
    for one, other in combinations(range(len(pieces)), 2):
        for by, size in ((-1, 1), (1, -1), (1, 1), (-1, -1), (5, 5), (-5, -5)):
            a, b = pieces[one].grown(by), pieces[other].grown(size)
            if a and b:
                changed = list(pieces)
                changed[one], changed[other] = a, b
                yield tuple(changed)
