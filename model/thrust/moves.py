"""Which ways the thrusters can push the vehicle, held still, at the volts and in the water that they have."""

from collections.abc import Iterable, Sequence
from typing import Literal

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


Way = Literal["ahead", "astern", "up", "down", "to port", "to starboard", "turn to port", "turn to starboard"]
"""What one push does."""
NEEDS: dict[Move, tuple[Way, ...]] = {
    "ahead": ("ahead",),
    "astern": ("astern",),
    "up": ("up",),
    "down": ("down",),
    "turn": ("turn to port", "turn to starboard"),
    "sideways": ("to port", "to starboard"),
}
"""What a move takes: who can turn or go to one side only is stuck in the next corner."""


class Thrust(Struct, frozen=True):
    """What the thrusters can do.

    Attributes:
        pushes: two for each thruster: running ahead and running astern; of no force where it cannot.
        up, down: the most that they push up and down together [N].
        ways: what they do, one by one.
    """

    pushes: tuple[Push, ...]
    up: float
    down: float
    ways: frozenset[Way]

    @property
    def moves(self) -> frozenset[Move]:
        """The moves for which there are thrusters."""
        return frozenset(move for move in NEEDS if not self.lacks(move))

    def lacks(self, move: Move) -> tuple[Way, ...]:
        """What no thruster does of all that a move takes."""
        return tuple(way for way in NEEDS[move] if way not in self.ways)


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
        ways=frozenset(way for at, force in pushes for way in ways_of(sub(at, g), force)),
    )


def ways_of(lever: Vector, force: Vector) -> list[Way]:
    """What one force [N] does that acts at a lever [m] from G."""
    strength = max(abs(component) for component in force)
    if not strength:
        return []
    x, y, z = force
    least, turning = strength * USEFUL_SHARE, cross(lever, force)[2]
    possible: tuple[tuple[Way, bool], ...] = (
        ("ahead", x > least),
        ("astern", -x > least),
        ("up", z > least),
        ("down", -z > least),
        ("to port", y > least),
        ("to starboard", -y > least),
        ("turn to port", turning > USEFUL_LEVER * strength),
        ("turn to starboard", -turning > USEFUL_LEVER * strength),
    )
    return [way for way, serves in possible if serves]


def stuck(drives: Sequence[Drive], g: Vector, lacks: Iterable[Way]) -> tuple[Drive, ...]:
    """The thrusters that would do some of what is lacking, if their switches could turn them round."""
    wanted = set(lacks)
    return tuple(
        drive
        for drive in drives
        if "astern" not in drive.senses
        and wanted & {*ways_of(sub(drive.at, g), scale(drive.along, -drive.rated.astern))}
    )


def powerless(drives: Sequence[Drive], g: Vector, lacks: Iterable[Way]) -> tuple[Drive, ...]:
    """The thrusters that point the way of some of what is lacking, but pull nothing then."""
    wanted = set(lacks)
    return tuple(
        drive
        for drive in drives
        if any(
            not pull and wanted & {*ways_of(sub(drive.at, g), scale(drive.along, sign))}
            for pull, sign in ((drive.ahead, 1), (drive.astern, -1))
        )
    )
