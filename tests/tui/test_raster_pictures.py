"""Drawings kept as plain text files: what a person sees, to be read in a diff.

A picture that is not there yet is written and the test fails once, so that somebody looks at it.
"""

from pathlib import Path

import pytest

from model.drawing.oblique import oblique_scene
from model.drawing.views import one_view, three_views
from model.survey import survey
from tests.drawing_designs import box_design, frame, stock
from tui.raster.canvas import text_of
from tui.raster.drawing import oblique_panel, sheet_panel

FOLDER = Path(__file__).parents[1] / "pictures" / "drawing"


def check(name, rows):
    file, text = FOLDER / f"{name}.txt", text_of(rows) + "\n"
    if not file.exists():
        file.write_text(text, encoding="utf-8")
        pytest.fail(f"{file.name} was not there and is written now; look at it")
    assert text == file.read_text(encoding="utf-8")


@pytest.mark.parametrize("view", ["front", "top", "side"])
def test_one_view(view):
    check(view, sheet_panel(one_view(survey(box_design()), view), 60, 20))


def test_one_view_in_ascii():
    check("side-ascii", sheet_panel(one_view(survey(box_design()), "side"), 60, 20, ascii=True))


def test_a_bar_under_the_cursor():
    check("marked-bar", sheet_panel(one_view(survey(box_design()), "side", ("bar", "b4")), 60, 20))


def test_a_joint_under_the_cursor_has_its_name():
    check("marked-joint", sheet_panel(one_view(survey(box_design()), "top", ("joint", "j200")), 60, 20))


@pytest.mark.parametrize("angle", ["third", "first"])
def test_three_views(angle):
    results = survey(box_design())
    check(
        f"{angle}-angle",
        sheet_panel(three_views(results, angle=angle), 100, 36, beside=oblique_scene(results)),
    )


def test_oblique_view():
    check("oblique", oblique_panel(oblique_scene(survey(box_design())), 60, 24))


def test_oblique_view_in_ascii():
    check("oblique-ascii", oblique_panel(oblique_scene(survey(box_design())), 60, 24, ascii=True))


def test_bars_that_cross_without_a_joint_pass_behind_each_other():
    """A long bar below, and a cross of three bars above it: the lower one is broken where they cross."""
    planes = ((0.0, 0.1, 0.2), (0.0, 0.1, 0.2), (0.0, 0.1))
    bars = [
        ((0, 1, 1), (1, 1, 1)),
        ((1, 1, 1), (2, 1, 1)),
        ((1, 0, 0), (1, 2, 0)),
        ((1, 0, 0), (1, 0, 1)),
        ((1, 0, 1), (1, 1, 1)),
    ]
    design = box_design(stock=stock(), arrangements=(frame(bars, planes),))
    check("crossing", sheet_panel(one_view(survey(design), "top"), 50, 18))


def test_bars_at_45_degrees_and_a_pipe_end_on():
    planes = ((0.0, 0.1, 0.2), (0.0, 0.1), (0.0, 0.1, 0.2))
    bars = [((0, 0, 0), (1, 0, 1)), ((1, 0, 1), (2, 0, 0)), ((0, 0, 0), (2, 0, 0)), ((1, 0, 2), (1, 1, 2))]
    design = box_design(arrangements=(frame(bars, planes),))
    check("sloping", sheet_panel(one_view(survey(design), "side"), 50, 18))
