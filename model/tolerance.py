"""How far a frame may come out from the drawing: cutting errors and push-in scatter, added up.

With a cut error t and a scatter e of the push-in depth at each dry end, one bar is off by t + 2 e at
worst and by sqrt(t^2 + 2 e^2) as root-sum-square; bars in a row add in the same two ways.  t and e
are taken as three standard deviations of independent normal errors, so the root-sum-square of a
size is three of its own.  A cemented pipe goes to the stop and does not scatter.

Tolerance stacking by worst case and by root-sum-square: common practice in engineering drawing.
The values of t and e: common practice, no source.
"""

from collections import defaultdict, deque
from collections.abc import Iterable, Mapping
from math import erfc, hypot, prod, sqrt

from msgspec import Struct

from model.design import Arrangement, Thresholds, equipment
from model.extents import Extents
from model.frame.layout import BarPlace, Frame, JointPlace
from model.parts import Box, Part
from model.vectors import Grid

SIGMAS = 3.0
"""How many standard deviations an error stands for."""
Reach = tuple[Part, Box]
"""A part and the box around it."""


class Errors(Struct, frozen=True):
    """How far a length may be off [m]: at worst, and as root-sum-square."""

    worst: float = 0.0
    rss: float = 0.0


class SizeError(Struct, frozen=True):
    """An overall size: the bars in a row that set it, its errors, the chance that its limit is broken."""

    axis: int
    bars: tuple[str, ...]
    errors: Errors
    chance: float | None


class Rectangle(Struct, frozen=True):
    """A rectangle: its corner joints in turn, its sides [m], how far its diagonals may differ [m]."""

    joints: tuple[str, str, str, str]
    sides: tuple[float, float]
    diagonals: Errors


def bar_errors(bar: BarPlace, joints: Mapping[str, JointPlace], limits: Thresholds) -> Errors:
    """The errors of one bar from centre to centre; one that is sawn already has no cut error left."""
    cut = 0.0 if bar.sawn is not None else limits.cut_error
    dry = sum(joints[joint].joining != "cemented" for joint in bar.joints)
    scatter = limits.insertion_scatter
    return Errors(cut + dry * scatter, sqrt(cut**2 + dry * scatter**2))


def row_errors(bars: Iterable[BarPlace], frame: Frame, limits: Thresholds, axis: int | None = None) -> Errors:
    """The errors of bars in a row; those at 45 degrees count with what they do along the axis."""
    worst = square = 0.0
    for bar in bars:
        errors = bar_errors(bar, frame.joints, limits)
        share = 1.0 if axis is None else abs(bar.along[axis])
        worst += errors.worst * share
        square += (errors.rss * share) ** 2
    return Errors(worst, sqrt(square))


def size_errors(
    arrangement: Arrangement, frame: Frame, parts: Iterable[Part], sizes: Extents, limits: Thresholds
) -> tuple[SizeError, SizeError, SizeError]:
    """The errors of length, width and height."""
    listed = [(part, box) for part in parts if (box := part.box)]
    x, y, z = (_size_error(arrangement, frame, listed, sizes, limits, axis) for axis in range(3))
    return x, y, z


def chance_over(found: Iterable[SizeError]) -> float | None:
    """The chance that the size box is broken along any axis; None without a limit."""
    chances = [error.chance for error in found if error.chance is not None]
    return 1 - prod(1 - chance for chance in chances) if chances else None


def _size_error(
    arrangement: Arrangement, frame: Frame, parts: list[Reach], sizes: Extents, limits: Thresholds, axis: int
) -> SizeError:
    ends = [_outer_plane(arrangement, frame, parts, axis, side) for side in (-1, 1)]
    row = _row(arrangement, frame, axis, ends[0], ends[1])
    errors = row_errors(row, frame, limits, axis)
    chance = None
    if sizes.limit is not None:
        chance = exceeding(sizes.limit[axis] - sizes.size[axis], errors)
    return SizeError(axis, tuple(bar.id for bar in row), errors, chance)


def exceeding(room: float, errors: Errors) -> float:
    """The chance that an error is more than some room [m]: the upper tail of the normal distribution.

    >>> round(exceeding(0.0, Errors(0.01, 0.006)), 3), round(exceeding(0.002, Errors(0.01, 0.006)), 3)
    (0.5, 0.159)
    """
    if errors.rss == 0:
        return 1.0 if room < 0 else 0.0
    return erfc(room / (errors.rss / SIGMAS) / sqrt(2)) / 2


def _outer_plane(
    arrangement: Arrangement, frame: Frame, parts: list[Reach], axis: int, side: int
) -> str | None:
    """The plane that carries the part which reaches furthest along an axis, to one side."""
    if not parts:
        return None
    part = max(parts, key=lambda reach: side * (reach[1].high if side > 0 else reach[1].low)[axis])[0]
    planes = {joint.id: joint.planes[axis] for joint in arrangement.joints}
    if part.kind == "fitting":
        return planes[part.id]
    bar = part.id if part.kind == "bar" else _carrier(arrangement, part.id)
    ends = [planes[joint] for joint in frame.bars[bar].joints]
    return max(ends, key=lambda plane: side * frame.planes[plane])


def _carrier(arrangement: Arrangement, item: str) -> str:
    """The bar that carries a piece of equipment."""
    return next(piece.bar for piece in equipment(arrangement) if piece.id == item)


def _row(
    arrangement: Arrangement, frame: Frame, axis: int, low: str | None, high: str | None
) -> list[BarPlace]:
    """The fewest bars in a row that set how far two planes lie apart; none where nothing joins them."""
    if low is None or high is None:
        return []
    planes = {joint.id: joint.planes[axis] for joint in arrangement.joints}
    steps: dict[str, dict[str, BarPlace]] = defaultdict(dict)
    for bar in frame.bars.values():
        a, b = (planes[joint] for joint in bar.joints)
        if a != b:
            steps[a].setdefault(b, bar)
            steps[b].setdefault(a, bar)
    before: dict[str, tuple[str, BarPlace] | None] = {low: None}
    waiting = deque([low])
    while waiting and high not in before:
        here = waiting.popleft()
        for there, bar in steps[here].items():
            if there not in before:
                before[there] = here, bar
                waiting.append(there)
    row: list[BarPlace] = []
    step = before.get(high)
    while step:
        row.append(step[1])
        step = before[step[0]]
    return row[::-1]


def rectangles(frame: Frame, limits: Thresholds) -> tuple[Rectangle, ...]:
    """The smallest rectangles of the frame in the three main planes, and how far their diagonals may differ.

    With opposite sides off by a1, a2 and b1, b2 the diagonals of an a x b rectangle differ by
    (a (a2 - a1) + b (b2 - b1)) / diagonal, to first order; a mid joint makes two bars of a side.
    """
    found: dict[frozenset[str], Rectangle] = {}
    for corner in frame.joints:
        for first, second in (((1, 0, 0), (0, 1, 0)), ((1, 0, 0), (0, 0, 1)), ((0, 1, 0), (0, 0, 1))):
            shape = _rectangle(frame, limits, corner, first, second)
            if shape:
                found.setdefault(frozenset(shape.joints), shape)
    return tuple(found.values())


Row = tuple[tuple[str, tuple[BarPlace, ...]], ...]
"""The joints met on the way along one direction, each with the bars up to it."""


def _ahead(frame: Frame, joint: str, to: Grid) -> Row:
    """The joints straight on from a joint, in order."""
    row: list[tuple[str, tuple[BarPlace, ...]]] = []
    bars: tuple[BarPlace, ...] = ()
    here: str | None = joint
    while here is not None:
        arm = next((arm for arm in frame.joints[here].arms if arm.to == to), None)
        if arm is None:
            break
        bar = frame.bars[arm.bar]
        here = bar.joints[1] if bar.joints[0] == here else bar.joints[0]
        bars = (*bars, bar)
        row.append((here, bars))
    return tuple(row)


def _rectangle(frame: Frame, limits: Thresholds, corner: str, first: Grid, second: Grid) -> Rectangle | None:
    """The smallest rectangle that a corner begins in two directions."""
    for right, bottom in _ahead(frame, corner, first):
        ups = dict(_ahead(frame, right, second))
        for top, left in _ahead(frame, corner, second):
            across = dict(_ahead(frame, top, first))
            opposite = next(iter(ups.keys() & across.keys()), None)
            if opposite:
                sides = (bottom, ups[opposite], across[opposite], left)
                return _measured(frame, limits, (corner, right, opposite, top), sides)
    return None


def _measured(
    frame: Frame,
    limits: Thresholds,
    joints: tuple[str, str, str, str],
    sides: tuple[tuple[BarPlace, ...], ...],
) -> Rectangle:
    a, b = (sum(bar.spacing for bar in side) for side in sides[:2])
    errors = [row_errors(side, frame, limits) for side in sides]
    lengths = [a, b, a, b]
    diagonal = hypot(a, b)
    worst = sum(length * error.worst for length, error in zip(lengths, errors, strict=True)) / diagonal
    rss = (
        sqrt(sum((length * error.rss) ** 2 for length, error in zip(lengths, errors, strict=True))) / diagonal
    )
    return Rectangle(joints, (a, b), Errors(worst, rss))
