"""Remedies for floats: cut and slid onto the pipe that shows."""

from collections.abc import Iterator, Mapping
from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import floats_changed, free_id, planes_moved, round_down, ruler_step
from model.coach.remedies.steps import Step, told
from model.coach.sentences import length
from model.design import Design, Float
from model.frame.layout import BarPlace, lay_out
from model.solve.floats import Wish, propose_floats, usual_bars
from model.solve.places import level_bars_at
from model.survey import Survey
from model.units import Unit

SPARE_ROOM = 1e-6
"""[m] Kept from the ends, so that rounding does not push a float over them."""


def shorten(survey: Survey, piece: Float) -> tuple[Remedy, ...]:
    """Cut a float to the pipe that shows on its bar."""
    bar = survey.frame.bars[piece.bar]
    fitted = _fitted(piece, bar, ruler_step(survey.design.units))
    if fitted is None:
        return (Remedy(f"Take {piece.name} away", partial(_without_float, piece=piece.id)),)
    label = f"Cut {piece.name} to {length(fitted.length, survey.design.units)}"
    return (Remedy(label, partial(_replaced, new=fitted)),)


def slide_in(survey: Survey, piece: Float) -> tuple[Remedy, ...]:
    """Slide a float onto the pipe that shows."""
    fitted = _fitted(piece, survey.frame.bars[piece.bar], ruler_step(survey.design.units))
    return (Remedy(f"Slide {piece.name} in", partial(_replaced, new=fitted)),) if fitted else ()


def lighter_foam(survey: Survey, foam: str) -> tuple[Remedy, ...]:
    """Another foam of the team's, that floats, in the place of one that sinks."""
    return tuple(
        Remedy(f"Use {other.name} instead", partial(_refoamed, old=foam, new=other.id))
        for other in survey.design.supplies.foams
        if other.density < survey.balance.density
    )


def _refoamed(design: Design, old: str, new: str) -> Design:
    return floats_changed(design, lambda piece: piece.but(foam=new) if piece.foam == old else piece)


def moved_with_floats(design: Design, by: Mapping[str, float]) -> Design:
    """Planes moved by their steps [m], and the floats cut to what pipe then shows."""
    return fit_floats(planes_moved(design, by))


def fit_floats(design: Design) -> Design:
    """The design with each float cut and slid so that it lies on the pipe that shows, where it can."""
    bars = lay_out(design, design.arrangement).bars
    step = ruler_step(design.units)
    return floats_changed(design, lambda piece: _fitted(piece, bars[piece.bar], step) or piece)


def _fitted(piece: Float, bar: BarPlace, step: float) -> Float | None:
    """A float cut and slid onto the pipe that shows, or None where nothing of it would be left."""
    size = piece.length
    if size > bar.exposed:
        size = round_down(bar.exposed, step)
    if size <= 0 or bar.spacing <= 0:
        return None
    low, high = bar.faces[0] + size / 2 + SPARE_ROOM, bar.spacing - bar.faces[1] - size / 2 - SPARE_ROOM
    middle = min(max(piece.at * bar.spacing, low), high) if low <= high else (low + high) / 2
    return piece.but(length=size, at=middle / bar.spacing)


def with_float(design: Design, foam: str, bar: BarPlace, size: float, beside: str | None) -> Design:
    """The design with a new piece of foam [m] on the middle of a bar, threaded or strapped to a side."""
    new = Float(
        id=free_id(design.arrangement, "f"),
        name=f"float on {bar.name}"[:80],
        foam=foam,
        bar=bar.id,
        length=size,
        beside=beside,
    )
    return design.arranged(floats=(*design.arrangement.floats, new))


def anew(found: Survey) -> Iterator[Remedy]:
    """All floats cut anew, for lift and trim together: on the bars that carry some, or on the top bars."""
    floats, foams = found.arrangement.floats, found.design.supplies.foams
    foam = floats[0].foam if floats else foams[0].id if foams else None
    beside = floats[0].beside if floats else None
    top = tuple(bar.id for bar in level_bars_at(found, 1))
    for bars in dict.fromkeys((usual_bars(found, 1), top)):
        offer = propose_floats(found, Wish(bars, foam, beside=beside)) if foam and bars else None
        if offer and offer.reached:
            new, unit = offer.design.arrangement.floats, found.design.units
            edit = partial(_with_floats, floats=new)
            total = partial(length, unit=unit)
            label, details = told(
                Step(
                    "Cut all floats anew:",
                    piece.length,
                    piece.id,
                    partial(_on, unit=unit, name=found.frame.bars[piece.bar].name),
                    total,
                    edit,
                )
                for piece in new
            )
            yield Remedy(label, edit, details)


def _on(size: float, unit: Unit, name: str) -> str:
    return f"{length(size, unit)} on {name}"


def _with_floats(design: Design, floats: tuple[Float, ...]) -> Design:
    return design.arranged(floats=floats)


def _replaced(design: Design, new: Float) -> Design:
    return floats_changed(design, lambda piece: new if piece.id == new.id else piece)


def _without_float(design: Design, piece: str) -> Design:
    return design.arranged(floats=tuple(item for item in design.arrangement.floats if item.id != piece))
