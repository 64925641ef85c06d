"""Where the holes go for the two ties that hold a motor to its pipe."""

from model.design import Motor, Thruster, TieHole
from model.design.measures import Direction
from model.frame.layout import BarPlace
from model.units import snap
from model.vectors import AXES, Vector, cross, dot, norm, scale, sub, unit

TIE_WIDTH = 0.0048
"""[m] The usual cable tie: 4.8 mm wide, holds about 22 kg (QB/T 4494; nylon, in the dry)."""
HOLE = 0.006
"""[m] Drill for a tie of 4.8 mm (common practice)."""
GRIP = 0.6
"""Two ties along a motor's body stand this share of its length apart (common practice)."""


def proposed_holes(thruster: Thruster, motor: Motor, bar: BarPlace) -> tuple[TieHole, ...]:
    """Where the holes for two ties go.

    Where the motor lies along its bar, each tie goes round its body, one near each end.  Where it lies
    across, one tie passes on each side of the body, and the two cross over it.  Common practice.
    """
    across = sub(unit(thruster.to), scale(bar.along, dot(unit(thruster.to), bar.along)))
    centre = dot(thruster.offset, bar.along)
    if norm(across) < 0.5:
        reach, face = GRIP * motor.body_length / 2, _aside(bar, thruster)
    else:
        reach = motor.body_diameter / 2 + TIE_WIDTH
        face = _named(across)
    return tuple(TieHole(along=snap(centre + sign * reach), face=face, diameter=HOLE) for sign in (-1, 1))


def _aside(bar: BarPlace, thruster: Thruster) -> Direction:
    """Across the bar, and across the way from the bar to the motor: a tie goes round both."""
    out = sub(thruster.offset, scale(bar.along, dot(thruster.offset, bar.along)))
    if norm(out) < 1e-6:
        out = (0.0, 0.0, 1.0) if abs(bar.along[2]) < 0.9 else (1.0, 0.0, 0.0)
    return _named(cross(bar.along, out))


def _named(way: Vector) -> Direction:
    """The axis that lies nearest to a direction, written like +x."""
    axis = max(range(3), key=lambda number: abs(way[number]))
    return "+" + AXES[axis]
