"""Remedies for the frame and its fittings."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import GROUPS, planes_moved, round_up, ruler_step
from model.coach.remedies.floats import moved_with_floats
from model.coach.sentences import direction_words, gone_words, length, one
from model.design import Design, Opening, Pipe, Stock, equipment
from model.design.edits import PLANE_KINDS, add_plane, left_behind, pieces, split_bar, use_stock
from model.fittings.match import catalogue
from model.frame.layout import BarPlace, JointPlace, lay_out, ways
from model.presets import presets
from model.survey import Survey
from model.units import Unit, snap
from model.vectors import Grid

FIXED = ("thrusters", "floats", "ballasts", "attachments", "openings")


def close_end(survey: Survey, joint: JointPlace) -> tuple[Remedy, ...]:
    """Put a cap on a loose end, or take the bar away."""
    found: list[Remedy] = []
    needed = ways(joint.arms)
    caps = catalogue(survey.design.stock).matches(needed) if needed else ()
    for match in caps:
        if not match.spare:
            found.append(
                Remedy(
                    f"Put {one(match.fitting.name)} on it",
                    partial(pick_fitting, joint=joint.id, fitting=match.fitting.id),
                )
            )
    bar = survey.frame.bars[joint.arms[0].bar]
    fixed = [item for item in equipment(survey.arrangement) if item.bar == bar.id]
    if all(isinstance(item, Opening) for item in fixed):
        label = f"Take {bar.name} away" + (" with its holes" if fixed else "")
        found.append(Remedy(label, partial(without_bars, bars={bar.id})))
    return tuple(found)


def clear_pick(survey: Survey, joint: JointPlace) -> tuple[Remedy, ...]:
    """Let the coach choose the fitting again."""
    needed = ways(joint.arms)
    match = catalogue(survey.design.stock).match(needed, None) if needed else None
    if match is None:
        return ()
    return (
        Remedy(f"Use {one(match.fitting.name)} there", partial(pick_fitting, joint=joint.id, fitting=None)),
    )


def fewer_sockets(survey: Survey, joint: JointPlace) -> tuple[Remedy, ...]:
    """A fitting of the stock that leaves fewer sockets empty."""
    needed = ways(joint.arms)
    if joint.match is None or needed is None:
        return ()
    return tuple(
        Remedy(
            f"Use {one(match.fitting.name)} there",
            partial(pick_fitting, joint=joint.id, fitting=match.fitting.id),
        )
        for match in catalogue(survey.design.stock).matches(needed)
        if len(match.spare) < len(joint.match.spare)
    )


def drop_group(survey: Survey, group: frozenset[str]) -> tuple[Remedy, ...]:
    """Take a piece of frame away that carries nothing."""
    bars = {bar.id for bar in survey.frame.bars.values() if bar.joints[0] in group}
    if any(item.bar in bars for item in equipment(survey.arrangement)):
        return ()
    count = "its bar" if len(bars) == 1 else f"its {len(bars)} bars"
    label = f"Take the smaller piece away ({count})" if bars else "Take the joint away that holds nothing"
    return (Remedy(label, partial(without_bars, bars=bars, joints=group)),)


def spread_joints(survey: Survey, bar: BarPlace) -> tuple[Remedy, ...]:
    """Move the planes at one end or the other apart, as far as the fittings need."""
    unit = survey.design.units
    need = round_up(-bar.exposed, ruler_step(unit))
    joints = {joint.id: joint for joint in survey.arrangement.joints}
    start, end = joints[bar.joints[0]], joints[bar.joints[1]]
    found: list[Remedy] = []
    for joint, far, sign in ((end, start, 1), (start, end, -1)):
        moves = {
            plane: sign * need * (1 if step > 0 else -1)
            for plane, other, step in zip(joint.planes, far.planes, bar.along, strict=True)
            if plane != other and step
        }
        names = " and ".join(_plane_name(survey, plane) for plane in moves)
        label = f"Move {names} outwards by {length(need, unit)}"
        found.append(Remedy(label, partial(planes_moved, by=moves)))
    return tuple(found)


def straighten(survey: Survey, bar: BarPlace) -> Iterator[Remedy]:
    """A bar that slants along two axes brought to 45 degrees by one of its planes, those inside first."""
    ends = {joint.id: joint.planes for joint in survey.arrangement.joints}
    start, end = (ends[joint] for joint in bar.joints)
    spans = [bar.spacing * step for step in bar.along]
    axes = [axis for axis in range(3) if start[axis] != end[axis]]
    if len(axes) != 2 or not all(spans[axis] for axis in axes):
        return
    moves = []
    for axis, other in (axes, reversed(axes)):
        lack = (abs(spans[other]) - abs(spans[axis])) * (1 if spans[axis] > 0 else -1)
        moves += [(axis, end[axis], snap(lack)), (axis, start[axis], snap(-lack))]
    moves.sort(key=lambda move: _is_outermost(survey, move[0], move[1]))
    unit = survey.design.units
    for axis, plane, by in moves:
        way = direction_words(_unit(axis, 1 if by > 0 else -1))
        name = _plane_name(survey, plane)
        label = f"Move {name} {way} by {length(abs(by), unit)}, so that {bar.name} lies at 45 degrees"
        yield Remedy(label, partial(moved_with_floats, by={plane: by}))


def _unit(axis: int, sign: int) -> Grid:
    x, y, z = (sign if n == axis else 0 for n in range(3))
    return x, y, z


def _is_outermost(survey: Survey, axis: int, plane: str) -> bool:
    places = {each.id: each.at for each in getattr(survey.arrangement, GROUPS[axis])}
    return places[plane] in (min(places.values()), max(places.values()))


def halve(survey: Survey, bar: BarPlace) -> tuple[Remedy, ...]:
    """Make a bar of two pieces, with a coupling in the middle."""
    needed = frozenset(((1, 0, 0), bar.pipe.id) if end else ((-1, 0, 0), bar.pipe.id) for end in (0, 1))
    match = catalogue(survey.design.stock).match(needed, None)
    if match is None:
        return ()
    edit = partial(_halved, bar=bar.id)
    return (Remedy(f"Make {bar.name} of two pieces with a {match.fitting.name} in the middle", edit),)


def _halved(design: Design, bar: str) -> Design:
    """The design with a bar split in the middle, at a plane of its own where there is none."""
    place = lay_out(design, design.arrangement).bars[bar]
    axis = max(range(3), key=lambda n: abs(place.along[n]))
    kind, middle = PLANE_KINDS[axis], snap(place.point(0.5)[axis])
    plane = next((p for p in pieces(design, kind) if abs(p.at - middle) < 1e-6), None)
    if plane is None:
        design = add_plane(design, kind, at=middle)
        plane = pieces(design, kind)[-1]
    return split_bar(design, bar, plane.id)


def allowed_pipe(survey: Survey, pipe: Pipe) -> Iterator[Remedy]:
    """Make the bars of an allowed pipe that the stock holds, or choose a range of an allowed material."""
    allowed = {name.casefold() for name in survey.design.brief.materials}
    for other in survey.design.stock.pipes:
        if other.material.casefold() in allowed:
            yield Remedy(f"Make them of {other.name}", partial(_repiped, old=pipe.id, new=other.id))
    for stock in _ranges(pipe, allowed, survey.design.units):
        gone = gone_words(left_behind(survey.design.stock, stock))
        yield Remedy(f"Choose the range {stock.name}{gone}", partial(use_stock, stock=stock))


def _ranges(pipe: Pipe, allowed: set[str], unit: Unit) -> list[Stock]:
    """The ready-made ranges that hold nothing but allowed materials.

    Those sold in the unit of the design come first, and of them the one most like a pipe.
    """
    usable: list[tuple[bool, float, Stock]] = []
    for preset in presets("stock"):
        stock = preset.payload
        if isinstance(stock, Stock) and all(each.material.casefold() in allowed for each in stock.pipes):
            apart = abs(stock.pipes[0].outside_diameter - pipe.outside_diameter)
            usable.append((preset.units != unit, apart, stock))
    return [stock for _, _, stock in sorted(usable, key=lambda each: each[:2])]


def pick_fitting(design: Design, joint: str, fitting: str | None) -> Design:
    """The design with a fitting picked for a joint, or with None left to the coach."""
    joints = tuple(
        item.but(fitting=fitting) if item.id == joint else item for item in design.arrangement.joints
    )
    return design.arranged(joints=joints)


def without_bars(design: Design, bars: set[str], joints: frozenset[str] = frozenset()) -> Design:
    """The design without some bars, the joints that only they held, and what was fixed to them."""
    arrangement = design.arrangement
    kept = tuple(bar for bar in arrangement.bars if bar.id not in bars)
    held = {joint for bar in kept for joint in (bar.start, bar.end)}
    lost = {end for bar in arrangement.bars if bar.id in bars for end in (bar.start, bar.end)} - held
    fixed = {
        name: tuple(item for item in getattr(arrangement, name) if item.bar not in bars) for name in FIXED
    }
    tether = arrangement.tether if arrangement.tether and arrangement.tether.bar not in bars else None
    remaining = tuple(joint for joint in arrangement.joints if joint.id not in lost | joints)
    return design.arranged(bars=kept, joints=remaining, tether=tether, **fixed)


def _plane_name(survey: Survey, plane: str) -> str:
    arrangement = survey.arrangement
    planes = (*arrangement.stations, *arrangement.sides, *arrangement.levels)
    return next(item.name for item in planes if item.id == plane)


def _repiped(design: Design, old: str, new: str) -> Design:
    default = design.stock.pipes[0].id
    bars = tuple(
        bar.but(pipe=new) if (bar.pipe or default) == old else bar for bar in design.arrangement.bars
    )
    return design.arranged(bars=bars)
