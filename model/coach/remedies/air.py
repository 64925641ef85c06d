"""Remedies for air and water in the pipes: the fewest holes that let them out."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.balance import adjust_lift
from model.coach.remedies.holes import drain as drain_low
from model.coach.remedies.holes import let_water_in
from model.coach.sentences import listed
from model.design import Design
from model.solve.hole_words import drilling_words
from model.solve.holes import Drilling, fewest
from model.survey import Survey, survey
from model.water.air.pockets import Pocket


def let_out(survey: Survey) -> tuple[Remedy, ...]:
    """The fewest holes beside those that there are; or all holes drilled anew, where that is fewer."""
    remedies = []
    added = fewest(survey)
    if added is not None and added.openings:
        remedies.append(_drilled(survey, added, f"Drill {_holes(added)} more"))
    anew = fewest(survey, keep=False)
    if anew is not None and anew.openings:
        remedies.append(_drilled(survey, anew, f"Drill {_holes(anew)} in place of all there are"))
    return tuple(remedies)


def drain(survey: Survey) -> tuple[Remedy, ...]:
    """A drain under a lowest bar, or the fewest holes that leave neither air nor water."""
    return (*drain_low(survey), *let_out(survey))


def unplug(found: Survey, void: Pocket) -> tuple[Remedy, ...]:
    """The plugs that close a room left out, so that it floods with the rest."""
    bars = {stretch.bar for stretch in void.stretches}
    plugs = tuple(plug for plug in found.arrangement.plugs if plug.bar in bars)
    label = f"Leave {listed([plug.name for plug in plugs])} out"
    return (Remedy(label, partial(_without_plugs, plugs=frozenset(plug.id for plug in plugs))),)


def _without_plugs(design: Design, plugs: frozenset[str]) -> Design:
    return design.arranged(plugs=tuple(plug for plug in design.arrangement.plugs if plug.id not in plugs))


def flood(found: Survey) -> tuple[Remedy, ...]:
    """Holes instead of glue, and where the lift of the pipes is missed, foam for it."""
    remedies = []
    for drilled in let_water_in(survey(found.design.arranged(bores="flooded"))):
        edit = partial(_flooded, drilled=drilled)
        label = f"Let it flood instead: {_small(drilled.label)}"
        remedies.append(Remedy(label, edit, drilled.details))
        for lift in adjust_lift(survey(edit(found.design))):
            both = partial(_flooded, drilled=drilled, lift=lift)
            remedies.append(Remedy(f"{label}, and {_small(lift.label)}", both, drilled.details))
    return tuple(remedies)


def _small(label: str) -> str:
    return label[0].lower() + label[1:]


def _flooded(design: Design, drilled: Remedy, lift: Remedy | None = None) -> Design:
    flooded = drilled.edit(design.arranged(bores="flooded"))
    return lift.edit(flooded) if lift else flooded


def _holes(drilling: Drilling) -> str:
    count = len(drilling.openings)
    return f"{count} {'hole' if count == 1 else 'holes'}"


def _drilled(survey: Survey, drilling: Drilling, label: str) -> Remedy:
    return Remedy(label, partial(_apply, drilling=drilling), tuple(drilling_words(survey, drilling)))


def _apply(design: Design, drilling: Drilling) -> Design:
    return drilling.apply(design)
