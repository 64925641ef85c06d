"""What may be bought: numbers of each length on sale, the cheapest first."""

from collections.abc import Iterator, Sequence
from math import ceil, floor

PURCHASES_MOST = 20_000
"""More than this are not looked at."""
NEARLY = 1e-9


def purchases(
    prices: Sequence[float], rooms: Sequence[int], need: int, least: float, most: float
) -> list[tuple[int, ...]] | None:
    """Numbers of each length that hold so much and cost from ``least`` to ``most``, the cheapest first.

    Every price is above zero.  None if there are too many to look at.

    >>> purchases((4.0, 2.5), (300, 150), 400, 5.0, 8.0)
    [(1, 1), (0, 3), (2, 0)]
    """
    found: list[tuple[int, ...]] = []
    for counts in _counted(prices, rooms, need, most):
        if _cost(prices, counts) >= least - NEARLY:
            found.append(counts)
            if len(found) > PURCHASES_MOST:
                return None
    return sorted(found, key=lambda counts: (_cost(prices, counts), counts))


def _cost(prices: Sequence[float], counts: Sequence[int]) -> float:
    return sum(price * count for price, count in zip(prices, counts, strict=True))


def _counted(
    prices: Sequence[float], rooms: Sequence[int], need: int, most: float
) -> Iterator[tuple[int, ...]]:
    """Every purchase that holds ``need`` and costs at most ``most``, by one length after the other."""
    price, room = prices[0], rooms[0]
    dearest = floor((most + NEARLY) / price)
    if len(prices) == 1:
        yield from ((count,) for count in range(max(0, ceil(need / room)), dearest + 1))
        return
    cheapest = min(other / space for other, space in zip(prices[1:], rooms[1:], strict=True))
    for count in range(dearest + 1):
        rest = max(0, need - count * room)
        if count * price + rest * cheapest <= most + NEARLY:
            for others in _counted(prices[1:], rooms[1:], rest, most - count * price):
                yield (count, *others)
