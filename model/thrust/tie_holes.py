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
TIE_HOLE = "tie hole"
"""The kind of a hole where one is marked in a drawing; its id is its key."""
STEP = 0.005
"""[m] How far apart the places are that are tried for one more hole."""


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


def next_hole(thruster: Thruster, motor: Motor, bar: BarPlace) -> TieHole | None:
    """Where one more hole goes: a proposed place that is free, else bare pipe near those that there are.

    None where the bar has no room for one.
    """
    proposed = proposed_holes(thruster, motor, bar)
    taken = thruster.tie_holes
    if not taken:
        return proposed[0]
    pattern = taken[-1]
    steps = (snap(hole.along + sign * STEP * count) for count in _counts(bar) for hole in taken
             for sign in (-1, 1))  # fmt: skip
    beside = (pattern.but(along=along) for along in steps)
    return next((hole for hole in (*proposed, *beside) if _free(hole, thruster, bar)), None)


def _counts(bar: BarPlace) -> range:
    """How many steps away from a hole are worth a look."""
    return range(1, int(bar.spacing / STEP) + 1)


def _free(hole: TieHole, thruster: Thruster, bar: BarPlace) -> bool:
    """Whether a hole lies on pipe that shows, with a hole's width of wall to every other."""
    place, half = thruster.at * bar.spacing + hole.along, hole.diameter / 2
    shows = bar.faces[0] + half <= place <= bar.spacing - bar.faces[1] - half
    return shows and all(
        abs(other.along - hole.along) >= hole.diameter + other.diameter for other in thruster.tie_holes
    )


def hole_key(thruster: str, number: int) -> str:
    """What tells one hole from all others: its number from 0, then its thruster's id."""
    return f"{number} {thruster}"


def hole_of_key(key: str) -> tuple[str, int]:
    """The thruster's id and the number of the hole that a key stands for.

    >>> hole_of_key(hole_key("t-kasi", 1))
    ('t-kasi', 1)
    """
    number, _, thruster = key.partition(" ")
    return thruster, int(number)


def from_sawn_end(hole: TieHole, thruster: Thruster, bar: BarPlace) -> float:
    """From the sawn end of the pipe at the joint where the bar starts to the middle of a hole [m]."""
    return thruster.at * bar.spacing + hole.along - (bar.faces[0] - bar.insertions[0])


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
