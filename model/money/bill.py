"""The bill: a line for each kind of thing bought, and what is left of the limit."""

from collections import Counter
from collections.abc import Iterator
from math import ceil
from typing import Literal

from msgspec import Struct

from model.design import COMPARISON_SLACK, Arrangement, Design, Pipe
from model.frame.layout import Frame
from model.money.on_hand import InBox
from model.money.shopping import held_pipe, planned
from model.money.sticks import cheapest_purchase
from model.units import format_length
from model.water.trim_kit import TrimKit

LineKind = Literal[
    "pipe", "fitting", "motor", "mount", "foam", "washer", "ballast", "attachment", "tether", "pin"
]

PLANNED_MOST = 60
"""Pipe is priced by the cheapest cutting plan up to so many pieces of a size, and by first fit beyond."""


class Line(Struct, frozen=True):
    """A kind of thing bought; ``id`` is that of the stock, supply or item whose price it is."""

    kind: LineKind
    id: str
    name: str
    quantity: int
    each: float
    counts: bool

    @property
    def total(self) -> float:
        """What all of them cost."""
        return self.each * self.quantity


class Bill(Struct, frozen=True):
    """All lines, and the sums of those that count against the limit.

    Attributes:
        unsold: ids of pipe sizes for which no length on sale is long enough or none is listed.
    """

    lines: tuple[Line, ...]
    limit: float | None
    currency: str
    unsold: tuple[str, ...]

    @property
    def spent(self) -> float:
        """What counts against the limit."""
        return round(sum(line.total for line in self.lines if line.counts), 2)

    @property
    def free(self) -> float:
        """What is on the bill but does not count."""
        return round(sum(line.total for line in self.lines if not line.counts), 2)

    @property
    def left(self) -> float | None:
        """What is left of the limit, below zero if it is broken; None without a limit."""
        return None if self.limit is None else round(self.limit - self.spent, 2)

    @property
    def over(self) -> bool:
        """Whether the limit is broken."""
        return self.left is not None and self.left < -COMPARISON_SLACK


def bill(
    design: Design, arrangement: Arrangement, frame: Frame, box: InBox, kit: TrimKit | None = None
) -> Bill:
    """What one arrangement costs beside what is in the box, with sticks and foam tubes bought whole."""
    pipe_lines = list(_pipes(design, frame, box))
    lines = [line for line in pipe_lines if isinstance(line, Line)]
    unsold = tuple(line for line in pipe_lines if isinstance(line, str))
    lines += [
        *_fittings(design, box),
        *_pins(design, frame),
        *_supplies(design, arrangement, kit),
        *_items(arrangement),
    ]
    return Bill(tuple(lines), design.brief.spending_limit, design.brief.currency, unsold)


def _pipes(design: Design, frame: Frame, box: InBox) -> Iterator[Line | str]:
    """A line for each pipe size, or its id where it cannot be bought."""
    for pipe in design.stock.pipes:
        cuts = sorted(
            (bar.cut for bar in frame.bars.values() if bar.pipe.id == pipe.id and bar.cut and bar.cut > 0),
            reverse=True,
        )
        if not box.to_buy[pipe.id] or not cuts:
            continue
        if len(cuts) > PLANNED_MOST:
            purchase = cheapest_purchase(pipe, box.to_buy[pipe.id], design.stock.kerf)
            sticks = [purchase.stick.length] * purchase.quantity if purchase else []
            cost = purchase.price if purchase else 0.0
        else:
            plan = planned(pipe, tuple(cuts), design.stock.kerf, held_pipe(design, pipe))
            sticks = (
                [stick.source.length for stick in plan.sticks if not stick.source.on_hand] if plan else []
            )
            cost = plan.cost if plan else 0.0
            if plan and not sticks:
                continue
        if not sticks:
            yield pipe.id
        else:
            yield Line(
                "pipe", pipe.id, _named(pipe, sticks, design), len(sticks), cost / len(sticks), pipe.counts
            )


def _named(pipe: Pipe, sticks: list[float], design: Design) -> str:
    """The pipe, and how many of each length where they differ."""
    lengths = Counter(sticks)
    if len(lengths) == 1:
        return pipe.name
    words = (f"{count} of {format_length(length, design.units)}" for length, count in sorted(lengths.items()))
    return f"{pipe.name} ({', '.join(words)})"


def _fittings(design: Design, box: InBox) -> Iterator[Line]:
    missing = {count.id: count.missing for count in box.fittings}
    for fitting in design.stock.fittings:
        if count := missing.get(fitting.id):
            yield Line("fitting", fitting.id, fitting.name, count, fitting.price, fitting.counts)


def _pins(design: Design, frame: Frame) -> Iterator[Line]:
    pin, count = design.stock.pin, pins_needed(design, frame)
    if count:
        yield Line("pin", "pin", pin.name, count, pin.price, pin.counts)


def pins_needed(design: Design, frame: Frame) -> int:
    """How many screws or ties hold the joints that are pinned."""
    ends = sum(
        len(joint.arms) for joint in frame.joints.values() if joint.match and joint.joining == "pinned"
    )
    return ends * design.stock.pin.each_end


def _supplies(design: Design, arrangement: Arrangement, kit: TrimKit | None) -> Iterator[Line]:
    motors = Counter(thruster.motor for thruster in arrangement.thrusters)
    mounts = Counter(thruster.mount for thruster in arrangement.thrusters)
    for motor in design.supplies.motors:
        if motors[motor.id]:
            yield Line("motor", motor.id, motor.name, motors[motor.id], motor.price, motor.counts)
    for mount in design.supplies.mounts:
        if mounts[mount.id]:
            yield Line("mount", mount.id, mount.name, mounts[mount.id], mount.price, mount.counts)
    for foam in design.supplies.foams:
        length = sum(piece.length for piece in arrangement.floats if piece.foam == foam.id)
        length += kit.foam_length if kit and kit.foam == foam.id else 0.0
        if length:
            tubes = ceil(length / foam.sold_length - COMPARISON_SLACK)
            yield Line("foam", foam.id, foam.name, tubes, foam.price, foam.counts)
    washer = design.supplies.washer
    if kit and kit.washers:
        yield Line("washer", "washer", f"trim kit: {washer.name}", kit.washers, washer.price, washer.counts)


def _items(arrangement: Arrangement) -> Iterator[Line]:
    for ballast in arrangement.ballasts:
        yield Line("ballast", ballast.id, ballast.name, 1, ballast.price, ballast.counts)
    for item in arrangement.attachments:
        yield Line("attachment", item.id, item.name, 1, item.price, item.counts)
    tether = arrangement.tether
    if tether:
        yield Line("tether", tether.id, tether.name, 1, tether.price, tether.counts)
