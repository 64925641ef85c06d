"""What is in the box already: fittings by the piece, and lengths of pipe."""

from typing import Annotated

from pydantic import Field

from model.design.measures import Id, Once, Size
from model.design.record import Record

Count = Annotated[int, Field(ge=0, le=10_000), Once()]


class HeldFittings(Record):
    """How many of a fitting there are."""

    fitting: Id
    count: Count


class HeldPipe(Record):
    """Pieces of pipe of one length."""

    pipe: Id
    length: Size
    count: Count = 1


class OnHand(Record):
    """The box: it is used first, and what is missing is bought."""

    fittings: tuple[HeldFittings, ...] = ()
    pieces: tuple[HeldPipe, ...] = ()
    only: bool = False
    """Whether the box is all there is, as in a workshop: then nothing more can be bought."""
