"""Edits of what is in the box, and of what the team measured on its own parts."""

from collections.abc import Iterable
from typing import Any

from model.design.document import Design
from model.design.edits.core import Ref, changed, find, set_field
from model.design.in_hand import slips
from model.design.on_hand import HeldFittings, HeldPipe
from model.design.own_parts import MeasuredFitting, MeasuredPipe
from model.design.stock import Stock
from model.errors import EditError
from model.units import usual_length

NEW_PIECE = (300, 12)
"""[mm], [in] A piece of pipe before its length is written in."""


def set_held(design: Design, fitting: str, count: int) -> Design:
    """How many of a fitting are in the box; 0 takes it off the list."""
    find(design, Ref("fitting", fitting))
    held = design.stock.on_hand.fittings
    others = tuple(item for item in held if item.fitting != fitting)
    new = (changed(HeldFittings(fitting=fitting, count=0), count=count),) if count else ()
    return _with_box(design, fittings=(*others, *new))


def add_held_piece(design: Design, pipe: str | None = None, length: float | None = None) -> Design:
    """One more line of pieces of pipe in the box, of a length [m]."""
    pipe = pipe or design.stock.pipes[0].id
    find(design, Ref("pipe", pipe))
    usual = usual_length(design.units, *NEW_PIECE)
    new = changed(HeldPipe(pipe=pipe, length=usual), length=usual if length is None else length)
    return _with_box(design, pieces=(*design.stock.on_hand.pieces, new))


def set_held_piece(design: Design, number: int, **values: Any) -> Design:
    """The pipe, length [m] or count of a line of pieces in the box, counted from 0."""
    pieces = _pieces(design, number)
    pieces[number] = changed(pieces[number], **values)
    return _with_box(design, pieces=tuple(pieces))


def remove_held_piece(design: Design, number: int) -> Design:
    """A line of pieces taken out of the box, counted from 0."""
    pieces = _pieces(design, number)
    del pieces[number]
    return _with_box(design, pieces=tuple(pieces))


def _pieces(design: Design, number: int) -> list[HeldPipe]:
    pieces = list(design.stock.on_hand.pieces)
    if not 0 <= number < len(pieces):
        raise EditError("those pieces are not in the box any more")
    return pieces


def box_is_all(design: Design, only: bool) -> Design:
    """Whether nothing can be bought beside what is in the box."""
    return _with_box(design, only=only)


def _with_box(design: Design, **values: Any) -> Design:
    return set_field(design, Ref("stock"), "on_hand", changed(design.stock.on_hand, **values))


def measure_fitting(design: Design, fitting: str, **values: Any) -> Design:
    """What was measured on a fitting: ``face_to_face`` or ``face_to_far_side`` [m]; None forgets it.

    Raises:
        EditError: that cannot be right, and why.
    """
    find(design, Ref("fitting", fitting))
    own = design.stock.own.fittings
    now = next((item for item in own if item.fitting == fitting), MeasuredFitting(fitting=fitting))
    new = changed(now, **values)
    empty = new.face_to_face is None and new.face_to_far_side is None
    others = tuple(item for item in own if item.fitting != fitting)
    return _with_own(design, "fitting", fitting, fittings=others if empty else (*others, new))


def measure_pipe(design: Design, pipe: str, **values: Any) -> Design:
    """What was measured for a pipe size: ``hub``, ``socket_depth`` [m], ``dry_joint``; None forgets it.

    Raises:
        EditError: that cannot be right, and why.
    """
    find(design, Ref("pipe", pipe))
    own = design.stock.own.pipes
    now = next((item for item in own if item.pipe == pipe), MeasuredPipe(pipe=pipe))
    new = changed(now, **values)
    empty = new.hub is None and new.socket_depth is None and new.dry_joint is None
    others = tuple(item for item in own if item.pipe != pipe)
    return _with_own(design, "pipe", pipe, pipes=others if empty else (*others, new))


def _with_own(design: Design, kind: str, id: str, **values: Any) -> Design:
    stock = changed(design.stock, own=changed(design.stock.own, **values))
    known = set(slips(design.stock))
    for slip in slips(stock):
        if slip not in known:
            raise EditError(slip[2])
    return set_field(design, Ref("stock"), "own", stock.own)


def forget_measurements(design: Design, kind: str, id: str) -> Design:
    """What was measured on a fitting or for a pipe taken off; the published values hold again."""
    own = design.stock.own
    if kind == "pipe":
        kept = changed(own, pipes=tuple(item for item in own.pipes if item.pipe != id))
    else:
        pipes = tuple(_without_joint(item, id) for item in own.pipes)
        kept = changed(own, pipes=pipes, fittings=tuple(i for i in own.fittings if i.fitting != id))
    return set_field(design, Ref("stock"), "own", kept)


def _without_joint(pipe: MeasuredPipe, fitting: str) -> MeasuredPipe:
    if pipe.dry_joint and pipe.dry_joint.fitting == fitting:
        result: MeasuredPipe = changed(pipe, dry_joint=None)
        return result
    return pipe


def without_mention(stock: Stock, ref: Ref) -> Stock:
    """A stock that neither holds nor has measured a fitting or a pipe, so that it can be taken out."""
    held, own = stock.on_hand, stock.own
    if ref.kind == "fitting":
        box = changed(held, fittings=_but(held.fittings, "fitting", ref.id))
        pipes = tuple(_without_joint(item, ref.id) for item in own.pipes)
        own = changed(own, pipes=pipes, fittings=_but(own.fittings, "fitting", ref.id))
    else:
        box = changed(held, pieces=_but(held.pieces, "pipe", ref.id))
        own = changed(own, pipes=_but(own.pipes, "pipe", ref.id))
    result: Stock = changed(stock, on_hand=box, own=own)
    return result


def _but(items: Iterable[Any], field: str, gone: str) -> tuple[Any, ...]:
    return tuple(item for item in items if getattr(item, field) != gone)
