"""Three ways to size a frame: its outside size, the spacing of two planes, the cut length of a bar.

Whichever a team sets, planes move and the other two follow.  Bars that are cut alike and lie
parallel stay alike.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

from msgspec import Struct

from model.design import COMPARISON_SLACK, Design, Plane, plane_groups
from model.errors import EditError
from model.extents import extents
from model.frame.layout import BarPlace, Frame, lay_out
from model.frame.sawn import Span, held_planes
from model.units import format_length, snap
from model.vehicle import parts_of

if TYPE_CHECKING:
    from model.survey import Survey

Hold = Literal["middle", "low", "high"]
"""What stays: the planes nearest to the middle, or the aft, starboard or lower one, or the other one."""
KINDS = ("station", "side", "level")
ROUNDS_MOST = 40
"""Of looking at the outside size again, where a thruster or a float goes only part of the way."""


class PlanePair(Struct, frozen=True):
    """Two planes of one kind by their ids, their spacing [m], and the bars from one to the other."""

    low: str
    high: str
    spacing: float
    bars: tuple[BarPlace, ...]


class AxisSize(Struct, frozen=True):
    """Along one axis: outside size and limit [m], and planes that are neighbours or joined by bars."""

    axis: int
    outside: float
    limit: float | None
    pairs: tuple[PlanePair, ...]


def axis_sizes(survey: Survey) -> tuple[AxisSize, AxisSize, AxisSize]:
    """All three ways to read the size along x, y and z."""
    x, y, z = (_axis_size(survey, axis) for axis in range(3))
    return x, y, z


def _axis_size(survey: Survey, axis: int) -> AxisSize:
    limit, at = survey.extents.limit, survey.frame.planes
    planes = [plane.id for plane in _used(survey.design, survey.frame, axis)]
    joined: dict[tuple[str, str], list[BarPlace]] = {pair: [] for pair in pairwise(planes)}
    for low, high, bar in _runs(survey.design, survey.frame, axis):
        joined.setdefault((low, high), []).append(bar)
    pairs = [
        PlanePair(low, high, snap(at[high] - at[low]), tuple(bars)) for (low, high), bars in joined.items()
    ]
    return AxisSize(axis, survey.extents.size[axis], limit[axis] if limit else None, tuple(pairs))


def _used(design: Design, frame: Frame, axis: int) -> list[Plane]:
    """The planes that carry joints, from low to high."""
    used = {joint.planes[axis] for joint in design.arrangement.joints}
    planes = [plane for plane in plane_groups(design.arrangement)[axis] if plane.id in used]
    return sorted(planes, key=lambda plane: frame.planes[plane.id])


def _runs(design: Design, frame: Frame, axis: int) -> Iterator[tuple[str, str, BarPlace]]:
    """Each bar that goes along an axis, alone or at 45 degrees, with its lower and higher plane."""
    planes = {joint.id: joint.planes[axis] for joint in design.arrangement.joints}
    for bar in frame.bars.values():
        low, high = sorted((planes[joint] for joint in bar.joints), key=frame.planes.__getitem__)
        if low != high:
            yield low, high, bar


def set_spacing_between(
    design: Design, kind: str, low: str, high: str, wanted: float, hold: Hold = "middle"
) -> Design:
    """The spacing of two planes of a kind made ``wanted`` [m]; parallel bars of one cut stay alike.

    Raises:
        EditError: the spacing is not above zero, too short for the fittings, or held by a sawn piece.
    """
    frame, axis = lay_out(design, design.arrangement), KINDS.index(kind)
    if low == high or not {low, high} <= {plane.id for plane in plane_groups(design.arrangement)[axis]}:
        raise EditError(f"choose two different {kind}s to set the spacing between them")
    low, high = sorted((low, high), key=frame.planes.__getitem__)
    now = frame.planes[high] - frame.planes[low]
    if wanted <= 0:
        raise EditError("the spacing must be more than 0")
    alike = [bar for a, b, bar in _runs(design, frame, axis) if (a, b) == (low, high)]
    wants = _alike(design, frame, axis, alike, wanted - now) | {(low, high): wanted}
    after = _respaced(design, frame, axis, wants, _held(low, high, hold))
    return _checked(design, after, axis, low, high, wanted)


def set_cut(design: Design, bar: str, wanted: float, hold: Hold = "middle") -> Design:
    """A bar, and the parallel bars that are cut alike, made to a cut of ``wanted`` [m].

    Raises:
        EditError: the cut is not known, too short for its fittings, or held by a sawn piece.
    """
    frame = lay_out(design, design.arrangement)
    place = frame.bars.get(bar)
    if place is None:
        raise EditError(f"the bar '{bar}' is not in this design any more")
    if place.cut is None:
        raise EditError(f"the cut of '{place.name}' is not known until a fitting fits at both its ends")
    least = sum(place.insertions)
    if wanted < least - COMPARISON_SLACK:
        shortest = format_length(least, design.units)
        raise EditError(f"'{place.name}' must be at least {shortest} long: so much goes into its fittings")
    return _grown(design, frame, place, wanted - place.exposed - least, hold)


def set_spacing_of(design: Design, bar: str, wanted: float, hold: Hold = "middle") -> Design:
    """The centres of a bar, and of the parallel bars that are cut alike, brought ``wanted`` [m] apart.

    Raises:
        EditError: too short for the fittings, or held by a sawn piece.
    """
    frame = lay_out(design, design.arrangement)
    place = frame.bars[bar]
    if wanted <= 0:
        raise EditError("the spacing must be more than 0")
    return _grown(design, frame, place, wanted - place.spacing, hold)


def set_showing(design: Design, bar: str, wanted: float, hold: Hold = "middle") -> Design:
    """The pipe that still shows on a bar, and on the parallel bars that are cut alike, made ``wanted`` [m].

    Raises:
        EditError: below zero, or held by a sawn piece.
    """
    frame = lay_out(design, design.arrangement)
    place = frame.bars[bar]
    if wanted < 0:
        raise EditError("less than nothing cannot show; at 0 the fittings touch")
    return _grown(design, frame, place, wanted - place.exposed, hold)


def _grown(design: Design, frame: Frame, place: BarPlace, growth: float, hold: Hold) -> Design:
    """A bar, and the parallel bars that are cut alike, longer by ``growth`` [m]; their planes move."""
    result = design
    for axis in range(3):
        run = next(((a, b) for a, b, found in _runs(design, frame, axis) if found.id == place.id), None)
        if run is None:
            continue
        step = growth * abs(place.along[axis])
        now = frame.planes[run[1]] - frame.planes[run[0]]
        wants = _alike(design, frame, axis, [place], step)
        after = _respaced(result, frame, axis, wants, _held(*run, hold))
        result = _checked(result, after, axis, *run, now + step)
    return result


def _held(low: str, high: str, hold: Hold) -> str | None:
    return {"low": low, "high": high}.get(hold)


def _alike(
    design: Design, frame: Frame, axis: int, bars: list[BarPlace], growth: float
) -> dict[tuple[str, str], float]:
    """The spacings [m] at which all bars parallel to some, and cut like them, have grown as they do."""
    like = {_kind(bar) for bar in bars if bar.cut is not None}
    return {
        (low, high): frame.planes[high] - frame.planes[low] + growth
        for low, high, bar in _runs(design, frame, axis)
        if _kind(bar) in like or bar in bars
    }


def _kind(bar: BarPlace) -> tuple[str, tuple[float, ...]]:
    """What parallel bars of one cut share."""
    return bar.letter, tuple(abs(round(step, 6)) for step in bar.along)


def _respaced(
    design: Design, frame: Frame, axis: int, wants: Mapping[tuple[str, str], float], held: str | None
) -> Design:
    """Planes moved so that pairs of them lie at wanted distances [m]; the others go along."""
    group = plane_groups(design.arrangement)[axis]
    at = {plane.id: frame.planes[plane.id] for plane in group}
    spans = [Span(low, high, distance) for (low, high), distance in wants.items()]
    used = [plane.id for plane in _used(design, frame, axis)]
    moved = held_planes(at, spans, used or list(at))
    shift = at[held] - moved[held] if held else 0.0
    fixed = {end: moved[end] + shift for pair in wants for end in pair}
    return _with_planes(design, axis, at, _follow(at, fixed))


def _follow(at: Mapping[str, float], fixed: Mapping[str, float]) -> dict[str, float]:
    """All planes [m] when some have moved: those between keep their share, those beyond their distance."""
    known = sorted(fixed, key=at.__getitem__)
    places = [at[plane] for plane in known]
    result = {}
    for plane, here in at.items():
        number = bisect_left(places, here)
        low, high = known[max(0, number - 1)], known[min(number, len(known) - 1)]
        if plane in fixed:
            result[plane] = fixed[plane]
        elif at[low] < here < at[high]:
            share = (here - at[low]) / (at[high] - at[low])
            result[plane] = fixed[low] + share * (fixed[high] - fixed[low])
        else:
            result[plane] = here + fixed[high] - at[high]
    return result


def _with_planes(
    design: Design, axis: int, before: Mapping[str, float], after: Mapping[str, float]
) -> Design:
    """The design with planes of one kind in new places [m].

    Raises:
        EditError: planes would change their order.
    """
    group = plane_groups(design.arrangement)[axis]
    for a, b in pairwise(sorted(group, key=lambda plane: before[plane.id])):
        if before[a.id] < before[b.id] and after[a.id] >= after[b.id] - COMPARISON_SLACK:
            raise EditError(f"that would push the {KINDS[axis]} '{b.name}' past '{a.name}'; move it first")
    planes = tuple(plane.but(at=snap(after[plane.id])) for plane in group)
    return design.arranged(**{f"{KINDS[axis]}s": planes})


def _checked(before: Design, after: Design, axis: int, low: str, high: str, wanted: float) -> Design:
    """The design after an edit, if it does what was asked.

    Raises:
        EditError: a sawn piece holds the planes, or fittings would collide.
    """
    frame = lay_out(after, after.arrangement)
    if abs(frame.planes[high] - frame.planes[low] - wanted) > COMPARISON_SLACK:
        names = [f"'{bar.name}'" for _, _, bar in _runs(after, frame, axis) if bar.sawn is not None]
        raise EditError(f"{', '.join(names[:3])} sawn already: give up that piece before its planes move")
    was = lay_out(before, before.arrangement).bars
    for bar in frame.bars.values():
        if bar.exposed < -COMPARISON_SLACK and was[bar.id].exposed >= -COMPARISON_SLACK:
            least = format_length(sum(bar.faces), after.units)
            raise EditError(f"the fittings at the ends of '{bar.name}' need {least} from centre to centre")
    return after


def set_outside(design: Design, axis: int, wanted: float, hold: Hold = "middle") -> Design:
    """The overall outside size along an axis (0 x, 1 y, 2 z) made ``wanted`` [m].

    The change is shared out over the gaps between planes by the pipe that shows in them, so that
    equal bars stay equal and fittings that touch still touch.

    Raises:
        EditError: there are no two planes to move, or no pipe is left to shorten.
    """
    result = design
    for _ in range(ROUNDS_MOST):
        frame = lay_out(result, result.arrangement)
        size = _outside(result, frame, axis)
        if abs(wanted - size) <= COMPARISON_SLACK / 10:
            return result
        rooms = _rooms(result, frame, axis)
        total = sum(rooms.values())
        if not rooms:
            raise EditError(f"there must be two {KINDS[axis]}s before the size between them can change")
        if total <= COMPARISON_SLACK or wanted - size <= -total:
            least = format_length(size - total, design.units)
            raise EditError(f"fittings, sawn pieces and parts alone take {least} here")
        wants = {
            (low, high): frame.planes[high] - frame.planes[low] + (wanted - size) * room / total
            for (low, high), room in rooms.items()
        }
        held = next(iter(wants))[0] if hold == "low" else list(wants)[-1][1] if hold == "high" else None
        result = _respaced(result, frame, axis, wants, held)
    raise EditError("what is fixed to the frame decides this size; move that instead")


def _outside(design: Design, frame: Frame, axis: int) -> float:
    return extents(parts_of(design, design.arrangement, frame), None).size[axis]


def _rooms(design: Design, frame: Frame, axis: int) -> dict[tuple[str, str], float]:
    """How much pipe shows [m] between neighbouring planes; the whole gap where no bar joins them."""
    planes = [plane.id for plane in _used(design, frame, axis)]
    rooms = {(low, high): frame.planes[high] - frame.planes[low] for low, high in pairwise(planes)}
    for low, high, bar in _runs(design, frame, axis):
        if (low, high) in rooms:
            showing = 0.0 if bar.sawn is not None else max(0.0, bar.exposed) * abs(bar.along[axis])
            rooms[low, high] = min(rooms[low, high], showing)
    return rooms
