"""Things that are fixed as a pair, one to port and one to starboard: what moves one moves both."""

from typing import TypeVar

from model.design import Attachment, Thruster
from model.design.edits.mirror import middle_of
from model.errors import EditError
from model.survey import Survey
from model.vectors import Vector

Item = TypeVar("Item", Thruster, Attachment)
SAME = 0.001
"""[m] Within this of its mirror image a thing is the other of a pair."""


def twin_of(found: Survey, item: Item, others: tuple[Item, ...]) -> Item | None:
    """The other of a pair: of the same kind, at the mirror image of an item; None for what stands alone."""
    try:
        middle = middle_of(found.design)
    except EditError:
        return None
    x, y, z = place_of(found, item)
    image = (x, 2 * middle - y, z)
    if abs(image[1] - y) < SAME:
        return None
    return next(
        (
            other
            for other in others
            if other.id != item.id
            and _kind(other) == _kind(item)
            and all(abs(a - b) < SAME for a, b in zip(place_of(found, other), image, strict=True))
        ),
        None,
    )


def place_of(found: Survey, item: Thruster | Attachment) -> Vector:
    """Where something is [m]."""
    return found.frame.bars[item.bar].centre_of(item)


def _kind(item: Thruster | Attachment) -> object:
    return item.motor if isinstance(item, Thruster) else (item.kind, item.size)
