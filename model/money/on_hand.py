"""What the box gives: fittings and pieces of pipe used first, what must be bought, what is left over."""

from collections import Counter, defaultdict

from msgspec import Struct

from model.design import COMPARISON_SLACK, Arrangement, Design, Pipe
from model.frame.layout import Frame


class FittingCount(Struct, frozen=True):
    """How many of a fitting the frame needs, and how many are in the box."""

    id: str
    name: str
    needed: int
    held: int

    @property
    def missing(self) -> int:
        """How many must be bought."""
        return max(0, self.needed - self.held)

    @property
    def left(self) -> int:
        """How many stay in the box."""
        return max(0, self.held - self.needed)


class HeldStick(Struct, frozen=True):
    """One piece of pipe from the box, and what is sawn from it, the longest first [m]."""

    pipe: str
    length: float
    cuts: tuple[float, ...]
    rest: float


class InBox(Struct, frozen=True):
    """What the box gives for one arrangement.

    Attributes:
        fittings: those that are needed or held, in the order of the stock.
        sticks: the pieces of pipe that are used, in the order of the box.
        unused: how many pieces stay as they are, by pipe and length [m].
        to_buy: the cuts [m] by pipe id that no piece in the box gives, longest first.
        joints_open: how many joints no fitting fits, so that none is counted for them.
        bars_open: how many bars end at such a joint, so that their cuts are not known.
    """

    fittings: tuple[FittingCount, ...]
    sticks: tuple[HeldStick, ...]
    unused: tuple[tuple[str, float, int], ...]
    to_buy: dict[str, tuple[float, ...]]
    joints_open: int
    bars_open: int

    @property
    def short(self) -> bool:
        """Whether anything is missing."""
        return any(self.to_buy.values()) or any(fitting.missing for fitting in self.fittings)

    def taken(self, pipe: str, length: float) -> tuple[int, int]:
        """How many pieces of a pipe and a length [m] are sawn up, and how many stay as they are."""
        used = sum((stick.pipe, stick.length) == (pipe, length) for stick in self.sticks)
        return used, sum(count for *which, count in self.unused if which == [pipe, length])


def in_box(design: Design, arrangement: Arrangement, frame: Frame) -> InBox:
    """What the box gives for one arrangement."""
    cuts: dict[str, list[float]] = defaultdict(list)
    for bar in frame.bars.values():
        if bar.cut is not None and bar.cut > 0:
            cuts[bar.pipe.id].append(bar.cut)
    sticks: list[HeldStick] = []
    unused: list[tuple[str, float, int]] = []
    to_buy: dict[str, tuple[float, ...]] = {}
    for pipe in design.stock.pipes:
        used, spare, missing = _sawn(design, pipe, sorted(cuts[pipe.id], reverse=True))
        sticks += used
        unused += spare
        to_buy[pipe.id] = missing
    joints_open = sum(joint.match is None for joint in frame.joints.values())
    bars_open = sum(bar.cut is None for bar in frame.bars.values())
    return InBox(_fittings(design, frame), tuple(sticks), tuple(unused), to_buy, joints_open, bars_open)


def _fittings(design: Design, frame: Frame) -> tuple[FittingCount, ...]:
    needed = Counter(joint.match.fitting.id for joint in frame.joints.values() if joint.match)
    held = {item.fitting: item.count for item in design.stock.on_hand.fittings}
    return tuple(
        FittingCount(fitting.id, fitting.name, needed[fitting.id], held.get(fitting.id, 0))
        for fitting in design.stock.fittings
        if needed[fitting.id] or held.get(fitting.id)
    )


def _sawn(
    design: Design, pipe: Pipe, cuts: list[float]
) -> tuple[list[HeldStick], list[tuple[str, float, int]], tuple[float, ...]]:
    """Cuts laid on the pieces in the box, each on the one with the least left over (best fit)."""
    held: Counter[float] = Counter()
    for piece in design.stock.on_hand.pieces:
        if piece.pipe == pipe.id:
            held[piece.length] += piece.count
    lengths = [length for length, count in held.items() for _ in range(min(count, len(cuts)))]
    room = list(lengths)
    laid: list[list[float]] = [[] for _ in lengths]
    missing: list[float] = []
    for cut in cuts:
        fits = [number for number, left in enumerate(room) if cut <= left + COMPARISON_SLACK]
        if not fits:
            missing.append(cut)
            continue
        best = min(fits, key=room.__getitem__)
        laid[best].append(cut)
        room[best] -= cut + design.stock.kerf
    used = [
        HeldStick(pipe.id, length, tuple(pieces), max(0.0, left))
        for length, pieces, left in zip(lengths, laid, room, strict=True)
        if pieces
    ]
    opened = Counter(stick.length for stick in used)
    spare = [(pipe.id, length, count - opened[length]) for length, count in held.items()]
    return used, [item for item in spare if item[2] > 0], tuple(missing)
