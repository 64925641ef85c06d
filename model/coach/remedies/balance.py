"""Remedies for weight, buoyancy and the order of floats and weights."""

from functools import partial
from math import pi

from model.coach.finding import Remedy
from model.coach.remedies.changes import (
    FOAM_STEP,
    ballasts_changed,
    floats_changed,
    free_id,
    in_turn,
    round_down,
    ruler_step,
)
from model.coach.remedies.floats import fit_floats, moved_with_floats, with_float
from model.coach.remedies.level import level
from model.coach.sentences import counted, grams, length
from model.design import Ballast, Design, Float, Foam
from model.design.equipment import STEEL_DENSITY
from model.frame.layout import BarPlace
from model.parts import Part
from model.solve.places import level_bars_at
from model.survey import Survey, survey
from model.units import snap
from model.water.balance import GRAVITY

__all__ = ["adjust_lift", "floats_up", "level"]

AIM = 0.025
"""[kg] Spare buoyancy aimed at: the middle of 10 to 40 g (DEFAULTS)."""
AIM_SHARE = (0.006, 0.02)
"""Least and most of what is displaced that is aimed at, well inside 0.3 to 3 %."""
AIM_OF_THRUST = 0.2
"""Most of the down thrust that is aimed at, inside 25 %."""
KEPT_AT_DEPTH = 0.005
"""[kg] Spare buoyancy that is left where the foam is squeezed most."""
SAME_LEVEL = 1e-6
"""[m] Bars whose heights differ by less lie at one level."""
FoamPlace = tuple[BarPlace, str | None]
"""A bar for foam, and the side that it is strapped to; None where it is threaded."""
RAISED = (0.013, 0.026, 0.051, 0.102)
"""[m] How far a level is moved to part lift from weight: about 1/2, 1, 2 and 4 in."""
BALLAST_STEP = 0.005
"""[kg] Washers and rod are weighed out in steps of 5 g (common practice)."""


def aim(found: Survey) -> float:
    """The spare buoyancy [kg] that suits a vehicle."""
    lifted = found.balance.displaced * found.balance.density
    wanted = min(max(AIM, AIM_SHARE[0] * lifted), AIM_SHARE[1] * lifted)
    down = found.thrust.down / GRAVITY
    return min(wanted, AIM_OF_THRUST * down) if down else wanted


def adjust_lift(found: Survey) -> tuple[Remedy, ...]:
    """Foam cut longer or shorter, weights made heavier or lighter, or new ones added."""
    lack = aim(found) - found.balance.spare
    remedies = [*_resized_foam(found, lack), *_resized_ballast(found, lack)]
    if lack > 0:
        remedies += _new_foam(found, lack)
    else:
        remedies += _new_ballast(found, -lack)
    return tuple(remedies)


def lift_at_depth(found: Survey, spare: float) -> tuple[Remedy, ...]:
    """Foam cut longer or added, so that the spare buoyancy [kg] at depth comes to nothing less than 5 g."""
    lack = KEPT_AT_DEPTH - spare
    lack /= 1 - found.design.brief.foam_squeeze / 100  # what is added is squeezed too
    return (*_resized_foam(found, lack), *_resized_ballast(found, lack), *_new_foam(found, lack))


def lift_per_metre(foam: Foam, density: float) -> float:
    """What a metre of foam lifts in water of a density [kg/m]."""
    return pi / 4 * (foam.outside_diameter**2 - foam.hole**2) * (density - foam.density)


def _resized_foam(found: Survey, lack: float) -> list[Remedy]:
    """Every float scaled alike, cut to whole steps of foam or, if that is too coarse, of the ruler."""
    design = found.design
    foams = {foam.id: foam for foam in design.supplies.foams}
    lift = sum(
        lift_per_metre(foams[piece.foam], found.balance.density) * piece.length
        for piece in found.arrangement.floats
    )
    if lift <= 0 or lift + lack <= 0:
        return []
    factor = (lift + lack) / lift
    remedies = []
    for step in (FOAM_STEP[design.units], ruler_step(design.units)):
        edit = partial(_scaled_foam, factor=factor, step=step)
        after = edit(design).arrangement.floats
        changes = dict.fromkeys(
            f"{length(a.length, design.units)} to {length(b.length, design.units)}"
            for a, b in zip(found.arrangement.floats, after, strict=True)
            if a.length != b.length
        )
        if changes:
            remedies.append(Remedy(f"Cut the foam from {', '.join(list(changes)[:3])}", edit))
    return remedies


def _scaled_foam(design: Design, factor: float, step: float) -> Design:
    def scaled(piece: Float) -> Float:
        return piece.but(length=max(step, snap(round(piece.length * factor / step) * step)))

    return fit_floats(floats_changed(design, scaled))


def _resized_ballast(found: Survey, lack: float) -> list[Remedy]:
    """Every weight scaled alike."""
    wet = sum(_wet(piece, found.balance.density) for piece in found.arrangement.ballasts)
    if wet <= 0 or wet - lack <= 0:
        return []
    edit = partial(_scaled_ballast, factor=(wet - lack) / wet)
    before = sum(piece.mass for piece in found.arrangement.ballasts)
    after = sum(piece.mass for piece in edit(found.design).arrangement.ballasts)
    return [Remedy(f"Change the weights from {grams(before)} to {grams(after)} together", edit)]


def _wet(piece: Ballast, density: float) -> float:
    return piece.mass * (1 - density / piece.density)


def _scaled_ballast(design: Design, factor: float) -> Design:
    def scaled(piece: Ballast) -> Ballast:
        return piece.but(mass=max(BALLAST_STEP, round(piece.mass * factor / BALLAST_STEP) * BALLAST_STEP))

    return ballasts_changed(design, scaled)


def _new_foam(found: Survey, lack: float) -> list[Remedy]:
    """Foam on the top bars that carry none, the same length on each."""
    step = ruler_step(found.design.units)
    remedies = []
    for foam in found.design.supplies.foams:
        for how, places in _foam_places(found):
            each = lack / lift_per_metre(foam, found.balance.density) / len(places)
            room = min(round_down(bar.exposed, step) for bar, _ in places)
            size = min(round_down(each, step) + step, room)
            if size > 0:
                pieces = f"{counted(len(places), 'piece')} of {length(size, found.design.units)}"
                edit = partial(_with_foam, foam=foam.id, size=size, places=places)
                remedies.append(Remedy(f"{how[0]} {pieces} of {foam.name} {how[1]}", edit))
    return remedies


def _foam_places(found: Survey) -> list[tuple[tuple[str, str], list[FoamPlace]]]:
    """Sets of bars for new foam, each with the words for it: along, across, or strapped on the inside."""
    taken = {item.bar for item in (*found.arrangement.floats, *found.arrangement.thrusters)}
    top = [bar for bar in level_bars_at(found, 1) if bar.id not in taken and bar.exposed > 0]
    along = [bar for bar in top if abs(bar.along[0]) > 0.9]
    across = [bar for bar in top if bar not in along]
    middle = found.balance.g[1]
    inside = [(bar, "-y" if bar.start[1] > middle else "+y") for bar in along]
    ways: list[tuple[tuple[str, str], list[FoamPlace]]] = [
        (("Thread", "on the top bars"), [(bar, None) for bar in along]),
        (("Thread", "on the top cross bars"), [(bar, None) for bar in across]),
        (("Strap", "inside the top bars"), list(inside)),
        (("Strap", "on top of the top bars"), [(bar, "+z") for bar in along or across]),
    ]
    return [(words, places) for words, places in ways if places]


def _with_foam(design: Design, foam: str, size: float, places: list[FoamPlace]) -> Design:
    for bar, beside in places:
        design = with_float(design, foam, bar, size, beside)
    return fit_floats(design)


def _new_ballast(found: Survey, excess: float) -> list[Remedy]:
    """Steel on the lowest bars, the same on each."""
    bars = bottom_bars(found)
    if not bars:
        return []
    each = excess / (1 - found.balance.density / STEEL_DENSITY) / len(bars)
    mass = max(BALLAST_STEP, round(each / BALLAST_STEP) * BALLAST_STEP)
    edit = partial(with_ballast, mass=mass, bars=bars)
    return [Remedy(f"Strap {grams(mass)} of coated steel under {_each(bars)}", edit)]


def _each(bars: list[BarPlace]) -> str:
    return f"each of {len(bars)} low bars" if len(bars) > 1 else bars[0].name


def with_ballast(design: Design, mass: float, bars: list[BarPlace]) -> Design:
    """The design with a steel weight [kg] strapped under the middle of each of some bars."""
    for bar in bars:
        new = Ballast(
            id=free_id(design.arrangement, "w"), name=f"weight on {bar.name}"[:80], bar=bar.id, mass=mass
        )
        design = design.arranged(ballasts=(*design.arrangement.ballasts, new))
    return design


def top_bars(found: Survey) -> list[BarPlace]:
    """The level bars at the top, those that run fore and aft if there are any."""
    return _extreme_bars(found, 1)


def bottom_bars(found: Survey) -> list[BarPlace]:
    """The level bars at the bottom, those that run fore and aft if there are any."""
    return _extreme_bars(found, -1)


def _extreme_bars(found: Survey, sign: int) -> list[BarPlace]:
    there = level_bars_at(found, sign)
    return [bar for bar in there if abs(bar.along[0]) > 0.9] or there


def floats_up(found: Survey) -> tuple[Remedy, ...]:
    """Floats moved to the top bars, weights to the lowest, or more of both."""
    if not top_bars(found):
        return ()
    lack = aim(found) - found.balance.spare
    fresh = _new_foam(found, lack) if lack > 0 else []
    return (*_put_in_order(found), *_higher(found), *_more_of_both(found), *fresh)


def _higher(found: Survey) -> list[Remedy]:
    """The highest level moved up or the lowest down, so that lift and weight come to lie further apart."""
    levels = sorted(found.arrangement.levels, key=lambda plane: plane.at)
    if len(levels) < 2:
        return []
    step = ruler_step(found.design.units)
    ways = [(by, plane, way) for by in RAISED for plane, way in ((levels[-1], 1), (levels[0], -1))]
    remedies = []
    for by, plane, way in ways:
        size = round_down(by, step)
        label = f"Move {plane.name} {'up' if way > 0 else 'down'} by {length(size, found.design.units)}"
        remedies.append(Remedy(label, partial(moved_with_floats, by={plane.id: way * size})))
    return remedies


def _put_in_order(found: Survey) -> list[Remedy]:
    """What there is, moved: floats to the top, weights to the bottom, or both."""
    raised = partial(_raised, to=[bar.id for bar in top_bars(found)])
    lowered = partial(_lowered, to=[bar.id for bar in bottom_bars(found)])
    ways: list[Remedy] = []
    if found.arrangement.floats:
        ways.append(Remedy("Move the floats to the top bars", raised))
    if found.arrangement.ballasts:
        ways.append(Remedy("Move the weights to the lowest bars", lowered))
    if found.arrangement.floats and found.arrangement.ballasts:
        both = partial(in_turn, edits=(raised, lowered))
        ways.append(Remedy("Move the floats to the top and the weights to the lowest bars", both))
    return ways


def _more_of_both(found: Survey) -> list[Remedy]:
    """Weights added below and as much foam as they ask for above."""
    bars = bottom_bars(found)
    remedies = []
    for mass in (0.05, 0.1, 0.2, 0.4):
        added = partial(with_ballast, mass=mass, bars=bars)
        after = survey(added(found.design))
        for lift in _resized_foam(after, aim(after) - after.balance.spare)[:1] if bars else ():
            label = f"Strap {grams(mass)} under {_each(bars)}, then: {lift.label}"
            edit = partial(in_turn, edits=(added, lift.edit))
            remedies.append(Remedy(label, edit))
    return remedies


def _nearest(part: Part, bars: list[BarPlace]) -> BarPlace:
    x, y, _ = part.volume_centre
    return min(bars, key=lambda bar: (bar.point(0.5)[0] - x) ** 2 + (bar.point(0.5)[1] - y) ** 2)


def _raised(design: Design, to: list[str]) -> Design:
    found = survey(design)
    parts = {part.id: part for part in found.parts if part.kind == "float"}
    bars = [found.frame.bars[bar] for bar in to]
    moved = floats_changed(design, lambda piece: piece.but(bar=_nearest(parts[piece.id], bars).id))
    return fit_floats(moved)


def _lowered(design: Design, to: list[str]) -> Design:
    found = survey(design)
    parts = {part.id: part for part in found.parts if part.kind == "ballast"}
    bars = [found.frame.bars[bar] for bar in to]
    return ballasts_changed(design, lambda piece: piece.but(bar=_nearest(parts[piece.id], bars).id))
