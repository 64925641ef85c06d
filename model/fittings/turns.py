"""The 24 ways to turn a fitting in space without mirroring it."""

from itertools import permutations, product

from model.vectors import Grid

Turn = tuple[Grid, Grid, Grid]
"""A rotation as three rows of whole numbers."""


def _determinant(turn: Turn) -> int:
    (a, b, c), (d, e, f), (g, h, i) = turn
    return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)


def _row(axis: int, sign: int) -> Grid:
    return sign * (axis == 0), sign * (axis == 1), sign * (axis == 2)


def _all_turns() -> tuple[Turn, ...]:
    found: list[Turn] = []
    for axes in permutations(range(3)):
        for signs in product((1, -1), repeat=3):
            rows = [_row(axis, sign) for axis, sign in zip(axes, signs, strict=True)]
            turn = (rows[0], rows[1], rows[2])
            if _determinant(turn) == 1:
                found.append(turn)
    return tuple(found)


TURNS = _all_turns()


def turned(direction: Grid, turn: Turn) -> Grid:
    """A direction after a rotation."""
    x, y, z = direction
    rows = [row[0] * x + row[1] * y + row[2] * z for row in turn]
    return rows[0], rows[1], rows[2]
