"""Views with true outlines, for pages: every pipe, hub and piece of equipment."""

from collections.abc import Iterator

from msgspec.structs import replace

from model.drawing.gear import attachment_roles
from model.drawing.oblique import AZIMUTH, ELEVATION, oblique_scene
from model.drawing.projection import MM, VIEWS, Projection, oblique, outline
from model.drawing.scene import AROUND, About, Circle, Place, Role, Scene, Shape, Sheet
from model.drawing.views import PLACES, Angle, three_views
from model.parts import Cylinder, Part, Solid
from model.survey import Survey
from model.vectors import cross, norm, sub

FREE_CORNERS: dict[Angle, tuple[int, int]] = {"third": (1, 0), "first": (0, 1)}
"""The column and row that front, top and side leave free, where the oblique view goes."""
OUTLINED: dict[str, Role] = {
    "bar": "bar",
    "fitting": "fitting",
    "mount": "mount",
    "float": "float",
    "ballast": "ballast",
}
"""Parts whose solids all have one role."""
LINE_OF_SIGHT = 1e-9
"""[m] A solid whose axis is less than this off the line of sight is seen as a circle."""


def solid_sheet(survey: Survey, *, angle: Angle = "third", marked: About | None = None) -> Sheet:
    """Front, top, side and oblique view on one sheet with true outlines."""
    sheet = three_views(survey, marked, angle=angle)
    places = [
        replace(place, scene=solid_scene(survey, place.scene, VIEWS[name]))
        for place in sheet.places
        for name in PLACES[angle]
        if place.scene.name == name
    ]
    look = oblique(AZIMUTH, ELEVATION)
    turned = solid_scene(survey, oblique_scene(survey, AZIMUTH, ELEVATION, marked), look)
    return Sheet(sheet.title, (*places, Place(turned, *FREE_CORNERS[angle])))


def solid_scene(survey: Survey, scene: Scene, look: Projection) -> Scene:
    """A scene with the outlines of all parts instead of centre lines and boxes."""
    roles = attachment_roles(survey.arrangement)
    shapes = [shape for shape in scene.shapes if shape.role in AROUND]
    circles = [circle for circle in scene.circles if circle.role in AROUND]
    for part in survey.parts:
        for role, solid in zip(_roles(part, roles), part.solids, strict=False):
            seen = _seen(solid, look, role, (part.kind, part.id))
            if isinstance(seen, Circle):
                circles.append(seen)
            else:
                shapes.append(seen)
    return replace(scene, shapes=tuple(shapes), circles=tuple(circles))


def _roles(part: Part, attachments: dict[str, Role]) -> Iterator[Role]:
    """A role for each solid of a part; the second of a thruster is its propeller."""
    if part.kind == "thruster":
        yield from ("thruster", "propeller")
    elif part.kind == "attachment":
        yield attachments[part.id]
    elif part.kind in OUTLINED:
        yield from [OUTLINED[part.kind]] * len(part.solids)


def _seen(solid: Solid, look: Projection, role: Role, about: About) -> Shape | Circle:
    depth = look.depth(solid.box.centre)
    if isinstance(solid, Cylinder) and norm(cross(sub(solid.end, solid.start), look.towards)) < LINE_OF_SIGHT:
        return Circle(look.point(solid.start), solid.radius * MM, role, about, depth)
    return Shape(outline(solid, look), role, about, depth)
