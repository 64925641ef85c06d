"""What the sockets at a joint mean for the bores: stops, caps, and where pipes leave."""

from model.design import Socket
from model.frame.layout import Frame, JointPlace
from model.vectors import Grid, Vector, norm, scale


def socket_of(joint: JointPlace, bar: str) -> Socket | None:
    """The socket that takes a bar, or None where no fitting is known."""
    to = next((arm.to for arm in joint.arms if arm.bar == bar), None)
    return joint.match.sockets.get(to) if joint.match and to else None


def is_cap(joint: JointPlace) -> bool:
    """Whether the fitting at a joint only closes a pipe; its centre is then the outside of its end wall."""
    return joint.match is not None and len(joint.match.sockets) == 1


def length_one(to: Grid) -> Vector:
    """A direction in whole numbers as a vector of length 1."""
    return scale((float(to[0]), float(to[1]), float(to[2])), 1 / norm(to))


def leaving(frame: Frame, joint: JointPlace, *, but: str) -> list[Vector]:
    """The directions in which sockets or bars leave a joint, but for that of one bar."""
    if joint.match:
        own = next((arm.to for arm in joint.arms if arm.bar == but), None)
        return [length_one(to) for to in joint.match.sockets if to != own]
    found = []
    for arm in joint.arms:
        if arm.bar != but:
            bar = frame.bars[arm.bar]
            found.append(bar.along if bar.joints[0] == joint.id else scale(bar.along, -1))
    return found
