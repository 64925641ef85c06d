"""From millimetres to whole cells, so that what meets in the drawing meets in the cells.

Every place where a bar lies gets a cell of its own where there is room for it: rounding alone
would let two close planes fall into one cell and a short bar vanish between them.  Between those
places the scale is even, so proportions shift by a cell at most.
"""

from bisect import bisect_right
from collections.abc import Iterable
from itertools import pairwise

SAME = 0.05
"""[mm] Places closer than this are one."""


class Axis:
    """A rising map from places [mm] to cells, 0 to ``cells`` - 1."""

    def __init__(self, low: float, high: float, cells: int, keep: Iterable[float], scale: float) -> None:
        """Args:
        low, high: the ends of what is drawn [mm].
        keep: the places that want cells of their own [mm].
        scale: cells to a millimetre.
        """
        kept = _different(place for place in keep if low - SAME <= place <= high + SAME)
        self.places = _different([low, *kept, high])
        inner = {round(place, 2) for place in kept}
        wanted = [(place - low) * scale for place in self.places]
        self.cells = [
            float(cell) for cell in _spread(wanted, [round(p, 2) in inner for p in self.places], cells)
        ]
        self.last = cells - 1
        self.scale = scale
        self._known: dict[float, int] = {}

    def at(self, place: float) -> float:
        """Where a place [mm] lies, in cells and parts of a cell; never outside."""
        places, cells = self.places, self.cells
        if place <= places[0]:
            return cells[0]
        if place >= places[-1]:
            return cells[-1]
        k = bisect_right(places, place)
        share = (place - places[k - 1]) / (places[k] - places[k - 1])
        return cells[k - 1] + (cells[k] - cells[k - 1]) * share

    def cell(self, place: float) -> int:
        """The cell of a place [mm]."""
        try:
            return self._known[place]
        except KeyError:
            cell = self._known[place] = int(self.at(place) + 0.5)
            return cell

    def inside(self, low: float, high: float) -> tuple[int, int]:
        """The first and last cell whose middles lie between two places [mm]; the nearest one if none does."""
        first, last = self.at(low), self.at(high)
        start, end = -int(-first // 1), int(last // 1)
        if start > end:
            start = end = int((first + last) / 2 + 0.5)
        return max(start, 0), min(end, self.last)


def _different(places: Iterable[float]) -> list[float]:
    found: list[float] = []
    for place in sorted(places):
        if not found or place - found[-1] > SAME:
            found.append(place)
    return found


def _spread(wanted: list[float], own: list[bool], cells: int) -> list[int]:
    """Whole cells near the wanted ones, in order; neighbours that both want their own are kept apart."""
    nearest = [min(max(round(place), 0), cells - 1) for place in wanted]
    gaps = [2 if a and b else 0 for a, b in pairwise(own)]
    for widest in (2, 1):
        limited = [min(gap, widest) for gap in gaps]
        if sum(limited) < cells:
            return _pushed(nearest, limited, cells)
    return nearest


def _pushed(places: list[int], gaps: list[int], cells: int) -> list[int]:
    spread = list(places)
    for k, gap in enumerate(gaps, 1):
        spread[k] = max(spread[k], spread[k - 1] + gap)
    spread[-1] = min(spread[-1], cells - 1)
    for k in range(len(gaps) - 1, -1, -1):
        spread[k] = min(spread[k], spread[k + 1] - gaps[k])
    return spread
