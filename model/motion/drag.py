"""Drag on the whole vehicle as it moves and turns, summed strip by strip."""

from math import sqrt
from operator import mul

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
    return tuple(_drag(group, velocity, spin, about) for group in strips.groups)


def _drag(strips: Strips, velocity: Vector, spin: Vector, about: Vector) -> Wrench:
    """The same of all strips together; each takes its share off the force and the moment."""
    u, v, w = velocity
    p, q, r = spin
    ox, oy, oz = about
    fx = fy = fz = mx = my = mz = 0.0
    for (x, y, z), (a, b, c), across, skin, _ in strips.strips:
        x, y, z = x - ox, y - oy, z - oz
        vx, vy, vz = u + q * z - r * y, v + r * x - p * z, w + p * y - q * x
        along = vx * a + vy * b + vz * c
        nx, ny, nz = vx - along * a, vy - along * b, vz - along * c
        across *= sqrt(nx * nx + ny * ny + nz * nz)
        skin *= along * abs(along)
        gx, gy, gz = across * nx + skin * a, across * ny + skin * b, across * nz + skin * c
        fx, fy, fz = fx - gx, fy - gy, fz - gz
        mx, my, mz = mx - (y * gz - z * gy), my - (z * gx - x * gz), mz - (x * gy - y * gx)
    for (x, y, z), (a, b, c), _ in strips.slabs:
        x, y, z = x - ox, y - oy, z - oz
        vx, vy, vz = u + q * z - r * y, v + r * x - p * z, w + p * y - q * x
        gx, gy, gz = a * vx * abs(vx), b * vy * abs(vy), c * vz * abs(vz)
        fx, fy, fz = fx - gx, fy - gy, fz - gz
        mx, my, mz = mx - (y * gz - z * gy), my - (z * gx - x * gz), mz - (x * gy - y * gx)
    return (fx, fy, fz), (mx, my, mz)


def summed(groups: Groups, factors: tuple[float, ...] = USUAL) -> Wrench:
    """The whole drag; the factors are by how much each group differs from the usual."""
    fx = fy = fz = mx = my = mz = 0.0
    for ((x, y, z), (a, b, c)), factor in zip(groups, factors, strict=True):
        fx, fy, fz = fx + factor * x, fy + factor * y, fz + factor * z
        mx, my, mz = mx + factor * a, my + factor * b, mz + factor * c
    return (fx, fy, fz), (mx, my, mz)


def resistances(strips: Strips, along: Vector) -> tuple[float, ...]:
    """k in drag = k u^2 [N s2/m2] of each group, moved straight along a direction of length 1."""
    return tuple(-dot(force, along) for force, _ in drag(strips, along, ORIGIN, ORIGIN))


def turn_resistances(strips: Strips, about: Vector) -> tuple[float, ...]:
    """K in moment = K r^2 [N m s2] of each group, turned on the spot about the upright through a point."""
    return tuple(-moment[2] for _, moment in drag(strips, ORIGIN, (0.0, 0.0, 1.0), about))


def weighted(values: tuple[float, ...], factors: tuple[float, ...]) -> float:
    """The sum of the values of all groups, each with its factor."""
    return float(sum(map(mul, values, factors)))
