"""The holes of a thruster's ties, one by one: each edit gives a new design, or says why it cannot be done."""

from typing import Any

from model.design import Design, Thruster, TieHole
from model.design.edits import Ref, find, set_field
from model.design.edits.core import changed
from model.errors import EditError
from model.frame.layout import BarPlace, lay_out
from model.thrust.tie_holes import from_sawn_end, next_hole
from model.units import format_length
from model.vectors import dot, unit

SLANTED = 0.9
"""A drill that goes along a bar by more than this share of its way meets no wall that it could go through."""


def across(face: str, bar: BarPlace) -> bool:
    """Whether a side of the vehicle is a side of a bar, and not one of its ends."""
    return abs(dot(unit(face), bar.along)) < SLANTED


def add_hole(design: Design, thruster: str) -> Design:
    """One more hole for a tie, where it usually goes or on bare pipe beside the others.

    Raises:
        EditError: there is no room for one.
    """
    item, bar = _placed(design, thruster)
    motor = find(design, Ref("motor", item.motor))
    hole = next_hole(item, motor, bar)
    if hole is None:
        raise EditError(f"there is no room on {bar.name} for another hole of {item.name}")
    return _with(design, item, (*item.tie_holes, hole))


def remove_hole(design: Design, thruster: str, number: int) -> Design:
    """One hole left out; holes count from 0.

    Raises:
        EditError: there is no such hole.
    """
    item = find(design, Ref("thruster", thruster))
    _hole(item, number)
    return _with(design, item, item.tie_holes[:number] + item.tie_holes[number + 1 :])


def place_hole(design: Design, thruster: str, number: int, from_end: float) -> Design:
    """One hole moved to a distance from the sawn end of its pipe [m].

    Raises:
        EditError: there is no pipe, or another hole is in the way.
    """
    item, bar = _placed(design, thruster)
    hole = _hole(item, number)
    along = hole.along + from_end - from_sawn_end(hole, item, bar)
    return change_hole(design, thruster, number, along=along)


def change_hole(design: Design, thruster: str, number: int, **changes: Any) -> Design:
    """Some fields of one hole set.

    Raises:
        EditError: a value is not allowed, or the hole cannot be drilled like that.
    """
    item, bar = _placed(design, thruster)
    hole = changed(_hole(item, number), **changes)
    _check(hole, item, number, bar, design)
    return _with(design, item, (*item.tie_holes[:number], hole, *item.tie_holes[number + 1 :]))


def _placed(design: Design, thruster: str) -> tuple[Thruster, BarPlace]:
    item: Thruster = find(design, Ref("thruster", thruster))
    return item, lay_out(design, design.arrangement).bars[item.bar]


def _hole(item: Thruster, number: int) -> TieHole:
    if not 0 <= number < len(item.tie_holes):
        raise EditError(f"{item.name} has no hole {number + 1} any more")
    return item.tie_holes[number]


def _with(design: Design, item: Thruster, holes: tuple[TieHole, ...]) -> Design:
    return set_field(design, Ref("thruster", item.id), "tie_holes", holes)


def _check(hole: TieHole, item: Thruster, number: int, bar: BarPlace, design: Design) -> None:
    """Whether a hole can be drilled: through a side of its pipe, inside its ends, clear of the others."""

    def said(metres: float) -> str:
        return format_length(metres, design.units)

    outside, half = bar.pipe.outside_diameter, hole.diameter / 2
    if hole.diameter >= outside:
        raise EditError(
            f"a hole of {said(hole.diameter)} cuts {bar.name} in two: its pipe is {said(outside)} wide"
        )
    if not across(hole.face, bar):
        raise EditError(f"that side is an end of {bar.name}; choose a side that a drill can go through")
    long = bar.spacing - sum(face - into for face, into in zip(bar.faces, bar.insertions, strict=True))
    if not half <= from_sawn_end(hole, item, bar) <= long - half:
        raise EditError(
            f"the pipe of {bar.name} is {said(long)} long: "
            f"a hole of {said(hole.diameter)} lies {said(half)} to {said(long - half)} from its sawn end"
        )
    for place, other in enumerate(item.tie_holes):
        apart = abs(other.along - hole.along)
        if place != number and apart < half + other.diameter / 2:
            raise EditError(
                f"it would run into hole {place + 1} of {item.name}, only {said(apart)} away; "
                f"keep {said(half + other.diameter / 2)} or more"
            )
