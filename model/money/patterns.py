"""Ways to cut one stick: how many pieces of each length come out of it."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

Pattern = tuple[int, ...]
"""For each kind of piece, how many of it are cut."""
NEARLY = 1e-9
UNIT = 1e-5
"""[m] Lengths are counted in hundredths of a mm, so that sums are exact."""


class Pieces(Struct, frozen=True):
    """The kinds of piece: length with kerf in units, and how many of each are wanted; the longest first."""

    sizes: tuple[int, ...]
    wanted: tuple[int, ...]


def fits(pieces: Pieces, pattern: Pattern, room: int) -> bool:
    """Whether a pattern fits the room of a stick, its length and one kerf, in units."""
    return sum(size * count for size, count in zip(pieces.sizes, pattern, strict=True)) <= room


def first_fit(pieces: Pieces, room: int) -> list[Pattern] | None:
    """Sticks filled in turn, the longest piece first; None where a piece is longer than a stick."""
    sticks: list[tuple[int, list[int]]] = []
    for kind, (size, wanted) in enumerate(zip(pieces.sizes, pieces.wanted, strict=True)):
        if size > room:
            return None
        for _ in range(wanted):
            place = next((n for n, (left, _) in enumerate(sticks) if left >= size), None)
            if place is None:
                sticks.append((room, [0] * len(pieces.sizes)))
                place = len(sticks) - 1
            left, counts = sticks[place]
            counts[kind] += 1
            sticks[place] = (left - size, counts)
    return [tuple(counts) for _, counts in sticks]


def best_pattern(pieces: Pieces, room: int, worth: Sequence[float]) -> tuple[float, Pattern]:
    """The pattern of most worth that fits, by a bounded knapsack that tries the dearest by length first."""
    order = sorted(range(len(worth)), key=lambda kind: -worth[kind] / pieces.sizes[kind])
    counts = [0] * len(worth)
    best_worth, best = 0.0, tuple(counts)

    def go(place: int, left: int, value: float) -> None:
        nonlocal best_worth, best
        if value > best_worth + NEARLY:
            best_worth, best = value, tuple(counts)
        if place == len(order):
            return
        kind = order[place]
        size, price = pieces.sizes[kind], worth[kind]
        if value + left * max(0.0, price) / size <= best_worth + NEARLY:
            return
        for count in range(min(pieces.wanted[kind], left // size), -1, -1):
            counts[kind] = count
            go(place + 1, left - count * size, value + count * price)
        counts[kind] = 0

    go(0, room, 0.0)
    return best_worth, best


def full_patterns(
    pieces: Pieces, room: int, least: int, most: int, *, first: bool = False
) -> list[Pattern] | None:
    """Every pattern that fits the room and fills at least so much of it.

    If there are more than ``most``: None, or the first of them where that will do.

    The sums that the kinds from each one on can reach stand as the bits of a whole number, so that no way is
    taken that leads nowhere.
    """
    reached = reachable(pieces.sizes, pieces.wanted, room)
    found: list[Pattern] = []
    for pattern in _full(pieces, reached, (), max(0, least), room):
        found.append(pattern)
        if len(found) > most:
            return found if first else None
    return found


def reachable(sizes: Sequence[int], counts: Sequence[int], room: int) -> list[int]:
    """For each kind, the sums up to ``room`` that it and those after it reach, as bits; then 1, for none.

    >>> [bin(sums) for sums in reachable((3, 2), (1, 2), 6)]
    ['0b111101', '0b10101', '0b1']
    """
    mask = (1 << (room + 1)) - 1
    reached = [1]
    for size, count in zip(reversed(sizes), reversed(counts), strict=True):
        sums, step = reached[-1], 1
        while count > 0:
            step = min(step, count)
            sums |= (sums << (size * step)) & mask
            count, step = count - step, step * 2
        reached.append(sums)
    return reached[::-1]


def _full(pieces: Pieces, reached: list[int], begun: Pattern, least: int, left: int) -> Iterator[Pattern]:
    kind = len(begun)
    if kind == len(pieces.sizes):
        yield begun
        return
    size = pieces.sizes[kind]
    for count in range(min(pieces.wanted[kind], left // size), -1, -1):
        low, high = max(0, least - count * size), left - count * size
        if (reached[kind + 1] >> low) & ((1 << (high - low + 1)) - 1):
            yield from _full(pieces, reached, (*begun, count), low, high)
