"""Remedies for thrusters: what holds them, and where a new one goes."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import free_id
from model.design import Design, Motor, Move, Thruster
from model.frame.layout import BarPlace
from model.survey import Survey

CLEARANCE = 0.010
"""[m] Room between a propeller's disc and a bar (DEFAULTS: under 10 mm should be put right)."""


def hold(survey: Survey, thruster: Thruster) -> tuple[Remedy, ...]:
    """Hold a thruster with a mount that the team has."""
    return tuple(
        Remedy(f"Hold it with {mount.name}", partial(_held, thruster=thruster.id, mount=mount.id))
        for mount in survey.design.supplies.mounts
    )


def _held(design: Design, thruster: str, mount: str) -> Design:
    thrusters = tuple(
        item.but(mount=mount) if item.id == thruster else item for item in design.arrangement.thrusters
    )
    return design.arranged(thrusters=thrusters)


def drive(survey: Survey, move: Move) -> tuple[Remedy, ...]:
    """Add the thruster, or the pair of them, that makes a move."""
    supplies = survey.design.supplies
    if not supplies.motors or not survey.frame.bars:
        return ()
    motor, mount = supplies.motors[0], supplies.mounts[0] if supplies.mounts else None
    new: list[Thruster | None]
    if move in ("up", "down"):
        label, new = f"Add an upright {motor.name} near the middle", [_near_middle(survey, motor, "+z")]
    elif move == "sideways":
        label, new = f"Add a sideways {motor.name} near the middle", [_near_middle(survey, motor, "+y")]
    else:
        label, new = f"Add a pair of {motor.name}, one on each side", [*_pair(survey, motor)]
    placed = [item.but(mount=mount.id) if mount else item for item in new if item]
    return (Remedy(label, partial(_with_thrusters, new=tuple(placed))),) if placed else ()


def _with_thrusters(design: Design, new: tuple[Thruster, ...]) -> Design:
    thrusters = design.arrangement.thrusters
    for item in new:
        taken = design.arranged(thrusters=thrusters).arrangement
        thrusters = (*thrusters, item.but(id=free_id(taken, "t")))
    return design.arranged(thrusters=thrusters)


def _near_middle(survey: Survey, motor: Motor, to: str) -> Thruster | None:
    """A thruster beside the level bar that passes nearest to G, on the side of G."""
    g = survey.balance.g
    push = 2 if to == "+z" else 1
    level = [bar for bar in survey.frame.bars.values() if abs(bar.along[2]) < 0.5]
    if not level:
        return None

    def distance(bar: BarPlace) -> float:
        middle = bar.point(0.5)
        return sum((middle[axis] - g[axis]) ** 2 for axis in range(3) if axis != push)

    bar = min(level, key=distance)
    along = 0 if abs(bar.along[0]) > 0.5 else 1
    across = next(axis for axis in (1, 0, 2) if axis not in (along, push))
    offset = [0.0, 0.0, 0.0]
    offset[across] = _beside(bar, motor) * (1 if g[across] >= bar.point(0.5)[across] else -1)
    name = "upright thruster" if to == "+z" else "sideways thruster"
    return Thruster.model_validate(
        {"id": "t", "name": name, "bar": bar.id, "motor": motor.id, "to": to, "offset": tuple(offset)}
    )


def _pair(survey: Survey, motor: Motor) -> list[Thruster]:
    """Thrusters that push ahead on the outermost fore-and-aft bars, on the inner side."""
    fore = [bar for bar in survey.frame.bars.values() if abs(bar.along[0]) > 0.9]
    if not fore:
        return []
    port, starboard = max(fore, key=lambda bar: bar.start[1]), min(fore, key=lambda bar: bar.start[1])
    found = []
    for bar, name, inwards in ((port, "port", -1), (starboard, "starboard", 1)):
        offset = (0.0, inwards * _beside(bar, motor), 0.0)
        found.append(
            Thruster(id="t", name=f"{name} thruster", bar=bar.id, motor=motor.id, to="+x", offset=offset)
        )
    return found


def _beside(bar: BarPlace, motor: Motor) -> float:
    reach = max(motor.propeller_diameter, motor.body_diameter)
    return (bar.pipe.outside_diameter + reach) / 2 + CLEARANCE
