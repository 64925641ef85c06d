"""The hoop and the gate of the brief in the front view, on screen and on paper."""

import re
from math import hypot

import pytest

from model.drawing.solid import solid_sheet
from model.drawing.svg import sheet_svg
from model.drawing.views import one_view, view_scene
from model.survey import survey
from tests.drawing_designs import box_design
from tui.raster.canvas import text_of
from tui.raster.drawing import sheet_panel


def seen(**rules):
    design = box_design()
    return survey(design.but(brief=design.brief.but(**rules)))


def needed(results):
    """Width and height of everything [mm]."""
    return 1000 * results.extents.size[1], 1000 * results.extents.size[2]


def test_without_rules_there_is_neither():
    scene = view_scene(seen(), "front")
    assert not [item for item in (*scene.circles, *scene.shapes) if item.role in ("hoop", "gate")]


def test_a_hoop_is_drawn_in_its_size_round_all_that_must_pass():
    width, height = needed(seen())
    wide = 1.2 * hypot(width, height) / 1000
    scene = view_scene(seen(hoop=wide), "front")
    (ring,) = (circle for circle in scene.circles if circle.role == "hoop")
    assert ring.radius == pytest.approx(500 * wide)
    for shape in (*scene.shapes, *scene.circles):
        points = getattr(shape, "outline", ())
        assert all(hypot(u - ring.centre[0], v - ring.centre[1]) < ring.radius for u, v in points)
    assert scene.high[0] - scene.low[0] >= 1000 * wide - 1e-6, "there is room for it in the drawing"
    assert "hoop to pass through" in [entry.meaning for entry in scene.legend]
    for other in ("top", "side"):
        assert not [item for item in view_scene(seen(hoop=wide), other).circles if item.role == "hoop"]


def test_a_gate_is_drawn_in_its_size_and_one_far_larger_is_left_out():
    width, height = needed(seen())
    scene = view_scene(seen(gate=(1.1 * width / 1000, 1.3 * height / 1000)), "front")
    (gate,) = (shape for shape in scene.shapes if shape.role == "gate")
    (u0, v0), (u1, v1) = gate.box
    assert (u1 - u0, v1 - v0) == pytest.approx((1.1 * width, 1.3 * height))
    assert not [shape for shape in view_scene(seen(gate=(9.0, 9.0)), "front").shapes if shape.role == "gate"]


def test_both_reach_the_screen_and_the_paper():
    width, height = needed(seen())
    results = seen(hoop=1.1 * hypot(width, height) / 1000, gate=(1.1 * width / 1000, 1.1 * height / 1000))
    for ascii in (False, True):
        text = text_of(sheet_panel(one_view(results, "front"), 90, 40, ascii=ascii))
        assert "hoop to pass through" in text
        assert "gate to pass through" in text
        assert text.isascii() or not ascii
    svg = sheet_svg(solid_sheet(results), "x")
    ring = re.search(r'<circle class="hoop"[^>]* r="([\d.]+)"', svg)
    assert ring
    front = svg.split('id="front"')[1].split("</g>")[0]
    assert front.index('class="hoop"') < front.index('class="bar"'), "it lies behind the vehicle"
    assert 'class="gate"' in svg
