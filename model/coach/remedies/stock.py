"""Remedies for the stock and the box."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.sentences import length
from model.design import Design
from model.design.edits import box_is_all, forget_measurements, remove_held_piece
from model.money.sawing import LastCut
from model.survey import Survey
from model.vehicle.choices import use_box


def forget(kind: str, id: str) -> tuple[Remedy, ...]:
    """Take the measurement off, so that the published values hold until it is made again."""
    edit = partial(forget_measurements, kind=kind, id=id)
    return (Remedy("Take that measurement off, and measure again", edit),)


def push_less(found: Survey, pipe: str, depth: float) -> tuple[Remedy, ...]:
    """The push-in depth of a pipe made that of the socket [m]."""
    return (
        Remedy(
            f"Set the push-in depth to {length(depth, found.design.units)}",
            partial(_pushed, pipe=pipe, depth=depth),
        ),
    )


def _pushed(design: Design, pipe: str, depth: float) -> Design:
    pipes = tuple(p.but(insertion=depth) if p.id == pipe else p for p in design.stock.pipes)
    return design.but(stock=design.stock.but(pipes=pipes))


def fill_box(found: Survey) -> tuple[Remedy, ...]:
    """Use other fittings that are in the box, or let what is missing be bought."""
    joints = tuple(found.frame.joints.values())
    return (
        Remedy("Use the fittings that are in the box", partial(use_box, joints=joints)),
        Remedy("Let what is missing be bought", partial(box_is_all, only=False)),
    )


def longer_stick(found: Survey, cut: LastCut) -> tuple[Remedy, ...]:
    """Leave a short stick in the box, and saw its pieces from a longer one."""
    if cut.bought:
        return ()
    label = f"Leave the {length(cut.stick, found.design.units)} stick, and saw from a longer one"
    return (Remedy(label, partial(_left_out, pipe=cut.pipe, stick=cut.stick)),)


def _left_out(design: Design, pipe: str, stick: float) -> Design:
    """The design without the sticks of a length [m] in its box."""
    pieces = design.stock.on_hand.pieces
    for number in range(len(pieces) - 1, -1, -1):
        if pieces[number].pipe == pipe and pieces[number].length == stick:
            design = remove_held_piece(design, number)
    return design
