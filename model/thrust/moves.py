"""Which ways the thrusters can push the vehicle, held still, each at full pull."""

from dataclasses import dataclass

from model.design import Arrangement, Design, Motor, Move
from model.frame.layout import Frame
from model.vectors import Vector, add, cross, scale, sub, unit

USEFUL_SHARE = 0.1
"""Less than this share of a thruster's pull in a direction does not count as a way to go there."""
USEFUL_LEVER = 0.010
"""[m] A thrust line nearer to G than this does not turn the vehicle."""

Push = tuple[Vector, Vector]
"""Where a thruster pushes [m], and its force [N]."""


@dataclass(frozen=True, slots=True)
class Thrust:
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


def thrust(design: Design, arrangement: Arrangement, frame: Frame, g: Vector) -> Thrust:
    """What the thrusters can do about the centre of gravity g [m]."""
    pushes = _pushes(design, arrangement, frame)
    vertical = [force[2] for _, force in pushes]
    return Thrust(
        pushes=pushes,
        up=sum(pull for pull in vertical if pull > 0),
        down=sum(-pull for pull in vertical if pull < 0),
        moves=frozenset(move for at, force in pushes for move in moves_of(sub(at, g), force)),
    )


def pulls(motor: Motor, astern_share: float) -> tuple[float, float]:
    """Pull ahead and astern of a motor [N]; astern is a share of ahead where it was not measured."""
    if motor.thrust_astern is not None:
        return motor.thrust_ahead, motor.thrust_astern
    return motor.thrust_ahead, motor.thrust_ahead * astern_share


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


def _pushes(design: Design, arrangement: Arrangement, frame: Frame) -> tuple[Push, ...]:
    motors = {motor.id: motor for motor in design.supplies.motors}
    found: list[Push] = []
    for thruster in arrangement.thrusters:
        at = add(frame.bars[thruster.bar].point(thruster.at), thruster.offset)
        ahead, astern = pulls(motors[thruster.motor], design.brief.thresholds.astern_share)
        along = unit(thruster.to)
        found += [(at, scale(along, ahead)), (at, scale(along, -astern))]
    return tuple(found)
