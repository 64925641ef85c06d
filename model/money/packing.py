"""Pieces packed into given sticks: filled in turn, searched, or settled by a whole-number program."""

from collections.abc import Sequence
from random import Random

from model.money.packing_search import Search
from model.money.patterns import Pattern, Pieces, full_patterns, reachable
from model.solve.highs import Row, minimise

FILLS_MOST = 150
"""Sticks filled by chance, over all tries."""
PIECES_MOST = 400
"""Longer lists are not filled by chance, but left to the program."""
STICKS_MOST = 25
"""More sticks are not searched through."""
PATTERNS_MOST = 2_000


def pack(pieces: Pieces, rooms: Sequence[int], seed: int = 1) -> list[Pattern] | None:
    """A pattern for each stick that together give every piece; None where none was found.

    Each stick in turn is filled as far as it can be.  What is tried does not depend on the clock, so that
    the same list always gives the same plan.
    """
    if sum(pieces.wanted) > PIECES_MOST or not rooms:
        return None
    dice = Random(seed)
    orders = [sorted(range(len(rooms)), key=lambda n: (rooms[n], n))]
    orders += [dice.sample(range(len(rooms)), len(rooms)) for _ in range(FILLS_MOST // len(rooms))]
    for order in orders:
        filled = _filled(pieces, [rooms[number] for number in order], dice)
        if filled is not None:
            placed = dict(zip(order, filled, strict=True))
            return [placed[number] for number in range(len(rooms))]
    return None


def _filled(pieces: Pieces, rooms: Sequence[int], dice: Random) -> list[Pattern] | None:
    left: list[int] = list(pieces.wanted)
    patterns: list[Pattern] = []
    for room in rooms:
        kinds = list(range(len(left)))
        if patterns:
            dice.shuffle(kinds)
        pattern = fullest(pieces.sizes, left, room, kinds)
        left = [count - used for count, used in zip(left, pattern, strict=True)]
        patterns.append(pattern)
    return None if any(left) else patterns


def fullest(sizes: Sequence[int], left: Sequence[int], room: int, kinds: Sequence[int]) -> Pattern:
    """The pattern that fills a stick as far as these pieces can; kinds named first are taken first.

    >>> fullest((45, 36, 31, 14), (1, 2, 2, 3), 100, (0, 1, 2, 3))
    (0, 2, 0, 2)
    """
    reached = reachable([sizes[kind] for kind in kinds], [left[kind] for kind in kinds], room)
    total = reached[0].bit_length() - 1
    pattern = [0] * len(sizes)
    for kind, below in zip(kinds, reached[1:], strict=True):
        most = min(left[kind], total // sizes[kind])
        pattern[kind] = next(n for n in range(most, -1, -1) if below >> (total - n * sizes[kind]) & 1)
        total -= pattern[kind] * sizes[kind]
    return tuple(pattern)


def pack_proven(
    pieces: Pieces, rooms: Sequence[int], counts: Sequence[int]
) -> list[tuple[int, Pattern]] | bool:
    """Patterns for so many sticks of each room; False where there are none, True where that stays open."""
    spare = room_to_spare(pieces, rooms, counts)
    if spare < 0:
        return False
    numbers = [number for number, count in enumerate(counts) for _ in range(count)]
    if len(numbers) <= STICKS_MOST:
        numbers.sort(key=lambda number: rooms[number])
        found = Search(pieces, [rooms[number] for number in numbers]).run()
        if not isinstance(found, bool):
            return list(zip(numbers, found, strict=True))
        if not found:
            return False
    return _programmed(pieces, rooms, counts, spare)


def room_to_spare(pieces: Pieces, rooms: Sequence[int], counts: Sequence[int]) -> int:
    """What all sticks have more than the pieces and the least that each must waste."""
    spare = -sum(size * wanted for size, wanted in zip(pieces.sizes, pieces.wanted, strict=True))
    for room, count in zip(rooms, counts, strict=True):
        if count:
            spare += (reachable(pieces.sizes, pieces.wanted, room)[0].bit_length() - 1) * count
    return spare


def _programmed(
    pieces: Pieces, rooms: Sequence[int], counts: Sequence[int], spare: int
) -> list[tuple[int, Pattern]] | bool:
    """By the program over all patterns that are full enough: no stick may waste more than all can spare."""
    columns: list[tuple[int, Pattern]] = []
    for number, (room, count) in enumerate(zip(rooms, counts, strict=True)):
        if not count:
            continue
        fullest_sum = reachable(pieces.sizes, pieces.wanted, room)[0].bit_length() - 1
        found = full_patterns(pieces, room, fullest_sum - spare, PATTERNS_MOST)
        if found is None:
            return True
        columns += [(number, pattern) for pattern in found]
    return _chosen(pieces, columns, counts) or False


def _chosen(
    pieces: Pieces, columns: Sequence[tuple[int, Pattern]], counts: Sequence[int]
) -> list[tuple[int, Pattern]] | None:
    rows = [
        Row(tuple((n, float(p[kind])) for n, (_, p) in enumerate(columns) if p[kind]), wanted, wanted)
        for kind, wanted in enumerate(pieces.wanted)
    ]
    rows += [
        Row(tuple((n, 1.0) for n, (number, _) in enumerate(columns) if number == source), high=count)
        for source, count in enumerate(counts)
    ]
    plan = minimise([0.0] * len(columns), rows, whole=True)
    if plan is None:
        return None
    return [column for column, value in zip(columns, plan.values, strict=True) for _ in range(round(value))]
