"""Turning on the spot: the rate that it comes to, and the time through a quarter turn.

Each thruster runs the way that turns the vehicle, at most; the pivot is the upright through G.  That the
two sides do not pull alike moves the vehicle as well: see ``path``.
"""

from collections.abc import Sequence
from math import degrees, pi

from msgspec import Struct

from model.motion.body import AS_RECKONED, OTHERWISE, Body, Case
from model.motion.drag import weighted
from model.motion.span import Span, spanned
from model.motion.speed import Push
from model.motion.straight import pull_of
from model.thrust.drives import Drive
from model.thrust.moves import USEFUL_LEVER
from model.thrust.propeller import FALL
from model.vectors import Vector, cross, sub

QUARTER = pi / 2


class Turn(Struct, frozen=True):
    """A turn on the spot one way.

    Attributes:
        rate: that it comes to in the end [deg/s].
        quarter: time through 90 degrees from rest [s].
        push: the equation behind them, as reckoned.
    """

    rate: Span
    quarter: Span
    push: Push


def turn(body: Body, to_port: bool) -> Turn | None:
    """A turn on the spot; None where the thrusters cannot turn the vehicle."""
    pushes = turn_pushes(body, to_port)
    usual, others = pushes[0], [push for push in pushes[1:] if push.still > 0]
    if usual.still <= 0 or usual.square <= 0 or usual.mass <= 0:
        return None
    return Turn(
        rate=spanned(degrees(usual.top), [degrees(push.top) for push in others]),
        quarter=spanned(usual.time_over(QUARTER), [push.time_over(QUARTER) for push in others]),
        push=usual,
    )


def turn_pushes(body: Body, to_port: bool) -> list[Push]:
    """The equation of a turn on the spot, as reckoned and then with one cause moved at a time."""
    drag = body.drag_turn
    return [
        Push(body.inertia.zz * case.mass, still, slope, square + weighted(drag, case.drag))
        for case in (AS_RECKONED, *OTHERWISE)
        for still, slope, square in (_moments(body.drives, body.balance.g, to_port, case),)
    ]


def lever(drive: Drive, g: Vector) -> float:
    """How far from G a thruster turns the vehicle to port when it runs ahead [m]."""
    return cross(sub(drive.at, g), drive.along)[2]


def _moments(drives: Sequence[Drive], g: Vector, to_port: bool, case: Case) -> tuple[float, float, float]:
    """Moments of all thrusters A - B r - C r^2 [N m]: each meets the water at r times its lever."""
    still = slope = square = 0.0
    for drive in drives:
        arm = lever(drive, g)
        if abs(arm) > USEFUL_LEVER:
            pull, gone = pull_of(drive, (arm > 0) == to_port, case)
            if gone:
                still += abs(arm) * pull
                slope += arm**2 * pull * FALL / gone
                square += abs(arm) ** 3 * pull * (1 - FALL) / gone**2
    return still, slope, square
