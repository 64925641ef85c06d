"""A scene: what one view of the vehicle shows, in millimetres on the sheet, u to the right and v up.

Nothing here knows how it will be rendered: a terminal snaps it to cells, a page keeps it true.
Depths grow towards the viewer.  Dimensions have lanes instead of places, since a terminal needs
a whole row for a lane where a page needs a few millimetres.  The pieces are named tuples rather than
data classes: a screen makes hundreds of them for each key press, four times as fast.
"""

from typing import Literal, NamedTuple

from msgspec import Struct

Point = tuple[float, float]
"""u to the right and v up [mm]."""
About = tuple[str, str]
"""The kind and the id of what is drawn."""
Role = Literal[
    "bar",
    "end",
    "fitting",
    "unfitted",
    "joint",
    "thruster",
    "propeller",
    "mount",
    "float",
    "ballast",
    "hook",
    "camera",
    "attachment",
    "tether",
    "opening",
    "plug",
    "air",
    "limit",
    "hoop",
    "gate",
    "dimension",
    "centre",
    "gravity",
    "buoyancy",
    "name",
    "title",
]
"""What a piece of a drawing stands for: ``end`` is a pipe seen end-on, ``unfitted`` a joint that no
fitting fits, ``name`` what is under the cursor, ``gravity`` and ``buoyancy`` are the points G and B."""
AROUND: tuple[Role, ...] = ("limit", "hoop", "gate")
"""Outlines that the vehicle is to lie inside of; they are drawn before all else."""


class Stroke(NamedTuple):
    """A straight line from one point to another.

    Attributes:
        depths: of each end [mm].
        joins: the depth at which each end meets others [mm]; nearer than the end itself where a bar
            seen end-on leads from there towards the viewer.
    """

    points: tuple[Point, Point]
    role: Role
    about: About | None = None
    depths: tuple[float, float] = (0.0, 0.0)
    joins: tuple[float, float] = (0.0, 0.0)


class Shape(NamedTuple):
    """A closed outline that hides what lies behind it; ``depth`` is that of its middle [mm]."""

    outline: tuple[Point, ...]
    role: Role
    about: About | None = None
    depth: float = 0.0

    @property
    def box(self) -> tuple[Point, Point]:
        """The lowest left and the highest right corner around it [mm]."""
        across, up = zip(*self.outline, strict=True)
        return (min(across), min(up)), (max(across), max(up))


class Circle(NamedTuple):
    """A circle of a radius [mm]: a pipe end-on, or the disc that a propeller sweeps."""

    centre: Point
    radius: float
    role: Role
    about: About | None = None
    depth: float = 0.0


class Mark(NamedTuple):
    """Something drawn as a small sign of its own.

    Attributes:
        heading: to the right and up as -1, 0 or 1 for a sign that points; (0, 0) points out of or
            into the sheet, as ``towards`` says.
        text: what stands beside it.
    """

    at: Point
    role: Role
    about: About | None = None
    heading: tuple[int, int] | None = None
    towards: bool = False
    text: str = ""


class Label(NamedTuple):
    """A text; ``along`` is the line that it may slide on to find a free place."""

    text: str
    at: Point
    role: Role
    about: About | None = None
    along: tuple[Point, Point] | None = None


class Dimension(NamedTuple):
    """A dimension along u or v, from ``start`` up to ``end`` [mm]; lane 1 is nearest to the vehicle."""

    axis: Literal["u", "v"]
    start: float
    end: float
    lane: int
    text: str


class Entry(NamedTuple):
    """A line of the legend: the sign of a role, or ``sign`` where it is a text, and what it means."""

    role: Role
    meaning: str
    sign: str = ""


class Scene(Struct, frozen=True):
    """One view; ``low`` and ``high`` are the corners around all of it but the dimensions [mm]."""

    name: str
    title: str
    low: Point
    high: Point
    strokes: tuple[Stroke, ...] = ()
    shapes: tuple[Shape, ...] = ()
    circles: tuple[Circle, ...] = ()
    marks: tuple[Mark, ...] = ()
    labels: tuple[Label, ...] = ()
    dimensions: tuple[Dimension, ...] = ()
    legend: tuple[Entry, ...] = ()
    joints: tuple[tuple[Point, About], ...] = ()
    """Where the joints are, the far ones first."""
    marked: About | None = None
    """What is under the cursor."""
    crossings: tuple[tuple[Point, tuple[str, str, str]], ...] = ()
    """Where planes cross at the depth of the cursor, with their ids, while the frame is edited."""
    cursor: Point | None = None
    pen: Point | None = None
    """Where a bar was begun."""

    @property
    def empty(self) -> bool:
        """Whether there is nothing to draw yet."""
        return not (self.strokes or self.shapes or self.circles or self.marks)


class Place(Struct, frozen=True):
    """Where a view lies on its sheet: column from the left, row from the top, both from 0."""

    scene: Scene
    column: int
    row: int


class Sheet(Struct, frozen=True):
    """Views in a grid; those in one column share u, those in one row share v."""

    title: str
    places: tuple[Place, ...]
