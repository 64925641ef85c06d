"""Size: the box around the whole vehicle, against the limit box."""

from collections.abc import Iterable

from msgspec import Struct

from model.design import COMPARISON_SLACK
from model.parts import Box, Part, box_around
from model.vectors import ORIGIN, Vector


class Extents(Struct, frozen=True):
    """The overall outside size.

    Attributes:
        box: the box around every part, or None where there is nothing yet.
        size: length, width and height [m].
        limit: the brief's limits [m], or None where it sets none.
        over: by how much each is over its limit [m], 0 where it fits.
    """

    box: Box | None
    size: Vector
    limit: Vector | None
    over: Vector


def extents(parts: Iterable[Part], limit: Vector | None) -> Extents:
    """The size of the vehicle over hubs, pipes, thrusters, hooks, floats and ballast."""
    box = box_around(box for part in parts if (box := part.box))
    size = box.size if box else ORIGIN
    if limit is None:
        return Extents(box, size, None, ORIGIN)
    x, y, z = (_over(here, most) for here, most in zip(size, limit, strict=True))
    return Extents(box, size, limit, (x, y, z))


def _over(size: float, limit: float) -> float:
    excess = size - limit
    return excess if excess > COMPARISON_SLACK else 0.0
