"""A step of the build."""

from msgspec import Struct


class Step(Struct, frozen=True):
    """Something to do at the bench, to be ticked when it is done.

    Attributes:
        id: stays the same while the design changes elsewhere.
        title: what is done.
        pieces: what it is done to, one line each.
        tool: what it is done with.
        cautions: of that work.
        check: how to see that it is right.
    """

    id: str
    title: str
    pieces: tuple[str, ...]
    tool: str
    cautions: tuple[str, ...]
    check: str
