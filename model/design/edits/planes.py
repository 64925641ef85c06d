"""Edits of the planes: stations, sides and levels."""

from itertools import pairwise

from model.design.arrangement import Arrangement, Plane
from model.design.document import Design
from model.design.edits.bars import check_joints_clear, remove_bar
from model.design.edits.core import (
    IDS,
    Ref,
    arranged,
    changed,
    find,
    fresh_id,
    fresh_name,
    pieces,
    put_all,
    taken_ids,
)
from model.errors import EditError
from model.units import Unit, format_length, snap, usual_length

PLANE_KINDS = ("station", "side", "level")
FIRST_SPACING = (200, 8)
"""[mm], [in] From the only plane to the next new one."""


def emptied(design: Design) -> Design:
    """A design with no bar and nothing fixed to one; of its planes the two outermost of each kind stay."""
    outer = {
        f"{kind}s": (planes[0], planes[-1]) if len(planes) > 1 else planes
        for kind in PLANE_KINDS
        for planes in [ordered_planes(design, kind)]
    }
    bare = Arrangement(id=design.arrangement.id, name="frame", **outer)
    return design.but(arrangements=(bare,), notes="")


def ordered_planes(design: Design, kind: str) -> tuple[Plane, ...]:
    """The planes of a kind from aft to bow, starboard to port or bottom to top."""
    return tuple(sorted(pieces(design, kind), key=lambda plane: plane.at))


def spacing_to_next(design: Design, kind: str, plane: str) -> float | None:
    """[m] From a plane to the next one ahead, to port or above; None for the last."""
    return next((b.at - a.at for a, b in _pairs(design, kind) if a.id == plane), None)


def _pairs(design: Design, kind: str) -> list[tuple[Plane, Plane]]:
    planes = ordered_planes(design, kind)
    return list(pairwise(planes))


def add_plane(design: Design, kind: str, at: float | None = None, name: str | None = None) -> Design:
    """A new station, side or level; beyond the last one, as far as that is from its neighbour.

    Raises:
        EditError: a plane of this kind lies there already.
    """
    planes = ordered_planes(design, kind)
    here = snap(_beyond(planes, design.units) if at is None else at)
    _check_free(design, kind, here)
    label = name or fresh_name(f"{kind} {len(planes) + 1}", (plane.name for plane in planes))
    plane = changed(Plane(id=fresh_id(IDS[kind], taken_ids(design, kind)), name="new", at=here), name=label)
    return put_all(design, kind, (*pieces(design, kind), plane))


def _beyond(planes: tuple[Plane, ...], unit: Unit) -> float:
    if not planes:
        return 0.0
    step = planes[-1].at - planes[-2].at if len(planes) > 1 else usual_length(unit, *FIRST_SPACING)
    return planes[-1].at + step


def _check_free(design: Design, kind: str, at: float, but: str = "") -> None:
    for plane in pieces(design, kind):
        if plane.id != but and snap(plane.at) == at:
            where = format_length(at, design.units)
            raise EditError(f"the {kind} '{plane.name}' is already at {where}; choose another position")


def move_plane(design: Design, kind: str, plane: str, at: float) -> Design:
    """One plane in a new position [m]; everything on it goes along.

    Raises:
        EditError: it is gone, or another plane of this kind lies there, or a joint would
            come to lie inside a bar.
    """
    moved = find(design, Ref(kind, plane))
    _check_free(design, kind, snap(at), but=plane)
    return _replaced(
        design, kind, [changed(p, at=at) if p.id == moved.id else p for p in pieces(design, kind)]
    )


def _replaced(design: Design, kind: str, planes: list[Plane]) -> Design:
    """The design with planes of a kind in new positions, where no joint comes to lie inside a bar."""
    result = put_all(design, kind, planes)
    check_joints_clear(result, order_kept=_order(result, kind) == _order(design, kind))
    return result


def _order(design: Design, kind: str) -> list[str]:
    return [plane.id for plane in ordered_planes(design, kind)]


def set_spacing(design: Design, kind: str, plane: str, spacing: float) -> Design:
    """A new distance [m] from a plane to the next one; that one and all beyond it move.

    Raises:
        EditError: there is no next plane, or the distance is not above zero.
    """
    now = spacing_to_next(design, kind, plane)
    if now is None:
        raise EditError(f"this is the last {kind}; there is no next one to measure to")
    if spacing <= 0:
        raise EditError("the spacing must be more than 0")
    start = find(design, Ref(kind, plane)).at
    return _shift_beyond(design, kind, start, spacing - now)


def _shift_beyond(design: Design, kind: str, start: float, by: float) -> Design:
    """All planes beyond ``start`` [m] moved by some metres."""
    planes = [changed(p, at=p.at + by) if p.at > start else p for p in pieces(design, kind)]
    return _replaced(design, kind, planes)


def remove_plane(design: Design, kind: str, plane: str) -> Design:
    """A plane taken away with its joints, their bars and what is fixed to them."""
    find(design, Ref(kind, plane))
    number = PLANE_KINDS.index(kind)
    gone = {joint.id for joint in design.arrangement.joints if joint.planes[number] == plane}
    for bar in design.arrangement.bars:
        if bar.start in gone or bar.end in gone:
            design = remove_bar(design, bar.id)
    joints = tuple(joint for joint in design.arrangement.joints if joint.id not in gone)
    planes = tuple(p for p in pieces(design, kind) if p.id != plane)
    return arranged(design, joints=joints, **{f"{kind}s": planes})
