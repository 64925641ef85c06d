"""The same design from 70 % to 130 % of its size: speed against handling as numbers.

All planes draw together or apart about their middle.  What is bought stays as it is; the floats are cut
to keep the spare buoyancy, as far as their bars let them.
"""

from collections.abc import Iterable

from msgspec import Struct

from model.compare import Comparison, Standing, compared, standing
from model.design import Arrangement, Design, Float, Plane
from model.extents import extents
from model.frame.layout import Frame, lay_out
from model.money.bill import bill
from model.money.on_hand import in_box
from model.parts import Part
from model.survey import Survey
from model.thrust.clear import clearances
from model.thrust.drives import drives_of
from model.units import snap
from model.vehicle import parts_of
from model.water.balance import balance

SMALLEST, LARGEST, POINTS = 0.70, 1.30, 13
GROUPS = ("stations", "sides", "levels")
LEAST_FLOAT = 0.005
"""[m] A float is not cut shorter than this."""


class SizePoint(Struct, frozen=True):
    """The design at a size.

    Attributes:
        factor: of the distances between its planes.
        spare: spare buoyancy [kg] with the floats as they could be cut.
        floats_fit: whether the floats that keep the spare buoyancy fit on their bars.
    """

    factor: float
    standing: Standing
    spare: float
    floats_fit: bool


class Sweep(Struct, frozen=True):
    """A design at several sizes, the smallest first, and side by side."""

    points: tuple[SizePoint, ...]
    comparison: Comparison


def size_sweep(
    found: Survey, smallest: float = SMALLEST, largest: float = LARGEST, points: int = POINTS
) -> Sweep:
    """The design of a survey at some sizes between two factors."""
    step = (largest - smallest) / max(1, points - 1)
    made = tuple(at_size(found, smallest + number * step) for number in range(points))
    return Sweep(made, compared([point.standing for point in made]))


def at_size(found: Survey, factor: float) -> SizePoint:
    """The design of a survey at a size."""
    arrangement = _scaled(found.arrangement, factor)
    frame = lay_out(found.design, arrangement)
    parts = parts_of(found.design, arrangement, frame)
    wanted = _foam_factor(parts, found)
    arrangement, fit = _cut_floats(arrangement, frame, wanted)
    parts = parts_of(found.design, arrangement, frame)
    floating = balance(parts, found.balance.density)
    design = _with(found.design, arrangement)
    clear = clearances(arrangement, frame, parts)
    return SizePoint(
        factor=factor,
        standing=standing(
            f"{100 * factor:.0f} %",
            arrangement,
            frame,
            parts,
            floating,
            drives_of(design, arrangement, frame, clear, floating.density, found.wiring),
            extents(parts, design.brief.size_limit),
            bill(design, arrangement, frame, in_box(design, arrangement, frame)).spent,
        ),
        spare=floating.spare,
        floats_fit=fit,
    )


def _scaled(arrangement: Arrangement, factor: float) -> Arrangement:
    """The arrangement with all planes drawn together or apart about their middle; pieces stay unsawn."""
    changes: dict[str, object] = {name: _planes(getattr(arrangement, name), factor) for name in GROUPS}
    changes["bars"] = tuple(bar.model_copy(update={"sawn": None}) for bar in arrangement.bars)
    return arrangement.model_copy(update=changes)


def _planes(planes: tuple[Plane, ...], factor: float) -> tuple[Plane, ...]:
    if not planes:
        return planes
    middle = (min(plane.at for plane in planes) + max(plane.at for plane in planes)) / 2
    return tuple(
        plane.model_copy(update={"at": snap(middle + factor * (plane.at - middle))}) for plane in planes
    )


def _foam_factor(parts: Iterable[Part], found: Survey) -> float | None:
    """By how much the floats must grow to keep the spare buoyancy; None without floats that lift."""
    rest = foam = 0.0
    for part in parts:
        lift = found.balance.density * part.volume - part.mass
        if part.kind == "float":
            foam += lift
        else:
            rest += lift
    return (found.balance.spare - rest) / foam if foam > 0 else None


def _cut_floats(arrangement: Arrangement, frame: Frame, factor: float | None) -> tuple[Arrangement, bool]:
    """The arrangement with its floats cut by a factor, and whether all of them fit."""
    if factor is None:
        return arrangement, True
    cut = [_cut(piece, frame, factor) for piece in arrangement.floats]
    floats = tuple(piece for piece, _ in cut)
    return arrangement.model_copy(update={"floats": floats}), all(fits for _, fits in cut)


def _cut(piece: Float, frame: Frame, factor: float) -> tuple[Float, bool]:
    wanted, room = piece.length * factor, max(LEAST_FLOAT, frame.bars[piece.bar].exposed)
    length = min(max(LEAST_FLOAT, wanted), room)
    return piece.model_copy(update={"length": snap(length)}), abs(length - wanted) < 1e-6


def _with(design: Design, arrangement: Arrangement) -> Design:
    return design.model_copy(update={"arrangements": (arrangement, *design.arrangements[1:])})
