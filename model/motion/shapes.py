"""What the water meets: the outsides of the parts, each counted once where pipe runs inside a socket."""

from collections.abc import Iterable

from msgspec import Struct

from model.frame.layout import BarPlace, Frame
from model.parts import Cylinder, Part, Solid
from model.vectors import add, scale, sub


class Wet(Struct, frozen=True):
    """A solid in the water; ``butted`` where its ends meet other solids, as those of a bar do."""

    solid: Solid
    butted: bool


def wet_shapes(frame: Frame, parts: Iterable[Part]) -> tuple[Wet, ...]:
    """The solids that the water meets: pipe still showing, fittings, motor bodies, and the rest whole.

    A propeller's disc is left out: it is a place, not a body.
    """
    shapes: list[Wet] = []
    for part in parts:
        if part.kind == "bar":
            bar = frame.bars[part.id]
            if bar.exposed > 0:
                shapes.append(Wet(exposed_pipe(bar), True))
        elif part.kind == "thruster":
            shapes.append(Wet(part.solids[0], False))
        else:
            shapes += [Wet(solid, part.kind == "fitting") for solid in part.solids]
    return tuple(shapes)


def exposed_pipe(bar: BarPlace) -> Cylinder:
    """The pipe that shows between the faces of its fittings."""
    start = add(bar.start, scale(bar.along, bar.faces[0]))
    end = sub(bar.end, scale(bar.along, bar.faces[1]))
    return Cylinder(start, end, bar.pipe.outside_diameter / 2)
