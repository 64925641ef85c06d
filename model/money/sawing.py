"""The last cut on each stick, when the least of it is left to hold in the saw."""

from msgspec import Struct

from model.design import Design
from model.frame.layout import Frame
from model.money.on_hand import InBox
from model.money.sticks import cheapest_purchase, first_fit


class LastCut(Struct, frozen=True):
    """The last cut on a stick, when the least is left to hold.

    Attributes:
        pipe, stick: the pipe size and the whole length of the stick [m].
        held: length that is still in one piece before that cut [m].
        piece: the piece that it gives [m].
        bought: whether the stick is bought, or from the box.
    """

    pipe: str
    stick: float
    held: float
    piece: float
    bought: bool


def last_cuts(design: Design, frame: Frame, found: InBox) -> tuple[LastCut, ...]:
    """The last cut on every stick, with the shortest pieces sawn first, while the stick is long.

    A stick that is used as it is needs no cut and is left out.
    """
    pipes = {bar.pipe.id: bar.pipe for bar in frame.bars.values()}
    sawn = [(stick.pipe, stick.length, stick.cuts, False) for stick in found.sticks]
    for id, cuts in found.to_buy.items():
        purchase = cheapest_purchase(pipes[id], cuts, design.stock.kerf) if cuts else None
        if purchase:
            sawn += [
                (id, purchase.stick.length, pieces, True)
                for pieces in first_fit(cuts, purchase.stick.length, design.stock.kerf)
            ]
    return tuple(cut for stick in sawn if (cut := _last(*stick, kerf=design.stock.kerf)))


def _last(pipe: str, stick: float, pieces: tuple[float, ...], bought: bool, *, kerf: float) -> LastCut | None:
    longest = max(pieces)
    held = stick - sum(pieces) + longest - kerf * (len(pieces) - 1)
    if held <= longest + kerf:  # nothing, or no more than dust, is left behind the last piece
        if len(pieces) == 1:
            return None
        shorter = max(sorted(pieces)[:-1])
        return LastCut(pipe, stick, held + kerf + shorter, shorter, bought)
    return LastCut(pipe, stick, held, longest, bought)
