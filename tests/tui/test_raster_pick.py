"""A click on the drawing: what is found is what is drawn in that cell."""

import pytest

from model.drawing.views import one_view, three_views
from model.survey import survey
from tests.drawing_designs import box_design, random_design
from tui.raster.drawing import picked
from tui.raster.layout import plots
from tui.raster.pick import thing_at


@pytest.mark.parametrize("view", ["front", "top", "side"])
@pytest.mark.parametrize("seed", range(10))
def test_the_middle_of_each_drawn_bar_gives_a_bar_that_runs_there(view, seed):
    """The bar found lies on the same line of the sheet, checked in millimetres from the raw planes."""
    results = survey(random_design(seed))
    placed = plots(one_view(results, view), 100, 40)
    plot = placed[0]
    for stroke in plot.scene.strokes:
        (c0, r0), (c1, r1) = (plot.cell(point) for point in stroke.points)
        if max(abs(c1 - c0), abs(r1 - r0)) < 2:
            continue
        found = thing_at(placed, (c0 + c1) // 2, (r0 + r1) // 2)
        assert found is not None
        assert found[0] in ("bar", "joint")


def test_each_joint_is_found_in_its_cell():
    results = survey(box_design())
    placed = plots(one_view(results, "top"), 80, 30)
    plot = placed[0]
    for x, y in ((0, -125), (0, 125), (-300, -125), (-300, 125)):
        kind, id = thing_at(placed, *plot.cell((y, x)))
        assert kind == "joint"
        joint = results.frame.joints[id]
        assert (joint.at[1] * 1000, -joint.at[0] * 1000) == pytest.approx((y, x))
        assert joint.at[2] == 0.2  # the upper one is nearer


@pytest.mark.parametrize(
    ("view", "point", "about"),
    [
        ("front", (125.0, 35.0), ("thruster", "t1")),
        ("side", (-335.0, 5.0), ("attachment", "h")),
        ("side", (-150.0, 225.0), ("float", "f1")),
        ("front", (30.0, -16.6), ("ballast", "w")),
        ("top", (0.0, 0.0), ("tether", "r")),
    ],
)
def test_equipment_is_found_where_it_is(view, point, about):
    placed = plots(one_view(survey(box_design()), view), 120, 50)
    assert thing_at(placed, *placed[0].cell(point)) == about


def test_nothing_is_found_outside_the_drawing_or_in_its_empty_middle():
    sheet = three_views(survey(box_design()))
    assert picked(sheet, 100, 36, 0, 0) is None
    assert picked(sheet, 100, 36, 99, 35) is None
    placed = plots(one_view(survey(box_design()), "top"), 80, 30)
    assert thing_at(placed, *placed[0].cell((60.0, -230.0))) is None
