"""Remedies for two things in the same place."""

from functools import partial

from model.clashes import Clash
from model.coach.finding import Remedy
from model.coach.remedies.changes import ballasts_changed, floats_changed, round_up, ruler_step
from model.coach.sentences import direction_words, length
from model.design import Ballast, Design, Float
from model.design.edits import PLANE_KINDS, add_plane, pieces, with_joint
from model.frame.layout import BarPlace
from model.parts import Part
from model.survey import Survey
from model.units import snap
from model.vectors import Vector, add, cross, direction_text, dot, norm, scale, sub

OFFSET = {"thruster": "thrusters", "attachment": "attachments"}
SAME = 1e-6
"""[m] Places nearer to each other than this are one."""
SLIGHT = 1e-9
"""The square of the sine between bars that lie side by side."""
WAYS = ((1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1))


def apart(found: Survey, part: Part, shared: tuple[Clash, ...]) -> tuple[Remedy, ...]:
    """Join two bars that cross, or move what is fixed out of the way, the shortest way first."""
    if part.kind == "bar":
        return tuple(
            remedy
            for clash in shared
            if clash.first.kind == "bar"
            for remedy in _joined(found, clash.first.id, part.id)
        )
    if part.kind in OFFSET:
        return _moved_out(found, part, shared)
    if part.kind in ("float", "ballast"):
        return (*_slid(found, part, shared), *_other_side(found, part))
    return ()


def _joined(found: Survey, first: str, second: str) -> tuple[Remedy, ...]:
    """A joint where two bars cross."""
    bars = found.frame.bars[first], found.frame.bars[second]
    at = _meeting(*bars)
    if at is None:
        return ()
    label = f"Join {bars[0].name} and {bars[1].name} with a cross where they meet"
    return (Remedy(label, partial(_with_joint_at, at=at)),)


def _meeting(first: BarPlace, second: BarPlace) -> Vector | None:
    """Where the middles of two bars cross, between the ends of both [m]; None where they do not."""
    square = cross(first.along, second.along)
    size = dot(square, square)
    if size < SLIGHT:
        return None
    between = sub(second.start, first.start)
    ahead = dot(cross(between, second.along), square) / size
    behind = dot(cross(between, first.along), square) / size
    at, other = add(first.start, scale(first.along, ahead)), add(second.start, scale(second.along, behind))
    inside = SAME < ahead < first.spacing - SAME and SAME < behind < second.spacing - SAME
    return at if inside and norm(sub(at, other)) < SAME else None


def _with_joint_at(design: Design, at: Vector) -> Design:
    """The design with a joint at a place [m], on new planes where none lie there."""
    planes = []
    for kind, place in zip(PLANE_KINDS, at, strict=True):
        plane = next((plane for plane in pieces(design, kind) if abs(plane.at - place) < SAME), None)
        if plane is None:
            design = add_plane(design, kind, at=snap(place))
            plane = pieces(design, kind)[-1]
        planes.append(plane.id)
    return with_joint(design, (planes[0], planes[1], planes[2]))


def _moved_out(found: Survey, part: Part, shared: tuple[Clash, ...]) -> tuple[Remedy, ...]:
    """A thruster or attachment moved by its offset until it is clear."""
    step = ruler_step(found.design.units)
    ways = []
    for way in WAYS:
        by = round_up(max(0.0, *(_overlap(part, clash.first, way) for clash in shared)) + step, step)
        edit = partial(_offset, group=OFFSET[part.kind], item=part.id, way=way, by=by)
        label = f"Move {part.name} {direction_words(way)} by {length(by, found.design.units)}"
        ways.append((by, Remedy(label, edit)))
    return tuple(remedy for _, remedy in sorted(ways, key=lambda way: way[0]))


def _overlap(part: Part, other: Part, way: tuple[int, int, int]) -> float:
    """How far a part must go one way until its box has passed the other's [m]."""
    own, there = part.box, other.box
    if own is None or there is None:
        return 0.0
    axis = next(n for n, step in enumerate(way) if step)
    return there.high[axis] - own.low[axis] if way[axis] > 0 else own.high[axis] - there.low[axis]


def _offset(design: Design, group: str, item: str, way: tuple[int, int, int], by: float) -> Design:
    items = []
    for piece in getattr(design.arrangement, group):
        if piece.id == item:
            x, y, z = (at + step * by for at, step in zip(piece.offset, way, strict=True))
            piece = piece.but(offset=(x, y, z))
        items.append(piece)
    return design.arranged(**{group: tuple(items)})


def _slid(found: Survey, part: Part, shared: tuple[Clash, ...]) -> tuple[Remedy, ...]:
    """A float or weight slid along its bar until it is clear."""
    items = (*found.arrangement.floats, *found.arrangement.ballasts)
    item = next(piece for piece in items if piece.id == part.id)
    bar = found.frame.bars[item.bar]
    step, ways = ruler_step(found.design.units), []
    for way in WAYS:
        share = sum(a * b for a, b in zip(way, bar.along, strict=True))
        if abs(share) < 0.9:
            continue
        by = round_up(max(0.0, *(_overlap(part, clash.first, way) for clash in shared)) + step, step)
        at = item.at + share * by / bar.spacing
        if 0 <= at <= 1:
            label = f"Slide {part.name} {direction_words(way)} by {length(by, found.design.units)}"
            ways.append((by, Remedy(label, partial(_at, item=part.id, at=at))))
    return tuple(remedy for _, remedy in sorted(ways, key=lambda way: way[0]))


def _at(design: Design, item: str, at: float) -> Design:
    design = floats_changed(design, lambda piece: piece.but(at=at) if piece.id == item else piece)
    return ballasts_changed(design, lambda piece: piece.but(at=at) if piece.id == item else piece)


def _other_side(found: Survey, part: Part) -> tuple[Remedy, ...]:
    """A float or weight strapped to another side of its bar."""
    items: tuple[Float | Ballast, ...] = (*found.arrangement.floats, *found.arrangement.ballasts)
    item = next(piece for piece in items if piece.id == part.id)
    along = found.frame.bars[item.bar].along
    sides = [way for way in WAYS if abs(sum(a * b for a, b in zip(way, along, strict=True))) < 0.1]
    return tuple(
        Remedy(
            f"Strap {part.name} to the side of its bar that faces {direction_words(side)}",
            partial(_beside, item=part.id, side=direction_text(side)),
        )
        for side in sides
        if direction_text(side) != item.beside
    )


def _beside(design: Design, item: str, side: str) -> Design:
    design = floats_changed(design, lambda piece: piece.but(beside=side) if piece.id == item else piece)
    return ballasts_changed(design, lambda piece: piece.but(beside=side) if piece.id == item else piece)
