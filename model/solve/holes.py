"""Where to drill: the fewest holes that let the air out of every attitude that the team cares about."""

from collections import defaultdict
from collections.abc import Sequence
from math import inf
from operator import add, lt

from msgspec import Struct
from msgspec.structs import replace

from model.design import Arrangement, Brief, Design, Foam, Opening, Stock
from model.design.edits.core import fresh_id, fresh_name, taken_ids
from model.frame.layout import BarPlace
from model.solve.hole_places import Spot, hole_size, opposite, spots
from model.solve.hole_search import Answer, Search
from model.solve.hole_tables import Table, Vent
from model.survey import Survey
from model.vectors import Vector, dot, scale
from model.water.air.attitudes import ATTITUDES, SMALL_TILTS, Attitude
from model.water.air.bores import Network, Rim
from model.water.air.drilling import outward_of
from model.water.air.network import network_of
from model.water.air.pockets import caught
from model.water.air.recent import Recent

LIMIT = 1e-6
"""[m3] Less than a millilitre may stay in each attitude."""
HEADROOM = 5e-7
"""[m3] Where no hole can bring an attitude under the limit, so much more than the least may stay."""
MANY_BORES = 60
"""Beyond so many bores holes are put at the top of each pocket, and are not called the fewest."""
MOST_BARS = 600
"""Larger frames get no proposal; their air is worked out all the same."""
ROUNDS = 5
"""How often that is repeated."""
NEAR = 1e-6
"""[m] A hole so near to the end of a bore still opens it."""


class Drilling(Struct, frozen=True):
    """A proposal.

    Attributes:
        openings: the new holes.
        after: what stays in each attitude with them [m3], but for the grooves in sockets.
        least: whether it is proven that fewer would not do (from the places looked at).
        kept: whether the holes that there are stay.
    """

    openings: tuple[Opening, ...]
    after: tuple[tuple[Attitude, float], ...]
    least: bool
    kept: bool

    @property
    def most(self) -> float:
        """The most that stays in any attitude [m3]."""
        return max(volume for _, volume in self.after)

    def apply(self, design: Design) -> Design:
        """The design with these holes."""
        before = design.arrangement.openings if self.kept else ()
        return design.arranged(openings=(*before, *self.openings))


_Key = tuple[Arrangement, Stock, tuple[Foam, ...], Brief, bool]
_remembered: Recent[_Key, Drilling | None] = Recent(4)
"""Several findings ask for the same holes."""


def wanted_attitudes(found: Survey) -> tuple[Attitude, ...]:
    """The attitudes that must lose their air; with level also a degree to each side."""
    names = found.design.brief.attitudes
    cared = tuple(attitude for attitude in ATTITUDES if not names or attitude.name in names)
    return (*cared, *SMALL_TILTS) if ATTITUDES[0] in cared else cared


def fewest(found: Survey, *, keep: bool = True) -> Drilling | None:
    """The fewest holes that clear every attitude; none where it is clear; None where no hole helps.

    Where no hole can clear an attitude, it is brought as low as holes can.

    Args:
        keep: whether the holes that there are stay; else all are drilled anew.
    """
    if found.air.seal or not 0 < len(found.frame.bars) <= MOST_BARS:
        return None
    design = found.design
    key = (found.arrangement, design.stock, design.supplies.foams, design.brief, keep)
    return _remembered.get(key, lambda: _fewest(found, keep))


def _fewest(found: Survey, keep: bool) -> Drilling | None:
    problem = _Problem(found, keep)
    if len(problem.network.bores) > MANY_BORES:
        return problem.drilling(problem.at_each_top(), least=False)
    answer = problem.answer()
    if answer is None:
        return None
    drilled = problem.single_walls([problem.spots[hole] for hole in sorted(answer.holes)])
    return problem.drilling(drilled, least=answer.least)


class _Problem:
    """The places, the bores, and what has to be cleared."""

    def __init__(self, found: Survey, keep: bool) -> None:
        self.found, self.keep = found, keep
        run = found.arrangement
        self.kept = [o for o in run.openings if o.id not in found.air.faults] if keep else []
        self.network = network_of(found.frame, self.kept, run.plugs)
        self.attitudes = wanted_attitudes(found)
        self.size = hole_size(found)
        self.spots = spots(found)
        self._plugged = {plug.bar for plug in run.plugs}
        self.skipped = _meant_dry(self.network, self._plugged)
        self._shapes: dict[Rim, list[float]] = {}
        self._of_bar: dict[str, list[int]] = defaultdict(list)
        for number, bore in enumerate(self.network.bores):
            self._of_bar[bore.bar].append(number)
        self.vents = [self._vent(spot) for spot in self.spots]
        self.limits: Sequence[float] = [LIMIT] * len(self.attitudes)

    def _vent(self, spot: Spot) -> Vent | None:
        bar = self.found.frame.bars[spot.bar]
        bore = self._bore_at(bar, spot.at)
        outward = outward_of(bar, spot.face)
        if bore is None or outward is None or bore in self.skipped:
            return None
        sides = [outward, scale(outward, -1)] if spot.through else [outward]
        reaches = [self._reaches(bar.along, side, self.network.bores[bore].radius) for side in sides]
        at = bar.point(spot.at)
        highest = map(max, *reaches) if len(reaches) > 1 else reaches[0]
        return Vent(bore, tuple(map(add, [dot(attitude.up, at) for attitude in self.attitudes], highest)))

    def _bore_at(self, bar: BarPlace, at: float) -> int | None:
        offset = at * bar.spacing
        for number in self._of_bar.get(bar.id, ()):
            bore = self.network.bores[number]
            if bore.offset - NEAR <= offset <= bore.offset + bore.length + NEAR:
                return number
        return None

    def _reaches(self, along: Vector, side: Vector, radius: float) -> list[float]:
        """How far the top of a rim is over the axis in each attitude [m]."""
        shape = Rim(along, side, radius, self.size / 2)
        if shape not in self._shapes:
            self._shapes[shape] = [shape.reach(attitude.up) for attitude in self.attitudes]
        return self._shapes[shape]

    def answer(self) -> Answer | None:
        """The fewest, by their numbers among the spots."""
        table = Table(self.network, self.attitudes, self.skipped)
        usable = [number for number, vent in enumerate(self.vents) if vent is not None]
        rows = [table.row(vent) for vent in self.vents if vent is not None]
        start = table.start()
        every = tuple(min(column) for column in zip(start, *rows, strict=True))
        limits = [LIMIT if left < LIMIT else left + HEADROOM for left in table.sums(every)]

        def proof(holes: Sequence[int]) -> bool:
            return all(map(lt, self.left([self.spots[usable[hole]] for hole in holes]), limits))

        search = Search(start, rows, table.sums, limits, table.width, proof)
        found = search.best()
        if found is None:
            return None
        easier = search.simpler(found.holes, [self.spots[number].trouble for number in usable])
        self.limits = limits
        return Answer(tuple(usable[hole] for hole in easier), found.least)

    def at_each_top(self) -> list[Spot]:
        """For frames too large to search: a hole near the top of each pocket, until none helps."""
        chosen: list[int] = []
        by_bar: dict[str, list[int]] = {}
        for number, spot in enumerate(self.spots):
            if self.vents[number] is not None:
                by_bar.setdefault(spot.bar, []).append(number)
        for _ in range(ROUNDS):
            network = self._drilled([self.spots[number] for number in chosen])
            fresh: list[int] = []
            for index, attitude in enumerate(self.attitudes):
                for pocket in caught(network, attitude.up).pockets:
                    near = [n for stretch in pocket.stretches for n in by_bar.get(stretch.bar, [])]
                    if pocket.volume >= LIMIT and near:
                        fresh.append(max(near, key=lambda n: self._height(n, index)))
            fresh = [number for number in dict.fromkeys(fresh) if number not in chosen]
            if not fresh:
                break
            chosen += fresh
        return [self.spots[number] for number in sorted(chosen)]

    def _height(self, spot: int, attitude: int) -> float:
        vent = self.vents[spot]
        return vent.rims[attitude] if vent else -inf

    def _drilled(self, spots: Sequence[Spot]) -> Network:
        new = [spot.opening(f"new-{n}", "new", self.size) for n, spot in enumerate(spots)]
        return network_of(self.found.frame, [*self.kept, *new], self.found.arrangement.plugs)

    def left(self, spots: Sequence[Spot]) -> list[float]:
        """What really stays in each attitude [m3] with holes at some spots."""
        network = self._drilled(spots)
        return [_to_clear(network, attitude, self._plugged) for attitude in self.attitudes]

    def single_walls(self, spots: list[Spot]) -> list[Spot]:
        """The same places with one wall drilled instead of two, where that is enough."""
        for place, spot in enumerate(spots):
            for face in (spot.face, opposite(spot.face)) if spot.through else ():
                fewer = [*spots[:place], replace(spot, face=face, through=False), *spots[place + 1 :]]
                if all(map(lt, self.left(fewer), self.limits)):
                    spots = fewer
                    break
        return spots

    def drilling(self, drilled: Sequence[Spot], *, least: bool) -> Drilling:
        """The proposal, with names and ids that nothing else has."""
        taken = taken_ids(self.found.design, "opening") if self.keep else _others(self.found.design)
        names = [opening.name for opening in self.found.arrangement.openings] if self.keep else []
        openings: list[Opening] = []
        for spot in drilled:
            identity = fresh_id("o", {*taken, *(opening.id for opening in openings)})
            name = fresh_name(self._name(spot), [*names, *(opening.name for opening in openings)])
            openings.append(spot.opening(identity, name, self.size))
        after = zip(self.attitudes, self.left(drilled), strict=True)
        return Drilling(tuple(openings), tuple(after), least, self.keep)

    def _name(self, spot: Spot) -> str:
        bar = self.found.frame.bars[spot.bar]
        joint = self.found.frame.joints[bar.joints[spot.at > 0.5]].name
        if spot.fitting:
            return f"hole in the fitting at {joint}"[:80]
        if abs(spot.at - 0.5) < 0.02:
            return f"hole in the middle of {bar.name}"[:80]
        return f"hole in {bar.name} near {joint}"[:80]


def _meant_dry(network: Network, plugged: set[str]) -> frozenset[int]:
    """Bores without any opening behind a plug: the team closed them on purpose."""
    with_mouths = {mouth.bore for mouth in network.mouths}
    return frozenset(
        bore
        for group in network.groups
        if not with_mouths & set(group) and any(network.bores[bore].bar in plugged for bore in group)
        for bore in group
    )


def _to_clear(network: Network, attitude: Attitude, plugged: set[str]) -> float:
    """What stays [m3], voids counted but for those behind plugs."""
    air = caught(network, attitude.up)
    voids = (pocket for pocket in air.pockets if pocket.closed)
    return air.volume + sum(
        void.volume for void in voids if not any(stretch.bar in plugged for stretch in void.stretches)
    )


def _others(design: Design) -> set[str]:
    """The ids of everything on the bars but the holes."""
    holes = {opening.id for opening in design.arrangement.openings}
    return taken_ids(design, "opening") - holes
