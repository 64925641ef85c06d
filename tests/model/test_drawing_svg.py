"""The sheet as SVG, read back as XML and measured."""

from xml.etree import ElementTree

import pytest
from hypothesis import given, settings

from model.drawing.paper import panels
from model.drawing.solid import solid_scene, solid_sheet
from model.drawing.svg import sheet_svg
from model.drawing.views import VIEWS, view_scene
from model.survey import survey
from tests.drawing_designs import X, Y, Z, box_design
from tests.generators import designs

SPACE = {"s": "http://www.w3.org/2000/svg"}


def read(design, **more):
    return ElementTree.fromstring(sheet_svg(solid_sheet(survey(design), **more), design.title))


def polygons(root, view, role):
    return [
        [tuple(map(float, pair.split(","))) for pair in shape.get("points").split()]
        for shape in root.findall(f".//s:g[@id='{view}']/s:polygon[@class='{role}']", SPACE)
    ]


def size(points):
    across, down = zip(*points, strict=True)
    return max(across) - min(across), max(down) - min(down)


def texts(root):
    return [element.text for element in root.iter("{http://www.w3.org/2000/svg}text")]


def test_pipes_are_drawn_as_thick_and_as_long_as_they_are():
    """The rail at the bow seen from ahead: as long as its cut, 21.3 mm thick, in the scale said."""
    root = read(box_design())
    scale = next(text for text in texts(root) if text and "scale 1:" in text)
    reduction = float(scale.rsplit(":", 1)[1])
    # 250 mm between centres, less 12.7 to the stop and 17.8 of socket at both ends, plus 12.7 pushed in
    cut = 250 - 2 * (12.7 + 17.8) + 2 * 12.7
    level = [size(points) for points in polygons(root, "front", "bar") if size(points)[0] > size(points)[1]]
    assert (pytest.approx(cut / reduction, abs=0.02), pytest.approx(21.3 / reduction, abs=0.02)) in level


def test_the_limit_box_is_as_large_as_the_brief_says():
    root = read(box_design())
    reduction = float(next(text for text in texts(root) if text and "scale" in text).rsplit(":", 1)[1])
    (front,) = polygons(root, "front", "limit")
    assert size(front) == pytest.approx((320 / reduction, 300 / reduction), abs=0.02)


@pytest.mark.parametrize("angle", ["third", "first"])
def test_views_line_up_across_the_sheet(angle):
    placed, _ = panels(solid_sheet(survey(box_design()), angle=angle))
    view = {panel.scene.name: panel for panel in placed}
    assert view["front"].x(Y[0] * 1000) == pytest.approx(view["top"].x(Y[0] * 1000))
    assert view["front"].y(Z[2] * 1000) == pytest.approx(view["side"].y(Z[2] * 1000))
    below = view["top"].bottom < view["front"].bottom
    assert below == (angle == "third")
    assert (view["side"].left > view["front"].left) == (angle == "third")


def test_everything_lies_on_the_paper():
    root = read(box_design())
    for shape in root.iter("{http://www.w3.org/2000/svg}polygon"):
        for pair in shape.get("points").split():
            x, y = map(float, pair.split(","))
            assert 0 <= x <= 297
            assert 0 <= y <= 210


def test_texts_stay_on_the_paper():
    """A letter is about 0.56 of its height wide; even so no text of the foot runs off the edge."""
    for element in read(box_design()).iter("{http://www.w3.org/2000/svg}text"):
        if element.get("text-anchor") == "start" and element.text:
            assert float(element.get("x")) + len(element.text) * 2.8 * 0.56 < 297


def test_names_with_signs_of_the_language_are_escaped():
    root = read(box_design(title='<script>"&\x07 </text>'))
    assert '<script>"& </text>' in texts(root)


def test_the_sheet_says_its_angle_its_scale_and_its_cuts():
    words = " ".join(text for text in texts(read(box_design(), angle="first")) if text)
    assert "First angle projection, scale 1:" in words
    assert "Cuts: A 264.4 mm" in words
    assert "389 mm" in words


def test_the_nearer_is_drawn_over_the_farther():
    """From ahead, the bow's own rail comes after the stern's."""
    results = survey(box_design())
    root = read(box_design())
    order = polygons(root, "front", "bar")
    scene = solid_scene(results, view_scene(results, "front"), VIEWS["front"])
    depth = {shape.about: shape.depth for shape in scene.shapes if shape.role == "bar"}
    assert len(order) == len(depth)
    assert max(depth.values()) == pytest.approx(X[2] * 1000)
    nearest = {
        shape.about for shape in scene.shapes if shape.role == "bar" and shape.depth == max(depth.values())
    }
    assert len(nearest) == 4


def test_a_pipe_seen_end_on_is_a_circle():
    results = survey(box_design())
    scene = solid_scene(results, view_scene(results, "front"), VIEWS["front"])
    circles = {circle.centre: circle.radius for circle in scene.circles if circle.role == "bar"}
    assert circles[Y[0] * 1000, Z[2] * 1000] == pytest.approx(21.3 / 2)


@settings(max_examples=25, deadline=None)
@given(designs())
def test_any_design_makes_a_well_formed_sheet(design):
    root = read(design)
    assert root.tag.endswith("svg")
