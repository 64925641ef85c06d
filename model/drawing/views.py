"""Front, top and side as scenes, alone or as one sheet in third or first angle.

Third angle (ISO 5456-2 and ASME Y14.3, both from memory): each view lies on the side it is seen
from.  The front view looks aft at the bow, so port is on its right.  The top view lies above it
with the bow at the bottom, next to the front view.  The side view, seen from port, lies to its
right with the bow on the left.  In first angle the same three pictures change places: the top
view lies below, the view from port to the left.
"""

from collections.abc import Iterator
from typing import Literal

from msgspec.structs import replace

from model.drawing.bars import bars_in_view, joint_marks
from model.drawing.dimensions import dimensions, span
from model.drawing.gear import (
    Fixed,
    air_marks,
    balance_marks,
    box_corners,
    box_shape,
    fixed_solids,
    gear_in_view,
    part_name,
)
from model.drawing.legend import legend
from model.drawing.pen import Hand, crossings
from model.drawing.pen import place as place_of
from model.drawing.projection import FRONT, MM, VIEWS, Projection
from model.drawing.scene import About, Circle, Label, Place, Point, Scene, Shape, Sheet, Stroke
from model.extents import Extents
from model.hoop import smallest_hoop
from model.parts import Box
from model.survey import Survey
from model.vectors import add, scale, sub

ViewName = Literal["front", "top", "side"]
Angle = Literal["third", "first"]
PLACES: dict[Angle, dict[ViewName, tuple[int, int]]] = {
    "third": {"top": (0, 0), "front": (0, 1), "side": (1, 1)},
    "first": {"side": (0, 0), "front": (1, 0), "top": (1, 1)},
}
"""Column from the left and row from the top of each view on its sheet."""
ONCE: dict[ViewName, Literal["uv", "u", ""]] = {"front": "uv", "side": "u", "top": ""}
"""Which dimensions each view of a sheet keeps, so that none stands twice."""
LIMIT_SHOWN = 1.6
"""A limit box so many times larger than the vehicle is left out, for it would shrink the drawing."""
PLANES: dict[str, int] = {"station": 0, "side": 1, "level": 2}


def view_scene(survey: Survey, view: ViewName, marked: About | None = None, *, named: bool = False) -> Scene:
    """One view of a vehicle.

    Args:
        marked: the kind and id of what is under the cursor; kinds are "bar", "joint", "thruster",
            "float", "ballast", "attachment", "tether", "opening", "station", "side" and "level".
        named: whether every joint shows its name.
    """
    return _scene(survey, fixed_solids(survey), view, marked, named)


def one_view(
    survey: Survey,
    view: ViewName,
    marked: About | None = None,
    *,
    named: bool = False,
    hand: Hand | None = None,
) -> Sheet:
    """A sheet with one view on it, fully dimensioned; ``hand`` is the cursor while it is edited."""
    scene = view_scene(survey, view, marked, named=named)
    return Sheet("", (Place(_in_hand(scene, survey, view, hand), 0, 0),))


def three_views(
    survey: Survey,
    marked: About | None = None,
    *,
    angle: Angle = "third",
    named: bool = False,
    hand: Hand | None = None,
) -> Sheet:
    """Front, top and side on one sheet; length, width and height each dimensioned once."""
    places = []
    solids = fixed_solids(survey)
    for view, (column, row) in PLACES[angle].items():
        scene = _scene(survey, solids, view, marked, named)
        kept = tuple(item for item in scene.dimensions if item.axis in ONCE[view])
        places.append(Place(_in_hand(replace(scene, dimensions=kept), survey, view, hand), column, row))
    return Sheet(f"{angle.capitalize()} angle", tuple(places))


def _scene(
    survey: Survey, solids: tuple[Fixed, ...], view: ViewName, marked: About | None, named: bool
) -> Scene:
    look = VIEWS[view]
    bars = bars_in_view(survey.frame, look, marked)
    gear = gear_in_view(survey, solids, look, marked)
    joints = joint_marks(survey.frame, look, marked, named)
    limit = _limit(survey, look)
    hoop = hoop_around(survey) if view == "front" else ()
    gate = gate_around(survey) if view == "front" else ()
    low, high = _bounds(survey, look, (*limit, *gate), hoop)
    plane = _marked_plane(survey, look, marked, low, high)
    scene = Scene(
        name=view,
        title=look.title,
        low=low,
        high=high,
        strokes=(*bars.strokes, *gear.strokes, *plane[0]),
        shapes=(*limit, *gate, *gear.shapes),
        circles=(*hoop, *bars.circles, *gear.circles),
        marks=(*gear.marks, *joints, *air_marks(survey, look), *balance_marks(survey, look)),
        labels=(*bars.labels, *plane[1], *_part_name(survey, look, marked)),
        dimensions=tuple(dimensions(survey, look)),
        joints=bars.joints,
        marked=marked,
    )
    return replace(scene, legend=tuple(legend(survey, scene)))


def _in_hand(scene: Scene, survey: Survey, view: ViewName, hand: Hand | None) -> Scene:
    """A view with the cursor, the pen and the crossings at that depth, which all find room in it."""
    if hand is None:
        return scene
    dots = tuple(crossings(survey, view, hand.at))
    cursor, *pen = (VIEWS[view].point(place_of(survey, at)) for at in hand if at)
    low, high = span([scene.low, scene.high, cursor, *pen, *(point for point, _ in dots)])
    if scene.empty:
        low, high = span([cursor, *pen, *(point for point, _ in dots)])
    return replace(scene, low=low, high=high, crossings=dots, cursor=cursor, pen=pen[0] if pen else None)


def limit_around(extents: Extents) -> Box | None:
    """The limit box around the middle of the vehicle [m]; None where there is none, or it is far larger."""
    box, limit = extents.box, extents.limit
    if box is None or limit is None:
        return None
    if max(most / max(size, 1e-9) for most, size in zip(limit, box.size, strict=True)) > LIMIT_SHOWN:
        return None
    half = scale(limit, 0.5)
    return Box(sub(box.centre, half), add(box.centre, half))


def _limit(survey: Survey, look: Projection) -> tuple[Shape, ...]:
    around = limit_around(survey.extents)
    return () if around is None else (box_shape(around, look, "limit", None),)


def hoop_around(survey: Survey) -> tuple[Circle, ...]:
    """The brief's hoop in the front view, round the middle of the smallest one that would do.

    One that is far larger than the vehicle is left out, as a limit box is.
    """
    wide = survey.design.brief.hoop
    found = smallest_hoop(survey.parts) if wide is not None else None
    if wide is None or found is None or wide > LIMIT_SHOWN * found.diameter:
        return ()
    return (Circle(FRONT.point((0.0, *found.centre)), wide / 2 * MM, "hoop", ("hoop", "")),)


def gate_around(survey: Survey) -> tuple[Shape, ...]:
    """The brief's gate in the front view, round the middle of the vehicle; none that is far larger."""
    gate, box = survey.design.brief.gate, survey.extents.box
    if gate is None or box is None:
        return ()
    if any(most > LIMIT_SHOWN * size for most, size in zip(gate, box.size[1:], strict=True)):
        return ()
    half = (0.0, gate[0] / 2, gate[1] / 2)
    around = Box(sub(box.centre, half), add(box.centre, half))
    return (box_shape(around, FRONT, "gate", ("gate", "")),)


def _bounds(
    survey: Survey, look: Projection, limit: tuple[Shape, ...], rings: tuple[Circle, ...]
) -> tuple[Point, Point]:
    """The corners around everything that is drawn, joints that have no bar yet included."""
    points = [look.point(joint.at) for joint in survey.frame.joints.values()]
    if survey.extents.box is not None:
        points += box_corners(survey.extents.box, look)
    for shape in limit:
        points += shape.box
    for (u, v), radius, *_ in rings:
        points += [(u - radius, v - radius), (u + radius, v + radius)]
    return span(points) if points else ((0.0, 0.0), (0.0, 0.0))


def _marked_plane(
    survey: Survey, look: Projection, marked: About | None, low: Point, high: Point
) -> tuple[tuple[Stroke, ...], tuple[Label, ...]]:
    """The plane under the cursor as a centre line with its name, in the views that see it edge-on."""
    if marked is None or marked[0] not in PLANES:
        return (), ()
    arrangement = survey.arrangement
    axis = PLANES[marked[0]]
    group = (arrangement.stations, arrangement.sides, arrangement.levels)[axis]
    for plane in group:
        if plane.id == marked[1] and not look.towards[axis]:
            at = look.point(tuple(plane.at if axis == k else 0.0 for k in range(3)))  # type: ignore[arg-type]
            upright = bool(look.right[axis])
            ends = ((at[0], low[1]), (at[0], high[1])) if upright else ((low[0], at[1]), (high[0], at[1]))
            return (Stroke(ends, "centre", marked),), (Label(plane.name, ends[1], "name", marked),)
    return (), ()


def _part_name(survey: Survey, look: Projection, marked: About | None) -> Iterator[Label]:
    """The name of what is under the cursor; a bar is drawn in another way and needs none."""
    if marked is not None and marked[0] != "bar":
        yield from part_name(survey, look, marked)
