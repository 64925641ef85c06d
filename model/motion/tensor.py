"""Moments of inertia as symmetric tensors."""

from collections.abc import Iterable

from msgspec import Struct

from model.parts import Block, Cylinder, Solid
from model.vectors import Vector, between, sub


class Tensor(Struct, frozen=True):
    """A symmetric 3 x 3 tensor, such as moments of inertia [kg m2]: diagonal, then xy, xz, yz."""

    xx: float = 0.0
    yy: float = 0.0
    zz: float = 0.0
    xy: float = 0.0
    xz: float = 0.0
    yz: float = 0.0

    def __add__(self, other: "Tensor") -> "Tensor":
        return Tensor(
            self.xx + other.xx,
            self.yy + other.yy,
            self.zz + other.zz,
            self.xy + other.xy,
            self.xz + other.xz,
            self.yz + other.yz,
        )

    def times(self, factor: float) -> "Tensor":
        """This tensor times a number."""
        xx, yy, zz, xy, xz, yz = self.xx, self.yy, self.zz, self.xy, self.xz, self.yz
        return Tensor(xx * factor, yy * factor, zz * factor, xy * factor, xz * factor, yz * factor)

    def along(self, way: Vector) -> float:
        """The part of it along a direction of length 1: e . A e."""
        x, y, z = way
        plain = self.xx * x * x + self.yy * y * y + self.zz * z * z
        return plain + 2 * (self.xy * x * y + self.xz * x * z + self.yz * y * z)


def total(tensors: Iterable[Tensor]) -> Tensor:
    """The sum of some tensors."""
    xx = yy = zz = xy = xz = yz = 0.0
    for one in tensors:
        xx, yy, zz = xx + one.xx, yy + one.yy, zz + one.zz
        xy, xz, yz = xy + one.xy, xz + one.xz, yz + one.yz
    return Tensor(xx, yy, zz, xy, xz, yz)


def axial(axis: Vector, along: float, across: float) -> Tensor:
    """What is so much along an axis of length 1, and so much every way square to it."""
    x, y, z = axis
    more = along - across
    return Tensor(
        across + more * x * x,
        across + more * y * y,
        across + more * z * z,
        more * x * y,
        more * x * z,
        more * y * z,
    )


def outer(a: Vector) -> Tensor:
    """The tensor a a^T."""
    x, y, z = a
    return Tensor(x * x, y * y, z * z, x * y, x * z, y * z)


def point_mass(mass: float, at: Vector) -> Tensor:
    """Inertia of a mass [kg] at a place [m] from the axes: m (r^2 1 - r r^T)."""
    x, y, z = at
    return Tensor(
        mass * (y * y + z * z),
        mass * (x * x + z * z),
        mass * (x * x + y * y),
        -mass * x * y,
        -mass * x * z,
        -mass * y * z,
    )


def rod(mass: float, start: Vector, end: Vector) -> Tensor:
    """Inertia of a mass [kg] spread evenly along a thin line [m] from the axes.

    That of a point in its middle and m L^2/12 across it (Meriam and Kraige, table D/4, from memory).
    """
    x, y, z = between(start, end, 0.5)
    a, b, c = sub(end, start)
    xx, yy, zz = x * x + a * a / 12, y * y + b * b / 12, z * z + c * c / 12
    return Tensor(
        mass * (yy + zz),
        mass * (xx + zz),
        mass * (xx + yy),
        -mass * (x * y + a * b / 12),
        -mass * (x * z + a * c / 12),
        -mass * (y * z + b * c / 12),
    )


def solid_inertia(solid: Solid, mass: float, hollow: float = 0.0) -> Tensor:
    """Inertia of an evenly filled solid of a mass [kg] about its own centre.

    Args:
        hollow: inside radius of a tube [m].

    Handbook: tube, m (R^2 + r^2)/2 about its axis, m (3 (R^2 + r^2) + L^2)/12 across it; block,
    m (b^2 + c^2)/12 (Meriam and Kraige, Engineering Mechanics: Dynamics, table D/4, from memory).
    """
    if isinstance(solid, Block):
        a, b, c = (side * side for side in solid.size)
        return Tensor(b + c, a + c, a + b).times(mass / 12)
    return _tube(solid, mass, min(hollow, solid.radius))


def _tube(tube: Cylinder, mass: float, hollow: float) -> Tensor:
    squares = tube.radius**2 + hollow**2
    return axial(tube.axis, mass * squares / 2, mass * (3 * squares + tube.length**2) / 12)
