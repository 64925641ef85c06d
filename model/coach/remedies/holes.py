"""Remedies for openings: what to drill, where, and what not."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import free_id
from model.coach.sentences import length
from model.design import Design, Opening
from model.frame.layout import BarPlace
from model.survey import Survey

HOLE = 0.006
"""[m] Diameter of a new vent or drain hole (common practice)."""
SAME_LEVEL = 1e-6
"""[m] Bars whose heights differ by less lie at one level."""


def stop_up(survey: Survey, item: Opening) -> tuple[Remedy, ...]:
    """Leave a hole out, or flood the frame instead of sealing it."""
    return (
        Remedy(f"Do not drill {item.name}", partial(_undrilled, opening=item.id)),
        Remedy("Let the frame flood instead of sealing it", lambda design: design.arranged(bores="flooded")),
    )


def _undrilled(design: Design, opening: str) -> Design:
    return design.arranged(openings=tuple(o for o in design.arrangement.openings if o.id != opening))


def let_water_in(survey: Survey) -> tuple[Remedy, ...]:
    """A drain under a lowest bar and a vent on each highest one."""
    return (Remedy("Drill a drain below and a vent on each top bar", partial(_drilled, bars=_vents(survey))),)


def drain(survey: Survey) -> tuple[Remedy, ...]:
    """A drain under a lowest bar."""
    return (Remedy("Drill a drain under a lowest bar", partial(_drilled, bars=_drains(survey))),)


def redrill(survey: Survey, item: Opening) -> tuple[Remedy, ...]:
    """A hole of the usual size."""
    size = max(HOLE, survey.design.brief.thresholds.hole_least)
    label = f"Make it {length(size, survey.design.units)} wide"
    return (Remedy(label, partial(_redrilled, opening=item.id, size=size)),)


def _redrilled(design: Design, opening: str, size: float) -> Design:
    openings = tuple(
        item.but(diameter=size) if item.id == opening else item for item in design.arrangement.openings
    )
    return design.arranged(openings=openings)


def _level_bars(survey: Survey) -> list[BarPlace]:
    bars = list(survey.frame.bars.values())
    return [bar for bar in bars if abs(bar.along[2]) < 0.1] or bars


def _drains(survey: Survey) -> tuple[tuple[str, str, float], ...]:
    """The lowest bar: its id, the face to drill and where."""
    bar = min(_level_bars(survey), key=lambda bar: min(bar.start[2], bar.end[2]))
    return ((bar.id, "-z", _lower_end(bar)),)


def _lower_end(bar: BarPlace) -> float:
    if abs(bar.along[2]) < 0.1:
        return 0.5
    return 0.25 if bar.start[2] < bar.end[2] else 0.75


def _vents(survey: Survey) -> tuple[tuple[str, str, float], ...]:
    top = max(bar.point(0.5)[2] for bar in _level_bars(survey))
    vents = [(bar.id, "+z", 0.5) for bar in _level_bars(survey) if bar.point(0.5)[2] > top - SAME_LEVEL]
    return (*_drains(survey), *vents)


def _drilled(design: Design, bars: tuple[tuple[str, str, float], ...]) -> Design:
    names = {bar.id: bar.name for bar in design.arrangement.bars}
    size = max(HOLE, design.brief.thresholds.hole_least)
    for bar, face, at in bars:
        name = f"{'drain' if face == '-z' else 'vent'} in {names[bar]}"[:80]
        new = Opening(
            id=free_id(design.arrangement, "o"), name=name, bar=bar, at=at, face=face, diameter=size
        )
        design = design.arranged(openings=(*design.arrangement.openings, new))
    return design
