"""Sawn pieces packed into the lengths on sale, to know what pipe costs."""

from collections.abc import Iterable

from msgspec import Struct

from model.design import COMPARISON_SLACK, Pipe, Stick


class Purchase(Struct, frozen=True):
    """A number of sticks of one length."""

    stick: Stick
    quantity: int

    @property
    def price(self) -> float:
        """Of all of them together."""
        return self.stick.price * self.quantity


def cheapest_purchase(pipe: Pipe, cuts: Iterable[float], kerf: float) -> Purchase | None:
    """The length on sale from which these cuts [m] come cheapest, or None where none is long enough.

    Each length is tried on its own, filled longest piece first (first fit).  Pieces l fit a stick S if
    the sum of (l + kerf) is at most S + kerf, since the last piece needs no cut behind it.
    """
    pieces = sorted(cuts, reverse=True)
    offers = [
        Purchase(stick, quantity)
        for stick in pipe.sticks
        if (quantity := sticks_needed(pieces, stick.length, kerf)) is not None
    ]
    return min(offers, key=lambda offer: (offer.price, offer.stick.length), default=None)


def sticks_needed(pieces: list[float], stick: float, kerf: float) -> int | None:
    """How many sticks [m] the pieces [m] need, taken in this order; None if one is longer than a stick.

    >>> sticks_needed([15.0] * 8, 120.0, 0.0), sticks_needed([15.0] * 8, 120.0, 0.0625)
    (1, 2)
    """
    if pieces and max(pieces) > stick + COMPARISON_SLACK:
        return None
    return len(first_fit(pieces, stick, kerf))


def first_fit(pieces: Iterable[float], stick: float, kerf: float) -> list[tuple[float, ...]]:
    """Pieces [m] laid on sticks of one length [m], in this order, each on the first with room.

    >>> first_fit([0.5, 0.4, 0.3], 0.9, 0.0)
    [(0.5, 0.4), (0.3,)]
    """
    room: list[float] = []
    laid: list[list[float]] = []
    for piece in pieces:
        for number, left in enumerate(room):
            if piece + kerf <= left + COMPARISON_SLACK:
                room[number] -= piece + kerf
                laid[number].append(piece)
                break
        else:
            room.append(stick - piece)
            laid.append([piece])
    return [tuple(pieces) for pieces in laid]
