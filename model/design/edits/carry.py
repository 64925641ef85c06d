"""What a team measured and counted of its own parts, taken along to another range of pipe."""

from collections.abc import Iterator

from model.design.on_hand import OnHand
from model.design.own_parts import MeasuredFitting, MeasuredPipe, OwnParts
from model.design.stock import Fitting, Stock

SAME = 1e-4
"""[m] Pipes whose outside diameters are this near are pushed into the same fittings."""


def carried(old: Stock, new: Stock) -> Stock:
    """The new range with the measurements and the box of the old one, as far as they fit it.

    A pipe fits one of the same outside diameter, a fitting one of the same shape for the same pipes.
    What the new range holds of its own goes before.
    """
    pipes, fittings = _pipes(old, new), _fittings(old, new)
    own = OwnParts(
        pipes=(*new.own.pipes, *_measured_pipes(old, new, pipes, fittings)),
        fittings=(*new.own.fittings, *_measured_fittings(old, new, fittings)),
    )
    held, box = new.on_hand, old.on_hand
    counted = {item.fitting for item in held.fittings}
    kept = {fittings[item.fitting]: item for item in box.fittings if item.fitting in fittings}
    box = OnHand(
        fittings=(*held.fittings, *(kept[id].but(fitting=id) for id in kept if id not in counted)),
        pieces=(
            *held.pieces,
            *(piece.but(pipe=pipes[piece.pipe]) for piece in box.pieces if piece.pipe in pipes),
        ),
        only=held.only or box.only,
    )
    return new.but(own=own, on_hand=box)


def left_behind(old: Stock, new: Stock) -> tuple[str, ...]:
    """The names of what was measured or counted and does not fit the new range."""
    pipes, fittings = _pipes(old, new), _fittings(old, new)
    mine = {item.fitting for item in old.own.fittings} | {item.fitting for item in old.on_hand.fittings}
    mine |= {item.pipe for item in old.own.pipes} | {piece.pipe for piece in old.on_hand.pieces}
    mine -= pipes.keys() | fittings.keys()
    named = {pipe.id: pipe.name for pipe in old.pipes}
    named |= {fitting.id: fitting.name for fitting in old.fittings}
    names = [name for id, name in named.items() if id in mine]
    for measured in old.own.pipes:
        joint = measured.dry_joint
        if measured.pipe in pipes and joint and joint.fitting not in fittings:
            names.append(f"the dry joint in {named[joint.fitting]}")
    return tuple(names)


def _pipes(old: Stock, new: Stock) -> dict[str, str]:
    """By the id of an old pipe, that of the new one that is the same; each of them once."""
    found = dict[str, str]()
    for pipe in old.pipes:
        for other in new.pipes:
            like = abs(other.outside_diameter - pipe.outside_diameter) <= SAME
            if like and other.id not in found.values():
                found.setdefault(pipe.id, other.id)
    return found


def _fittings(old: Stock, new: Stock) -> dict[str, str]:
    """By the id of an old fitting, that of the new one that is the same; each of them once."""
    pipes, found = _pipes(old, new), dict[str, str]()
    same = {id: id for id in pipes.values()}
    for fitting in old.fittings:
        takes = _takes(fitting, pipes)
        if not all(pipe for _, pipe in takes):
            continue
        for other in new.fittings:
            like = other.shape == fitting.shape and takes == _takes(other, same)
            if like and other.id not in found.values():
                found.setdefault(fitting.id, other.id)
    return found


def _takes(fitting: Fitting, pipes: dict[str, str]) -> list[tuple[str, str]]:
    return sorted((socket.to, pipes.get(socket.pipe, "")) for socket in fitting.sockets)


def _measured_pipes(
    old: Stock, new: Stock, pipes: dict[str, str], fittings: dict[str, str]
) -> Iterator[MeasuredPipe]:
    taken = {item.pipe for item in new.own.pipes}
    for item in old.own.pipes:
        if item.pipe in pipes and pipes[item.pipe] not in taken:
            joint = item.dry_joint
            if joint:
                fitting = fittings.get(joint.fitting)
                joint = joint.but(fitting=fitting) if fitting else None
            yield item.but(pipe=pipes[item.pipe], dry_joint=joint)


def _measured_fittings(old: Stock, new: Stock, fittings: dict[str, str]) -> Iterator[MeasuredFitting]:
    taken = {item.fitting for item in new.own.fittings}
    for item in old.own.fittings:
        if item.fitting in fittings and fittings[item.fitting] not in taken:
            yield item.but(fitting=fittings[item.fitting])
