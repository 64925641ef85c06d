"""A joint that no fitting fits, built from the fittings that there are, or with one of another range.

One of its bars moves sideways onto a fitting of its own: along a neighbouring bar, which takes a
tee there, or onto a short piece.  How far follows from the real sockets: centre to face of the
fitting that it leaves and of the one that it comes to, so that both just touch.
"""

from collections.abc import Iterator
from functools import lru_cache, partial

from msgspec import Struct

from model.coach.finding import Remedy
from model.coach.remedies.difference import Sight, difference, sight
from model.coach.sentences import direction_words, length, one
from model.design import Design, Fitting, Stock
from model.design.edits import add_fitting, shift_bar
from model.errors import EditError
from model.fittings.match import Catalogue, Way, catalogue
from model.fittings.more import addable
from model.frame.layout import Arm, BarPlace, Frame, JointPlace, lay_out, ways
from model.survey import Survey
from model.vectors import Grid

MOVES_MOST = 60
"""How many bars are moved at most when all joints of a frame are rebuilt alike."""
WAYS_MOST = 4
"""How many ways of a kind are offered; more would not be read."""
DIRECTIONS: tuple[Grid, ...] = ((-1, 0, 0), (1, 0, 0), (0, -1, 0), (0, 1, 0), (0, 0, -1), (0, 0, 1))
LIES = ("fore-and-aft", "crosswise", "upright")
GOES = ("fore and aft", "sideways", "up and down")


class Shift(Struct, frozen=True):
    """A bar moved sideways by some metres; ``along`` where bars run that way at both its ends."""

    bar: str
    to: Grid
    by: float
    along: bool

    @property
    def axis(self) -> int:
        """0 along x, 1 along y, 2 along z."""
        return next(axis for axis, step in enumerate(self.to) if step)

    def edit(self, design: Design) -> Design:
        """The design with the bar moved.

        Raises:
            EditError: something is in the way.
        """
        return shift_bar(design, self.bar, self.axis, self.by * sum(self.to))


Plan = tuple[Shift, ...]


def rebuild(found: Survey, joint: JointPlace) -> tuple[Remedy, ...]:
    """Ways to build a joint from the fittings in the stock, the one that adds least first."""
    shifts = list(_shifts(found.design, found.frame, joint, whole=True))
    along = [shift for shift in shifts if shift.along][:WAYS_MOST]
    aside = [shift for shift in shifts if not shift.along][: WAYS_MOST // 2]
    plans: list[Plan] = [(shift,) for shift in (*along, *aside)]
    plans = plans or list(_double_shifts(found.design, found.frame, joint))[:WAYS_MOST]
    plans += [
        plan for shift in _kinds(found.frame, along or aside) if len(plan := _everywhere(found, shift)) > 1
    ]
    before = sight(found.design)
    outs = [out for plan in plans if (out := _way_out(found, before, plan))]
    outs.sort(key=lambda out: out[0])
    return (*(remedy for _, remedy in outs), *_from_other_ranges(found, joint, before))


def _from_other_ranges(found: Survey, joint: JointPlace, before: Sight) -> Iterator[Remedy]:
    """Fittings of other ranges for the same pipe that fit a joint and leave no socket spare."""
    needed = ways(joint.arms)
    if needed is None or found.design.stock.on_hand.only:
        return
    for fitting in _others(found.design.stock):
        match = Catalogue(found.design.stock.but(fittings=(fitting,))).match(needed, None)
        if match and not match.spare:
            edit = partial(add_fitting, fitting=fitting)
            label = f"Get {one(fitting.name)}, which other ranges have for the same pipe"
            yield Remedy(label, edit, difference(before, sight(edit(found.design))))


@lru_cache(maxsize=4)
def _others(stock: Stock) -> tuple[Fitting, ...]:
    """What other ranges have beside a stock; kept, since many joints of a frame ask for it in turn."""
    return addable(stock, scaled=False)


def _shifts(design: Design, frame: Frame, joint: JointPlace, *, whole: bool) -> Iterator[Shift]:
    """Moves of a bar of a joint after which fittings fit at its ends; with ``whole`` at the joint too."""
    stock = catalogue(design.stock)
    for arm in joint.arms:
        if arm.to is None:
            continue
        for to in DIRECTIONS:
            if not any(a and b for a, b in zip(arm.to, to, strict=True)):
                spare = None if whole else _longest_face(design)
                shift = _shift(frame, stock, joint.id, frame.bars[arm.bar], to, spare)
                if shift:
                    yield shift


def _shift(
    frame: Frame, stock: Catalogue, joint: str, bar: BarPlace, to: Grid, spare: float | None
) -> Shift | None:
    """A move of a bar, as far as the fittings need; ``spare`` [m] stands in where none fits the joint yet."""
    steps, along = [], True
    for end in bar.joints:
        if len(frame.joints[end].arms) == 1:
            continue  # an end that is free goes along
        needed = _needed(frame.joints[end], bar, to)
        if needed is None:
            return None
        old, new, host = needed
        here, there = _face(stock, old, to), _face(stock, new, (-to[0], -to[1], -to[2]))
        if here is None and end == joint:
            here = spare
        if here is None or there is None:
            return None
        steps.append(here + there)
        along = along and host
    return Shift(bar.id, to, max(steps), along) if steps else None


def _needed(place: JointPlace, bar: BarPlace, to: Grid) -> tuple[frozenset[Way], frozenset[Way], bool] | None:
    """What the old joint and the new one must take when a bar moves, and whether a bar runs that way."""
    own = next((arm for arm in place.arms if arm.bar == bar.id), None)
    rest = [arm for arm in place.arms if arm.bar != bar.id]
    if own is None or own.to is None or not rest or ways(place.arms) is None:
        return None
    host: Arm | None = next((arm for arm in rest if arm.to == to), None)
    link = host.pipe if host else bar.pipe.id
    old = {(arm.to, arm.pipe) for arm in rest if arm.to} | {(to, link)}
    new = {(own.to, own.pipe), ((-to[0], -to[1], -to[2]), link)} | ({(to, link)} if host else set())
    return frozenset(old), frozenset(new), host is not None


def _face(stock: Catalogue, needed: frozenset[Way], to: Grid) -> float | None:
    """Centre to face [m] of the best fitting for some ways, in one direction; None where none fits."""
    match = stock.match(needed, None)
    return match.sockets[to].centre_to_face if match else None


def _longest_face(design: Design) -> float:
    faces = (socket.centre_to_face for item in design.stock.fittings for socket in item.sockets)
    return max(faces, default=0.0)


def _double_shifts(design: Design, frame: Frame, joint: JointPlace) -> Iterator[Plan]:
    """Two bars moved one after the other, for a joint of many bars."""
    for first in _shifts(design, frame, joint, whole=False):
        after = _after(design, first)
        place = after[1].joints.get(joint.id) if after else None
        if after and place and place.match is None:
            yield from ((first, second) for second in _shifts(*after, place, whole=True))


def _after(design: Design, shift: Shift) -> tuple[Design, Frame] | None:
    """The design and frame after a move, or None where something is in the way."""
    try:
        moved = shift.edit(design)
    except EditError:
        return None
    return moved, lay_out(moved, moved.arrangement)


def _kinds(frame: Frame, shifts: list[Shift]) -> list[Shift]:
    """One move for each way that bars lie and go."""
    return list({(shift.axis, _lies(frame, shift)): shift for shift in reversed(shifts)}.values())


def _everywhere(found: Survey, like: Shift) -> Plan:
    """The same kind of move at every joint that no fitting fits."""
    plan: list[Shift] = []
    design, frame, lies = found.design, found.frame, _lies(found.frame, like)
    while len(plan) < MOVES_MOST:
        kin = (
            shift
            for joint in frame.joints.values()
            if joint.match is None and ways(joint.arms)
            for shift in _shifts(design, frame, joint, whole=True)
            if (shift.axis, shift.along, _lies(frame, shift)) == (like.axis, like.along, lies)
        )
        shift = next(kin, None)
        after = _after(design, shift) if shift else None
        if shift is None or after is None:
            break
        design, frame = after
        plan.append(shift)
    return tuple(plan)


def _lies(frame: Frame, shift: Shift) -> int:
    """The axis along which the bar lies."""
    along = frame.bars[shift.bar].along
    return max(range(3), key=lambda axis: abs(along[axis]))


def _way_out(found: Survey, before: Sight, plan: Plan) -> tuple[tuple[float, ...], Remedy] | None:
    """A plan as a remedy with what it takes, and what to rank it by: growth, moves, money."""
    edit = partial(_carried_out, plan=plan)
    try:
        rebuilt = edit(found.design)
        after = sight(rebuilt)
    except EditError:
        return None
    growth = sum(max(0.0, a - b) for a, b in zip(after.size, before.size, strict=True))
    rank = (round(growth, 4), len(plan), round(after.spent - before.spent, 2))
    return rank, Remedy(_label(found, plan, rebuilt), edit, difference(before, after))


def _carried_out(design: Design, plan: Plan) -> Design:
    for shift in plan:
        design = shift.edit(design)
    return design


def _label(found: Survey, plan: Plan, rebuilt: Design) -> str:
    unit, first = found.design.units, plan[0]
    if len(plan) > 2:
        onto = "onto tees of their own" if first.along else "onto short pieces"
        bars = f"{len(plan)} {LIES[_lies(found.frame, first)]} bars {GOES[first.axis]}"
        return f"Rebuild every such joint: move {bars} by {length(first.by, unit)}, {onto}"
    names = {bar.id: bar.name for bar in rebuilt.arrangement.bars}  # the first move may have split a bar
    moves = [f"{names[shift.bar]} {direction_words(shift.to)} by {length(shift.by, unit)}" for shift in plan]
    return f"Move {' and '.join(moves)}, {'onto tees of its own' if first.along else 'onto short pieces'}"
