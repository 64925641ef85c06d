"""Edits of the bars and of the joints that they need."""

from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from model.design.arrangement import Arrangement, Bar, Joint
from model.design.document import Design, equipment
from model.design.edits.core import Ref, arranged, changed, find, fresh_id, fresh_name, taken_ids
from model.design.equipment import OnBar
from model.errors import EditError
from model.units import format_length

Crossing = tuple[str, str, str]
"""A station, a side and a level, by their ids."""
STRAIGHT = 1e-7
"""[m] Plane distances that differ by less than this make 45 degrees."""
SAME_SHARE = 1e-6
FIXED = ("thrusters", "floats", "ballasts", "attachments", "openings", "plugs")


def joint_at(arrangement: Arrangement, crossing: Crossing) -> Joint | None:
    """The joint where three planes cross, if there is one."""
    return next((joint for joint in arrangement.joints if joint.planes == crossing), None)


def crossing_name(arrangement: Arrangement, crossing: Crossing) -> str:
    """A crossing of planes in words: the names of its station, side and level."""
    groups = (arrangement.stations, arrangement.sides, arrangement.levels)
    named = [
        next((plane.name for plane in group if plane.id == here), here)
        for group, here in zip(groups, crossing, strict=True)
    ]
    return " ".join(named)[:80]


def add_bar(design: Design, start: Crossing, end: Crossing, pipe: str | None = None) -> Design:
    """A new bar between two crossings, with the joints that are missing there.

    It runs along one axis, or at 45 degrees between two.  A bar that ran through one of the
    crossings is split there, to take a tee.

    Raises:
        EditError: no fitting could hold a bar in that direction, it would lie over another, or
            would run through a joint.
    """
    along = [n for n in range(3) if start[n] != end[n]]
    if not along:
        raise EditError("a bar needs two different crossings")
    _check_slant(design, start, end, along)
    design = with_joint(with_joint(design, start), end)
    arrangement = design.arrangement
    ends = [joint.id for crossing in (start, end) if (joint := joint_at(arrangement, crossing))]
    _check_way(arrangement, start, end, ends)
    bar = Bar(
        id=fresh_id("b", taken_ids(design, "bar")),
        name=_bar_name(arrangement, start, along),
        start=ends[0],
        end=ends[1],
        pipe=pipe,
    )
    return arranged(design, bars=(*arrangement.bars, bar))


def _check_slant(design: Design, start: Crossing, end: Crossing, along: list[int]) -> None:
    """Refuses a bar that runs neither along an axis nor at 45 degrees in a main plane."""
    if len(along) == 3:
        raise EditError("a bar runs ahead, across or up, or at 45 degrees between two of them; not all three")
    runs = _runs(design, start, end, along)
    if max(runs) - min(runs) > STRAIGHT:
        found = " and ".join(format_length(run, design.units) for run in runs)
        raise EditError(f"a slanting bar is held at 45 degrees only: both ways alike, but these are {found}")


def _runs(design: Design, start: Crossing, end: Crossing, along: list[int]) -> list[float]:
    """How far [m] a bar goes along some axes."""
    groups = (design.arrangement.stations, design.arrangement.sides, design.arrangement.levels)
    places = [{plane.id: plane.at for plane in groups[n] if plane.id in (start[n], end[n])} for n in along]
    return [abs(at[end[n]] - at[start[n]]) for n, at in zip(along, places, strict=True)]


def straight_ends(design: Design, start: Crossing) -> Iterator[Crossing]:
    """The crossings in one line with another along an axis, by their places."""
    for n, group in enumerate(_ordered(design)):
        for _, plane in group:
            if plane != start[n]:
                yield _with(start, {n: plane})


def slanting_ends(design: Design, start: Crossing) -> Iterator[Crossing]:
    """The crossings to which a bar from one would run at 45 degrees in a main plane, by their places."""
    groups = _ordered(design)
    here = [next(at for at, plane in group if plane == start[n]) for n, group in enumerate(groups)]
    for first, second in ((0, 1), (0, 2), (1, 2)):
        for at, plane in groups[first]:
            run = abs(at - here[first])
            for where in (here[second] - run, here[second] + run) if run > STRAIGHT else ():
                for other in _planes_at(groups[second], where):
                    yield _with(start, {first: plane, second: other})


def _ordered(design: Design) -> list[list[tuple[float, str]]]:
    """The places [m] and ids of stations, sides and levels, each in order."""
    groups = (design.arrangement.stations, design.arrangement.sides, design.arrangement.levels)
    return [sorted((plane.at, plane.id) for plane in group) for group in groups]


def _planes_at(places: list[tuple[float, str]], where: float) -> Iterator[str]:
    """The planes that lie at a place [m], of some in order."""
    for number in range(bisect_left(places, (where - STRAIGHT, "")), len(places)):
        at, plane = places[number]
        if at > where + STRAIGHT:
            return
        yield plane


def _with(crossing: Crossing, planes: Mapping[int, str]) -> Crossing:
    """A crossing with other planes along some axes."""
    station, side, level = (planes.get(n, plane) for n, plane in enumerate(crossing))
    return station, side, level


def _bar_name(arrangement: Arrangement, crossing: Crossing, along: list[int]) -> str:
    """A bar is called after the planes that it lies in."""
    groups = (arrangement.stations, arrangement.sides, arrangement.levels)
    names = [
        plane.name
        for n, group in enumerate(groups)
        for plane in group
        if n not in along and plane.id == crossing[n]
    ]
    base = f"{' '.join(names)[:60]} {'slanting ' if len(along) > 1 else ''}bar"
    return fresh_name(base, (bar.name for bar in arrangement.bars))


def _check_way(arrangement: Arrangement, start: Crossing, end: Crossing, ends: list[str]) -> None:
    for bar in arrangement.bars:
        if {bar.start, bar.end} == set(ends):
            raise EditError(f"the bar '{bar.name}' already runs there")
    for joint in arrangement.joints:
        if _lies_between(arrangement, joint.planes, start, end):
            raise EditError(f"the bar would run through the joint '{joint.name}'; end it there")


def _lies_between(arrangement: Arrangement, here: Crossing, start: Crossing, end: Crossing) -> bool:
    """Whether a crossing lies on the line from start to end, strictly between them."""
    groups = (arrangement.stations, arrangement.sides, arrangement.levels)
    if any(a == b != c for a, b, c in zip(start, end, here, strict=True)):
        return False
    shares: list[float] = []
    for n, group in enumerate(groups):
        if start[n] != end[n]:
            at = {plane.id: plane.at for plane in group if plane.id in (start[n], end[n], here[n])}
            run = at[end[n]] - at[start[n]]
            if not run:
                return False
            shares.append((at[here[n]] - at[start[n]]) / run)
    return all(0 < share < 1 for share in shares) and max(shares) - min(shares) < SAME_SHARE


def check_joints_clear(design: Design, *, order_kept: bool = False) -> None:
    """Refuses a design in which a joint lies inside a bar, where nothing could connect them.

    Args:
        order_kept: whether the planes kept their order, so that only slanting bars can have changed.

    Raises:
        EditError: it names the joint and the bar.
    """
    arrangement = design.arrangement
    planes = {j.id: j.planes for j in arrangement.joints}
    for bar in arrangement.bars:
        if order_kept and _one_line(planes[bar.start], planes[bar.end]):
            continue
        for joint in arrangement.joints:
            if _lies_between(arrangement, joint.planes, planes[bar.start], planes[bar.end]):
                raise EditError(f"the joint '{joint.name}' would lie inside the bar '{bar.name}' there")


def with_joint(design: Design, crossing: Crossing) -> Design:
    """The design with a joint at a crossing; a bar that ran through it is split there."""
    arrangement = design.arrangement
    if joint_at(arrangement, crossing):
        return design
    joint = Joint(
        id=fresh_id("j", taken_ids(design, "joint")),
        name=fresh_name(crossing_name(arrangement, crossing), (j.name for j in arrangement.joints)),
        station=crossing[0],
        side=crossing[1],
        level=crossing[2],
    )
    through = bars_through(design, crossing)
    design = arranged(design, joints=(*arrangement.joints, joint))
    for bar in through:
        design = _split(design, bar, joint)
    return design


def bars_through(design: Design, crossing: Crossing) -> tuple[Bar, ...]:
    """The bars that run through a crossing without ending there."""
    arrangement = design.arrangement
    planes = {joint.id: joint.planes for joint in arrangement.joints}
    return tuple(
        bar
        for bar in arrangement.bars
        if _lies_between(arrangement, crossing, planes[bar.start], planes[bar.end])
    )


def bar_between(design: Design, start: Crossing, end: Crossing) -> Bar | None:
    """The bar that runs from one crossing to another, if there is one."""
    ends = {joint.id for crossing in (start, end) if (joint := joint_at(design.arrangement, crossing))}
    return next((bar for bar in design.arrangement.bars if {bar.start, bar.end} == ends), None)


def _one_line(start: Crossing, end: Crossing) -> bool:
    return sum(a != b for a, b in zip(start, end, strict=True)) == 1


def split_bar(design: Design, bar: str, plane: str) -> Design:
    """A bar cut in two where it meets a plane, with a joint there for a tee.

    Raises:
        EditError: the plane does not cross the bar between its ends.
    """
    record = find(design, Ref("bar", bar))
    start, end = (find(design, Ref("joint", joint)).planes for joint in (record.start, record.end))
    groups = (design.arrangement.stations, design.arrangement.sides, design.arrangement.levels)
    for n, group in enumerate(groups):
        if start[n] != end[n] and any(p.id == plane for p in group) and _one_line(start, end):
            crossing: Crossing = (*start[:n], plane, *start[n + 1 :])
            if _lies_between(design.arrangement, crossing, start, end):
                return with_joint(design, crossing)
    if not _one_line(start, end):
        raise EditError(f"'{record.name}' slants; set a joint where two planes cross on it to split it there")
    raise EditError(f"that plane does not cross the bar '{record.name}' between its ends")


def _split(design: Design, bar: Bar, joint: Joint) -> Design:
    arrangement = design.arrangement
    share = _share(arrangement, bar, joint)
    first = changed(bar, end=joint.id)
    second = changed(
        bar,
        id=fresh_id("b", taken_ids(design, "bar")),
        name=fresh_name(bar.name, (b.name for b in arrangement.bars)),
        start=joint.id,
    )
    bars = [piece for b in arrangement.bars for piece in ((first, second) if b.id == bar.id else (b,))]

    def settled(item: Any) -> Any:
        if item.bar != bar.id:
            return item
        if item.at <= share:
            return changed(item, at=min(1.0, item.at / share))
        return changed(item, bar=second.id, at=min(1.0, (item.at - share) / (1 - share)))

    return _with_fixed(design, settled, tuple(bars))


def _with_fixed(design: Design, settled: Callable[[Any], Any], bars: tuple[Bar, ...]) -> Design:
    arrangement = design.arrangement
    fixed = {name: tuple(settled(item) for item in getattr(arrangement, name)) for name in FIXED}
    tether = settled(arrangement.tether) if arrangement.tether else None
    return arranged(design, bars=bars, tether=tether, **fixed)


def _share(arrangement: Arrangement, bar: Bar, joint: Joint) -> float:
    """How far along a bar a joint lies, 0 at its start and 1 at its end."""
    places = {j.id: j.planes for j in arrangement.joints}
    groups = (arrangement.stations, arrangement.sides, arrangement.levels)
    for n, group in enumerate(groups):
        at = {plane.id: plane.at for plane in group}
        start, end = at[places[bar.start][n]], at[places[bar.end][n]]
        if places[bar.start][n] != places[bar.end][n]:
            return (at[joint.planes[n]] - start) / (end - start)
    return 0.5


def remove_bar(design: Design, bar: str) -> Design:
    """A bar taken away with what is fixed to it, and its joints where no other bar is left."""
    record = find(design, Ref("bar", bar))
    arrangement = design.arrangement
    bars = tuple(b for b in arrangement.bars if b.id != bar)
    used = {end for b in bars for end in (b.start, b.end)}
    loose = {record.start, record.end} - used
    tether = arrangement.tether
    return arranged(
        design,
        bars=bars,
        joints=tuple(j for j in arrangement.joints if j.id not in loose),
        tether=None if tether and tether.bar == bar else tether,
        **{name: tuple(item for item in getattr(arrangement, name) if item.bar != bar) for name in FIXED},
    )


def fixed_to(design: Design, bar: str) -> tuple[OnBar, ...]:
    """What is fixed to a bar, and goes when it goes."""
    return tuple(item for item in equipment(design.arrangement) if item.bar == bar)
