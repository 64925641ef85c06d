"""Remedies for a broken size box: which plane to move, and what that makes of the cuts."""

from collections.abc import Iterator, Mapping
from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import GROUPS, round_up, ruler_step
from model.coach.remedies.floats import moved_with_floats
from model.coach.remedies.pairs import place_of, twin_of
from model.coach.sentences import length
from model.design import Attachment, Design, Plane, Thruster
from model.design.edits.mirror import middle_of
from model.parts import box_around
from model.survey import Survey, survey
from model.units import snap

SIDES = (("ahead", "aft"), ("to port", "to starboard"), ("up", "down"))


def fit_in_box(found: Survey, axis: int) -> tuple[Remedy, ...]:
    """Ways to bring the vehicle inside its limit along an axis (0 x, 1 y, 2 z)."""
    over = found.extents.over[axis]
    step = ruler_step(found.design.units)
    planes: tuple[Plane, ...] = getattr(found.arrangement, GROUPS[axis])
    remedies = list(_pull_in(found, axis, round_up(over, step)))
    if len(planes) > 1:
        low, high = min(planes, key=_at), max(planes, key=_at)
        half = round_up(over / 2, step)
        ways: list[dict[str, float]] = [
            {low.id: half, high.id: -half},
            {high.id: -2 * half},
            {low.id: 2 * half},
            _shrunk(planes, over),
        ]
        if axis == 0:
            ways = [ways[1], ways[2], ways[0], ways[3]]
        remedies += [_moved(found, axis, by) for by in ways]
    return tuple(remedies)


def _at(plane: Plane) -> float:
    return plane.at


def _shrunk(planes: tuple[Plane, ...], over: float) -> dict[str, float]:
    """All planes drawn towards the middle in proportion, to take a length off the whole [m]."""
    low, high = min(map(_at, planes)), max(map(_at, planes))
    middle, span = (low + high) / 2, high - low
    if span <= 0:
        return {}
    return {plane.id: snap(-(plane.at - middle) / span * (over + 1e-6)) for plane in planes}


def _moved(found: Survey, axis: int, by: dict[str, float]) -> Remedy:
    edit = partial(moved_with_floats, by=by)
    return Remedy(_label(found, axis, by, edit(found.design)), edit)


def _label(found: Survey, axis: int, by: dict[str, float], after: Design) -> str:
    """Which planes move, and which cut becomes what."""
    unit = found.design.units
    planes: tuple[Plane, ...] = getattr(found.arrangement, GROUPS[axis])
    if len(by) == len(planes) > 2:
        moves = "Draw all planes together"
    else:
        names = {plane.id: plane.name for plane in planes}
        moves = "Move " + " and ".join(
            f"{names[plane]} {SIDES[axis][step < 0]} by {length(abs(step), unit)}"
            for plane, step in by.items()
        )
    return f"{moves}: {_cuts(found, after)}"


def _cuts(found: Survey, after: Design) -> str:
    unit = found.design.units
    bars = survey(after).frame.bars
    changes: dict[str, str] = {}
    for bar in found.frame.bars.values():
        cut = bars[bar.id].cut
        if bar.cut is not None and cut is not None and abs(cut - bar.cut) > 1e-6:
            text = f"cut {bar.letter} from {length(bar.cut, unit)} to {length(cut, unit)}"
            changes.setdefault(text, text)
    shown = list(changes)[:2]
    return ", ".join(shown) + (" and others" if len(changes) > 2 else "") if shown else "no cut changes"


def _pull_in(found: Survey, axis: int, over: float) -> list[Remedy]:
    """Equipment that alone reaches past the rest, moved in by the excess [m]; pairs first."""
    pairs: list[tuple[float, Remedy]] = []
    alone: list[tuple[float, Remedy]] = []
    done: set[str] = set()
    for group in ("thrusters", "attachments"):
        items = getattr(found.arrangement, group)
        for item in items:
            twin = twin_of(found, item, items)
            if twin and item.id not in done:
                done |= {item.id, twin.id}
                pairs += _moved_in(found, axis, over, group, (item, twin))
            alone += _moved_in(found, axis, over, group, (item,))
    return [remedy for ways in (pairs, alone) for _, remedy in sorted(ways, key=lambda way: -way[0])]


def _moved_in(
    found: Survey, axis: int, over: float, group: str, items: tuple[Thruster | Attachment, ...]
) -> Iterator[tuple[float, Remedy]]:
    """One thing, or both of a pair, moved in by as much as it takes; with how far they stick out."""
    ids = {item.id for item in items}
    own = box_around(box for part in found.parts if part.id in ids and (box := part.box))
    rest = box_around(box for part in found.parts if part.id not in ids and (box := part.box))
    if own is None or rest is None:
        return
    past = {1: own.high[axis] - rest.high[axis], -1: rest.low[axis] - own.low[axis]}
    step, across = ruler_step(found.design.units), axis == 1 and len(items) > 1
    if across:
        each = max(over / 2, over - max(0.0, min(past.values())))
        ways = (
            [(1, round_up(each, step))] if sum(max(0.0, far) for far in past.values()) >= over - 1e-6 else []
        )
    else:
        ways = [(side, over) for side, far in past.items() if far >= over - 1e-6]
    for side, by in ways:
        moves = {item.id: _inwards(found, item, side, across) * by for item in items}
        edit = partial(_shifted, group=group, axis=axis, moves=moves)
        way = "towards the middle" if across else SIDES[axis][side > 0]
        names = " and ".join(item.name for item in items)
        alike = ", each alike, since they are a pair" if len(items) > 1 else ""
        yield past[side], Remedy(f"Move {names} {way} by {length(by, found.design.units)}{alike}", edit)


def _inwards(found: Survey, item: Thruster | Attachment, side: int, across: bool) -> int:
    """The sign of the way in: away from the side that sticks out; for a pair towards the middle."""
    if not across:
        return -side
    return -1 if place_of(found, item)[1] > middle_of(found.design) else 1


def _shifted(design: Design, group: str, axis: int, moves: Mapping[str, float]) -> Design:
    """Thrusters or attachments, by id, moved along an axis by changing their offsets [m]."""
    changed = []
    for piece in getattr(design.arrangement, group):
        if piece.id in moves:
            offset = list(piece.offset)
            offset[axis] += moves[piece.id]
            piece = piece.but(offset=tuple(offset))
        changed.append(piece)
    return design.arranged(**{group: tuple(changed)})
