"""A run in the level plane, stepped through time: how far a turn drifts, and the curve that it takes.

Kirchhoff's equations for a body in water (textbook; Lamb, Hydrodynamics), with the drag of every strip at
its own speed: added mass that differs along the axes turns the vehicle too.
"""

from collections.abc import Mapping
from math import cos, hypot, pi, sin

from model.motion.body import AS_RECKONED, OTHERWISE, Body, Case
from model.motion.drag import drag, summed
from model.motion.span import Span, spanned
from model.motion.straight import pull_of
from model.motion.turning import lever
from model.thrust.drives import Drive
from model.thrust.moves import USEFUL_LEVER
from model.thrust.propeller import pull_left
from model.vectors import Vector, cross, dot, scale, sub

STEPS = 12
"""So many steps of the fourth-order Runge-Kutta rule in the time of a quarter turn with its pivot held."""
LONGEST = 3
"""Times that time: a turn that takes longer is given up."""
BENDING = tuple(case for case in OTHERWISE if case.gone == 1)
"""What changes the curve of a turn: drag, mass, and pulls, for ahead and astern are not known alike."""
State = tuple[float, float, float, float, float, float]
"""x, y [m] and heading [rad] over the pool; speeds ahead and to port [m/s] and the rate to port [rad/s]."""
REST: State = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
Orders = Mapping[str, float]
"""What each thruster is told: 1 full ahead, -1 full astern, 0 off."""


def turning_orders(body: Body, to_port: bool) -> Orders:
    """Each thruster the way that turns the vehicle; those whose line passes G are off."""
    orders = {}
    for drive in body.drives:
        arm = lever(drive, body.balance.g)
        useful = abs(arm) > USEFUL_LEVER
        orders[drive.thruster] = (1.0 if (arm > 0) == to_port else -1.0) if useful else 0.0
    return orders


def drift(body: Body, to_port: bool, quarter: float) -> Span | None:
    """How far off its pivot [m] a quarter turn on the spot ends; None where it does not come round.

    Args:
        quarter: time through it with its pivot held [s].
    """
    orders, seconds = turning_orders(body, to_port), quarter / STEPS
    usual = _drifted(body, orders, seconds, AS_RECKONED)
    if usual is None:
        return None
    others = (_drifted(body, orders, seconds, case) for case in BENDING)
    return spanned(usual, [one for one in others if one is not None])


def _drifted(body: Body, orders: Orders, seconds: float, case: Case) -> float | None:
    """The same in steps of some seconds, in one case; the last step only as far as 90 degrees."""
    last = REST
    for _ in range(LONGEST * STEPS):
        state = step(body, orders, last, seconds, case)
        if abs(state[2]) >= pi / 2:
            share = (pi / 2 - abs(last[2])) / (abs(state[2]) - abs(last[2]))
            x, y = (was + share * (now - was) for was, now in zip(last[:2], state[:2], strict=True))
            return hypot(x, y)
        last = state
    return None


def step(body: Body, orders: Orders, state: State, seconds: float, case: Case = AS_RECKONED) -> State:
    """The state a little later."""
    a = rates(body, orders, state, case)
    b = rates(body, orders, _moved(state, a, seconds / 2), case)
    c = rates(body, orders, _moved(state, b, seconds / 2), case)
    d = rates(body, orders, _moved(state, c, seconds), case)
    mean = [(p + 2 * q + 2 * r + s) / 6 for p, q, r, s in zip(a, b, c, d, strict=True)]
    return _moved(state, mean, seconds)


def _moved(state: State, rate: State | list[float], seconds: float) -> State:
    x, y, heading, u, v, r = (here + seconds * by for here, by in zip(state, rate, strict=True))
    return x, y, heading, u, v, r


def rates(body: Body, orders: Orders, state: State, case: Case = AS_RECKONED) -> State:
    """How fast each part of the state changes."""
    _, _, heading, u, v, r = state
    groups = drag(body.strips, (u, v, 0.0), (0.0, 0.0, r), body.balance.g)
    (fx, fy, _), (_, _, mz) = summed(groups, case.drag)
    for drive in body.drives:
        pull, arm = _ordered(body, drive, orders.get(drive.thruster, 0.0), (u, v, r), case)
        fx, fy, mz = fx + pull[0], fy + pull[1], mz + arm
    mx, my = (case.mass * (body.carried + added) for added in (body.added.xx, body.added.yy))
    return (
        u * cos(heading) - v * sin(heading),
        u * sin(heading) + v * cos(heading),
        r,
        (fx + my * v * r) / mx,
        (fy - mx * u * r) / my,
        (mz + (mx - my) * u * v) / (case.mass * body.inertia.zz),
    )


def _ordered(
    body: Body, drive: Drive, order: float, speeds: tuple[float, float, float], case: Case
) -> tuple[Vector, float]:
    """The push [N] of a thruster and its moment to port about G [N m], at the speed that it meets."""
    pull, gone = pull_of(drive, order > 0, case)
    if not order or not gone:
        return (0.0, 0.0, 0.0), 0.0
    (u, v, r), arm = speeds, sub(drive.at, body.balance.g)
    speed = dot((u - r * arm[1], v + r * arm[0], 0.0), drive.along) * (1 if order > 0 else -1)
    force = scale(drive.along, order * pull * pull_left(speed / gone))
    return force, cross(arm, force)[2]
