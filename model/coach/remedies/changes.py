"""Small changes that several remedies are made of: Design -> Design."""

from collections.abc import Callable, Iterable, Mapping
from math import ceil, floor

from model.design import Arrangement, Ballast, Design, Float, Plane, equipment
from model.units import METRES, SIXTEENTH, Unit, snap

Edit = Callable[[Design], Design]
GROUPS = ("stations", "sides", "levels")
FOAM_STEP: dict[str, float] = {"mm": 0.005, "in": 0.25 * METRES["in"]}
"""[m] Foam is cut to the nearest 5 mm or 1/4 in (common practice)."""


def ruler_step(unit: Unit) -> float:
    """The finest length [m] that a team reads off its ruler: 1 mm or 1/16 in."""
    return SIXTEENTH if unit == "in" else 1e-3


def round_up(length: float, step: float) -> float:
    """A length [m] rounded up to whole steps [m]."""
    return snap(ceil(length / step - 1e-6) * step)


def round_down(length: float, step: float) -> float:
    """A length [m] rounded down to whole steps [m]."""
    return snap(floor(length / step + 1e-6) * step)


def planes_moved(design: Design, by: Mapping[str, float]) -> Design:
    """The design with planes, by id, moved by lengths [m]; bars and what is fixed to them follow."""
    arrangement = design.arrangement
    groups = {name: tuple(_moved(plane, by) for plane in getattr(arrangement, name)) for name in GROUPS}
    return design.arranged(**groups)


def _moved(plane: Plane, by: Mapping[str, float]) -> Plane:
    return plane.but(at=plane.at + by[plane.id]) if plane.id in by else plane


def floats_changed(design: Design, change: Callable[[Float], Float]) -> Design:
    """The design with each float changed."""
    return design.arranged(floats=tuple(change(piece) for piece in design.arrangement.floats))


def ballasts_changed(design: Design, change: Callable[[Ballast], Ballast]) -> Design:
    """The design with each piece of ballast changed."""
    return design.arranged(ballasts=tuple(change(piece) for piece in design.arrangement.ballasts))


def free_id(arrangement: Arrangement, prefix: str) -> str:
    """An id that nothing in the arrangement has yet."""
    taken = {item.id for item in equipment(arrangement)}
    number = 1
    while f"{prefix}{number}" in taken:
        number += 1
    return f"{prefix}{number}"


def in_turn(design: Design, edits: Iterable[Edit]) -> Design:
    """The design after some edits, one after the other."""
    for edit in edits:
        design = edit(design)
    return design
