"""Points and directions in body axes: x ahead, y to port, z up."""

from functools import lru_cache
from math import sqrt

Vector = tuple[float, float, float]
Grid = tuple[int, int, int]
"""A direction as whole numbers: (1, 0, 0) is ahead, (1, 1, 0) is 45 degrees ahead to port."""

ORIGIN: Vector = (0.0, 0.0, 0.0)
AXES = "xyz"


def add(a: Vector, b: Vector) -> Vector:
    """The sum of two vectors."""
    return a[0] + b[0], a[1] + b[1], a[2] + b[2]


def sub(a: Vector, b: Vector) -> Vector:
    """The vector from b to a."""
    return a[0] - b[0], a[1] - b[1], a[2] - b[2]


def scale(a: Vector, factor: float) -> Vector:
    """A vector times a number."""
    return a[0] * factor, a[1] * factor, a[2] * factor


def dot(a: Vector, b: Vector) -> float:
    """The scalar product of two vectors."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """The vector product of two vectors."""
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def norm(a: Vector) -> float:
    """The length of a vector."""
    return sqrt(dot(a, a))


def between(a: Vector, b: Vector, share: float) -> Vector:
    """The point that lies a share of the way from a to b."""
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share


@lru_cache(maxsize=64)
def grid(direction: str) -> Grid:
    """A direction written like +x or -y+z as whole numbers.

    >>> grid("-y+z")
    (0, -1, 1)
    """
    steps = {direction[i + 1]: 1 if direction[i] == "+" else -1 for i in range(0, len(direction), 2)}
    return steps.get("x", 0), steps.get("y", 0), steps.get("z", 0)


def direction_text(steps: Grid) -> str:
    """Whole numbers as a direction written like +x or -y+z.

    >>> direction_text((0, -1, 1))
    '-y+z'
    """
    return "".join(("+" if step > 0 else "-") + axis for step, axis in zip(steps, AXES, strict=True) if step)


@lru_cache(maxsize=64)
def unit(direction: str) -> Vector:
    """A direction written like +x or -y+z as a vector of length 1."""
    steps = grid(direction)
    return scale((float(steps[0]), float(steps[1]), float(steps[2])), 1 / norm(steps))
