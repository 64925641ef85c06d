"""What is fixed to the frame, and the points G and B, as a view shows them."""

from collections.abc import Iterator
from typing import NamedTuple

from model.design import Arrangement, OnBar
from model.drawing.projection import Projection
from model.drawing.scene import About, Circle, Label, Mark, Point, Role, Shape, Stroke
from model.parts import Box, Part, Solid
from model.survey import Survey
from model.thrust.tie_holes import TIE_HOLE, hole_of_key
from model.vectors import add, scale, unit

ML = 1e-6
"""[m3] in a millilitre"""
LEAST = 0.5
"""[mm] A bar shorter than this on the sheet is seen end-on."""
SOLID_ROLES: dict[str, tuple[Role, ...]] = {"float": ("float",), "ballast": ("ballast",)}
ATTACHMENT_ROLES: dict[str, Role] = {"hook": "hook", "camera": "camera", "other": "attachment"}


class Gear(NamedTuple):
    """What the equipment of a view comes to."""

    shapes: tuple[Shape, ...]
    strokes: tuple[Stroke, ...]
    circles: tuple[Circle, ...]
    marks: tuple[Mark, ...]


class Fixed(NamedTuple):
    """One solid of what is fixed to the frame, with the box around it."""

    role: Role
    about: About
    solid: Solid
    box: Box


_kept: tuple[tuple[Part, ...], tuple[Fixed, ...]] = ((), ())


def fixed_solids(survey: Survey) -> tuple[Fixed, ...]:
    """The solids of floats, ballast, attachments and thrusters: the same for every view, and kept."""
    global _kept
    if _kept[0] is not survey.parts:
        _kept = (survey.parts, _fixed_solids(survey))
    return _kept[1]


def _fixed_solids(survey: Survey) -> tuple[Fixed, ...]:
    attachments = attachment_roles(survey.arrangement)
    found = []
    for part in survey.parts:
        if part.kind == "thruster":
            roles: tuple[Role, ...] = ("thruster", "propeller")
        elif part.kind == "attachment":
            roles = (attachments[part.id],)
        else:
            roles = SOLID_ROLES.get(part.kind, ())
        about = (part.kind, part.id)
        found += [
            Fixed(role, about, solid, solid.box) for role, solid in zip(roles, part.solids, strict=False)
        ]
    return tuple(found)


def gear_in_view(
    survey: Survey, solids: tuple[Fixed, ...], view: Projection, marked: About | None = None
) -> Gear:
    """Floats, ballast, attachments and thrusters as upright outlines, far to near, each with its mark.

    What is under the cursor comes last, so that nothing hides it.
    """
    shapes: list[Shape] = []
    strokes: list[Stroke] = []
    circles: list[Circle] = []
    for solid in solids:
        if solid.role != "propeller":
            shapes.append(box_shape(solid.box, view, solid.role, solid.about))
            continue
        disc = _propeller(solid.box, view, solid.about)
        if isinstance(disc, Circle):
            circles.append(disc)
        else:
            strokes.append(disc)
    shapes.sort(key=lambda shape: (shape.about == marked, shape.depth))
    arrows = thruster_marks(survey, solids, view)
    holes = (*opening_marks(survey, view), *tie_mark(survey, view, marked))
    marks = (*arrows, *holes, *tether_marks(survey, view))
    return Gear(tuple(shapes), tuple(strokes), tuple(circles), marks)


def attachment_roles(arrangement: Arrangement) -> dict[str, Role]:
    """What each attachment is, by its id."""
    return {item.id: ATTACHMENT_ROLES[item.kind] for item in arrangement.attachments}


def thruster_marks(survey: Survey, solids: tuple[Fixed, ...], view: Projection) -> Iterator[Mark]:
    """An arrow in the middle of each motor: where it pushes the vehicle when it runs ahead."""
    bodies = {solid.about[1]: solid.box for solid in solids if solid.role == "thruster"}
    for thruster in survey.arrangement.thrusters:
        to = unit(thruster.to)
        at, towards = view.point(bodies[thruster.id].centre), view.depth(to) > 0
        yield Mark(at, "thruster", ("thruster", thruster.id), view.heading(to), towards)


def opening_marks(survey: Survey, view: Projection) -> Iterator[Mark]:
    """Each drilled hole and each plug in a bore, where it is on its bar; not on a bar that is seen end-on."""
    items: list[tuple[Role, OnBar]] = [("opening", opening) for opening in survey.arrangement.openings]
    items += [("plug", plug) for plug in survey.arrangement.plugs]
    bars = {name: survey.frame.bars[name] for name in {item.bar for _, item in items}}
    ends = {name: (view.point(bar.start), view.point(bar.end)) for name, bar in bars.items()}
    for role, item in items:
        (u0, v0), (u1, v1) = ends[item.bar]
        if abs(u1 - u0) + abs(v1 - v0) >= LEAST:
            at = (u0 + (u1 - u0) * item.at, v0 + (v1 - v0) * item.at)
            yield Mark(at, role, (role, item.id))


def tie_mark(survey: Survey, view: Projection, marked: About | None) -> Iterator[Mark]:
    """The hole for a tie that is under the cursor; the others stand on the drill sheet alone."""
    if marked is None or marked[0] != TIE_HOLE:
        return
    thruster, number = hole_of_key(marked[1])
    for item in survey.arrangement.thrusters:
        if item.id == thruster and number < len(item.tie_holes):
            bar = survey.frame.bars[item.bar]
            at = add(bar.point(item.at), scale(bar.along, item.tie_holes[number].along))
            yield Mark(view.point(at), "opening", marked)


def tether_marks(survey: Survey, view: Projection) -> Iterator[Mark]:
    """Where the tether is tied."""
    tether = survey.arrangement.tether
    if tether is not None:
        bar = survey.frame.bars[tether.bar]
        yield Mark(view.point(bar.point(tether.at)), "tether", ("tether", tether.id))


def air_marks(survey: Survey, view: Projection) -> Iterator[Mark]:
    """Where air is caught when it lies level, if the pocket is large enough for the coach to speak of."""
    level, least = survey.air.level, survey.design.brief.thresholds.air_tip * ML
    for pocket in level.caught.pockets if level else ():
        if pocket.volume >= least:
            yield Mark(view.point(pocket.at), "air")


def balance_marks(survey: Survey, view: Projection) -> Iterator[Mark]:
    """G, where the weight acts, and B, where the lift acts."""
    if survey.parts:
        yield Mark(view.point(survey.balance.g), "gravity", text="G")
        yield Mark(view.point(survey.balance.b), "buoyancy", text="B")


def part_name(survey: Survey, view: Projection, marked: About | None) -> Iterator[Label]:
    """The name of the part under the cursor, at its middle."""
    for part in survey.parts:
        if (part.kind, part.id) == marked and part.box is not None:
            yield Label(part.name, view.point(part.box.centre), "name", marked)


def box_shape(box: Box, view: Projection, role: Role, about: About | None) -> Shape:
    """An upright box as the rectangle that a view square to an axis shows."""
    (u0, v0), (u1, v1) = box_corners(box, view)
    return Shape(((u0, v0), (u1, v0), (u1, v1), (u0, v1)), role, about, view.depth(box.centre))


def box_corners(box: Box, view: Projection) -> tuple[Point, Point]:
    """The lowest left and the highest right corner [mm] of a box in a view square to an axis."""
    (u0, v0), (u1, v1) = view.point(box.low), view.point(box.high)
    if u0 > u1:
        u0, u1 = u1, u0
    if v0 > v1:
        v0, v1 = v1, v0
    return (u0, v0), (u1, v1)


def _propeller(disc: Box, view: Projection, about: About) -> Circle | Stroke:
    """The disc that a propeller sweeps: a circle from ahead or astern, else the line of its width."""
    (u0, v0), (u1, v1) = box_corners(disc, view)
    u, v = (u0 + u1) / 2, (v0 + v1) / 2
    depth = view.depth(disc.centre)
    if abs((u1 - u0) - (v1 - v0)) < 1e-6:
        return Circle((u, v), (u1 - u0) / 2, "propeller", about, depth)
    ends = ((u, v0), (u, v1)) if u1 - u0 < v1 - v0 else ((u0, v), (u1, v))
    return Stroke(ends, "propeller", about, (depth, depth))
