"""Pieces as they were really sawn: how far off their plan, and what to do about it."""

from msgspec import Struct
from msgspec.structs import replace
from pydantic import ValidationError

from model.design import Bar, Design, MeasuredCut
from model.design.edits.core import plain
from model.design.edits.evidence import next_id, taken_back, with_changed, with_noted
from model.design.limits import Limits, field_limits
from model.errors import EditError
from model.frame.held import give_up_piece, saw_to
from model.frame.layout import lay_out

FINE = 0.0015
"""[m] A piece this near to its plan is fine (common practice, no source)."""


class Piece(Struct, frozen=True):
    """A piece that was measured: its bar, and how much longer than planned it came out [m]."""

    cut: MeasuredCut
    bar: Bar

    @property
    def off(self) -> float:
        """Measured less planned [m]."""
        return self.cut.length - self.cut.planned


def measured_pieces(design: Design) -> tuple[Piece, ...]:
    """The measurement that stands of each bar, in the order of the bars."""
    last = {cut.bar: cut for cut in design.evidence.cuts if cut.stands}
    return tuple(Piece(last[bar.id], bar) for bar in design.arrangement.bars if bar.id in last)


def note_cut(design: Design, bar: str, length: float, when: str, who: str = "") -> Design:
    """A piece measured after it was sawn: the survey then runs on it, and the planes follow it.

    A measurement of the same bar that stood before is taken back.

    Raises:
        EditError: the bar is gone, its cut is not known, or the length is not allowed.
    """
    place = lay_out(design, design.arrangement).bars.get(bar)
    if place is None or place.cut is None:
        raise EditError("the cut of this bar is not known yet, so that nothing can be set beside it")
    before = next((piece for piece in measured_pieces(design) if piece.bar.id == bar), None)
    planned = before.cut.planned if before else place.cut
    try:
        cut = MeasuredCut(
            id=next_id(design, "cuts"), when=when, who=who, bar=bar, length=length, planned=planned
        )
    except ValidationError as problem:
        raise EditError(plain(problem)) from problem
    design = saw_to(design, bar, cut.length)
    if before:
        design = taken_back(design, "cuts", before.cut.id, when)
    return with_noted(design, "cuts", cut)


def saw_anew(design: Design, bar: str, when: str) -> Design:
    """A piece thrown away: its measurement is taken back, and the bar goes to its plan again.

    Raises:
        EditError: no piece of the bar was measured.
    """
    piece = next((piece for piece in measured_pieces(design) if piece.bar.id == bar), None)
    if piece is None:
        raise EditError("no piece of this bar was measured")
    planned = piece.cut.planned
    design = give_up_piece(saw_to(design, bar, planned), bar)
    return taken_back(design, "cuts", piece.cut.id, when)


def can_be(design: Design, bar: str) -> Limits:
    """How long a piece of a bar can have come out: no longer than the longest pipe on sale or in the box."""
    named = next(item.pipe for item in design.arrangement.bars if item.id == bar)
    pipe = named or design.stock.pipes[0].id
    sticks = [stick.length for each in design.stock.pipes if each.id == pipe for stick in each.sticks]
    held = [piece.length for piece in design.stock.on_hand.pieces if piece.pipe == pipe]
    usual = field_limits(MeasuredCut, "length")
    if not (sticks or held):
        return usual
    return replace(usual, most=max(*sticks, *held, 0.0), why="no pipe on sale or in the box is longer")


def keep_piece(design: Design, bar: str) -> Design:
    """A piece that is off its plan and built in all the same; planes and the other cuts have followed it.

    Raises:
        EditError: no piece of the bar was measured.
    """
    for piece in measured_pieces(design):
        if piece.bar.id == bar:
            return with_changed(design, "cuts", piece.cut.id, kept=True)
    raise EditError("no piece of this bar was measured")
