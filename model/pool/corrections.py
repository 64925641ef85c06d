"""What a trial may correct in the model: a stated edit that can be looked at, taken and undone.

Each changes one cause, and says so: a measurement cannot tell two causes apart.
"""

from collections.abc import Callable
from functools import partial

from msgspec import Struct

from model.design import Design, Pull
from model.frame.layout import BarPlace
from model.pool.expected import COURSE, expected
from model.pool.results import Result
from model.survey import Survey, survey
from model.thrust.drives import Drive
from model.thrust.senses import Sense
from model.units import format_length, format_mass, snap

FOAM_LEAST, FOAM_MOST = 5.0, 150.0
"""[kg/m3] No foam of swimming tubes is lighter or heavier, wet through."""
WEIGHED = 2.0
"""[kg/m3] How far a density that was worked out from a trial may be off (stated rule)."""
FACTOR_LEAST, FACTOR_MOST = 0.2, 5.0
"""A factor beyond these is a slip of the measurement, not of the model."""
HALVINGS = 30
SAME = 0.002


class Correction(Struct, frozen=True):
    """A change of the model that makes it say what was measured.

    Attributes:
        label: what it does.
        why: from what to what, and what it takes to be the cause.
    """

    label: str
    why: str
    edit: Callable[[Design], Design]


def correction(found: Survey, result: Result) -> Correction | None:
    """The correction that a trial allows, or None where it says nothing about the model or agrees with it."""
    if result.model is None or abs(result.difference or 0.0) <= SAME * max(abs(result.model), 1e-3):
        return None
    kind = result.trial.kind
    if kind == "spare":
        return _foam_from_lift(found, result)
    if kind == "foam":
        return _foam_from_piece(found, result)
    if kind == "showing":
        return _push_in(found, result)
    if kind in ("pull ahead", "pull astern", "pull up"):
        return _thrust(found, result)
    if kind == "course":
        return _drag(found, result)
    return None


def _foam_from_lift(found: Survey, result: Result) -> Correction | None:
    """Lift that is missing is put down to the foam: its density is least known."""
    volumes = {piece.id: piece.foam for piece in found.arrangement.floats}
    volume = sum(part.volume for part in found.parts if part.id in volumes)
    foams = {foam.id: foam for foam in found.design.supplies.foams if foam.id in volumes.values()}
    if volume <= 0 or not foams:
        return None
    step = -(result.difference or 0.0) / volume
    densities = {id: foam.density + step for id, foam in foams.items()}
    if not all(FOAM_LEAST <= density <= FOAM_MOST for density in densities.values()):
        return None
    words = "; ".join(
        f"{foam.name} from {foam.density:.1f} to {densities[id]:.1f} kg/m3" for id, foam in foams.items()
    )
    why = (
        f"{words}. It takes the whole difference of {format_mass(abs(result.difference or 0.0))} to be the "
        "foam's: check the dry weight first"
    )
    return Correction("Correct the density of the foam", why, partial(_with_foam, densities=densities))


def _foam_from_piece(found: Survey, result: Result) -> Correction | None:
    foam = next((foam for foam in found.design.supplies.foams if foam.id == result.trial.about), None)
    if foam is None or not result.model:
        return None
    density = foam.density * result.trial.value / result.model
    if not FOAM_LEAST <= density <= FOAM_MOST:
        return None
    why = f"{foam.name} from {foam.density:.1f} to {density:.1f} kg/m3, as your piece weighs"
    return Correction(
        "Correct the density of the foam", why, partial(_with_foam, densities={foam.id: density})
    )


def _with_foam(design: Design, densities: dict[str, float]) -> Design:
    foams = tuple(
        foam.but(density=round(densities[foam.id], 2), scatter=min(foam.scatter, WEIGHED))
        if foam.id in densities
        else foam
        for foam in design.supplies.foams
    )
    return design.but(supplies=design.supplies.but(foams=foams))


def _push_in(found: Survey, result: Result) -> Correction | None:
    """The two ends of one bar share what it goes in further."""
    bar = found.frame.bars.get(result.trial.about)
    if bar is None or bar.cut is None or not _both_dry(found, bar):
        return None
    depth = snap((bar.cut - result.trial.value) / 2)
    if not 0 <= depth <= _deepest(found, bar):
        return None
    unit = found.design.units
    was, now = format_length(sum(bar.insertions) / 2, unit), format_length(depth, unit)
    why = f"push-in depth of {bar.pipe.name} from {was} to {now}; every cut that is not sawn yet follows"
    return Correction("Correct the push-in depth", why, partial(_with_push_in, pipe=bar.pipe.id, depth=depth))


def _both_dry(found: Survey, bar: BarPlace) -> bool:
    return all(found.frame.joints[joint].joining != "cemented" for joint in bar.joints)


def _deepest(found: Survey, bar: BarPlace) -> float:
    depths = []
    for joint in bar.joints:
        place = found.frame.joints[joint]
        to = next(arm.to for arm in place.arms if arm.bar == bar.id)
        if place.match and to:
            depths.append(place.match.sockets[to].depth)
    return min(depths, default=0.0)


def _with_push_in(design: Design, pipe: str, depth: float) -> Design:
    """The trial takes the place of a dry joint that was measured before."""
    own = design.stock.own
    measured = tuple(item.but(dry_joint=None) if item.pipe == pipe else item for item in own.pipes)
    pipes = tuple(item.but(insertion=depth) if item.id == pipe else item for item in design.stock.pipes)
    return design.but(stock=design.stock.but(pipes=pipes, own=own.but(pipes=measured)))


def _thrust(found: Survey, result: Result) -> Correction | None:
    """All thrusters that pull that way are taken to be off by the same share."""
    if not result.model:
        return None
    factor = result.trial.value / result.model
    if not FACTOR_LEAST <= factor <= FACTOR_MOST:
        return None
    axis, sign = {"pull ahead": (0, 1), "pull astern": (0, -1), "pull up": (2, 1)}[result.trial.kind]
    helps: dict[str, Sense] = {
        drive.thruster: "ahead" if drive.along[axis] * sign > 0 else "astern"
        for drive in found.drives
        if abs(drive.along[axis]) > 1e-6
    }
    ways = {drive.thruster: helps[drive.thruster] for drive in found.drives if _runs(drive, helps)}
    names = ", ".join(drive.name for drive in found.drives if drive.thruster in ways)
    why = f"the pull of {names} times {factor:.2f}, as a pull test of its own for each"
    pulls = {drive.thruster: drive.rated for drive in found.drives if drive.thruster in ways}
    tests = {
        id: Pull(
            ahead=rated.ahead * (factor if ways[id] == "ahead" else 1.0),
            astern=rated.astern * (factor if ways[id] == "astern" else 1.0),
            volts=rated.volts,
            amps=_amps(found.design, id),
        )
        for id, rated in pulls.items()
    }
    return Correction("Correct the pull of the thrusters", why, partial(_with_pulls, tests=tests))


def _runs(drive: Drive, ways: dict[str, Sense]) -> bool:
    """Whether a thruster helps, and can run the way that it helps."""
    return ways.get(drive.thruster) in drive.senses


def _amps(design: Design, thruster: str) -> float | None:
    item = next(item for item in design.arrangement.thrusters if item.id == thruster)
    return item.pull.amps if item.pull else None


def _with_pulls(design: Design, tests: dict[str, Pull]) -> Design:
    thrusters = tuple(
        item.but(pull=tests[item.id]) if item.id in tests else item for item in design.arrangement.thrusters
    )
    return design.arranged(thrusters=thrusters)


def _drag(found: Survey, result: Result) -> Correction | None:
    """The drag at which the model takes the time that was measured, by halving."""
    over = result.trial.over or COURSE
    now = found.arrangement.drag_factor

    def time(factor: float) -> float | None:
        return expected(survey(_with_drag(found.design, factor)), "course", over=over)

    low, high = now * FACTOR_LEAST, now * FACTOR_MOST
    ends = time(low), time(high)
    if ends[0] is None or ends[1] is None or not ends[0] < result.trial.value < ends[1]:
        return None
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if (time(middle) or 0.0) < result.trial.value:
            low = middle
        else:
            high = middle
        if high - low < SAME * low:
            break
    factor = round((low + high) / 2, 3)
    why = f"drag every way from {now:.2f} to {factor:.2f} times what is worked out; check the pull first"
    return Correction("Correct the drag", why, partial(_with_drag, factor=factor))


def _with_drag(design: Design, factor: float) -> Design:
    return design.arranged(drag_factor=max(0.1, min(10.0, factor)))
