"""Edits of pieces that are sawn already."""

from model.design import COMPARISON_SLACK, Design, plane_groups
from model.errors import EditError
from model.frame.layout import lay_out
from model.units import format_length, snap

GROUPS = ("stations", "sides", "levels")


def saw_to(design: Design, bar: str, length: float) -> Design:
    """A bar held to a piece of pipe that is sawn already [m]; its planes follow.

    Raises:
        EditError: the piece is shorter than what goes into the fittings, or the bar is gone.
    """
    frame = lay_out(design, design.arrangement)
    place = frame.bars.get(bar)
    if place is None:
        raise EditError(f"the bar '{bar}' is not in this design any more")
    if place.cut is not None and length < sum(place.insertions) - COMPARISON_SLACK:
        least = format_length(sum(place.insertions), design.units)
        raise EditError(f"'{place.name}' needs a piece of at least {least}: so much goes into its fittings")
    return settled(_with_sawn(design, bar, length))


def give_up_piece(design: Design, bar: str) -> Design:
    """A bar that is no longer held to a sawn piece; nothing moves."""
    return _with_sawn(settled(design), bar, None)


def _with_sawn(design: Design, bar: str, length: float | None) -> Design:
    bars = tuple(item.but(sawn=length) if item.id == bar else item for item in design.arrangement.bars)
    return design.arranged(bars=bars)


def settled(design: Design) -> Design:
    """The design with each plane drawn where sawn pieces hold it."""
    at = lay_out(design, design.arrangement).planes
    for axis, group in enumerate(plane_groups(design.arrangement)):
        if any(snap(at[plane.id]) != plane.at for plane in group):
            planes = tuple(plane.but(at=at[plane.id]) for plane in group)
            design = design.arranged(**{GROUPS[axis]: planes})
    return design
