"""A bar moved sideways onto tees of its own."""

from model.design.arrangement import Plane
from model.design.document import Design
from model.design.edits.bars import Crossing, add_bar, bar_between, check_joints_clear, joint_at, with_joint
from model.design.edits.core import IDS, Ref, arranged, changed, find, fresh_id, fresh_name, put, taken_ids
from model.design.edits.mirror import SAME, ends_of
from model.errors import EditError
from model.units import snap


def shift_bar(design: Design, bar: str, axis: int, by: float) -> Design:
    """A bar moved sideways along an axis (0 x, 1 y, 2 z) by some metres, onto tees of its own.

    Where a bar runs that way from its old joint, the new joint splits it; elsewhere a short piece
    joins the old joint to the new one.

    Raises:
        EditError: the bar runs along that axis, or something is in the way.
    """
    record = find(design, Ref("bar", bar))
    old = ends_of(design, record)
    if old[0][axis] != old[1][axis]:
        raise EditError(f"'{record.name}' runs that way itself; it can only be moved sideways")
    kind = ("station", "side", "level")[axis]
    at = snap(find(design, Ref(kind, old[0][axis])).at + by)
    design, plane = _plane_at(design, kind, at)
    first, second = (_moved(crossing, axis, plane) for crossing in old)
    for before, after in zip(old, (first, second), strict=True):
        design = _with_new_joint(design, before, after)
    joints = [joint_at(design.arrangement, crossing) for crossing in (first, second)]
    start, end = (joint.id for joint in joints if joint)
    bars = tuple(
        changed(item, start=start, end=end) if item.id == bar else item for item in design.arrangement.bars
    )
    design = arranged(design, bars=bars)
    for before, after in zip(old, (first, second), strict=True):
        design = _joined(design, before, after, record.pipe)
    return design


def _with_new_joint(design: Design, old: Crossing, new: Crossing) -> Design:
    """A joint where a bar comes to; one that the bar alone holds goes along."""
    joint = joint_at(design.arrangement, old)
    held = [bar for bar in design.arrangement.bars if joint and joint.id in (bar.start, bar.end)]
    if joint is None or len(held) > 1 or joint_at(design.arrangement, new):
        return with_joint(design, new)
    station, side, level = new
    moved = put(design, Ref("joint", joint.id), changed(joint, station=station, side=side, level=level))
    try:
        check_joints_clear(moved)
    except EditError:  # a bar runs through the new place: it takes a tee there
        return with_joint(design, new)
    return moved


def _moved(crossing: Crossing, axis: int, plane: str) -> Crossing:
    x, y, z = (plane if n == axis else here for n, here in enumerate(crossing))
    return x, y, z


def _plane_at(design: Design, kind: str, at: float) -> tuple[Design, str]:
    planes = getattr(design.arrangement, f"{kind}s")
    for plane in planes:
        if abs(plane.at - at) <= SAME:
            return design, plane.id
    name = fresh_name(f"{kind} {len(planes) + 1}", (plane.name for plane in planes))
    new = Plane(id=fresh_id(IDS[kind], taken_ids(design, kind)), name=name, at=at)
    return arranged(design, **{f"{kind}s": (*planes, new)}), new.id


def _joined(design: Design, old: Crossing, new: Crossing, pipe: str | None) -> Design:
    """A short piece from an old joint to a new one; the old joint goes where nothing is left on it."""
    joint = joint_at(design.arrangement, old)
    if joint is None:
        return design
    if not any(joint.id in (bar.start, bar.end) for bar in design.arrangement.bars):
        return arranged(design, joints=tuple(j for j in design.arrangement.joints if j.id != joint.id))
    return design if bar_between(design, old, new) else add_bar(design, old, new, pipe)
