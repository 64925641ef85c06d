"""Drag on the whole vehicle as it moves and turns, summed strip by strip."""

from math import sqrt

from model.motion.strips import Strips
from model.vectors import ORIGIN, Vector, dot

Wrench = tuple[Vector, Vector]
"""A force [N] and a moment [N m], in body axes."""
USUAL = (1.0, 1.0, 1.0, 1.0)
Groups = tuple[Wrench, ...]
"""The drag of each group of ``coefficients``."""


def drag(strips: Strips, velocity: Vector, spin: Vector, about: Vector) -> Groups:
    """The drag on a vehicle in still water by group, each strip at its own speed.

    Args:
        velocity: of the point ``about`` [m/s]; spin: [rad/s]; both in body axes.
        about: the point that moments are taken about [m].
    """
    u, v, w = velocity
    p, q, r = spin
    ox, oy, oz = about
    sums = [[0.0] * 6 for _ in USUAL]
    for (x, y, z), (a, b, c), across, skin, group in strips.strips:
        x, y, z = x - ox, y - oy, z - oz
        vx, vy, vz = u + q * z - r * y, v + r * x - p * z, w + p * y - q * x
        along = vx * a + vy * b + vz * c
        nx, ny, nz = vx - along * a, vy - along * b, vz - along * c
        across *= sqrt(nx * nx + ny * ny + nz * nz)
        skin *= along * abs(along)
        gx, gy, gz = across * nx + skin * a, across * ny + skin * b, across * nz + skin * c
        _take_off(sums[group], x, y, z, gx, gy, gz)
    for (x, y, z), (a, b, c), group in strips.slabs:
        x, y, z = x - ox, y - oy, z - oz
        vx, vy, vz = u + q * z - r * y, v + r * x - p * z, w + p * y - q * x
        _take_off(sums[group], x, y, z, a * vx * abs(vx), b * vy * abs(vy), c * vz * abs(vz))
    return tuple(((fx, fy, fz), (mx, my, mz)) for fx, fy, fz, mx, my, mz in sums)


def _take_off(total: list[float], x: float, y: float, z: float, gx: float, gy: float, gz: float) -> None:
    """What holds back, taken off a sum, with its moment."""
    total[0] -= gx
    total[1] -= gy
    total[2] -= gz
    total[3] -= y * gz - z * gy
    total[4] -= z * gx - x * gz
    total[5] -= x * gy - y * gx


def summed(groups: Groups, factors: tuple[float, ...] = USUAL) -> Wrench:
    """The whole drag; the factors are by how much each group differs from the usual."""
    (fx, fy, fz), (mx, my, mz) = (
        tuple(
            sum(factor * wrench[part][axis] for wrench, factor in zip(groups, factors, strict=True))
            for axis in range(3)
        )
        for part in (0, 1)
    )
    return (fx, fy, fz), (mx, my, mz)


def resistances(strips: Strips, along: Vector) -> tuple[float, ...]:
    """k in drag = k u^2 [N s2/m2] of each group, moved straight along a direction of length 1."""
    return tuple(-dot(force, along) for force, _ in drag(strips, along, ORIGIN, ORIGIN))


def turn_resistances(strips: Strips, about: Vector) -> tuple[float, ...]:
    """K in moment = K r^2 [N m s2] of each group, turned on the spot about the upright through a point."""
    return tuple(-moment[2] for _, moment in drag(strips, ORIGIN, (0.0, 0.0, 1.0), about))


def weighted(values: tuple[float, ...], factors: tuple[float, ...]) -> float:
    """The sum of the values of all groups, each with its factor."""
    return sum(value * factor for value, factor in zip(values, factors, strict=True))
