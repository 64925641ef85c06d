"""Every fitting of the stock that fits a joint, with what a team compares them by."""

from msgspec import Struct

from model.design import Design, Fitting
from model.fittings.match import Match, catalogue
from model.frame.layout import JointPlace, ways
from model.parts import box_around
from model.vectors import ORIGIN, Grid, Vector
from model.vehicle.pipework import hubs


class Choice(Struct, frozen=True):
    """A fitting that fits a joint.

    Attributes:
        fitting: its price and mass are its own.
        ways: where its sockets point, those that take bars first.
        spare: the sockets that no bar uses.
        size: length, width and height of the fitting as it lies there [m].
        held: how many are in the box.
        used: whether it is the one that sits there now.
        picked: whether the team picked it.
    """

    fitting: Fitting
    ways: tuple[Grid, ...]
    spare: tuple[Grid, ...]
    size: Vector
    held: int
    used: bool
    picked: bool


def choices(design: Design, joint: JointPlace) -> tuple[Choice, ...]:
    """The fittings that fit: fewest spare sockets first, then the cheapest; none where a bar is crooked."""
    needed = ways(joint.arms)
    held = {item.fitting: item.count for item in design.stock.on_hand.fittings}
    picks = {item.id: item.fitting for item in design.arrangement.joints}
    used = joint.match.fitting.id if joint.match else None
    return tuple(
        Choice(
            match.fitting,
            _ways(match),
            match.spare,
            _size(match),
            held.get(match.fitting.id, 0),
            used=match.fitting.id == used,
            picked=match.fitting.id == picks.get(joint.id),
        )
        for match in (catalogue(design.stock).matches(needed) if needed else ())
    )


def _ways(match: Match) -> tuple[Grid, ...]:
    taken = sorted((to for to in match.sockets if to not in match.spare), reverse=True)
    return (*taken, *match.spare)


def _size(match: Match) -> Vector:
    box = box_around(hub.box for hub in hubs(ORIGIN, match))
    return box.size if box else ORIGIN


def use_box(design: Design, joints: tuple[JointPlace, ...]) -> Design:
    """Joints given fittings from the box, as long as there are any, where they leave no socket spare."""
    left = {item.fitting: item.count for item in design.stock.on_hand.fittings}
    picks: dict[str, str] = {}
    for joint in joints:
        for choice in choices(design, joint):
            if left.get(choice.fitting.id, 0) and not choice.spare:
                left[choice.fitting.id] -= 1
                picks[joint.id] = choice.fitting.id
                break
    return design.arranged(
        joints=tuple(
            joint.but(fitting=picks[joint.id]) if joint.id in picks else joint
            for joint in design.arrangement.joints
        )
    )
