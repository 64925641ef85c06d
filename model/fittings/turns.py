"""The ways to turn a fitting in space, without mirroring it, that keep its sockets on main directions.

A main direction lies along an axis, or at 45 degrees between two axes.
"""

from functools import lru_cache
from itertools import permutations, product

from model.vectors import Grid

Turn = tuple[Grid, Grid, Grid]
"""A rotation as three rows of whole numbers; rows of an eighth turn are longer than 1."""
EIGHTHS: tuple[Turn, ...] = (
    ((1, 0, 0), (0, 1, -1), (0, 1, 1)),
    ((1, 0, 1), (0, 1, 0), (-1, 0, 1)),
    ((1, -1, 0), (1, 1, 0), (0, 0, 1)),
)
"""An eighth turn about each axis: a tee turned so about its run takes a leg at 45 degrees."""


def _determinant(turn: Turn) -> int:
    (a, b, c), (d, e, f), (g, h, i) = turn
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


def _row(axis: int, sign: int) -> Grid:
    return sign * (axis == 0), sign * (axis == 1), sign * (axis == 2)


def _quarters() -> tuple[Turn, ...]:
    """The 24 turns that lay axes on axes."""
    found: list[Turn] = []
    for axes in permutations(range(3)):
        for signs in product((1, -1), repeat=3):
            rows = [_row(axis, sign) for axis, sign in zip(axes, signs, strict=True)]
            turn = (rows[0], rows[1], rows[2])
            if _determinant(turn) == 1:
                found.append(turn)
    return tuple(found)


def _times(eighth: Turn, quarter: Turn) -> Turn:
    columns = tuple(zip(*quarter, strict=True))
    rows = [
        tuple(sum(a * b for a, b in zip(row, column, strict=True)) for column in columns) for row in eighth
    ]
    (a, b, c), (d, e, f), (g, h, i) = rows
    return (a, b, c), (d, e, f), (g, h, i)


QUARTERS = _quarters()
TURNS = (*QUARTERS, *(_times(eighth, quarter) for eighth in EIGHTHS for quarter in QUARTERS))


def turned(direction: Grid, turn: Turn) -> Grid | None:
    """A direction after a rotation, or None where that is no main direction.

    >>> turned((0, 1, 0), EIGHTHS[0]), turned((1, 1, 0), EIGHTHS[0])
    ((0, 1, 1), None)
    """
    x, y, z = direction
    a, b, c = ((step > 0) - (step < 0) for step in (r[0] * x + r[1] * y + r[2] * z for r in turn))
    return None if a and b and c else (a, b, c)


@lru_cache(maxsize=64)
def placements(directions: tuple[Grid, ...]) -> tuple[tuple[Grid, ...], ...]:
    """Some directions after each rotation that lays all of them on main directions."""
    turns = ([turned(direction, turn) for direction in directions] for turn in TURNS)
    return tuple(tuple(to for to in ways if to) for ways in turns if None not in ways)
