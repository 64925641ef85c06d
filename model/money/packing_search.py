"""A search through every way to fill given sticks, the shortest stick first."""

from collections.abc import Sequence

from model.money.patterns import Pattern, Pieces, full_patterns, reachable

STEPS_MOST = 1_500
WAYS_MOST = 400
"""Of the ways to fill one stick, no more than this are listed."""
ENDING = 2
"""The last stick takes all that is left, so that any way will do for the one before it."""


class Search:
    """Tries every pattern of each stick in turn that wastes no more than can be spared.

    Args:
        rooms: of the sticks, the shortest first.
    """

    def __init__(self, pieces: Pieces, rooms: Sequence[int]) -> None:
        self._sizes = pieces.sizes
        self._wanted = pieces.wanted
        self._rooms = rooms
        self._steps = 0
        self._open = False

    def run(self) -> list[Pattern] | bool:
        """A pattern for each stick; False where there is no way, True where the search was cut short."""
        found = self._from(0, self._wanted, None)
        return found if found is not None else self._open

    def _from(self, number: int, left: Pattern, last: Pattern | None) -> list[Pattern] | None:
        """Patterns for the sticks from ``number`` on that give all that is left."""
        total = sum(size * count for size, count in zip(self._sizes, left, strict=True))
        if number == len(self._rooms):
            return [] if total == 0 else None
        self._steps += 1
        if self._steps > STEPS_MOST:
            self._open = True
            return None
        room = self._rooms[number]
        spare = self._spare(number, left, total)
        if spare < 0:
            return None
        twin = 0 < number < len(self._rooms) - ENDING and self._rooms[number - 1] == room
        for pattern in self._ways(room, left, spare, number):
            if twin and last is not None and pattern > last:
                continue  # two sticks of one length changed about are the same plan
            rest = tuple(count - used for count, used in zip(left, pattern, strict=True))
            found = self._from(number + 1, rest, pattern)
            if found is not None:
                return [pattern, *found]
            if self._steps > STEPS_MOST:
                break
        return None

    def _spare(self, number: int, left: Pattern, total: int) -> int:
        """How much more than the least this stick may waste, if each after it wastes its least."""
        spare = -total
        known: dict[int, int] = {}
        for room in self._rooms[number:]:
            if room not in known:
                known[room] = reachable(self._sizes, left, room)[0].bit_length() - 1
            spare += known[room]
        return spare

    def _ways(self, room: int, left: Pattern, spare: int, number: int) -> list[Pattern]:
        """The patterns of one stick, the fullest first."""
        pieces = Pieces(self._sizes, left)
        most = reachable(self._sizes, left, room)[0].bit_length() - 1
        if number >= len(self._rooms) - ENDING:
            return full_patterns(pieces, room, most - spare, 0, first=True) or []
        ways = full_patterns(pieces, room, most - spare, WAYS_MOST)
        if ways is None:
            self._open = True
            ways = full_patterns(pieces, room, most - spare, WAYS_MOST, first=True) or []
        return sorted(ways, key=self._length, reverse=True)

    def _length(self, pattern: Pattern) -> int:
        return sum(size * count for size, count in zip(self._sizes, pattern, strict=True))
