"""Editing on the drawing: a cursor that stands where three planes cross, and what a pen does there.

Every view sees two kinds of plane edge-on; the third kind is the depth, which has keys of its own.
Nothing here knows of a screen: a step, a click or a key becomes a crossing, or an edit with its name.
"""

from collections.abc import Callable, Iterator
from functools import partial
from itertools import pairwise, permutations
from typing import NamedTuple

from model.design import Bar, Design, Plane
from model.design.edits import (
    PLANE_KINDS,
    Crossing,
    Ref,
    add_bar,
    add_plane,
    bar_between,
    bars_through,
    copy_bar_across,
    crossing_name,
    find,
    joint_at,
    mirror_sides,
    move_plane,
    ordered_planes,
    pieces,
    remove_bar,
    remove_plane,
    with_joint,
)
from model.design.edits.bars import STRAIGHT
from model.drawing.projection import VIEWS, Projection
from model.drawing.scene import Point
from model.errors import EditError
from model.survey import Survey
from model.units import format_length, snap
from model.vectors import Vector, norm, sub

Move = tuple[str, Callable[[Design], Design]]
"""What an edit is called, and the edit."""
WAYS = (("further ahead", "further astern"), ("further to port", "further to starboard"), ("higher", "lower"))
STEP = {"mm": 0.005, "in": 0.0254 / 4}
"""[m] How far a plane moves at a key press."""
MOST_CROSSINGS = 900
"""Crossings of a view that are shown as dots; beyond, only those with joints are."""


class Hand(NamedTuple):
    """The cursor, and the crossing that the pen was put down on, if it was."""

    at: Crossing
    pen: Crossing | None = None


def axes(view: str | Projection) -> tuple[int, int, int]:
    """The axis (0 x, 1 y, 2 z) that runs to the right in a view, the one that runs up, and the depth.

    In an oblique view those that run most nearly so.

    >>> axes("front"), axes("top"), axes("side")
    ((1, 2, 0), (1, 0, 2), (0, 2, 1))
    """
    look = _look(view)
    ways = (look.right, look.up, look.towards)
    across, up, depth = max(
        permutations(range(3)),
        key=lambda order: sum(abs(way[axis]) for way, axis in zip(ways, order, strict=True)),
    )
    return across, up, depth


def _look(view: str | Projection) -> Projection:
    return VIEWS[view] if isinstance(view, str) else view


def beginning(design: Design) -> Crossing | None:
    """Where the cursor stands first: at the first joint, or where the first planes cross."""
    if design.arrangement.joints:
        return design.arrangement.joints[0].planes
    return settled(design, ("", "", ""))


def settled(design: Design, at: Crossing, before: Design | None = None) -> Crossing | None:
    """The cursor after an edit: on a plane that was just added, off one that is gone.

    Returns:
        None where a kind of plane has none yet.
    """
    result = []
    for axis, kind in enumerate(PLANE_KINDS):
        planes = ordered_planes(design, kind)
        if not planes:
            return None
        known = {plane.id for plane in pieces(before, kind)} if before else set()
        fresh = [plane.id for plane in planes if known and plane.id not in known]
        if len(fresh) == 1:
            result.append(fresh[0])
        elif any(plane.id == at[axis] for plane in planes):
            result.append(at[axis])
        else:
            result.append(_nearest(planes, before, kind, at[axis]))
    station, side, level = result
    return station, side, level


def _nearest(planes: tuple[Plane, ...], before: Design | None, kind: str, gone: str) -> str:
    """The plane nearest to where one stood that is gone."""
    places = {plane.id: plane.at for plane in pieces(before, kind)} if before else {}
    place = places.get(gone, planes[0].at)
    return min(planes, key=lambda plane: abs(plane.at - place)).id


def moved(
    design: Design, view: str | Projection, at: Crossing, right: int = 0, up: int = 0, nearer: int = 0
) -> Crossing:
    """The cursor some planes further to the right, up or towards the viewer; it stops at the last one."""
    look, result = _look(view), list(at)
    ways = ((look.right, right), (look.up, up), (look.towards, nearer))
    for axis, (way, steps) in zip(axes(look), ways, strict=True):
        planes = [plane.id for plane in ordered_planes(design, PLANE_KINDS[axis])]
        here = planes.index(at[axis]) + (steps if way[axis] > 0 else -steps)
        result[axis] = planes[max(0, min(here, len(planes) - 1))]
    station, side, level = result
    return station, side, level


def place(survey: Survey, at: Crossing) -> Vector:
    """Where planes cross [m]."""
    x, y, z = (survey.frame.planes[plane] for plane in at)
    return x, y, z


def crossings(survey: Survey, view: str, at: Crossing) -> Iterator[tuple[Point, Crossing]]:
    """Every crossing at the depth of the cursor: where it is on the sheet [mm], and its planes."""
    across, up, _ = axes(view)
    columns, rows = (ordered_planes(survey.design, PLANE_KINDS[axis]) for axis in (across, up))
    if len(columns) * len(rows) > MOST_CROSSINGS:
        columns, rows = (
            tuple(plane for plane in planes if plane.id == at[axis])
            for planes, axis in ((columns, across), (rows, up))
        )
    for column in columns:
        for row in rows:
            planes = list(at)
            planes[across], planes[up] = column.id, row.id
            here: Crossing = (planes[0], planes[1], planes[2])
            yield VIEWS[view].point(place(survey, here)), here


def stroke(design: Design, pen: Crossing, at: Crossing) -> Move:
    """A bar from the pen to the cursor added, or the one that runs there taken away."""
    bar = bar_between(design, pen, at)
    if bar is not None:
        return f"bar {bar.name} removed", partial(remove_bar, bar=bar.id)
    return "bar added", partial(add_bar, start=pen, end=at)


def split(design: Design, at: Crossing) -> Move:
    """A bar that runs through the cursor cut in two there, to take a tee.

    Raises:
        EditError: no bar runs through it, or there is a joint already.
    """
    if joint_at(design.arrangement, at):
        raise EditError("there is a joint here already; go to where a bar crosses a plane between its joints")
    through = bars_through(design, at)
    if not through:
        raise EditError("no bar runs through here; put a plane across a bar first (p), and go there")
    return f"bar {through[0].name} split", partial(with_joint, crossing=at)


def bars_here(design: Design, at: Crossing) -> tuple[Bar, ...]:
    """The bars that end at the cursor or run through it."""
    joint = joint_at(design.arrangement, at)
    ends = tuple(bar for bar in design.arrangement.bars if joint and joint.id in (bar.start, bar.end))
    return (*ends, *bars_through(design, at))


def across(bar: Bar) -> Move:
    """A bar copied to the other side."""
    return f"bar {bar.name} copied across", partial(copy_bar_across, bar=bar.id)


def nudged(design: Design, view: str | Projection, at: Crossing, right: int = 0, up: int = 0) -> Move:
    """The plane under the cursor moved by steps to the right or up; everything on it goes along."""
    look = _look(view)
    way, steps = (look.right, right) if right else (look.up, up)
    axis = axes(look)[0 if right else 1]
    kind, plane = PLANE_KINDS[axis], find(design, Ref(PLANE_KINDS[axis], at[axis]))
    where = plane.at + steps * STEP[design.units] * (1 if way[axis] > 0 else -1)
    label = f"{kind} {plane.name} to {format_length(where, design.units)}"
    return label, partial(move_plane, kind=kind, plane=plane.id, at=where)


def new_planes(
    design: Design, view: str | Projection, at: Crossing | None, pen: Crossing | None = None
) -> tuple[Move, ...]:
    """The planes that can be added near the cursor.

    Where a bar from the pen would slant too flat or too steep, those at which it lies at 45 degrees;
    then half-way to each neighbour, or beyond the last.
    """
    slanting = at_45_degrees(design, pen, at) if pen and at else ()
    near = (move for axis in axes(view) for move in _new_along(design, axis, at[axis] if at else ""))
    return (*slanting, *near)


def at_45_degrees(design: Design, pen: Crossing, at: Crossing) -> tuple[Move, ...]:
    """New planes that bring a bar from the pen towards the cursor to 45 degrees, one along each way."""
    ends = [[find(design, Ref(kind, here[n])) for here in (pen, at)] for n, kind in enumerate(PLANE_KINDS)]
    ways = [n for n in range(3) if pen[n] != at[n]]
    runs = [abs(ends[n][1].at - ends[n][0].at) for n in ways]
    if len(ways) != 2 or abs(runs[0] - runs[1]) <= STRAIGHT:
        return ()
    moves = []
    for n, run in zip(ways, reversed(runs), strict=True):
        kind, (begin, towards) = PLANE_KINDS[n], ends[n]
        where = snap(begin.at + run if towards.at > begin.at else begin.at - run)
        if all(snap(plane.at) != where for plane in pieces(design, kind)):
            label = f"{kind} at 45 degrees from the pen, {format_length(run, design.units)} from {begin.name}"
            moves.append((label, partial(add_plane, kind=kind, at=where)))
    return tuple(moves)


def _new_along(design: Design, axis: int, here: str) -> Iterator[Move]:
    kind, planes = PLANE_KINDS[axis], ordered_planes(design, PLANE_KINDS[axis])
    if not planes:
        yield f"the first {kind}", partial(add_plane, kind=kind)
        return
    number = next((n for n, plane in enumerate(planes) if plane.id == here), 0)
    for a, b in pairwise(planes[max(0, number - 1) : number + 2]):
        middle = (a.at + b.at) / 2
        yield f"{kind} half-way between {a.name} and {b.name}", partial(add_plane, kind=kind, at=middle)
    more, less = WAYS[axis]
    yield f"{kind} {more}, beyond {planes[-1].name}", partial(add_plane, kind=kind)
    if len(planes) > 1:
        below = 2 * planes[0].at - planes[1].at
        yield f"{kind} {less}, beyond {planes[0].name}", partial(add_plane, kind=kind, at=below)


def planes_here(design: Design, at: Crossing) -> tuple[Move, ...]:
    """The three planes under the cursor, to take one away, with how many bars go with it."""
    return tuple(
        (
            f"{kind} {find(design, Ref(kind, plane)).name} removed{_with_bars(design, axis, plane)}",
            partial(remove_plane, kind=kind, plane=plane),
        )
        for axis, (kind, plane) in enumerate(zip(PLANE_KINDS, at, strict=True))
    )


def _with_bars(design: Design, axis: int, plane: str) -> str:
    on = {joint.id for joint in design.arrangement.joints if joint.planes[axis] == plane}
    count = sum(bar.start in on or bar.end in on for bar in design.arrangement.bars)
    return f" with {count} {'bar' if count == 1 else 'bars'}" if count else ""


def words(survey: Survey, at: Crossing, pen: Crossing | None) -> str:
    """Where the cursor stands, and what Enter does there."""
    design = survey.design
    here = f"{crossing_name(design.arrangement, at)}: {_what(survey, at)}"
    if pen is None:
        return f"{here}. Enter begins a bar here."
    if pen == at:
        return f"{here}. Pen down: go to the other end, then Enter."
    bar = bar_between(design, pen, at)
    if bar is not None:
        return f"{here}. Enter takes the bar '{bar.name}' away."
    if at_45_degrees(design, pen, at):
        return f"{here}. A slanting bar lies at 45 degrees: p adds a plane where it does."
    length = format_length(norm(sub(place(survey, at), place(survey, pen))), design.units)
    try:
        add_bar(design, pen, at)
    except EditError as refusal:
        problem = str(refusal)
        return f"{here}. {problem[:1].upper()}{problem[1:]}."
    return f"{here}. Enter draws a bar, {length} long."


def _what(survey: Survey, at: Crossing) -> str:
    """What is at a crossing."""
    joint = joint_at(survey.arrangement, at)
    if joint is not None:
        found = survey.frame.joints[joint.id].match
        return found.fitting.name if found else "no fitting fits"
    through = bars_through(survey.design, at)
    return f"on {through[0].name}, s splits it" if through else "empty"


def mirrors() -> tuple[Move, ...]:
    """One side made like the other."""
    return (
        ("port is right: starboard is made like it", partial(mirror_sides, hand="port")),
        ("starboard is right: port is made like it", partial(mirror_sides, hand="starboard")),
    )
