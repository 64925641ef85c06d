"""Remedies for thrusters: what holds them, and where a new one goes."""

from collections.abc import Iterator
from functools import partial
from itertools import product

from model.coach.finding import Remedy
from model.coach.remedies.balance import adjust_lift
from model.coach.remedies.changes import free_id, in_turn
from model.coach.sentences import listed, one
from model.design import Design, Motor, Mount, Move, Thruster
from model.frame.layout import BarPlace
from model.survey import Survey, survey
from model.vectors import AXES

CLEARANCE = 0.010
"""[m] Room between a propeller's disc and a bar (DEFAULTS: under 10 mm should be put right)."""
BARS_TRIED = 4
"""How many bars, or pairs of bars, are tried for a new thruster."""
PLACES = (0.5, 0.35, 0.65)
"""Where on a bar a new thruster is tried."""
OUTER = 0.2
"""How far from the ends of a cross bar a pair of thrusters is tried, as a share of it."""
TRIMMED = 6
"""How many places are tried again with the foam cut to suit."""
SINGLES: dict[Move, tuple[str, str]] = {
    "ahead": ("+x", "forward"),
    "astern": ("+x", "forward"),
    "up": ("+z", "upright"),
    "down": ("+z", "upright"),
    "sideways": ("+y", "sideways"),
}
NAMES = ("forward thruster", "sideways thruster", "upright thruster")
NEAR = 1e-4
"""[m] Bars that differ by less lie at one level."""


def hold(found: Survey, thruster: Thruster) -> tuple[Remedy, ...]:
    """Hold a thruster with a mount that the team has."""
    return tuple(
        Remedy(f"Hold it with {mount.name}", partial(_held, thruster=thruster.id, mount=mount.id))
        for mount in found.design.supplies.mounts
    )


def _held(design: Design, thruster: str, mount: str) -> Design:
    thrusters = tuple(
        item.but(mount=mount) if item.id == thruster else item for item in design.arrangement.thrusters
    )
    return design.arranged(thrusters=thrusters)


def drive(found: Survey, move: Move, held: tuple[str, ...] = ()) -> tuple[Remedy, ...]:
    """Give a move its thrusters.

    Args:
        held: those, by id, that would make it if their switches could turn them round.
    """
    return (*reversing(found, held), *_new_thrusters(found, move))


def reversing(found: Survey, held: tuple[str, ...]) -> Iterator[Remedy]:
    """Reversing switches in the branches of some thrusters, by id: in each of them alone, then in all."""
    names = {item.id: item.name for item in found.arrangement.thrusters}
    groups = [(each,) for each in held] + ([held] if len(held) > 1 else [])
    for group in groups:
        branches = f"branch{'es' if len(group) > 1 else ''} of {listed([names[each] for each in group])}"
        switch = "reversing switches" if len(group) > 1 else "a reversing switch"
        yield Remedy(f"Put {switch} in the {branches}", partial(_reversing, thrusters=frozenset(group)))


def _reversing(design: Design, thrusters: frozenset[str]) -> Design:
    items = tuple(
        item.but(branch=item.branch.but(switching="reversing switch")) if item.id in thrusters else item
        for item in design.arrangement.thrusters
    )
    return design.arranged(thrusters=items)


def _new_thrusters(found: Survey, move: Move) -> tuple[Remedy, ...]:
    """Add the thruster, or the pair of them, that makes a move: on the bars nearest to where it should be."""
    supplies = found.design.supplies
    if not supplies.motors or not found.frame.bars:
        return ()
    motor, mount = supplies.motors[0], supplies.mounts[0] if supplies.mounts else None
    ways: list[tuple[str, list[Thruster]]] = []
    if move in ("ahead", "astern", "turn"):
        ways += [(f"Add two of {motor.name}", [*pair]) for pair in _pairs(found, motor)]
    if move != "turn":
        to, how = SINGLES[move]
        ways += [(f"Add {one(f'{how} {motor.name}')}", [item]) for item in _near_middle(found, motor, to)]
    plain = [_added(found, words, items, mount) for words, items in ways]
    return (*plain, *_trimmed(found, plain))


def _trimmed(found: Survey, plain: list[Remedy]) -> Iterator[Remedy]:
    """The same, with the foam or the weights changed for what the new thrusters weigh and can hold down."""
    for first in plain[:TRIMMED]:
        after = survey(first.edit(found.design))
        for second in adjust_lift(after)[:2]:
            label = f"{first.label}, then: {second.label}"
            yield Remedy(label, partial(in_turn, edits=(first.edit, second.edit)))


def _added(found: Survey, words: str, items: list[Thruster], mount: Mount | None) -> Remedy:
    bars = listed(list(dict.fromkeys(found.frame.bars[item.bar].name for item in items)))
    held = tuple(item.but(mount=mount.id) if mount else item for item in items)
    return Remedy(f"{words} beside {bars}", partial(_with_thrusters, new=held))


def _with_thrusters(design: Design, new: tuple[Thruster, ...]) -> Design:
    thrusters = design.arrangement.thrusters
    for item in new:
        taken = design.arranged(thrusters=thrusters).arrangement
        thrusters = (*thrusters, item.but(id=free_id(taken, "t")))
    return design.arranged(thrusters=thrusters)


def _near_middle(found: Survey, motor: Motor, to: str) -> list[Thruster]:
    """Thrusters beside the level bars that pass nearest to G, those on the side of G first."""
    g, push = found.balance.g, AXES.index(to[1])
    level = [bar for bar in found.frame.bars.values() if bar.spacing and abs(bar.along[2]) < 0.5]

    def distance(bar: BarPlace) -> float:
        middle = bar.point(0.5)
        return sum((middle[axis] - g[axis]) ** 2 for axis in range(3) if axis != push)

    made = []
    for bar in sorted(level, key=distance)[:BARS_TRIED]:
        along = 0 if abs(bar.along[0]) > 0.5 else 1
        across = next(axis for axis in (1, 0, 2) if axis not in (along, push))
        inwards = 1 if g[across] >= bar.point(0.5)[across] else -1
        for at, sign in product(PLACES, (inwards, -inwards)):
            made.append(_thruster(NAMES[push], bar, at, motor, to, across, sign))
    return made


def _pairs(found: Survey, motor: Motor) -> list[tuple[Thruster, Thruster]]:
    """Two thrusters that push ahead, one to each side: on fore-and-aft bars, else on one cross bar."""
    g = found.balance.g
    bars = [bar for bar in found.frame.bars.values() if bar.spacing]
    fore = [bar for bar in bars if abs(bar.along[0]) > 0.9]
    sides = [(port, other) for port in fore for other in fore if _opposite(port, other)]
    sides.sort(key=lambda pair: (abs(pair[0].start[2] - g[2]), pair[1].start[1] - pair[0].start[1]))
    made = []
    for port, other in sides[:BARS_TRIED]:
        for at, (axis, sign) in product(PLACES, ((1, 1), (2, -1), (2, 1), (1, -1))):
            made.append(
                (
                    _thruster("port thruster", port, at, motor, "+x", axis, -sign if axis == 1 else sign),
                    _thruster("starboard thruster", other, at, motor, "+x", axis, sign),
                )
            )
    cross = sorted((bar for bar in bars if abs(bar.along[1]) > 0.9), key=lambda bar: -bar.spacing)
    for bar, sign in product(cross[:BARS_TRIED], (1, -1)):
        port_end = 1 - OUTER if bar.along[1] > 0 else OUTER
        made.append(
            (
                _thruster("port thruster", bar, port_end, motor, "+x", 2, sign),
                _thruster("starboard thruster", bar, 1 - port_end, motor, "+x", 2, sign),
            )
        )
    return made


def _opposite(port: BarPlace, other: BarPlace) -> bool:
    """Whether two fore-and-aft bars lie beside each other at one level, the first to port."""
    level = abs(port.start[2] - other.start[2]) < NEAR
    return (
        level
        and abs(port.point(0.5)[0] - other.point(0.5)[0]) < NEAR
        and port.start[1] > other.start[1] + NEAR
    )


def _thruster(name: str, bar: BarPlace, at: float, motor: Motor, to: str, axis: int, sign: int) -> Thruster:
    """A thruster beside a bar, clear of it along an axis; ``at`` is counted from the after or lower end."""
    reach = max(motor.propeller_diameter, motor.body_diameter)
    offset = [0.0, 0.0, 0.0]
    offset[axis] = sign * ((bar.pipe.outside_diameter + reach) / 2 + CLEARANCE)
    share = 1 - at if bar.along[0] < -0.5 else at
    return Thruster.model_validate(
        {
            "id": "t",
            "name": name,
            "bar": bar.id,
            "at": share,
            "motor": motor.id,
            "to": to,
            "offset": tuple(offset),
        }
    )
