"""What full thrust does to the vehicle besides driving it: pitch, roll, veer.

At top speed thrust and drag are equal and opposite, but not in one line; the couple that they make is
held by the righting moment W BG sin(theta) (textbook statics), or by the drag of turning.
"""

from collections.abc import Sequence
from math import asin, copysign, degrees, hypot, sqrt

from msgspec import Struct

from model.motion.body import AHEAD, AS_RECKONED, OTHERWISE, Body, Case
from model.motion.drag import Groups, drag, summed
from model.motion.span import Span, spanned
from model.motion.straight import Run, pull_of, pushes_along
from model.thrust.drives import Drive
from model.thrust.moves import USEFUL_SHARE
from model.thrust.propeller import TORQUE_SHARE, pull_left, torque
from model.vectors import ORIGIN, Vector, add, cross, dot, scale, sub
from model.water.balance import GRAVITY

BG_SPREAD = 0.003
"""[m] How far BG may be off either way (stated rule: 2 mm of error in G is usual)."""
UNLIKE = 0.10
"""How far two motors of one kind may differ in pull, as a share (common practice)."""
TORQUE_SPREAD = (0.09 / TORQUE_SHARE, 0.14 / TORQUE_SHARE)
"""Torque over the usual, least and most, see ``propeller.TORQUE_SHARE``."""
ROUNDS, SETTLED = 8, 0.002
"""So many guesses at the most at how far it turns, until they differ by less than this share."""


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
    found = spanned(usual, [copysign(90.0, usual) if tilt is None else tilt for tilt in others])
    return Span(usual, max(-90.0, found.low), min(90.0, found.high))


def _righted(moment: float, most: float) -> float | None:
    """The tilt [deg] at which a righting moment that is at most so much [N m] holds a moment."""
    return degrees(asin(moment / most)) if most > abs(moment) else None


def hand_moment(body: Body) -> float | None:
    """What the propellers that push ahead leave of their torque, port side up [N m].

    None where the hand of one of them is not known.  A right-handed propeller turns clockwise as seen
    from behind, and the vehicle the other way.
    """
    ahead = _pushing_ahead(body)
    if any(drive.hand is None for drive in ahead):
        return None
    return sum((-1 if drive.hand == "right" else 1) * _torque(drive) for drive in ahead)


def _pushing_ahead(body: Body) -> list[Drive]:
    return [drive for drive in body.drives if drive.along[0] > USEFUL_SHARE]


def _torque(drive: Drive) -> float:
    """What a propeller that pushes ahead takes from the vehicle about its length [N m]."""
    return drive.along[0] * torque(drive.ahead, drive.diameter)


def hand_roll(body: Body) -> Span | None:
    """The roll from what is left of the propellers' torque, port side up [deg].

    None where a hand is not known, or where it turns over.
    """
    moment = hand_moment(body)
    if moment is None:
        return None
    ahead = _pushing_ahead(body)
    spread = max((drive.spread for drive in ahead), default=0.0)
    unlike = hypot(*(_apart(drive) * _torque(drive) for drive in ahead))
    others = [moment * factor for factor in (*TORQUE_SPREAD, 1 - spread, 1 + spread)]
    return _tilt(body, [moment, *others, moment - unlike, moment + unlike])


def _apart(drive: Drive) -> float:
    """How far a motor's pull may be off that of its like, as a share."""
    return drive.rated.spread if drive.rated.source == "own pull test" else UNLIKE


def veer(body: Body, run: Run) -> Span:
    """How far it turns to port in each metre under full thrust ahead, without steering [deg/m].

    The rate at which the drag of turning, with the speed ahead, holds the couple of thrust and drag.  Each
    cause is moved at a time, as for the speed; one more is that motors of one kind differ, where they were
    not tested one by one.
    """
    speed = run.push.top
    tops = [push.top for push in pushes_along(body, AHEAD)]
    moments = [moment[2] for moment in couples(body, AHEAD)]
    wanted = [
        (moment / top**2, case.drag)
        for moment, top, case in zip(moments, tops, (AS_RECKONED, *OTHERWISE), strict=True)
        if top > 0
    ]
    unlike, (usual, drags) = sum(_unlike(body, speed)) ** 0.5 / speed**2, wanted[0]
    wanted += [(usual + off, drags) for off in (-unlike, unlike)]
    found = [degrees(bend) for bend in (*_held(body, wanted[:1]), *_held(body, wanted[1:]))]
    return spanned(found[0], found[1:])


def _unlike(body: Body, speed: float) -> list[float]:
    """The square of the moment [N m] by which each motor that drives ahead may differ from its kind."""
    moments = []
    for drive in body.drives:
        facing = drive.along[0]
        pull, gone = pull_of(drive, facing > 0, AS_RECKONED)
        if abs(facing) > USEFUL_SHARE and gone:
            left = pull * pull_left(speed * abs(facing) / gone)
            moments.append((_apart(drive) * left * cross(sub(drive.at, body.balance.g), drive.along)[2]) ** 2)
    return moments


def _held(body: Body, wanted: Sequence[tuple[float, tuple[float, ...]]]) -> list[float]:
    """How far it turns to port in each metre [rad/m] so that the drag of turning holds each moment.

    Drag goes with the square of speed and rate together, so that moment over speed squared says it all.
    It is told by a x + b x^2 through two turns, and the wider of them is the answer before, until it holds.

    Args:
        wanted: moment to port over the square of the speed [N m s2/m2], and the factors on the drag.
    """
    reach, found = 1.0, [0.0 for _ in wanted]
    for _ in range(ROUNDS):
        turns = {
            side: [
                drag(body.strips, AHEAD, (0.0, 0.0, side * share * reach), body.balance.g)
                for share in (0.5, 1.0)
            ]
            for side in {copysign(1.0, moment) for moment, _ in wanted}
        }
        found = [
            _bend(body, moment, factors, reach, turns[copysign(1.0, moment)]) for moment, factors in wanted
        ]
        last, reach = reach, max(map(abs, found))
        if reach == 0 or abs(reach - last) <= SETTLED * reach:
            break
    return found


def _bend(
    body: Body, moment: float, factors: tuple[float, ...], reach: float, turns: Sequence[Groups]
) -> float:
    """The turn [rad/m] that holds a moment, from the drag in turns of half a reach and all of it."""
    straight, side = summed(body.ahead, factors)[1][2], copysign(1.0, moment)
    first, second = (side * (straight - summed(groups, factors)[1][2]) for groups in turns)
    if second <= 0:
        return 0.0
    b = 2 * (second - 2 * first) / reach**2
    a = second / reach - b * reach
    root = a * a + 4 * b * abs(moment)
    if a <= 0 or root < 0:
        return moment * reach / second
    return side * 2 * abs(moment) / (a + sqrt(root))
