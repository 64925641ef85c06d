"""What a cutting plan has to do: the pieces that are wanted, and what they may come out of."""

from collections.abc import Sequence

from msgspec import Struct

from model.money.patterns import Pattern, Pieces

PER_METRE = 1e-4
"""Of the money for each metre bought, so that of two plans at one price the one with less pipe wins."""

Choice = tuple[int, Pattern]
"""The number of a source, and the pattern that one stick of it is cut by."""


class Source(Struct, frozen=True):
    """A length of pipe [m] that pieces can come out of: on sale at a price, or on hand in a number."""

    length: float
    price: float = 0.0
    count: int | None = None

    @property
    def on_hand(self) -> bool:
        """Whether it lies in the team's box already."""
        return self.count is not None

    @property
    def worth(self) -> float:
        """What using one costs in the plan."""
        return 0.0 if self.on_hand else self.price + PER_METRE * self.length


class Task(Struct, frozen=True):
    """Pieces, sources, and the room of a stick of each source, its length and one kerf, in units."""

    pieces: Pieces
    sources: tuple[Source, ...]
    rooms: tuple[int, ...]

    @property
    def total(self) -> int:
        """The room that all pieces take, each with its kerf."""
        return sum(size * count for size, count in zip(self.pieces.sizes, self.pieces.wanted, strict=True))

    @property
    def held(self) -> list[int]:
        """How many of each source are on hand; 0 for what is on sale."""
        return [source.count or 0 for source in self.sources]

    @property
    def sale(self) -> list[int]:
        """The numbers of the sources that are on sale."""
        return [number for number, source in enumerate(self.sources) if not source.on_hand]

    def worth(self, counts: Sequence[int]) -> float:
        """What so many of each source cost in the plan."""
        return sum(source.worth * count for source, count in zip(self.sources, counts, strict=True))

    def price(self, counts: Sequence[int]) -> float:
        """What so many of each source cost at the till."""
        return sum(source.price * count for source, count in zip(self.sources, counts, strict=True))

    def counts(self, chosen: Sequence[Choice]) -> list[int]:
        """How many of each source some patterns take."""
        counts = [0] * len(self.sources)
        for number, _ in chosen:
            counts[number] += 1
        return counts
