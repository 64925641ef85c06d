"""Which part holds the vehicle back by how much, and carries how much water along.

The same strips, coefficients and added masses as in `body`, part by part; each counts as if it stood alone,
so areas of parts that hide one another add up to more than a silhouette.
"""

from collections.abc import Iterable, Sequence
from math import pi

from msgspec import Struct

from model.design import Arrangement
from model.frame.layout import Frame
from model.motion.added import added_mass
from model.motion.body import AHEAD, UP
from model.motion.coefficients import HIGH, LOW
from model.motion.drag import resistances, weighted
from model.motion.inertia import flooding_mass
from model.motion.shapes import Wet, wet_shapes
from model.motion.span import Span, spanned
from model.motion.strips import Strips, floats_area, strips_of, tether_strip
from model.motion.tensor import Tensor
from model.parts import Cylinder, Part
from model.thrust.stream import frontal
from model.vectors import Vector, dot

BARE = 1e-6
"""[m2] What shows less than this to the water has no coefficient."""


class Facing(Struct, frozen=True):
    """What something meets the water with, moved along one direction.

    Attributes:
        groups: k in drag = k u^2 [N s2/m2], of each group of ``coefficients``.
        area: what it shows to the water [m2].
        density: of the water [kg/m3].
    """

    groups: tuple[float, ...]
    area: float
    density: float

    @property
    def k(self) -> float:
        """Drag over the square of the speed [N s2/m2]."""
        return sum(self.groups)

    @property
    def coefficient(self) -> float | None:
        """C_D on the area that it shows; None where it shows hardly any."""
        return self.k / (self.density / 2 * self.area) if self.area > BARE else None

    def drag(self, speed: float) -> Span:
        """Drag [N] at a speed [m/s], with the spread of the published coefficients."""
        square = speed**2
        return spanned(self.k * square, [weighted(self.groups, case) * square for case in (LOW, HIGH)])


class Share(Struct, frozen=True):
    """What one part, or some together, contribute.

    Attributes:
        kind: of the parts. name: of the part. count: how many.
        ahead, up: moved ahead and up.
        added: mass of the water around that is moved along [kg].
        inside: water in its pipes, where they are flooded [kg].
    """

    kind: str
    name: str
    count: int
    ahead: Facing
    up: Facing
    added: Tensor
    inside: float


def drag_shares(
    arrangement: Arrangement, frame: Frame, parts: Sequence[Part], density: float
) -> tuple[Share, ...]:
    """What each part contributes, the tether last; parts that meet no water are left out."""
    inside = _inside(arrangement, frame, density)
    bare, found = arrangement.but(tether=None), []
    for part in parts:
        shapes, water = wet_shapes(frame, (part,)), inside.pop((part.kind, part.id), 0.0)
        if shapes or water:
            strips = strips_of(bare, frame, shapes, density * arrangement.drag_factor)
            added = added_mass(shapes, None, density)
            found.append(_share(part.kind, part.name, shapes, strips, added, water, density))
    if sum(inside.values()) > 0:  # joints that no fitting fits yet
        rest = sum(inside.values())
        found.append(
            _share("fitting", "joints without a fitting", (), Strips((), ()), Tensor(), rest, density)
        )
    return (*found, *_tether(arrangement, frame, density))


def together(kind: str, name: str, shares: Iterable[Share]) -> Share:
    """Some shares as one; there must be at least one."""
    found = list(shares)
    return Share(
        kind,
        name,
        sum(share.count for share in found),
        _all_facing([share.ahead for share in found]),
        _all_facing([share.up for share in found]),
        sum((share.added for share in found), Tensor()),
        sum(share.inside for share in found),
    )


def _all_facing(found: Sequence[Facing]) -> Facing:
    groups = tuple(sum(of_group) for of_group in zip(*(each.groups for each in found), strict=True))
    return Facing(groups, sum(each.area for each in found), found[0].density)


def _inside(arrangement: Arrangement, frame: Frame, density: float) -> dict[tuple[str, str], float]:
    """The water [kg] inside each bar and each joint of a flooded frame."""
    if arrangement.bores != "flooded":
        return {}
    places = [*(("bar", bar) for bar in frame.bars), *(("fitting", joint) for joint in frame.joints)]
    water = flooding_mass(frame, density)
    return {place: mass for place, (mass, _, _) in zip(places, water, strict=True)}


def _share(
    kind: str, name: str, shapes: Sequence[Wet], strips: Strips, added: Tensor, water: float, density: float
) -> Share:
    ahead, up = (
        Facing(resistances(strips, way), sum(_shown(shape, way) for shape in shapes), density)
        for way in (AHEAD, UP)
    )
    return Share(kind, name, 1, ahead, up, added, water)


def _shown(shape: Wet, way: Vector) -> float:
    """Area [m2] of a shape as seen along a direction; ends that meet other parts are not seen."""
    solid = shape.solid
    area = frontal(solid, way)
    if shape.butted and isinstance(solid, Cylinder):
        return area - pi * solid.radius**2 * abs(dot(solid.axis, way))
    return area


def _tether(arrangement: Arrangement, frame: Frame, density: float) -> tuple[Share, ...]:
    """The hanging tether with its floats, all of it upright."""
    tether = arrangement.tether
    if tether is None or not tether.hanging:
        return ()
    at = frame.bars[tether.bar].point(tether.at)
    strips = Strips((tether_strip(tether, at, density * arrangement.drag_factor),), ())
    balls = floats_area(tether)
    ahead, up = (
        Facing(resistances(strips, way), area + balls, density)
        for way, area in ((AHEAD, tether.diameter * tether.hanging), (UP, 0.0))
    )
    return (Share("tether", tether.name, 1, ahead, up, added_mass((), tether, density), 0.0),)
