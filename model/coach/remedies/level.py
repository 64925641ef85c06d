"""Remedies for trim: what to slide, lengthen or add so that B comes to lie over G."""

from collections.abc import Callable
from functools import partial
from math import pi

from model.coach.finding import Remedy
from model.coach.remedies.changes import (
    Edit,
    ballasts_changed,
    floats_changed,
    free_id,
    in_turn,
    round_down,
    ruler_step,
)
from model.coach.remedies.floats import fit_floats, with_float
from model.coach.remedies.steps import Step, told
from model.coach.sentences import grams, length
from model.design import Ballast, Design, Float
from model.design.equipment import STEEL_DENSITY
from model.frame.layout import BarPlace
from model.parts import Part
from model.survey import Survey, survey
from model.units import snap

WAYS = (("ahead", "aft"), ("to port", "to starboard"))
ROUNDS = 3
"""How often both axes are corrected: what clears one disturbs the other a little."""
NEAR = 0.0005
"""[m] B this near over G along an axis is level enough for a remedy."""


def level(found: Survey) -> tuple[Remedy, ...]:
    """Slide floats and weights, cut floats longer on one side, or add a weight; the gentlest first."""
    methods: tuple[Callable[[Survey, int], Step | None], ...] = (_slide_floats, _slide_weights, _trade_foam)
    remedies = [_corrected(found, (method,)) for method in methods]
    added = [_add_weight, _add_float] if found.balance.spare > 0 else [_add_float, _add_weight]
    remedies += [_corrected(found, methods), *(_corrected(found, (method,)) for method in added)]
    return tuple(remedy for remedy in remedies if remedy)


def _corrected(found: Survey, methods: tuple[Callable[[Survey, int], Step | None], ...]) -> Remedy | None:
    """The steps that bring B over G, each by the method that leaves the least."""
    steps: list[Step] = []
    here = found
    for _ in range(ROUNDS):
        for axis in (0, 1):
            best = _best_step(here, axis, methods)
            if best is not None:
                step, here = best
                steps.append(step)
    label, details = told(steps)
    edit = partial(in_turn, edits=tuple(step.edit for step in steps))
    return Remedy(label, edit, details) if label else None


def _best_step(
    here: Survey, axis: int, methods: tuple[Callable[[Survey, int], Step | None], ...]
) -> tuple[Step, Survey] | None:
    off = abs(_lever(here, axis))
    if off < NEAR:
        return None
    tried = [(step, survey(step.edit(here.design))) for method in methods if (step := method(here, axis))]
    better = [(step, after) for step, after in tried if abs(_lever(after, axis)) < off - 1e-6]
    return min(better, key=lambda pair: abs(_lever(pair[1], axis)), default=None)


def _lever(found: Survey, axis: int) -> float:
    """How far B lies from G along an axis [m]."""
    return found.balance.b[axis] - found.balance.g[axis]


def _effect(found: Survey, parts: list[Part]) -> float:
    """How far B - G moves for each metre that some parts are moved."""
    balance = found.balance
    if not balance.displaced or not balance.mass:
        return 0.0
    return sum(part.volume / balance.displaced - part.mass / balance.mass for part in parts)


def _slidable(found: Survey, kind: str, axis: int) -> dict[str, Part]:
    """Floats or weights on bars that run along an axis."""
    items = found.arrangement.floats if kind == "float" else found.arrangement.ballasts
    bars = {bar.id for bar in found.frame.bars.values() if bar.spacing and abs(bar.along[axis]) > 0.9}
    along = {item.id for item in items if item.bar in bars}
    return {part.id: part for part in found.parts if part.kind == kind and part.id in along}


def _slide(found: Survey, kind: str, axis: int) -> tuple[dict[str, float], float] | None:
    """The new shares of what slides, and how far it goes [m]."""
    parts = _slidable(found, kind, axis)
    effect = _effect(found, list(parts.values()))
    if abs(effect) < 1e-9:
        return None
    step = ruler_step(found.design.units)
    by = snap(round(-_lever(found, axis) / effect / step) * step)
    items = found.arrangement.floats if kind == "float" else found.arrangement.ballasts
    shares = {}
    for item in items:
        if item.id in parts:
            bar = found.frame.bars[item.bar]
            shares[item.id] = min(1.0, max(0.0, item.at + by * bar.along[axis] / bar.spacing))
    return (shares, by) if by else None


def _sliding(doing: str, found: Survey, axis: int, by: float, edit: Edit) -> Step:
    """A step along an axis [m]."""
    unit = found.design.units

    def words(by: float) -> str:
        return f"{length(abs(by), unit)} {WAYS[axis][by < 0]}"

    return Step(doing, by, WAYS[axis][0], words, words, edit)


def _slide_floats(found: Survey, axis: int) -> Step | None:
    slide = _slide(found, "float", axis)
    if slide is None:
        return None
    shares, by = slide
    return _sliding("Slide the floats", found, axis, by, partial(_floats_at, shares=shares))


def _floats_at(design: Design, shares: dict[str, float]) -> Design:
    return fit_floats(floats_changed(design, lambda item: item.but(at=shares.get(item.id, item.at))))


def _slide_weights(found: Survey, axis: int) -> Step | None:
    slide = _slide(found, "ballast", axis)
    if slide is None:
        return None
    shares, by = slide
    return _sliding("Slide the weights", found, axis, by, partial(_weights_at, shares=shares))


def _weights_at(design: Design, shares: dict[str, float]) -> Design:
    return ballasts_changed(design, lambda item: item.but(at=shares.get(item.id, item.at)))


def _trade_foam(found: Survey, axis: int) -> Step | None:
    """Foam cut longer on one side and shorter on the other."""
    parts = {part.id: part for part in found.parts if part.kind == "float"}
    if len(parts) < 2:
        return None
    places = {name: part.volume_centre[axis] for name, part in parts.items()}
    middle = (min(places.values()) + max(places.values())) / 2
    sides = {
        name: 1 if place > middle + NEAR else -1 if place < middle - NEAR else 0
        for name, place in places.items()
    }
    if not any(sides.values()):
        return None
    lengths = {piece.id: piece.length for piece in found.arrangement.floats}
    effect = sum(
        sides[name] * places[name] * _effect(found, [part]) / lengths[name] for name, part in parts.items()
    )
    step = ruler_step(found.design.units)
    by = snap(round(-_lever(found, axis) / effect / step) * step) if effect else 0.0
    if not by:
        return None
    new = {name: max(step, lengths[name] + side * by) for name, side in sides.items()}
    unit = found.design.units

    def words(by: float) -> str:
        more, less = WAYS[axis] if by > 0 else WAYS[axis][::-1]
        return f"{length(abs(by), unit)} longer {more} and shorter {less}"

    return Step("Cut each float", by, WAYS[axis][0], words, words, partial(_floats_of, lengths=new))


def _floats_of(design: Design, lengths: dict[str, float]) -> Design:
    def cut(piece: Float) -> Float:
        return piece.but(length=lengths.get(piece.id, piece.length))

    return fit_floats(floats_changed(design, cut))


def _add_weight(found: Survey, axis: int) -> Step | None:
    """A steel weight on the low bar furthest out on the side that is up."""
    lever, balance = _lever(found, axis), found.balance
    flat = [bar for bar in found.frame.bars.values() if abs(bar.along[2]) < 0.1]
    if not flat or not balance.displaced:
        return None
    sign = 1 if lever > 0 else -1
    bar = max(flat, key=lambda bar: (sign * bar.point(0.5)[axis], -bar.point(0.5)[2]))
    arm = bar.point(0.5)[axis] - balance.g[axis]
    gain = arm * (1 / balance.mass - 1 / (STEEL_DENSITY * balance.displaced))
    if gain * sign <= 0:
        return None
    mass = round(lever / gain / 0.005) * 0.005
    if mass <= 0:
        return None
    new = Ballast(
        id=free_id(found.arrangement, "w"), name=f"trim weight on {bar.name}"[:80], bar=bar.id, mass=mass
    )
    edit = partial(_weighted, new=new)
    return Step(
        "Strap coated steel:", mass, bar.id, lambda mass: f"{grams(mass)} under {bar.name}", grams, edit
    )


def _weighted(design: Design, new: Ballast) -> Design:
    """The design with a weight more, or with the one heavier that a step before strapped there."""
    same = {"name": new.name, "bar": new.bar, "at": new.at, "beside": new.beside}
    there = {
        item.id
        for item in design.arrangement.ballasts
        if all(getattr(item, field) == value for field, value in same.items())
    }
    if there:
        return ballasts_changed(
            design, lambda item: item.but(mass=item.mass + new.mass) if item.id in there else item
        )
    return design.arranged(ballasts=(*design.arrangement.ballasts, new))


def _add_float(found: Survey, axis: int) -> Step | None:
    """Foam on the high bar furthest out on the side that is down, among those that carry none."""
    lever, balance, foams = _lever(found, axis), found.balance, found.design.supplies.foams
    taken = {item.bar for item in (*found.arrangement.floats, *found.arrangement.thrusters)}
    free = [bar for bar in found.frame.bars.values() if bar.exposed > 0 and bar.id not in taken]
    flat = [bar for bar in free if abs(bar.along[2]) < 0.1]
    if not flat or not foams or not balance.displaced or not balance.mass:
        return None
    sign, foam = (-1 if lever > 0 else 1), foams[0]
    bar = max(flat, key=lambda bar: (sign * bar.point(0.5)[axis], bar.point(0.5)[2]))
    at = bar.point(0.5)[axis]
    gain = (at - balance.b[axis]) / balance.displaced
    gain -= foam.density * (at - balance.g[axis]) / balance.mass
    if gain * sign <= 0:
        return None
    section = pi / 4 * (foam.outside_diameter**2 - foam.hole**2)
    step = ruler_step(found.design.units)
    size = min(snap(round(-lever / gain / section / step) * step), round_down(bar.exposed, step))
    if size <= 0:
        return None
    edit = partial(_floated, foam=foam.id, bar=bar, size=size)
    unit = found.design.units
    return Step(
        f"Thread {foam.name}:",
        size,
        bar.id,
        lambda size: f"{length(size, unit)} on {bar.name}",
        lambda size: length(size, unit),
        edit,
    )


def _floated(design: Design, foam: str, bar: BarPlace, size: float) -> Design:
    return fit_floats(with_float(design, foam, bar, size, None))
