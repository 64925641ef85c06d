"""Which ways the thrusters can push the vehicle, held still, at the volts and in the water that they have."""

from collections.abc import Sequence

from msgspec import Struct

from model.design import Move
from model.thrust.drives import Drive
from model.vectors import Vector, cross, scale, sub

USEFUL_SHARE = 0.1
"""Less than this share of a thruster's pull in a direction does not count as a way to go there."""
USEFUL_LEVER = 0.010
"""[m] A thrust line nearer to G than this does not turn the vehicle."""

Push = tuple[Vector, Vector]
"""Where a thruster pushes [m], and its force [N]."""


class Thrust(Struct, frozen=True):
    """What the thrusters can do.

    Attributes:
        pushes: two for each thruster: running ahead and running astern.
        up, down: the most that they push up and down together [N].
        moves: the moves for which there is a thruster.
    """

    pushes: tuple[Push, ...]
    up: float
    down: float
    moves: frozenset[Move]


def thrust(drives: Sequence[Drive], g: Vector) -> Thrust:
    """What the thrusters can do about the centre of gravity g [m]."""
    pushes = tuple(
        (drive.at, scale(drive.along, pull)) for drive in drives for pull in (drive.ahead, -drive.astern)
    )
    vertical = [force[2] for _, force in pushes]
    return Thrust(
        pushes=pushes,
        up=sum(pull for pull in vertical if pull > 0),
        down=sum(-pull for pull in vertical if pull < 0),
        moves=frozenset(move for at, force in pushes for move in moves_of(sub(at, g), force)),
    )


def moves_of(lever: Vector, force: Vector) -> list[Move]:
    """The moves that one force [N] makes which acts at a lever [m] from G."""
    strength = max(abs(component) for component in force)
    if not strength:
        return []
    x, y, z = force
    least = strength * USEFUL_SHARE
    possible: tuple[tuple[Move, bool], ...] = (
        ("ahead", x > least),
        ("astern", -x > least),
        ("up", z > least),
        ("down", -z > least),
        ("sideways", abs(y) > least),
        ("turn", abs(cross(lever, force)[2]) > USEFUL_LEVER * strength),
    )
    return [move for move, serves in possible if serves]
