"""Where a hole can be drilled at all, and how near it comes to a socket."""

from typing import Literal

from model.design import Opening
from model.frame.layout import BarPlace, Frame
from model.vectors import Vector, dot, norm, scale, sub, unit
from model.water.air.sockets import is_cap, leaving, socket_of

Fault = Literal["along", "socket", "wall"]
"""Why it cannot: the face is an end of the bar; a pipe or socket leaves there; it is a cap's end wall."""
ACROSS_LEAST = 0.3
"""A face that points more along the bar than this share across it is no side of the bar."""
FACING = 0.7
"""A hole in a fitting whose side points so much along another socket meets that socket's pipe."""


def outward_of(bar: BarPlace, face: str) -> Vector | None:
    """The side of a bar that a face names, square to the bar and of length 1; None where it is an end."""
    wanted = unit(face)
    across = sub(wanted, scale(bar.along, dot(wanted, bar.along)))
    width = norm(across)
    return scale(across, 1 / width) if width > ACROSS_LEAST else None


def fault(frame: Frame, opening: Opening) -> Fault | None:
    """Why an opening cannot be drilled as it stands, or None."""
    bar = frame.bars[opening.bar]
    outward = outward_of(bar, opening.face)
    if outward is None:
        return "along"
    offset = opening.at * bar.spacing
    for joint, distance in ((bar.joints[0], offset), (bar.joints[1], bar.spacing - offset)):
        place = frame.joints[joint]
        socket = socket_of(place, bar.id)
        if socket and is_cap(place) and distance < socket.laying_length:
            return "wall"
        if distance < bar.pipe.bore / 2:
            sides = (outward, scale(outward, -1)) if opening.through else (outward,)
            if any(dot(side, to) > FACING for side in sides for to in leaving(frame, place, but=bar.id)):
                return "socket"
    return None
