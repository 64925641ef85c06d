"""Where a hole can be drilled at all, and how near it comes to a socket."""

from collections.abc import Iterable
from typing import Literal

from model.design import Arrangement, Float, Foam, Opening, Plug
from model.frame.layout import BarPlace, Frame
from model.vectors import Vector, dot, norm, scale, sub, unit
from model.water.air.sockets import is_cap, leaving, socket_of

Fault = Literal["along", "socket", "wall", "plug", "covered"]
"""Why it is no way out: the face is an end of the bar; a pipe or socket leaves there; it is the end wall of a
cap; a plug fills the bore there; foam that is stretched over the pipe covers it."""
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


def faults(arrangement: Arrangement, frame: Frame, foams: Iterable[Foam]) -> dict[str, Fault]:
    """The openings that are no way out, by id, and why."""
    tight = _tight_floats(arrangement, frame, {foam.id: foam for foam in foams})
    found = {}
    for opening in arrangement.openings:
        offset = opening.at * frame.bars[opening.bar].spacing
        why = fault(frame, opening)
        if why is None and any(_lies_on(plug, opening, offset, frame) for plug in arrangement.plugs):
            why = "plug"
        if why is None and any(_lies_on(piece, opening, offset, frame) for piece in tight):
            why = "covered"
        if why:
            found[opening.id] = why
    return found


def _tight_floats(arrangement: Arrangement, frame: Frame, foams: dict[str, Foam]) -> list[Float]:
    """Floats whose hole is no wider than the pipe that runs through it."""
    return [
        piece
        for piece in arrangement.floats
        if piece.beside is None and foams[piece.foam].hole <= frame.bars[piece.bar].pipe.outside_diameter
    ]


def _lies_on(piece: Float | Plug, opening: Opening, offset: float, frame: Frame) -> bool:
    if piece.bar != opening.bar:
        return False
    return abs(piece.at * frame.bars[piece.bar].spacing - offset) < piece.length / 2


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
