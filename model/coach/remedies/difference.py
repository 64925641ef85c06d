"""What a change of the frame takes: pieces, money, outside size."""

from collections import Counter
from collections.abc import Mapping

from msgspec import Struct

from model.coach.sentences import length, listed, money
from model.design import Design
from model.extents import extents
from model.frame.layout import lay_out
from model.money.bill import bill
from model.money.on_hand import in_box
from model.units import Unit
from model.vectors import Vector
from model.vehicle import parts_of

SHOWN_MOST = 3
SAME_SIZE = 5e-5
"""[m] A change of size below this is none: what a ruler does not show."""
SIZES = (("longer", "shorter"), ("wider", "narrower"), ("higher", "lower"))


class Sight(Struct, frozen=True):
    """What a team sees of a frame: its fittings by name, its cuts in words, what it costs, its size [m]."""

    fittings: Mapping[str, int]
    cuts: Mapping[str, int]
    spent: float
    currency: str
    size: Vector
    unit: Unit


def sight(design: Design) -> Sight:
    """The fittings, cuts, cost and size of a design, without all the rest of a survey."""
    frame = lay_out(design, design.arrangement)
    box = extents(parts_of(design, design.arrangement, frame), None)
    spent = bill(design, design.arrangement, frame, in_box(design, design.arrangement, frame)).spent
    return Sight(
        Counter(joint.match.fitting.name for joint in frame.joints.values() if joint.match),
        Counter(length(bar.cut, design.units) for bar in frame.bars.values() if bar.cut),
        spent,
        design.brief.currency,
        box.size,
        design.units,
    )


def difference(before: Sight, after: Sight) -> tuple[str, str, str]:
    """Pieces, cost and change of size in three short lines."""
    return _pieces(before, after), _cost(before, after), _size(before, after)


def _pieces(before: Sight, after: Sight) -> str:
    more, less = _counted(before.fittings, after.fittings), _counted(after.fittings, before.fittings)
    pipe = _counted(before.cuts, after.cuts)[:SHOWN_MOST]
    text = f"Adds {listed(more) if more else 'no fitting'}"
    text += f", and pipe cut to {listed(pipe)}" if pipe else ""
    return text + (f"; saves {listed(less)}" if less else "")


def _counted(before: Mapping[str, int], after: Mapping[str, int]) -> list[str]:
    """What there is more of afterwards."""
    return [f"{count} x {name}" for name, count in (Counter(after) - Counter(before)).items()]


def _cost(before: Sight, after: Sight) -> str:
    cost = after.spent - before.spent
    if abs(cost) < 0.005:
        return "Costs nothing more"
    return f"{'Costs' if cost > 0 else 'Saves'} {money(abs(cost), after.currency)}"


def _size(before: Sight, after: Sight) -> str:
    words = [
        f"{length(abs(b - a), after.unit)} {pair[b < a]}"
        for a, b, pair in zip(before.size, after.size, SIZES, strict=True)
        if abs(b - a) > SAME_SIZE
    ]
    return f"The vehicle gets {listed(words)}" if words else "The outside size stays as it is"
