"""What full thrust does to the vehicle besides driving it: pitch, roll, veer.

At top speed thrust and drag are equal and opposite, but not in one line; the couple that they make is
held by the righting moment W BG sin(theta) (textbook statics), or by the drag of turning.
"""

from math import asin, copysign, degrees, sqrt

from msgspec import Struct

from model.motion.body import AHEAD, AS_RECKONED, OTHERWISE, Body, Case
from model.motion.drag import drag, summed
from model.motion.span import Span, spanned
from model.motion.straight import Run, pull_of, pushes_along
from model.thrust.moves import USEFUL_SHARE
from model.thrust.propeller import pull_left, torque
from model.vectors import ORIGIN, Vector, add, cross, dot, scale, sub
from model.water.balance import GRAVITY

BG_SPREAD = 0.003
"""[m] How far BG may be off either way (stated rule: 2 mm of error in G is usual)."""
UNLIKE = 0.10
"""How far two motors of one kind may differ in pull, as a share (common practice)."""
RATE = 0.5
"""[rad/s] Rates of this and twice as much tell how the drag of turning grows."""


class Attitude(Struct, frozen=True):
    """How full thrust one way tilts the vehicle against its rest.

    Attributes:
        pitch: bow up [deg]; None where the couple is more than rights it: it turns over.
        roll: port side up [deg]; the same.
    """

    pitch: Span | None
    roll: Span | None


def attitude(body: Body, along: Vector) -> Attitude:
    """The tilt at top speed along a direction of length 1."""
    moments = couples(body, along)
    return Attitude(
        pitch=_tilt(body, [-moment[1] for moment in moments]),
        roll=_tilt(body, [moment[0] for moment in moments]),
    )


def couples(body: Body, along: Vector) -> list[Vector]:
    """The moment about G [N m] of the thrusters that help and of the drag, at the top speed.

    As reckoned, and then with one cause moved at a time, each at the top speed that it gives.
    """
    dragged = body.dragged(along)
    tops = [push.top for push in pushes_along(body, along)]
    return [
        add(scale(summed(dragged, case.drag)[1], top**2), _driven(body, along, top, case))
        for case, top in zip((AS_RECKONED, *OTHERWISE), tops, strict=True)
    ]


def _driven(body: Body, along: Vector, speed: float, case: Case) -> Vector:
    moment = ORIGIN
    for drive in body.drives:
        facing = dot(drive.along, along)
        if abs(facing) > USEFUL_SHARE:
            pull, gone = pull_of(drive, facing > 0, case)
            if gone:
                left = pull * pull_left(speed * abs(facing) / gone)
                force = scale(drive.along, left if facing > 0 else -left)
                moment = add(moment, cross(sub(drive.at, body.balance.g), force))
    return moment


def _tilt(body: Body, moments: list[float]) -> Span | None:
    """The tilt [deg] that some moments [N m] cause, the first as reckoned."""
    weight, bg = body.balance.mass * GRAVITY, body.balance.bg
    usual = _righted(moments[0], weight * bg)
    if usual is None:
        return None
    others = [_righted(moment, weight * bg) for moment in moments[1:]]
    others += [_righted(moments[0], weight * (bg + off)) for off in (-BG_SPREAD, BG_SPREAD)]
    return spanned(usual, [90.0 if tilt is None else tilt for tilt in others])


def _righted(moment: float, most: float) -> float | None:
    """The tilt [deg] at which a righting moment that is at most so much [N m] holds a moment."""
    return degrees(asin(moment / most)) if most > abs(moment) else None


def hand_moment(body: Body) -> float | None:
    """What the propellers that push ahead leave of their torque, port side up [N m].

    None where the hand of one of them is not known.  A right-handed propeller turns clockwise as seen
    from behind, and the vehicle the other way.
    """
    ahead = [drive for drive in body.drives if drive.along[0] > USEFUL_SHARE]
    if any(drive.hand is None for drive in ahead):
        return None
    return sum(
        (-1 if drive.hand == "right" else 1) * drive.along[0] * torque(drive.ahead, drive.diameter)
        for drive in ahead
    )


def hand_roll(body: Body) -> float | None:
    """The roll from what is left of the propellers' torque, port side up [deg]; None if not known."""
    moment = hand_moment(body)
    if moment is None:
        return None
    return _righted(moment, body.balance.mass * GRAVITY * body.balance.bg)


def veer(body: Body, run: Run) -> Span:
    """How far it turns to port in each metre under full thrust ahead, without steering [deg/m].

    The rate at which the drag of turning, with the speed ahead, holds the couple of thrust and drag.
    The spread is that of motors of one kind that differ, where they were not tested one by one.
    """
    speed = run.push.top
    moment = couples(body, AHEAD)[0][2]
    unlike = sum(_unlike(body, speed)) ** 0.5
    damping = _damping(body, speed)
    rates = [_held_rate(damping, turning) for turning in (moment, moment - unlike, moment + unlike)]
    found = [degrees(rate) / speed for rate in rates]
    return spanned(found[0], found[1:])


def _unlike(body: Body, speed: float) -> list[float]:
    """The square of the moment [N m] by which each motor ahead may differ from its kind."""
    moments = []
    for drive in body.drives:
        if drive.along[0] > USEFUL_SHARE and drive.ahead_gone:
            off = drive.rated.spread if drive.rated.source == "own pull test" else UNLIKE
            left = drive.ahead * pull_left(speed * drive.along[0] / drive.ahead_gone)
            moments.append((off * left * cross(sub(drive.at, body.balance.g), drive.along)[2]) ** 2)
    return moments


def _damping(body: Body, speed: float) -> tuple[float, float]:
    """a and b in a r + b r^2, the moment that holds back a turn at a rate r, at a speed ahead [m/s]."""
    straight = speed**2 * summed(body.ahead)[1][2]
    slow, fast = (
        summed(drag(body.strips, (speed, 0.0, 0.0), (0.0, 0.0, rate), body.balance.g))[1][2]
        for rate in (RATE, 2 * RATE)
    )
    first, second = straight - slow, straight - fast
    return (4 * first - second) / (2 * RATE), (second - 2 * first) / (2 * RATE**2)


def _held_rate(damping: tuple[float, float], moment: float) -> float:
    """The rate [rad/s] at which the drag of turning holds a moment [N m]."""
    a, b = damping
    if b <= 0:
        return moment / a if a > 0 else 0.0
    root = sqrt(a * a + 4 * b * abs(moment))
    return copysign(2 * abs(moment) / (a + root), moment) if a + root > 0 else 0.0
