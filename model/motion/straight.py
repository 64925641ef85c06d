"""Straight runs: top speed, time and distance to get there, and to stop.

The vehicle is taken to hold its heading, and its depth when it runs ahead.
"""

from collections.abc import Sequence

from msgspec import Struct

from model.motion.body import AS_RECKONED, OTHERWISE, Body, Case
from model.motion.drag import weighted
from model.motion.span import Span, spanned
from model.motion.speed import Push, coasting, stopping
from model.thrust.drives import Drive
from model.thrust.moves import USEFUL_SHARE
from model.thrust.propeller import FALL
from model.vectors import Vector, dot, scale
from model.water.balance import GRAVITY

NEAR_TOP = 0.9
"""Top speed is never quite reached: times and distances are to this share of it."""


class Run(Struct, frozen=True):
    """A straight run one way.

    Attributes:
        top: top speed [m/s].
        time, distance: to 90 % of it, from rest [s, m].
        stop: distance to stop from top speed with the motors turned round [m]; None where they cannot.
        coast: distance to roll out to a tenth of it with the motors off [m].
        push: the equation behind them, as reckoned.
    """

    top: Span
    time: Span
    distance: Span
    stop: Span | None
    coast: Span
    push: Push


def run(body: Body, along: Vector, load: float = 0.0) -> Run | None:
    """A straight run along a direction of length 1; None where the thrusters cannot make it.

    Args:
        load: weight in water of what hangs on the hook [kg].
    """
    usual, *others = pushes_along(body, along, load)
    driven = pulls_along(body.drives, along, AS_RECKONED)[0] > 0
    if not driven or usual.still <= 0 or usual.square <= 0:
        return None
    going = [push for push in others if push.still > 0]
    slowed = _slowed(body, along, load)
    stops = [stop for stop in (_stop(*pair) for pair in zip((usual, *others), slowed, strict=True)) if stop]
    coasts = [coasting(push.mass, drag) for push, (_, drag) in zip((usual, *others), slowed, strict=True)]
    return Run(
        top=spanned(usual.top, [push.top for push in others]),
        time=spanned(_time(usual), map(_time, going)),
        distance=spanned(_distance(usual), map(_distance, going)),
        stop=spanned(stops[0], stops[1:]) if slowed[0][0] > 0 else None,
        coast=spanned(coasts[0], coasts[1:]),
        push=usual,
    )


def pushes_along(body: Body, along: Vector, load: float = 0.0) -> list[Push]:
    """The equation of a straight run, as reckoned and then with one cause moved at a time."""
    drag = body.resistances(along)
    mass = body.carried + body.added.along(along) + load
    net = (body.balance.net - load * GRAVITY) * along[2]
    return [
        Push(mass * case.mass, still + net, slope, square + weighted(drag, case.drag))
        for case in (AS_RECKONED, *OTHERWISE)
        for still, slope, square in (pulls_along(body.drives, along, case),)
    ]


def pulls_along(drives: Sequence[Drive], along: Vector, case: Case) -> tuple[float, float, float]:
    """What all thrusters that help pull along a direction: A - B u - C u^2 [N].

    A thruster that points aside helps with the cosine of the angle, and meets the water with the same.
    """
    still = slope = square = 0.0
    for drive in drives:
        facing = dot(drive.along, along)
        if abs(facing) > USEFUL_SHARE:
            pull, gone = pull_of(drive, facing > 0, case)
            share = abs(facing)
            if gone:
                still += share * pull
                slope += share * pull * FALL * share / gone
                square += share * pull * (1 - FALL) * (share / gone) ** 2
    return still, slope, square


def pull_of(drive: Drive, ahead: bool, case: Case) -> tuple[float, float]:
    """Pull held still [N] of a thruster one way, and the speed at which it is gone [m/s]."""
    if ahead:
        return drive.ahead * max(0.0, 1 + case.pull * drive.spread), drive.ahead_gone * case.gone
    return drive.astern * max(0.0, 1 + case.pull * drive.astern_spread), drive.astern_gone * case.gone


def _slowed(body: Body, along: Vector, load: float) -> list[tuple[float, float]]:
    """The pull against a run [N] and the drag alone [N s2/m2], as reckoned and in the other cases."""
    drag = body.resistances(along)
    back = scale(along, -1)
    net = (body.balance.net - load * GRAVITY) * back[2]
    return [
        (pulls_along(body.drives, back, case)[0] + net, weighted(drag, case.drag))
        for case in (AS_RECKONED, *OTHERWISE)
    ]


def _stop(push: Push, slowed: tuple[float, float]) -> float | None:
    brake, drag = slowed
    return stopping(push.mass, push.top, brake, drag)[1] if brake > 0 else None


def _time(push: Push) -> float:
    return push.time(NEAR_TOP * push.top)


def _distance(push: Push) -> float:
    return push.distance(NEAR_TOP * push.top)
