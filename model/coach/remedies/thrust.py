"""Remedies for thrusters in a bad place: moved, held otherwise, turned round, guarded."""

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from itertools import product

from model.coach.finding import Remedy
from model.coach.remedies.changes import round_up, ruler_step
from model.coach.sentences import length
from model.design import Design, Thruster
from model.survey import Survey
from model.thrust.clear import Clearance, disc_of
from model.thrust.nearest import middle, nearest
from model.thrust.tie_holes import proposed_holes
from model.units import snap
from model.vectors import Vector, norm, scale, sub

WAYS = (("ahead", "aft"), ("to port", "to starboard"), ("up", "down"))
SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)
"""Places on a bar that are tried, from its middle outwards."""
FACING = 0.7
"""A bar lies along an axis where its direction has more of it than this."""
BESIDE_ROOM = 0.011
"""[m] Between a propeller and the pipe beside it: a little over what the coach asks."""
STREAM_STEPS = (0.5, 1.0, 1.5)
"""Propeller diameters that a thruster is moved to get its stream clear."""


def changed(design: Design, thrusters: Iterable[str], change: Callable[[Thruster], Thruster]) -> Design:
    """The design with some thrusters, by id, changed."""
    names = set(thrusters)
    return design.arranged(
        thrusters=tuple(change(item) if item.id in names else item for item in design.arrangement.thrusters)
    )


def moved(design: Design, thrusters: Iterable[str], by: Vector) -> Design:
    """The design with some thrusters, by id, moved [m]."""

    def shift(item: Thruster) -> Thruster:
        x, y, z = (snap(here + step) for here, step in zip(item.offset, by, strict=True))
        return item.but(offset=(x, y, z))

    return changed(design, thrusters, shift)


def move_words(by: Vector, survey: Survey) -> str:
    """A move along the axes in words: ahead by 25 mm and up by 10 mm."""
    unit = survey.design.units
    words = [
        f"{pair[step < 0]} by {length(abs(step), unit)}"
        for step, pair in zip(by, WAYS, strict=True)
        if abs(step) > 1e-9
    ]
    return " and ".join(words)


def shift(survey: Survey, thrusters: tuple[str, ...], axis: int, by: float) -> Remedy:
    """Move some thrusters along an axis by a length [m], in whole steps of the ruler."""
    step = ruler_step(survey.design.units)
    whole = round_up(abs(by), step) * (1 if by > 0 else -1)
    way = [0.0, 0.0, 0.0]
    way[axis] = whole
    vector = (way[0], way[1], way[2])
    names = {item.id: item.name for item in survey.arrangement.thrusters}
    who = " and ".join(names[name] for name in thrusters)
    return Remedy(f"Move {who} {move_words(vector, survey)}", partial(_moved, who=thrusters, by=vector))


def _moved(design: Design, who: tuple[str, ...], by: Vector) -> Design:
    return moved(design, who, by)


def plan_holes(survey: Survey, item: Thruster) -> tuple[Remedy, ...]:
    """Plan the holes for two ties where they usually go."""
    motor = next(motor for motor in survey.design.supplies.motors if motor.id == item.motor)
    holes = proposed_holes(item, motor, survey.frame.bars[item.bar])
    edit = partial(changed, thrusters=(item.id,), change=lambda one: one.but(tie_holes=holes))
    return (Remedy(f"Plan two holes for the ties of {item.name}", edit),)


def off_hub(survey: Survey, item: Thruster) -> tuple[Remedy, ...]:
    """Slide a thruster along its bar to bare pipe, the nearest place first."""
    bar = survey.frame.bars[item.bar]
    unit = survey.design.units
    remedies = []
    for share in sorted(SHARES, key=lambda share: abs(share - item.at)):
        by = length(abs(share - item.at) * bar.spacing, unit)
        edit = partial(changed, thrusters=(item.id,), change=partial(_at, share=share))
        remedies.append(Remedy(f"Slide {item.name} along {bar.name} by {by}", edit))
    return tuple(remedies)


def _at(item: Thruster, share: float) -> Thruster:
    return item.but(at=share)


def beside(survey: Survey, item: Thruster, reach: float) -> tuple[Remedy, ...]:
    """Move a thruster out of its pipe, across it, until its body lies beside it at a reach [m]."""
    bar = survey.frame.bars[item.bar]
    across = sorted((axis for axis in range(3) if abs(bar.along[axis]) < FACING), key=lambda axis: axis == 2)
    inside = [1 if bar.point(item.at)[axis] > survey.balance.g[axis] else -1 for axis in range(3)]
    drive = next(drive for drive in survey.drives if drive.thruster == item.id)
    room = max(reach, bar.pipe.outside_diameter / 2 + drive.diameter / 2 + BESIDE_ROOM)
    return tuple(
        shift(survey, (item.id,), axis, sign * inside[axis] * room - item.offset[axis])
        for axis in across
        for sign in (1, -1)
    )


def clear_disc(survey: Survey, room: Clearance, needed: float) -> tuple[Remedy, ...]:
    """Move a thruster away from what its propeller comes near, until there is enough room [m]."""
    part = next(part for part in survey.parts if part.kind == "thruster" and part.id == room.thruster)
    if room.near is None:
        return ()
    centre = middle(disc_of(part))
    foot = min(
        (nearest(solid, centre) for solid in room.near.part.solids),
        key=lambda point: norm(sub(point, centre)),
    )
    away = sub(centre, foot)
    lack = needed - room.near.room
    ways = sorted(product(range(3), (1, -1)), key=lambda way: -way[1] * away[way[0]])
    return tuple(
        shift(survey, (room.thruster,), axis, sign * lack * more)
        for more in (1.0, 2.0)
        for axis, sign in ways[:4]
    )


def clear_stream(survey: Survey, thruster: str) -> tuple[Remedy, ...]:
    """Move a thruster so that less stands in its stream: along its bar, then across its stream."""
    item = next(item for item in survey.arrangement.thrusters if item.id == thruster)
    drive = next(drive for drive in survey.drives if drive.thruster == thruster)
    across = [axis for axis in range(3) if abs(drive.along[axis]) < 0.5]
    sideways = [
        shift(survey, (thruster,), axis, sign * diameters * drive.diameter)
        for diameters in STREAM_STEPS
        for axis in across
        for sign in (1, -1)
    ]
    return (*off_hub(survey, item), *sideways)


def clear_tether(survey: Survey, thruster: Thruster) -> tuple[Remedy, ...]:
    """Tie the tether off elsewhere on its bar, or guard the propeller."""
    tether = survey.arrangement.tether
    guard = Remedy(
        f"Put a guard round the propeller of {thruster.name}",
        partial(changed, thrusters=(thruster.id,), change=lambda item: item.but(guard=True)),
    )
    if tether is None:
        return (guard,)
    bar = survey.frame.bars[tether.bar]
    moves = [
        Remedy(
            f"Tie {tether.name} off {length(abs(share - tether.at) * bar.spacing, survey.design.units)} "
            f"along {bar.name}",
            partial(_tied, share=share),
        )
        for share in sorted(SHARES, key=lambda share: abs(share - tether.at))
    ]
    return (*moves, guard)


def _tied(design: Design, share: float) -> Design:
    tether = design.arrangement.tether
    return design if tether is None else design.arranged(tether=tether.but(at=share))


def over_centre(survey: Survey, thrusters: tuple[str, ...], lever: Vector) -> tuple[Remedy, ...]:
    """Move the upright thrusters level, by how far their pull acts beside the centre [m]."""
    axes = sorted((0, 1), key=lambda axis: -abs(lever[axis]))
    return tuple(_shifts(survey, thrusters, axes, lever))


def line_up(survey: Survey, thrusters: tuple[str, ...], lever: float) -> tuple[Remedy, ...]:
    """Move the thrusters that push ahead up or down, by how far their pull acts off the centre [m]."""
    return tuple(_shifts(survey, thrusters, (2,), scale((0.0, 0.0, 1.0), lever)))


def line_in(survey: Survey, thrusters: tuple[str, ...], lever: float) -> tuple[Remedy, ...]:
    """Move the thrusters that push ahead sideways: all together, or one of them by as much as it takes."""
    whole = [shift(survey, thrusters, 1, -lever)]
    single = [shift(survey, (one,), 1, -lever * len(thrusters)) for one in thrusters]
    return tuple(whole + single) if len(thrusters) > 1 else tuple(whole)


def _shifts(
    survey: Survey, thrusters: tuple[str, ...], axes: Iterable[int], lever: Vector
) -> Iterator[Remedy]:
    for axis in axes:
        for share in (1.0, 0.7, 0.5):
            if abs(lever[axis]) > 1e-4:
                yield shift(survey, thrusters, axis, -lever[axis] * share)


def other_hand(survey: Survey, thrusters: tuple[str, ...]) -> tuple[Remedy, ...]:
    """Put propellers of the other hand on every second of these thrusters, or on one of them."""
    names = {item.id: item.name for item in survey.arrangement.thrusters}
    choices = dict.fromkeys((thrusters[1::2], *((each,) for each in reversed(thrusters))))
    return tuple(
        Remedy(
            f"Put a propeller of the other hand on {' and '.join(names[each] for each in choice)}",
            partial(changed, thrusters=choice, change=_turned),
        )
        for choice in choices
        if choice
    )


def _turned(item: Thruster) -> Thruster:
    return item.but(hand="left" if item.hand == "right" else "right")


def deeper(survey: Survey, thruster: str, lack: float) -> tuple[Remedy, ...]:
    """Move a thruster down by what it lacks in depth [m]."""
    return (shift(survey, (thruster,), 2, -lack),)
