"""Remedies for openings: what to drill, where, and what not."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import free_id
from model.coach.sentences import length
from model.design import Design, Opening
from model.frame.layout import BarPlace
from model.solve.hole_places import FACES, HOLE, hole_size, opposite, spots_on
from model.solve.hole_words import drilling_words, face_words
from model.solve.holes import fewest
from model.survey import Survey
from model.water.air.drilling import fault

SAME_LEVEL = 1e-6
"""[m] Bars whose heights differ by less lie at one level."""


def stop_up(survey: Survey, item: Opening) -> tuple[Remedy, ...]:
    """Leave a hole out, or flood the frame instead of sealing it."""
    return (
        _left_out(item),
        Remedy("Let the frame flood instead of sealing it", lambda design: design.arranged(bores="flooded")),
    )


def _undrilled(design: Design, opening: str) -> Design:
    return design.arranged(openings=tuple(o for o in design.arrangement.openings if o.id != opening))


def let_water_in(survey: Survey) -> tuple[Remedy, ...]:
    """The fewest holes that let the air out of every attitude; or a drain and a vent on each top bar."""
    best = fewest(survey)
    vents = Remedy("Drill a drain below and a vent on each top bar", partial(_drilled, bars=_vents(survey)))
    if best is None or not best.openings:
        return (vents,)
    count = len(best.openings)
    label = f"Drill {count} {'hole' if count == 1 else 'holes'}"
    return (Remedy(label, best.apply, tuple(drilling_words(survey, best))), vents)


def drain(survey: Survey) -> tuple[Remedy, ...]:
    """A drain under a lowest bar."""
    return (Remedy("Drill a drain under a lowest bar", partial(_drilled, bars=_drains(survey))),)


def redrill(survey: Survey, item: Opening) -> tuple[Remedy, ...]:
    """A hole of the usual size."""
    size = hole_size(survey)
    label = f"Make it {length(size, survey.design.units)} wide"
    return (Remedy(label, partial(_changed, new=item.but(diameter=size))),)


def open_up(survey: Survey, item: Opening) -> tuple[Remedy, ...]:
    """Another side, or another place on the bar, or no hole at all."""
    return (*_turned(survey, item), *_moved(survey, item), _left_out(item))


def away_from_socket(survey: Survey, item: Opening) -> tuple[Remedy, ...]:
    """The hole further from the socket, or through the fitting where the bar is too short."""
    return (*_moved(survey, item), *_into_fitting(survey, item), _left_out(item))


def _turned(survey: Survey, item: Opening) -> list[Remedy]:
    faces = sorted(FACES, key=lambda face: (len(face), face != "+z"))
    able = [face for face in faces if fault(survey.frame, item.but(face=face)) is None]
    return [
        Remedy(f"Drill its {face_words(face)}", partial(_changed, new=item.but(face=face)))
        for face in able[:1]
    ]


def _moved(survey: Survey, item: Opening) -> list[Remedy]:
    """To the nearest place on its bar that is clear of sockets and of what sits there."""
    bar = survey.frame.bars[item.bar]
    here = [spot for spot in spots_on(survey, bar) if _same_line(spot.face, item.face)]
    if not here:
        return []
    at = min(here, key=lambda spot: abs(spot.at - item.at)).at
    place = length(at * bar.spacing, survey.design.units)
    start = survey.frame.joints[bar.joints[0]].name
    return [Remedy(f"Move it to {place} from {start}", partial(_changed, new=item.but(at=at)))]


def _same_line(a: str, b: str) -> bool:
    return a in (b, opposite(b))


def _into_fitting(survey: Survey, item: Opening) -> list[Remedy]:
    """Through the middle of the nearer fitting, on the same side if no socket is there."""
    end = round(item.at)
    joint = survey.frame.joints[survey.frame.bars[item.bar].joints[end]]
    faces = [item.face, *(face for face in FACES if face != item.face)]
    for face in faces:
        new = item.but(at=float(end), face=face)
        if fault(survey.frame, new) is None:
            side = face_words(face)
            return [Remedy(f"Drill the {side} of the fitting at {joint.name}", partial(_changed, new=new))]
    return []


def _left_out(item: Opening) -> Remedy:
    return Remedy(f"Do not drill {item.name}", partial(_undrilled, opening=item.id))


def _changed(design: Design, new: Opening) -> Design:
    openings = tuple(new if item.id == new.id else item for item in design.arrangement.openings)
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
