"""Remedies for a broken size box: which plane to move, and what that makes of the cuts."""

from functools import partial

from model.coach.finding import Remedy
from model.coach.remedies.changes import GROUPS, planes_moved, round_up, ruler_step
from model.coach.remedies.floats import fit_floats
from model.coach.sentences import length
from model.design import Design, Plane
from model.survey import Survey, survey
from model.units import snap

SIDES = (("ahead", "aft"), ("to port", "to starboard"), ("up", "down"))


def fit_in_box(found: Survey, axis: int) -> tuple[Remedy, ...]:
    """Ways to bring the vehicle inside its limit along an axis (0 x, 1 y, 2 z)."""
    over = found.extents.over[axis]
    step = ruler_step(found.design.units)
    planes: tuple[Plane, ...] = getattr(found.arrangement, GROUPS[axis])
    remedies = list(_pull_in(found, axis, round_up(over, step)))
    if len(planes) > 1:
        low, high = min(planes, key=_at), max(planes, key=_at)
        half = round_up(over / 2, step)
        ways: list[dict[str, float]] = [
            {low.id: half, high.id: -half},
            {high.id: -2 * half},
            {low.id: 2 * half},
            _shrunk(planes, over),
        ]
        if axis == 0:
            ways = [ways[1], ways[2], ways[0], ways[3]]
        remedies += [_moved(found, axis, by) for by in ways]
    return tuple(remedies)


def _at(plane: Plane) -> float:
    return plane.at


def _shrunk(planes: tuple[Plane, ...], over: float) -> dict[str, float]:
    """All planes drawn towards the middle in proportion, to take a length off the whole [m]."""
    low, high = min(map(_at, planes)), max(map(_at, planes))
    middle, span = (low + high) / 2, high - low
    if span <= 0:
        return {}
    return {plane.id: snap(-(plane.at - middle) / span * (over + 1e-6)) for plane in planes}


def _moved(found: Survey, axis: int, by: dict[str, float]) -> Remedy:
    edit = partial(_planes_and_floats, by=by)
    return Remedy(_label(found, axis, by, edit(found.design)), edit)


def _planes_and_floats(design: Design, by: dict[str, float]) -> Design:
    """Planes moved, and the floats cut to what pipe then shows."""
    return fit_floats(planes_moved(design, by))


def _label(found: Survey, axis: int, by: dict[str, float], after: Design) -> str:
    """Which planes move, and which cut becomes what."""
    unit = found.design.units
    planes: tuple[Plane, ...] = getattr(found.arrangement, GROUPS[axis])
    if len(by) == len(planes) > 2:
        moves = "Draw all planes together"
    else:
        names = {plane.id: plane.name for plane in planes}
        moves = "Move " + " and ".join(
            f"{names[plane]} {length(abs(step), unit)} {SIDES[axis][step < 0]}" for plane, step in by.items()
        )
    return f"{moves}: {_cuts(found, after)}"


def _cuts(found: Survey, after: Design) -> str:
    unit = found.design.units
    bars = survey(after).frame.bars
    changes: dict[str, str] = {}
    for bar in found.frame.bars.values():
        cut = bars[bar.id].cut
        if bar.cut is not None and cut is not None and abs(cut - bar.cut) > 1e-6:
            text = f"cut {bar.letter} from {length(bar.cut, unit)} to {length(cut, unit)}"
            changes.setdefault(text, text)
    shown = list(changes)[:2]
    return ", ".join(shown) + (" and others" if len(changes) > 2 else "") if shown else "no cut changes"


def _pull_in(found: Survey, axis: int, over: float) -> list[Remedy]:
    """Equipment that alone reaches past the rest, moved inwards by the excess [m]."""
    remedies: list[Remedy] = []
    box = found.extents.box
    for name in ("thrusters", "attachments"):
        for item in getattr(found.arrangement, name):
            for side in (1, -1):
                rest = [part.box for part in found.parts if part.id != item.id and part.box]
                own = [part.box for part in found.parts if part.id == item.id and part.box]
                if not rest or not own or box is None:
                    continue
                reach = max(b.high[axis] for b in own) if side > 0 else -min(b.low[axis] for b in own)
                others = max(b.high[axis] for b in rest) if side > 0 else -min(b.low[axis] for b in rest)
                if reach - others >= over - 1e-6:
                    label = f"Move {item.name} {length(over, found.design.units)} {SIDES[axis][side > 0]}"
                    edit = partial(_shifted, group=name, item=item.id, axis=axis, by=-side * over)
                    remedies.append(Remedy(label, edit))
    return remedies


def _shifted(design: Design, group: str, item: str, axis: int, by: float) -> Design:
    """A thruster or attachment moved along an axis by changing its offset [m]."""
    changed = []
    for piece in getattr(design.arrangement, group):
        if piece.id == item:
            offset = list(piece.offset)
            offset[axis] += by
            piece = piece.but(offset=tuple(offset))
        changed.append(piece)
    return design.arranged(**{group: tuple(changed)})
