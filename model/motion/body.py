"""The vehicle as motion sees it: what pushes it, what holds it back, what has to be moved along."""

from collections.abc import Sequence

from msgspec import Struct

from model.design import Arrangement
from model.frame.layout import Frame
from model.motion.added import added_mass
from model.motion.coefficients import HIGH, LOW
from model.motion.drag import USUAL, Groups, drag, turn_resistances
from model.motion.inertia import added_inertia, dry_inertia, flooding_mass, water_inertia
from model.motion.shapes import wet_shapes
from model.motion.strips import Strips, strips_of
from model.motion.tensor import Tensor
from model.parts import Part
from model.thrust.drives import Drive
from model.thrust.propeller import ZERO_THRUST
from model.vectors import ORIGIN, Vector, dot, scale
from model.water.balance import Balance

AHEAD: Vector = (1.0, 0.0, 0.0)
UP: Vector = (0.0, 0.0, 1.0)
GONE_SPREAD = (1.77 / ZERO_THRUST, 2.38 / ZERO_THRUST)
"""Zero-thrust speed over the usual, least and most, see ``propeller.ZERO_THRUST``."""
MASS_SPREAD = 0.10
"""Half the width of the spread of mass with water, as a share: added mass of crossing pipes (stated rule)."""


class Case(Struct, frozen=True):
    """One way that the causes of a result may really be, each as a factor on what is reckoned with.

    Attributes:
        drag: of each group of ``coefficients``.
        pull: how much of the spread of each pull is added, -1 to 1.
        gone: zero-thrust speed. mass: with water.
    """

    drag: tuple[float, ...] = USUAL
    pull: float = 0.0
    gone: float = 1.0
    mass: float = 1.0


AS_RECKONED = Case()
OTHERWISE = (
    Case(drag=LOW),
    Case(drag=HIGH),
    Case(pull=-1.0),
    Case(pull=1.0),
    Case(gone=GONE_SPREAD[0]),
    Case(gone=GONE_SPREAD[1]),
    Case(mass=1 - MASS_SPREAD),
    Case(mass=1 + MASS_SPREAD),
)
"""One cause moved at a time."""


class Body(Struct, frozen=True):
    """A vehicle in motion.

    Attributes:
        carried: mass with the water inside flooded pipes [kg].
        added: added mass in a straight line [kg].
        inertia: about G, with flooding water and added mass [kg m2].
        ahead, up: drag of each group at 1 m/s ahead and up, moments about G.
        drag_turn: K in moment = K r^2 [N m s2] of each group, on the spot about the upright through G.
    """

    drives: tuple[Drive, ...]
    strips: Strips
    carried: float
    added: Tensor
    inertia: Tensor
    balance: Balance
    ahead: Groups
    up: Groups
    drag_turn: tuple[float, ...]

    @property
    def drag_ahead(self) -> tuple[float, ...]:
        """k in drag = k u^2 [N s2/m2] of each group, ahead or astern."""
        return self.resistances(AHEAD)

    def dragged(self, along: Vector) -> Groups:
        """The drag of each group at 1 m/s along a direction of length 1, moments about G."""
        if along == AHEAD:
            return self.ahead
        return self.up if along == UP else drag(self.strips, along, ORIGIN, self.balance.g)

    def resistances(self, along: Vector) -> tuple[float, ...]:
        """k in drag = k u^2 [N s2/m2] of each group, moved straight along a direction of length 1."""
        back = scale(along, -1)
        way = back if back in (AHEAD, UP) else along  # astern and down it is the same
        return tuple(-dot(force, way) for force, _ in self.dragged(way))


def body_of(
    arrangement: Arrangement,
    frame: Frame,
    parts: Sequence[Part],
    balance: Balance,
    drives: tuple[Drive, ...],
) -> Body:
    """The vehicle of one arrangement as motion sees it."""
    density, g = balance.density, balance.g
    shapes = wet_shapes(frame, parts)
    inside = flooding_mass(frame, density) if arrangement.bores == "flooded" else []
    strips = strips_of(arrangement, frame, shapes, density * arrangement.drag_factor)
    return Body(
        drives=drives,
        strips=strips,
        carried=balance.mass + sum(mass for mass, _, _ in inside),
        added=added_mass(shapes, arrangement.tether, density),
        inertia=dry_inertia(parts, g) + added_inertia(shapes, density, g) + water_inertia(inside, g),
        balance=balance,
        ahead=drag(strips, AHEAD, ORIGIN, g),
        up=drag(strips, UP, ORIGIN, g),
        drag_turn=turn_resistances(strips, g),
    )
