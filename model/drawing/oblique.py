"""The oblique view: the whole vehicle from anywhere, as centre lines and outlines."""

from collections.abc import Iterator

from msgspec.structs import replace

from model.drawing.bars import joint_marks
from model.drawing.dimensions import span
from model.drawing.gear import (
    air_marks,
    balance_marks,
    fixed_solids,
    opening_marks,
    part_name,
    tether_marks,
    tie_mark,
)
from model.drawing.legend import legend
from model.drawing.pen import Hand, place
from model.drawing.projection import COARSE_RIM, Projection, oblique, outline
from model.drawing.scene import About, Label, Point, Scene, Shape, Stroke
from model.survey import Survey

AZIMUTH, ELEVATION = 30.0, 25.0
"""[deg] Where the viewer stands at first: ahead and a little to port, above."""


def oblique_scene(
    survey: Survey,
    azimuth: float = AZIMUTH,
    elevation: float = ELEVATION,
    marked: About | None = None,
    hand: Hand | None = None,
) -> Scene:
    """The vehicle seen from an azimuth and an elevation [deg], without dimensions and limits.

    Args:
        azimuth: where the viewer stands, from the bow round to port.
        elevation: how far above the level plane, -90 to 90.
        marked: the kind and id of what is under the cursor.
        hand: the cursor on the crossings of planes, and the pen, while the frame is edited.
    """
    look = oblique(azimuth, elevation)
    strokes = tuple(_bars(survey, look))
    shapes = tuple(sorted(_gear(survey, look), key=lambda shape: shape.depth))
    points = [point for stroke in strokes for point in stroke.points]
    points += [point for shape in shapes for point in shape.outline]
    cursor, *pen = (look.point(place(survey, at)) for at in hand if at) if hand else (None,)
    points += [point for point in (cursor, *pen) if point is not None]
    low, high = span(points) if points else ((0.0, 0.0), (0.0, 0.0))
    marks = (
        *opening_marks(survey, look),
        *tie_mark(survey, look, marked),
        *tether_marks(survey, look),
        *joint_marks(survey.frame, look, marked, named=False),
        *air_marks(survey, look),
        *balance_marks(survey, look),
    )
    labels = (*_letters(survey, strokes), *_bow(survey, look), *part_name(survey, look, marked))
    scene = Scene("oblique", look.title, low, high, strokes, shapes, (), marks, labels, marked=marked)
    return replace(scene, legend=tuple(legend(survey, scene)), cursor=cursor, pen=pen[0] if pen else None)


def _bars(survey: Survey, look: Projection) -> Iterator[Stroke]:
    for bar in survey.frame.bars.values():
        depths = (look.depth(bar.start), look.depth(bar.end))
        yield Stroke((look.point(bar.start), look.point(bar.end)), "bar", ("bar", bar.id), depths)


def _letters(survey: Survey, strokes: tuple[Stroke, ...]) -> Iterator[Label]:
    for stroke in strokes:
        if stroke.role == "bar" and stroke.about is not None:
            (u0, v0), (u1, v1) = stroke.points
            letter = survey.frame.bars[stroke.about[1]].letter
            yield Label(letter, ((u0 + u1) / 2, (v0 + v1) / 2), "bar", stroke.about, stroke.points)


def _gear(survey: Survey, look: Projection) -> Iterator[Shape]:
    for fixed in fixed_solids(survey):
        yield Shape(
            outline(fixed.solid, look, COARSE_RIM), fixed.role, fixed.about, look.depth(fixed.box.centre)
        )


def _bow(survey: Survey, look: Projection) -> Iterator[Label]:
    """The word bow at the middle of the vehicle's front."""
    box = survey.extents.box
    if box is not None:
        at: Point = look.point((box.high[0], box.centre[1], box.centre[2]))
        yield Label("bow", at, "title")
