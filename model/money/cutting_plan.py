"""The cutting plan: which pieces come out of which stick, at the least cost, proven least.

Every purchase is looked at, the cheapest first, until the pieces go into one; those before it are proven
too small, each by a search, or all at once by the bound of a linear program.
"""

from collections import Counter
from collections.abc import Sequence
from math import inf

from msgspec import Struct

from model.design import Pipe
from model.money.cutting_bound import Bound, bound_of
from model.money.cutting_task import Choice, Source, Task
from model.money.packing import pack, pack_proven, room_to_spare
from model.money.patterns import NEARLY, UNIT, Pattern, Pieces, first_fit
from model.money.purchases import purchases
from model.solve.highs import SolverMissing

PATIENCE = 4
"""Purchases that are tried before the bound of the linear program is worked out."""
MARGIN = 500
"""[units, 5 mm] A stick with less left over has no room for an end that is not square."""


class Sawn(Struct, frozen=True):
    """One stick and the pieces that are cut from it [m], the longest first; ``rest`` is what is left [m]."""

    source: Source
    cuts: tuple[float, ...]
    rest: float


class CuttingPlan(Struct, frozen=True):
    """All sticks of one pipe size.

    Attributes:
        cost: of the sticks that are bought.
        proven: whether no plan is cheaper.
    """

    pipe: Pipe
    sticks: tuple[Sawn, ...]
    cost: float
    proven: bool


def cutting_plan(
    pipe: Pipe, cuts: Sequence[float], kerf: float, held: Sequence[Source] = ()
) -> CuttingPlan | None:
    """The cheapest sticks for some cuts [m]; None where no length that there is takes them.

    Pieces l fit a stick S if the sum of (l + kerf) is at most S + kerf.  What is on hand comes first.
    A cut of nothing or less, where two joints are too close, is no piece.
    """
    lengths = Counter(count for cut in cuts if (count := round(cut / UNIT)) > 0)
    kinds = sorted(lengths, reverse=True)
    if not kinds:
        return CuttingPlan(pipe, (), 0.0, True)
    saw = round(kerf / UNIT)
    mine = [Source(source.length, 0.0, min(source.count or 0, len(cuts))) for source in held]
    sources = (*mine, *(Source(stick.length, stick.price) for stick in pipe.sticks))
    pieces = Pieces(tuple(kind + saw for kind in kinds), tuple(lengths[kind] for kind in kinds))
    task = Task(pieces, sources, tuple(round(source.length / UNIT) + saw for source in sources))
    if pieces.sizes[0] > max(task.rooms, default=0):
        return None
    try:
        chosen, proven = _solved(task)
    except SolverMissing:
        chosen, proven = _simple(task), False
    if chosen is None:
        return None
    eased = _eased(task, [choice for choice in chosen if any(choice[1])])
    sticks = [_sawn(sources[number], pattern, kinds, saw) for number, pattern in eased]
    sticks.sort(key=lambda stick: (not stick.source.on_hand, -stick.source.length, stick.rest))
    return CuttingPlan(pipe, tuple(sticks), round(sum(stick.source.price for stick in sticks), 2), proven)


def _solved(task: Task) -> tuple[list[Choice] | None, bool]:
    """The chosen patterns, and whether they are proven the cheapest."""
    at_hand = _packed(task, task.held)
    if not isinstance(at_hand, bool):
        return at_hand, True
    bound: Bound | None = None
    simple = _simple(task)
    offers = _offers(task, 0.0, task.worth(task.counts(simple))) if simple else None
    if simple is None or offers is None:
        bound = bound_of(task)
        if bound is None or bound.plan is None:
            return simple, False
        simple = bound.plan
        offers = _offers(task, bound.least, task.worth(task.counts(simple)))
    found, proven = _first_packed(task, offers or [], bound)
    return (found, proven) if found else (_trimmed(task.pieces, simple), False)


def _offers(task: Task, least: float, most: float) -> list[list[int]] | None:
    """Numbers of each source, all that is held and what is bought between two costs, the cheapest first."""
    sale, held = task.sale, task.held
    need = max(0, task.total - sum(room * count for room, count in zip(task.rooms, held, strict=True)))
    prices, rooms = [task.sources[n].worth for n in sale], [task.rooms[n] for n in sale]
    found = purchases(prices, rooms, need, least, most) if sale else []
    if found is None:
        return None
    bought = [dict(zip(sale, offer, strict=True)) for offer in found]
    return [[offer.get(number, count) for number, count in enumerate(held)] for offer in bought]


def _first_packed(
    task: Task, offers: list[list[int]], bound: Bound | None
) -> tuple[list[Choice] | None, bool]:
    """The cheapest purchase that takes the pieces, and whether it is proven that none before it does.

    The bound of the linear program is slow where pieces are small, and seldom needed there: it is worked
    out when the first few purchases have failed.
    """
    undecided = inf
    for number, counts in enumerate(offers):
        if number == PATIENCE and bound is None:
            bound = bound_of(task)
        if bound and task.worth(counts) < bound.least - NEARLY:
            continue
        packed = _packed(task, counts)
        if not isinstance(packed, bool):
            return packed, task.price(counts) <= undecided + NEARLY
        if packed:
            undecided = min(undecided, task.price(counts))
    return None, False


def _packed(task: Task, counts: list[int]) -> list[Choice] | bool:
    """The pieces in so many sticks of each source; False if they do not go in, True if nobody can tell."""
    if room_to_spare(task.pieces, task.rooms, counts) < 0:
        return False
    numbers = [number for number, count in enumerate(counts) for _ in range(count)]
    patterns = pack(task.pieces, [task.rooms[number] for number in numbers])
    if patterns is not None:
        return list(zip(numbers, patterns, strict=True))
    return pack_proven(task.pieces, task.rooms, counts)


def _simple(task: Task) -> list[Choice] | None:
    """Without any search: first fit into the length on sale that comes cheapest."""
    offers = [
        (task.sources[number].worth * len(filled), number, filled)
        for number in task.sale
        if (filled := first_fit(task.pieces, task.rooms[number])) is not None
    ]
    if not offers:
        return None
    _, number, filled = min(offers)
    return [(number, pattern) for pattern in filled]


def _eased(task: Task, chosen: list[Choice]) -> list[Choice]:
    """The same sticks, with a piece moved from each that is quite full to one that has room to spare."""
    sizes, patterns = task.pieces.sizes, [list(pattern) for _, pattern in chosen]
    rests = [
        task.rooms[number] - sum(size * count for size, count in zip(sizes, pattern, strict=True))
        for number, pattern in chosen
    ]
    for full, rest in enumerate(rests):
        spare = max(range(len(rests)), key=rests.__getitem__)
        smallest = max((kind for kind, count in enumerate(patterns[full]) if count), default=0)
        if rest < MARGIN and sum(patterns[full]) > 1 and sizes[smallest] + MARGIN <= rests[spare]:
            patterns[full][smallest] -= 1
            patterns[spare][smallest] += 1
            rests[full] += sizes[smallest]
            rests[spare] -= sizes[smallest]
    return [(number, tuple(pattern)) for (number, _), pattern in zip(chosen, patterns, strict=True)]


def _trimmed(pieces: Pieces, chosen: list[Choice]) -> list[Choice]:
    """The same sticks without the pieces that nobody wanted."""
    left = list(pieces.wanted)
    trimmed: list[Choice] = []
    for number, pattern in chosen:
        kept = tuple(min(count, left[kind]) for kind, count in enumerate(pattern))
        left = [wanted - count for wanted, count in zip(left, kept, strict=True)]
        trimmed.append((number, kept))
    return trimmed


def _sawn(source: Source, pattern: Pattern, kinds: list[int], saw: int) -> Sawn:
    cuts = [kind for kind, count in zip(kinds, pattern, strict=True) for _ in range(count)]
    used = sum(cuts) + saw * len(cuts)
    rest = max(0, round(source.length / UNIT) - used)
    return Sawn(source, tuple(round(cut * UNIT, 9) for cut in cuts), round(rest * UNIT, 9))
