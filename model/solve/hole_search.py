"""The fewest holes that leave less than a limit in every attitude.

Iterative deepening over the number of holes.  A bore that keeps more than the limit by itself must be
reached by one of the holes that bring it under, so only those are tried next (as in a hitting-set search);
bores that no single hole serves together give the least number still needed, and cut the search short.
A greedy answer bounds it from above.  The work is counted, not timed: beyond ``WORK`` the best answer so
far is returned, and is not called the least.
"""

from collections.abc import Callable, Sequence
from operator import le

from msgspec import Struct

from model.solve.hole_tables import Row

WORK = 8_000
"""Sets of holes looked at before the search stops; about a third of a second for a demo of 20 bars."""
SAME = 1e-9
"""[m3] Two rows that differ by no more than this are the same."""

Sums = Callable[[Row], list[float]]
Proof = Callable[[Sequence[int]], bool]
"""Whether a set of holes, by number, really is enough."""


class Answer(Struct, frozen=True):
    """Holes by their numbers, and whether no smaller set would do."""

    holes: tuple[int, ...]
    least: bool


class Search:
    """One search.

    Args:
        start: what stays before any hole is drilled.
        rows: what each hole would leave.
        sums: what a row leaves in each attitude.
        limits: the most that may stay in each attitude [m3].
        width: how many bores a row has for each attitude.
        proof: the last word on a set of holes.
    """

    def __init__(
        self, start: Row, rows: Sequence[Row], sums: Sums, limits: Sequence[float], width: int, proof: Proof
    ) -> None:
        self.start, self.rows, self.sums, self.limits = start, rows, sums, limits
        self.width, self.proof = width, proof
        self.useful = _undominated(rows)
        self.work = WORK
        self._serving: dict[int, tuple[int, ...]] = {}
        self._masks: dict[int, int] = {}

    def best(self) -> Answer | None:
        """The fewest holes, or None where the holes there are to choose from are not enough."""
        if self._met(self.start) and self.proof(()):
            return Answer((), True)
        greedy = self._greedy()
        if greedy is None:
            return None
        for count in range(1, len(greedy)):
            found = self._deepen(self.start, count, ())
            if found is not None:
                return Answer(found, True)
            if self.work <= 0:
                return Answer(greedy, least=False)
        return Answer(greedy, True)

    def simpler(self, holes: Sequence[int], trouble: Sequence[int]) -> tuple[int, ...]:
        """As many holes that are less trouble to drill and still enough; ``trouble`` ranks all holes."""
        chosen = list(holes)
        for place, hole in enumerate(chosen):
            others = self._together(chosen[:place] + chosen[place + 1 :])
            easier = sorted(
                (other for other in range(len(self.rows)) if trouble[other] < trouble[hole]),
                key=lambda other: trouble[other],
            )
            for other in easier:
                swapped = [*chosen[:place], other, *chosen[place + 1 :]]
                if self._met(_least(others, self.rows[other])) and self.proof(swapped):
                    chosen = swapped
                    break
        return tuple(chosen)

    def _met(self, row: Row) -> bool:
        return all(left < limit for left, limit in zip(self.sums(row), self.limits, strict=True))

    def _excess(self, row: Row) -> float:
        return sum(max(0.0, left - limit) for left, limit in zip(self.sums(row), self.limits, strict=True))

    def _greedy(self) -> tuple[int, ...] | None:
        """The hole that helps most, again and again, less those that turn out not to be needed."""
        row, chosen = self.start, list[int]()
        while not self._met(row):
            before = self._excess(row)
            after = {hole: self._excess(_least(row, self.rows[hole])) for hole in self.useful}
            hole = min(after, key=lambda hole: after[hole], default=None)
            if hole is None or after[hole] >= before - SAME:
                return None
            chosen.append(hole)
            row = _least(row, self.rows[hole])
        return self._trimmed(chosen)

    def _trimmed(self, chosen: list[int]) -> tuple[int, ...] | None:
        if not self.proof(chosen):
            return None
        for hole in list(chosen):
            fewer = [other for other in chosen if other != hole]
            if self._met(self._together(fewer)) and self.proof(fewer):
                chosen = fewer
        return tuple(chosen)

    def _together(self, holes: Sequence[int]) -> Row:
        row = self.start
        for hole in holes:
            row = _least(row, self.rows[hole])
        return row

    def _deepen(self, row: Row, count: int, chosen: tuple[int, ...]) -> tuple[int, ...] | None:
        """A set of at most so many more holes that is enough, or None."""
        if self._met(row):
            return chosen if self.proof(chosen) else None
        if self.work <= 0 or count == 0:
            return None
        demands = self._demands(row)
        if demands and self._needed(demands) > count:
            return None
        options = self._serving_all(demands[0]) if demands else self.useful
        self.work -= len(options)
        fruitful = [(self._excess(after), hole, after) for hole in options if (after := self._try(row, hole))]
        for _, hole, after in sorted(fruitful):
            found = self._deepen(after, count - 1, (*chosen, hole))
            if found is not None:
                return found
        return None

    def _try(self, row: Row, hole: int) -> Row | None:
        after = _least(row, self.rows[hole])
        return after if after != row else None

    def _demands(self, row: Row) -> list[int]:
        """The places in a row that keep more than their limit by themselves, the hardest to serve first."""
        over = [place for place, left in enumerate(row) if left >= self.limits[place // self.width]]
        return sorted(over, key=lambda place: len(self._serving_all(place)))

    def _serving_all(self, place: int) -> tuple[int, ...]:
        """The holes that bring a place under its limit."""
        if place not in self._serving:
            limit = self.limits[place // self.width]
            holes = tuple(hole for hole in self.useful if self.rows[hole][place] < limit)
            self._serving[place] = holes
            self._masks[place] = sum(1 << hole for hole in holes)
        return self._serving[place]

    def _needed(self, demands: list[int]) -> int:
        """At least so many holes: places no two of which one hole can serve."""
        used, count = 0, 0
        for place in demands:
            if not self._masks[place] & used:
                used |= self._masks[place]
                count += 1
        return count


def _least(a: Row, b: Row) -> Row:
    return tuple(map(min, a, b))


def _undominated(rows: Sequence[Row]) -> list[int]:
    """The holes that no other beats everywhere; of equal ones the first."""
    order = sorted(range(len(rows)), key=lambda hole: (sum(rows[hole]), hole))
    kept: list[int] = []
    for hole in order:
        slack = [left + SAME for left in rows[hole]]
        if not any(all(map(le, rows[other], slack)) for other in kept):
            kept.append(hole)
    return sorted(kept)
