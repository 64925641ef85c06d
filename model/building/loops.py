"""Which bars close a loop: what is threaded on them has to go on before.

A bar is in a loop if its two ends hang together without it; the others are bridges (Tarjan, Information
Processing Letters 2 (1974) 160-161).
"""

from collections import defaultdict
from itertools import count

from model.frame.layout import Frame


def bars_in_loops(frame: Frame) -> frozenset[str]:
    """The ids of the bars that are part of a loop."""
    neighbours: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for place in frame.bars.values():
        start, end = place.joints
        neighbours[start].append((end, place.id))
        neighbours[end].append((start, place.id))
    bridges: set[str] = set()
    seen: dict[str, int] = {}
    low: dict[str, int] = {}
    numbers = count()
    for root in frame.joints:
        if root in seen:
            continue
        seen[root] = low[root] = next(numbers)
        way = [(root, "", iter(neighbours[root]))]
        while way:
            here, came_by, others = way[-1]
            there, bar = next(others, ("", ""))
            if not there:
                way.pop()
                if way:
                    before = way[-1][0]
                    low[before] = min(low[before], low[here])
                    if low[here] > seen[before]:
                        bridges.add(came_by)
            elif bar == came_by:
                continue
            elif there in seen:
                low[here] = min(low[here], seen[there])
            else:
                seen[there] = low[there] = next(numbers)
                way.append((there, bar, iter(neighbours[there])))
    return frozenset(frame.bars) - bridges
