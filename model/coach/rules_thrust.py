"""Findings about each thruster: what holds it, what is near its propeller, what stands in its stream."""

from collections.abc import Iterator
from functools import partial

from model.coach.finding import About, Finding, Severity
from model.coach.remedies import thrust as remedy
from model.coach.remedies import thrusters as hold_remedy
from model.coach.say import say
from model.coach.sentences import length
from model.design import COMPARISON_SLACK, Thruster
from model.parts import Cylinder
from model.survey import Survey
from model.thrust.around import depth_asked, disc_asked, tether_asked
from model.thrust.clear import Clearance, Stream
from model.thrust.depth import propeller_depths
from model.thrust.mounts import MountPlan, mount_plans
from model.thrust.nearest import gap

TOUCHING = 0.0005
"""[m] Solids that share less than twice this only touch."""


def mounts(survey: Survey) -> Iterator[Finding]:
    """A mount that sits on a hub, has no socket for its stub, or whose tie holes are not planned."""
    items = {item.id: item for item in survey.arrangement.thrusters}
    for plan in mount_plans(survey.design, survey.arrangement, survey.frame, survey.parts):
        yield from _mount(survey, plan, items[plan.thruster])


def _mount(survey: Survey, plan: MountPlan, item: Thruster) -> Iterator[Finding]:
    about = About("thruster", plan.thruster)
    values = {"thruster": plan.name, "mount": plan.mount.name}
    if plan.hub is not None:
        joint = survey.frame.joints[plan.hub].name
        propose = partial(remedy.off_hub, survey, item)
        yield say("thruster.mount-hub", "should", "thrusters", about, propose, **values, joint=joint)
    elif plan.mount.method == "stub" and not plan.socket:
        bar = survey.frame.bars[item.bar].name
        propose = partial(hold_remedy.hold, survey, item)
        yield say("thruster.stub-homeless", "must", "thrusters", about, propose, **values, bar=bar)
    elif not plan.planned:
        propose = partial(remedy.plan_holes, survey, item)
        yield say("thruster.holes-unplanned", "should", "thrusters", about, propose, **values)


def bodies(survey: Survey) -> Iterator[Finding]:
    """A motor whose body is inside the pipe that holds it."""
    for item in survey.arrangement.thrusters:
        bar = survey.frame.bars[item.bar]
        part = next(part for part in survey.parts if part.kind == "thruster" and part.id == item.id)
        body, pipe = part.solids[0], Cylinder(bar.start, bar.end, bar.pipe.outside_diameter / 2)
        if isinstance(body, Cylinder) and gap(_shrunk(body), _shrunk(pipe)) <= COMPARISON_SLACK:
            about, values = About("thruster", item.id), {"thruster": item.name, "bar": bar.name}
            propose = partial(remedy.beside, survey, item, body.radius + pipe.radius)
            yield say("thruster.body-inside", "must", "thrusters", about, propose, **values)


def _shrunk(solid: Cylinder) -> Cylinder:
    """A little thinner, so that what only touches is let be."""
    return Cylinder(solid.start, solid.end, max(0.0, solid.radius - TOUCHING))


def unknown_pulls(survey: Survey) -> Iterator[Finding]:
    """A motor whose pull nobody has measured."""
    for drive in survey.drives:
        if drive.rated.source == "nothing":
            about = About("thruster", drive.thruster)
            yield say("thruster.pull-unknown", "tip", "thrusters", about, thruster=drive.name)


def discs(survey: Survey) -> Iterator[Finding]:
    """A propeller that touches, or nearly touches, a part or the tether."""
    items = {item.id: item for item in survey.arrangement.thrusters}
    sizes = {drive.thruster: drive.diameter for drive in survey.drives}
    for room in survey.clear:
        yield from _disc(survey, room, items[room.thruster], sizes[room.thruster])
        yield from _tether(survey, room, items[room.thruster])


def _disc(survey: Survey, room: Clearance, item: Thruster, diameter: float) -> Iterator[Finding]:
    limits, unit = survey.design.brief.thresholds, survey.design.units
    least = disc_asked(limits, diameter)
    if room.near is None or room.near.room >= least - COMPARISON_SLACK:
        return
    severity: Severity = "must" if room.near.room < limits.disc_must - COMPARISON_SLACK else "should"
    about, part = About("thruster", item.id), room.near.part.name
    propose = partial(remedy.clear_disc, survey, room, least)
    values = {"thruster": item.name, "part": part, "least": length(least, unit)}
    if room.near.room <= 0:
        yield say("thruster.disc-touching", severity, "thrusters", about, propose, **values)
    else:
        space = length(room.near.room, unit)
        yield say("thruster.disc-near", severity, "thrusters", about, propose, **values, room=space)


def _tether(survey: Survey, room: Clearance, item: Thruster) -> Iterator[Finding]:
    limits, unit = survey.design.brief.thresholds, survey.design.units
    tether = survey.arrangement.tether
    least = tether_asked(limits, survey.arrangement, item)
    if tether is None or least is None or room.tether is None:
        return
    if room.tether < least - COMPARISON_SLACK:
        values = {"room": length(room.tether, unit), "least": length(least, unit)}
        propose = partial(remedy.clear_tether, survey, item)
        about = About("thruster", item.id)
        names = {"thruster": item.name, "tether": tether.name}
        yield say("thruster.tether-near", "should", "thrusters", about, propose, **names, **values)


def streams(survey: Survey) -> Iterator[Finding]:
    """Something stands in a propeller's stream, ahead or astern."""
    drives = {drive.thruster: drive for drive in survey.drives}
    for room in survey.clear:
        drive, streams = drives[room.thruster], {"ahead": room.ahead, "astern": room.astern}
        worst = max(drive.senses, key=lambda way: streams[way].lost)
        yield from _stream(survey, room, drive.name, streams[worst], worst)


def _stream(survey: Survey, room: Clearance, name: str, stream: Stream, way: str) -> Iterator[Finding]:
    limits, lost = survey.design.brief.thresholds, 100 * stream.lost
    if stream.worst is None or lost <= limits.stream_tip + COMPARISON_SLACK:
        return
    severity: Severity = "should" if lost > limits.stream_should + COMPARISON_SLACK else "tip"
    propose = partial(remedy.clear_stream, survey, room.thruster)
    values = {"thruster": name, "part": stream.worst.name, "way": way, "lost": f"{lost:.0f} %"}
    about = About("thruster", room.thruster)
    yield say("thruster.stream-blocked", severity, "thrusters", about, propose, **values)


def shallow_discs(survey: Survey) -> Iterator[Finding]:
    """A propeller so near to the surface at rest that it sucks air."""
    limits, unit = survey.design.brief.thresholds, survey.design.units
    depths = propeller_depths(survey.parts, survey.balance)
    for drive in survey.drives:
        least = depth_asked(limits, drive.diameter)
        depth = depths.get(drive.thruster)
        if depth is not None and depth < least - COMPARISON_SLACK:
            where = f"{length(depth, unit)} under" if depth >= 0 else f"{length(-depth, unit)} above"
            propose = partial(remedy.deeper, survey, drive.thruster, least - depth)
            about = About("thruster", drive.thruster)
            values = {"thruster": drive.name, "where": where, "least": length(least, unit)}
            yield say("thruster.disc-shallow", "should", "thrusters", about, propose, **values)
