"""Remedies for pieces that are sawn already or too short."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import round_up, ruler_step
from model.coach.sentences import length
from model.design import Design
from model.errors import EditError
from model.frame.held import give_up_piece, settled
from model.frame.layout import BarPlace
from model.sizing import set_cut
from model.survey import Survey, survey


def new_piece(found: Survey, bar: BarPlace) -> tuple[Remedy, ...]:
    """Saw a new piece for the bar, as long as its place needs."""
    edit = partial(give_up_piece, bar=bar.id)
    cut = survey(edit(found.design)).frame.bars[bar.id].cut
    where = f" of {length(cut, found.design.units)}" if cut else ""
    return (Remedy(f"Saw a new piece{where} for {bar.name}", edit),)


def settle() -> tuple[Remedy, ...]:
    """Draw each plane where sawn pieces hold it."""
    return (Remedy("Draw the planes where the sawn pieces hold them", settled),)


def longer_piece(found: Survey, bar: BarPlace, depth: float) -> tuple[Remedy, ...]:
    """Move the planes apart, so that the piece cannot slide into a socket whole."""
    step = ruler_step(found.design.units)
    wanted = round_up(depth + step, step)
    edit = partial(_stretched, bar=bar.id, wanted=wanted)
    return (Remedy(f"Make {bar.name} {length(wanted, found.design.units)} long", edit),)


def _stretched(design: Design, bar: str, wanted: float) -> Design:
    """The design with a bar made longer, or as it is where that cannot be."""
    try:
        return set_cut(design, bar, wanted)
    except EditError:
        return design
