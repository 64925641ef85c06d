"""Moments of inertia about G: of the parts, of the water in flooded pipes, and of the water around.

1. DNV-RP-C205 (and N103 table A-2), added mass of a cylinder moved across its axis, from memory;
   the values between agree with a boundary-element computation to 3 %.
"""

from collections.abc import Iterable, Iterator
from math import pi, sqrt

from model.frame.layout import Frame
from model.motion.coefficients import between_rows
from model.motion.shapes import Wet
from model.motion.tensor import Tensor, outer, point_mass, rod, solid_inertia, total
from model.parts import Block, Cylinder, Part
from model.vectors import Vector, between, cross, norm, sub
from model.vehicle.pipework import disc, hidden_room

FINITE_CYLINDER = ((0.0, 0.0), (1.2, 0.62), (2.5, 0.78), (5.0, 0.90), (9.0, 0.96), (30.0, 1.0))
"""Length over diameter, and added mass over that of the displaced water [1]; 1 for an endless cylinder."""
BLOCK_ADDED = 0.64
"""Added mass of a cube over that of its water: computed 0.636, DNV table 0.68 [1]."""
Water = tuple[float, Vector, Vector]
"""A mass [kg] and the ends of the line that it lies along [m]."""


def dry_inertia(parts: Iterable[Part], g: Vector) -> Tensor:
    """Of the parts about G [kg m2], pipes drained.

    A fitting's mass is spread evenly over its sockets, each a cylinder of the hub's diameter; a
    thruster's over the body of its motor; mounts and the tether count as points.
    """
    return total(tensor for part in parts for tensor in _dry(part, g))


def _dry(part: Part, g: Vector) -> Iterator[Tensor]:
    carriers = part.solids if part.kind == "fitting" else part.solids[:1]
    sizes = [_size(solid) for solid in carriers]
    whole = sum(sizes)
    if not whole:
        yield point_mass(part.mass, sub(part.mass_centre, g))
        return
    for solid, size in zip(carriers, sizes, strict=True):
        mass = part.mass * size / whole
        yield solid_inertia(solid, mass, part.hollow)
        yield point_mass(mass, sub(_middle(solid), g))


def flooding_mass(frame: Frame, density: float) -> list[Water]:
    """The water in flooded pipes and fittings."""
    water = []
    for bar in frame.bars.values():
        start, end = bar.pipe_ends
        water.append((density * disc(bar.pipe.bore) * norm(sub(end, start)), start, end))
    for joint in frame.joints.values():
        water.append((density * hidden_room(joint, frame.bars), joint.at, joint.at))
    return water


def flooding_inertia(frame: Frame, density: float, g: Vector) -> Tensor:
    """Of the water in flooded pipes about G [kg m2]: extra mass in every direction, and no weight."""
    return water_inertia(flooding_mass(frame, density), g)


def water_inertia(waters: Iterable[Water], g: Vector) -> Tensor:
    """Of water that lies along lines about G [kg m2]."""
    return total(rod(mass, sub(start, g), sub(end, g)) for mass, start, end in waters)


def added_inertia(shapes: Iterable[Wet], density: float, g: Vector) -> Tensor:
    """Of the water around the parts about G [kg m2], by lines that are moved across themselves."""
    return total(_added(shape, density, g) for shape in shapes)


def _added(shape: Wet, density: float, g: Vector) -> Tensor:
    solid = shape.solid
    if isinstance(solid, Block):
        return point_mass(BLOCK_ADDED * density * _size(solid), sub(solid.centre, g))
    return _across(solid, added_share(shape) * density * _size(solid), g)


def added_share(shape: Wet) -> float:
    """Added mass of a cylinder across its axis over that of the water it displaces [1]; 1 if butted."""
    solid = shape.solid
    if shape.butted or isinstance(solid, Block):
        return 1.0
    return between_rows(FINITE_CYLINDER, solid.length / (2 * solid.radius))


def _across(cylinder: Cylinder, mass: float, g: Vector) -> Tensor:
    """The added mass [kg] along the axis of a cylinder; only the motion across the axis carries it.

    With v = w x r, the part across the axis a has |v|^2 - (v.a)^2, so the tensor is that of the line
    less the outer product of r x a, which is the same all along the axis.
    """
    start, end = sub(cylinder.start, g), sub(cylinder.end, g)
    return rod(mass, start, end) + outer(cross(start, cylinder.axis)).times(-mass)


def period(inertia: float, mass: float, bg: float, gravity: float) -> float | None:
    """Natural period [s] of small swings of a submerged body; None where nothing rights it.

    T = 2 pi sqrt(I / (m g BG)), the compound pendulum (textbook mechanics).

    >>> round(period(0.1, 4.0, 0.05, 9.80665), 2)
    1.42
    """
    return 2 * pi * sqrt(inertia / (mass * gravity * bg)) if bg > 0 and mass > 0 else None


def _size(solid: Cylinder | Block) -> float:
    if isinstance(solid, Block):
        a, b, c = solid.size
        return a * b * c
    return pi * solid.radius**2 * solid.length


def _middle(solid: Cylinder | Block) -> Vector:
    return solid.centre if isinstance(solid, Block) else between(solid.start, solid.end, 0.5)
