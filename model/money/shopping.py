"""What to take to the shop: the lines of the bill, with pipe by the cheapest cutting plan."""

from collections import Counter
from functools import lru_cache

from msgspec import Struct

from model.design import Design, Pipe
from model.frame.layout import BarPlace, Frame
from model.money.cutting_plan import CuttingPlan, cutting_plan
from model.money.cutting_task import Source
from model.money.patterns import UNIT


class StickLine(Struct, frozen=True):
    """So many sticks of pipe of one length [m] to buy, at a price each."""

    pipe: Pipe
    length: float
    quantity: int
    each: float

    @property
    def total(self) -> float:
        """What they cost."""
        return round(self.each * self.quantity, 2)


class PipePlan(Struct, frozen=True):
    """The cutting plans of all pipe sizes of a design, and the pieces that no stick takes."""

    plans: tuple[CuttingPlan, ...]
    unsold: tuple[BarPlace, ...]

    @property
    def cost(self) -> float:
        """Of all sticks that are bought."""
        return round(sum(plan.cost for plan in self.plans), 2)

    @property
    def proven(self) -> bool:
        """Whether no plan is cheaper."""
        return all(plan.proven for plan in self.plans)

    @property
    def to_buy(self) -> tuple[StickLine, ...]:
        """The sticks to buy, the longest of each size first."""
        lines = []
        for plan in self.plans:
            bought = Counter(
                (stick.source.length, stick.source.price) for stick in plan.sticks if not stick.source.on_hand
            )
            lines += [
                StickLine(plan.pipe, length, count, price)
                for (length, price), count in sorted(bought.items(), reverse=True)
            ]
        return tuple(lines)


class LaidStick(Struct, frozen=True):
    """One stick with the bars that come out of it, the longest first, and what is left [m]."""

    source: Source
    bars: tuple[BarPlace, ...]
    rest: float


def pipe_plan(design: Design, frame: Frame) -> PipePlan:
    """How all pieces of a frame are cut at the least cost."""
    plans: list[CuttingPlan] = []
    unsold: list[BarPlace] = []
    for pipe in design.stock.pipes:
        bars = [bar for bar in frame.bars.values() if bar.pipe.id == pipe.id and bar.cut and bar.cut > 0]
        if not bars:
            continue
        cuts = tuple(sorted((bar.cut or 0.0 for bar in bars), reverse=True))
        plan = planned(pipe, cuts, design.stock.kerf, held_pipe(design, pipe))
        if plan is None:
            unsold += bars
        else:
            plans.append(plan)
    return PipePlan(tuple(plans), tuple(unsold))


def laid(plan: CuttingPlan, frame: Frame) -> tuple[LaidStick, ...]:
    """A plan with the bars themselves on its sticks."""
    bars = sorted(
        (bar for bar in frame.bars.values() if bar.pipe.id == plan.pipe.id and bar.cut and bar.cut > 0),
        key=lambda bar: -(bar.cut or 0.0),
    )
    by_length: dict[int, list[BarPlace]] = {}
    for bar in bars:
        by_length.setdefault(round((bar.cut or 0.0) / UNIT), []).append(bar)
    return tuple(
        LaidStick(stick.source, tuple(by_length[round(cut / UNIT)].pop(0) for cut in stick.cuts), stick.rest)
        for stick in plan.sticks
    )


def held_pipe(design: Design, pipe: Pipe) -> tuple[Source, ...]:
    """The pieces of a pipe size that are in the box."""
    return tuple(
        Source(piece.length, count=piece.count)
        for piece in design.stock.on_hand.pieces
        if piece.pipe == pipe.id and piece.count
    )


@lru_cache(maxsize=64)
def planned(pipe: Pipe, cuts: tuple[float, ...], kerf: float, held: tuple[Source, ...]) -> CuttingPlan | None:
    """The cutting plan of some cuts [m], kept a while, since a design is looked at many times."""
    return cutting_plan(pipe, cuts, kerf, held)
