"""Remedies for a load: upright motors turned round or stronger, or the hook under the middle."""

from functools import partial
from math import hypot

from model.coach.finding import Remedy
from model.coach.remedies.thrusters import reversing
from model.design import Design, Motor
from model.design.edits import add_attachment
from model.solve.places import level_bars_at
from model.survey import Survey
from model.thrust.moves import stuck
from model.vectors import grid, sub

HOOK_BARS = 4
"""A hook is offered on so many bars at most."""


def stronger(found: Survey) -> tuple[Remedy, ...]:
    """A switch that lets a motor pull up as well, or a stronger motor in the place of each upright one."""
    motors = {motor.id: motor for motor in found.design.supplies.motors}
    upright = {item.id: motors[item.motor] for item in found.arrangement.thrusters if grid(item.to)[2]}
    weakest = min((motor.thrust_ahead for motor in upright.values()), default=0.0)
    better = [motor for motor in motors.values() if motor.thrust_ahead > weakest]
    held = tuple(drive.thruster for drive in stuck(found.drives, found.balance.g, ("up",)))
    return (*reversing(found, held), *_remotored_by(upright, better))


def _remotored_by(upright: dict[str, Motor], better: list[Motor]) -> tuple[Remedy, ...]:
    return tuple(
        Remedy(
            f"Use {motor.name} to go up and down",
            partial(_remotored, thrusters=frozenset(upright), motor=motor.id),
        )
        for motor in sorted(better, key=lambda motor: motor.price)
        if upright
    )


def _remotored(design: Design, thrusters: frozenset[str], motor: str) -> Design:
    changed = tuple(
        item.but(motor=motor) if item.id in thrusters else item for item in design.arrangement.thrusters
    )
    return design.arranged(thrusters=changed)


def hook_on(found: Survey) -> tuple[Remedy, ...]:
    """A new hook on a lowest level bar, the one that passes nearest under the middle of the weight first."""
    x, y, _ = found.balance.g
    bars = sorted(
        level_bars_at(found, -1), key=lambda bar: hypot(bar.point(0.5)[0] - x, bar.point(0.5)[1] - y)
    )
    return tuple(
        Remedy(f"Add a hook on {bar.name}", partial(add_attachment, kind="hook", bar=bar.id))
        for bar in bars[:HOOK_BARS]
    )


def hook_under_middle(found: Survey) -> tuple[Remedy, ...]:
    """The hook moved so that it hangs straight under the middle of the weight."""
    hook = next((item for item in found.arrangement.attachments if item.kind == "hook"), None)
    if hook is None:
        return ()
    ahead, port, _ = sub(found.balance.g, found.frame.bars[hook.bar].point(hook.at))
    edit = partial(_hook_at, hook=hook.id, offset=(ahead, port, hook.offset[2]))
    return (Remedy(f"Move {hook.name} under the middle of the weight", edit),)


def _hook_at(design: Design, hook: str, offset: tuple[float, float, float]) -> Design:
    changed = tuple(
        item.but(offset=offset) if item.id == hook else item for item in design.arrangement.attachments
    )
    return design.arranged(attachments=changed)
