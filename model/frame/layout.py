"""The frame on its planes: where joints and bars are, their fittings, and the length to saw.

centre to face = centre to stop + socket depth;
pipe still showing = centre to centre - centre to face at both ends;
cut = pipe still showing + push-in depth at both ends.  Common practice, no source.
"""

from collections import defaultdict
from collections.abc import Mapping
from functools import cached_property

from msgspec import Struct, field

from model.design import (
    Arrangement,
    Attachment,
    Bar,
    Design,
    Joint,
    Pipe,
    Stock,
    Thruster,
    in_hand,
    plane_groups,
)
from model.design.joining import Joining
from model.fittings.match import Catalogue, Match, Way, catalogue
from model.frame.letters import lettered
from model.frame.sawn import Span, held_planes
from model.vectors import Grid, Vector, add, between, norm, scale, sub

STRAIGHT = 1e-7
"""[m] Two plane distances that differ by less than this make 45 degrees."""


class Arm(Struct, frozen=True):
    """A bar's end at a joint: the bar, where it leaves the joint, and its pipe size.

    ``to`` is None where the bar runs neither along an axis nor at 45 degrees in a main plane.
    """

    bar: str
    to: Grid | None
    pipe: str


class JointPlace(Struct, frozen=True):
    """A joint in its place [m]; ``match`` is None where no fitting fits, ``joining`` how pipes are held."""

    id: str
    name: str
    at: Vector
    arms: tuple[Arm, ...]
    match: Match | None
    joining: Joining = "dry"


class BarPlace(Struct, frozen=True, dict=True):  # the dict keeps what was worked out once
    """A bar in its place.

    Attributes:
        start, end: the centres of its joints [m].
        spacing: centre to centre [m].
        faces: centre to face at the start and at the end [m]; 0 where no fitting is known.
        exposed: pipe still showing [m]; below zero where the fittings collide.
        insertions: push-in depth at the start and at the end [m].
        cut: the length to saw [m], or None where it cannot be known; that of a piece already sawn.
        letter: its letter in the cut list; equal pieces share one.
        sawn: the length that the piece is already sawn to [m], or None.
    """

    id: str
    name: str
    pipe: Pipe
    joints: tuple[str, str]
    start: Vector
    end: Vector
    spacing: float
    faces: tuple[float, float]
    exposed: float
    insertions: tuple[float, float]
    cut: float | None
    letter: str
    sawn: float | None = None

    @property
    def misfit(self) -> float:
        """[m] How much longer the piece should be than it is sawn; 0 where it is not sawn yet."""
        return 0.0 if self.sawn is None else self.exposed + sum(self.insertions) - self.sawn

    @cached_property
    def along(self) -> Vector:
        """From start to end, length 1; ahead where the bar has no length."""
        return scale(sub(self.end, self.start), 1 / self.spacing) if self.spacing else (1.0, 0.0, 0.0)

    def point(self, share: float) -> Vector:
        """The point [m] that lies a share of the way from start to end."""
        return between(self.start, self.end, share)

    def centre_of(self, item: Attachment | Thruster) -> Vector:
        """Where the middle of something lies that is fixed to this bar at an offset [m]."""
        return add(self.point(item.at), item.offset)

    @cached_property
    def pipe_ends(self) -> tuple[Vector, Vector]:
        """Where the sawn pipe itself begins and ends, inside the sockets [m]."""
        first, last = (face - into for face, into in zip(self.faces, self.insertions, strict=True))
        return add(self.start, scale(self.along, first)), sub(self.end, scale(self.along, last))


class Frame(Struct, frozen=True):
    """Joints and bars by id, in the order of the design, and the groups that hang together."""

    joints: dict[str, JointPlace]
    bars: dict[str, BarPlace]
    groups: tuple[frozenset[str], ...]
    """Joint ids, the largest group first."""
    planes: Mapping[str, float] = field(default_factory=dict)
    """Where each plane is [m], by its id; pieces that are sawn already hold theirs."""


def lay_out(design: Design, arrangement: Arrangement) -> Frame:
    """The frame of one arrangement, worked out from its planes, what is sawn and the stock."""
    stock = in_hand(design.stock)
    planes = {plane.id: plane.at for group in plane_groups(arrangement) for plane in group}
    joints, bars = _placed(arrangement, stock, planes)
    if any(bar.sawn is not None for bar in bars):
        held = _held(arrangement, bars, planes)
        if held != planes:
            planes = held
            joints, bars = _placed(arrangement, stock, planes)
    return Frame(joints, {bar.id: bar for bar in lettered(bars)}, _groups(arrangement), planes)


def _placed(
    arrangement: Arrangement, stock: Stock, planes: Mapping[str, float]
) -> tuple[dict[str, JointPlace], list[BarPlace]]:
    """Joints by id and bars, with the planes in some places [m]."""
    pipes = {pipe.id: pipe for pipe in stock.pipes}
    default = stock.pipes[0].id
    places = joint_places(arrangement, planes)
    arms = _arms(arrangement, places, default)
    fittings = catalogue(stock)
    joints = {
        joint.id: _joint_place(joint, places[joint.id], arms[joint.id], fittings, arrangement.joining)
        for joint in arrangement.joints
    }
    return joints, [_bar_place(bar, pipes[bar.pipe or default], joints) for bar in arrangement.bars]


def joint_places(arrangement: Arrangement, planes: Mapping[str, float]) -> dict[str, Vector]:
    """Where each joint is [m], by its id, with the planes in some places [m]."""
    return {
        joint.id: (planes[joint.station], planes[joint.side], planes[joint.level])
        for joint in arrangement.joints
    }


def _held(arrangement: Arrangement, bars: list[BarPlace], planes: Mapping[str, float]) -> dict[str, float]:
    """Where the planes lie [m] so that the sawn pieces fit."""
    joints = {joint.id: joint for joint in arrangement.joints}
    held: dict[str, float] = {}
    for axis, group in enumerate(plane_groups(arrangement)):
        at = {plane.id: planes[plane.id] for plane in group}
        spans = [span for bar in bars if (span := _span(bar, joints, at, axis))]
        used = {joint.planes[axis] for joint in arrangement.joints}
        held |= held_planes(at, spans, used) if spans else at
    return held


def _span(bar: BarPlace, joints: Mapping[str, Joint], at: Mapping[str, float], axis: int) -> Span | None:
    """The distance along an axis that a sawn piece sets between the planes at its ends."""
    if bar.sawn is None or bar.cut is None:
        return None
    low, high = sorted((joints[joint].planes[axis] for joint in bar.joints), key=at.__getitem__)
    spacing = bar.sawn - sum(bar.insertions) + sum(bar.faces)
    if at[high] - at[low] <= STRAIGHT or spacing <= STRAIGHT:
        return None
    return Span(low, high, spacing * (at[high] - at[low]) / bar.spacing)


def heading(start: Vector, end: Vector) -> Grid | None:
    """The direction of a bar as whole numbers, or None if it is neither along an axis nor at 45 degrees.

    >>> heading((0.0, 0.0, 0.0), (0.1, 0.0, -0.1))
    (1, 0, -1)
    """
    steps = sub(end, start)
    longest = max(abs(step) for step in steps)
    if longest <= STRAIGHT:
        return None
    signs = [0 if abs(step) <= STRAIGHT else (1 if step > 0 else -1) for step in steps]
    uneven = any(sign and longest - abs(step) > STRAIGHT for sign, step in zip(signs, steps, strict=True))
    return None if uneven or all(signs) else (signs[0], signs[1], signs[2])


def _arms(arrangement: Arrangement, places: dict[str, Vector], default: str) -> dict[str, list[Arm]]:
    arms: dict[str, list[Arm]] = defaultdict(list)
    for bar in arrangement.bars:
        pipe = bar.pipe or default
        for here, there in ((bar.start, bar.end), (bar.end, bar.start)):
            arms[here].append(Arm(bar.id, heading(places[here], places[there]), pipe))
    return arms


def ways(arms: tuple[Arm, ...] | list[Arm]) -> frozenset[Way] | None:
    """The directions and pipe sizes at a joint; None where a bar is crooked or two leave the same way."""
    found = frozenset((arm.to, arm.pipe) for arm in arms if arm.to is not None)
    return found if arms and len({to for to, _ in found}) == len(arms) else None


def _joint_place(
    joint: Joint, at: Vector, arms: list[Arm], fittings: Catalogue, joining: Joining
) -> JointPlace:
    needed = ways(arms)
    match = fittings.match(needed, joint.fitting) if needed else None
    return JointPlace(joint.id, joint.name, at, tuple(arms), match, joint.joining or joining)


def _bar_place(bar: Bar, pipe: Pipe, joints: dict[str, JointPlace]) -> BarPlace:
    start, end = joints[bar.start], joints[bar.end]
    ends = [_end(bar.id, joint, pipe) for joint in (start, end)]
    faces = (ends[0][0], ends[1][0])
    insertions = (ends[0][1], ends[1][1])
    spacing = norm(sub(end.at, start.at))
    exposed = spacing - sum(faces)
    known = start.match is not None and end.match is not None
    cut = (bar.sawn or exposed + sum(insertions)) if known else None
    return BarPlace(
        id=bar.id,
        name=bar.name,
        pipe=pipe,
        joints=(bar.start, bar.end),
        start=start.at,
        end=end.at,
        spacing=spacing,
        faces=faces,
        exposed=exposed,
        insertions=insertions,
        cut=cut,
        letter="",
        sawn=bar.sawn,
    )


def _end(bar: str, joint: JointPlace, pipe: Pipe) -> tuple[float, float]:
    """Centre to face and push-in depth [m] of a bar at one of its joints; 0 where no fitting is known.

    Cement lets a pipe slide to the stop; a dry one sticks short of it.
    """
    to = next((arm.to for arm in joint.arms if arm.bar == bar), None)
    if joint.match is None or to is None:
        return 0.0, 0.0
    socket = joint.match.sockets[to]
    depth = socket.depth if joint.joining == "cemented" else min(pipe.insertion, socket.depth)
    return socket.centre_to_face, depth


def _groups(arrangement: Arrangement) -> tuple[frozenset[str], ...]:
    """The joints that hang together by bars, the largest group first."""
    group: dict[str, set[str]] = {joint.id: {joint.id} for joint in arrangement.joints}
    for bar in arrangement.bars:
        small, large = sorted((group[bar.start], group[bar.end]), key=len)
        if small is not large:
            large |= small
            group.update(dict.fromkeys(small, large))
    different = {id(members): members for members in group.values()}
    return tuple(frozenset(members) for members in sorted(different.values(), key=len, reverse=True))
