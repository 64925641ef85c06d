"""A run in the level plane, stepped through time: how far a turn drifts, and the curve that it takes.

Kirchhoff's equations for a body in water (textbook; Lamb, Hydrodynamics), with the drag of every strip at
its own speed: added mass that differs along the axes turns the vehicle too.
"""

from collections.abc import Mapping
from math import cos, hypot, pi, sin

from msgspec import Struct

from model.motion.body import Body
from model.motion.drag import drag, summed
from model.motion.turning import lever
from model.thrust.drives import Drive
from model.thrust.moves import USEFUL_LEVER
from model.thrust.propeller import pull_left
from model.vectors import Vector, cross, dot, scale, sub

STEP = 0.05
"""[s] A step of the fourth-order Runge-Kutta rule."""
LONGEST = 60.0
"""[s] A turn that takes longer is given up."""
State = tuple[float, float, float, float, float, float]
"""x, y [m] and heading [rad] over the pool; speeds ahead and to port [m/s] and the rate to port [rad/s]."""
REST: State = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
Orders = Mapping[str, float]
"""What each thruster is told: 1 full ahead, -1 full astern, 0 off."""


class Drift(Struct, frozen=True):
    """A quarter turn from rest: how long it takes [s], and how far off its pivot it ends [m]."""

    time: float
    distance: float


def turning_orders(body: Body, to_port: bool) -> Orders:
    """Each thruster the way that turns the vehicle; those whose line passes G are off."""
    orders = {}
    for drive in body.drives:
        arm = lever(drive, body.balance.g)
        useful = abs(arm) > USEFUL_LEVER
        orders[drive.thruster] = (1.0 if (arm > 0) == to_port else -1.0) if useful else 0.0
    return orders


def drift(body: Body, to_port: bool) -> Drift | None:
    """How far a quarter turn on the spot carries the vehicle; None where it takes over a minute."""
    orders, state, time = turning_orders(body, to_port), REST, 0.0
    while abs(state[2]) < pi / 2:
        if time > LONGEST:
            return None
        state = step(body, orders, state, STEP)
        time += STEP
    return Drift(time, hypot(state[0], state[1]))


def step(body: Body, orders: Orders, state: State, seconds: float) -> State:
    """The state a little later."""
    a = rates(body, orders, state)
    b = rates(body, orders, _moved(state, a, seconds / 2))
    c = rates(body, orders, _moved(state, b, seconds / 2))
    d = rates(body, orders, _moved(state, c, seconds))
    mean = [(p + 2 * q + 2 * r + s) / 6 for p, q, r, s in zip(a, b, c, d, strict=True)]
    return _moved(state, mean, seconds)


def _moved(state: State, rate: State | list[float], seconds: float) -> State:
    x, y, heading, u, v, r = (here + seconds * by for here, by in zip(state, rate, strict=True))
    return x, y, heading, u, v, r


def rates(body: Body, orders: Orders, state: State) -> State:
    """How fast each part of the state changes."""
    _, _, heading, u, v, r = state
    (fx, fy, _), (_, _, mz) = summed(drag(body.strips, (u, v, 0.0), (0.0, 0.0, r), body.balance.g))
    for drive in body.drives:
        pull, arm = _ordered(body, drive, orders.get(drive.thruster, 0.0), u, v, r)
        fx, fy, mz = fx + pull[0], fy + pull[1], mz + arm
    mx, my = body.carried + body.added.xx, body.carried + body.added.yy
    return (
        u * cos(heading) - v * sin(heading),
        u * sin(heading) + v * cos(heading),
        r,
        (fx + my * v * r) / mx,
        (fy - mx * u * r) / my,
        (mz + (mx - my) * u * v) / body.inertia.zz,
    )


def _ordered(body: Body, drive: Drive, order: float, u: float, v: float, r: float) -> tuple[Vector, float]:
    """The push [N] of a thruster and its moment to port about G [N m], at the speed that it meets."""
    pull, gone = (drive.ahead, drive.ahead_gone) if order > 0 else (drive.astern, drive.astern_gone)
    if not order or not gone:
        return (0.0, 0.0, 0.0), 0.0
    arm = sub(drive.at, body.balance.g)
    speed = dot((u - r * arm[1], v + r * arm[0], 0.0), drive.along) * (1 if order > 0 else -1)
    force = scale(drive.along, order * pull * pull_left(speed / gone))
    return force, cross(arm, force)[2]
