"""Outlines against hulls of many points on the rims; the oblique view against a rotation worked out anew."""

from math import cos, isclose, pi, radians, sin
from random import Random

import pytest

from model.drawing.oblique import oblique_scene
from model.drawing.projection import FRONT, SIDE, TOP, hull, oblique, outline
from model.parts import Block, Cylinder
from model.survey import survey
from tests.drawing_designs import box_design


def area(points):
    return (
        abs(
            sum(points[k - 1][0] * points[k][1] - points[k][0] * points[k - 1][1] for k in range(len(points)))
        )
        / 2
    )


def rim_points(solid, view, count=360):
    """Points on both rims, from a frame of directions that shares nothing with the model's."""
    axis = [b - a for a, b in zip(solid.start, solid.end, strict=True)]
    length = sum(a * a for a in axis) ** 0.5
    w = [a / length for a in axis]
    other = [0.0, 0.0, 0.0]
    other[min(range(3), key=lambda k: abs(w[k]))] = 1.0
    dot = sum(a * b for a, b in zip(w, other, strict=True))
    u = [o - dot * a for o, a in zip(other, w, strict=True)]
    size = sum(a * a for a in u) ** 0.5
    u = [a / size for a in u]
    v = [w[1] * u[2] - w[2] * u[1], w[2] * u[0] - w[0] * u[2], w[0] * u[1] - w[1] * u[0]]
    for end in (solid.start, solid.end):
        for k in range(count):
            c, s = cos(2 * pi * k / count), sin(2 * pi * k / count)
            yield view.point(
                tuple(e + solid.radius * (c * a + s * b) for e, a, b in zip(end, u, v, strict=True))
            )


@pytest.mark.parametrize("seed", range(60))
def test_outline_of_a_cylinder_is_the_hull_of_its_rims(seed):
    dice = Random(seed)
    view = dice.choice([FRONT, TOP, SIDE, oblique(dice.uniform(0, 360), dice.uniform(-85, 85))])
    start = tuple(dice.uniform(-1, 1) for _ in range(3))
    axis = dice.randrange(3)
    end = tuple(a + (0.4 if k == axis else 0.0) for k, a in enumerate(start))
    if dice.random() < 0.5:
        end = tuple(dice.uniform(-1, 1) for _ in range(3))
    solid = Cylinder(start, end, 0.2)
    ours, full = outline(solid, view), hull(rim_points(solid, view))
    assert isclose(area(ours), area(full), rel_tol=0.012)  # 24 corners for a circle lose 1.1 %
    assert isclose(area(hull(ours)), area(ours), rel_tol=1e-6)  # convex already
    low, high = min(v for _, v in full), max(v for _, v in full)
    assert low - 0.05 <= min(v for _, v in ours)
    assert max(v for _, v in ours) <= high + 0.05


def test_outline_of_a_cylinder_square_to_the_sheet_is_its_rectangle():
    points = outline(Cylinder((0.0, -0.1, 0.0), (0.0, 0.1, 0.0), 0.01), FRONT)
    assert set(points) == {(-100.0, -10.0), (100.0, -10.0), (100.0, 10.0), (-100.0, 10.0)}


def test_outline_of_a_block_seen_from_above_is_its_plan():
    points = outline(Block((0.1, 0.0, 0.0), (0.02, 0.04, 0.06)), TOP)
    assert set(points) == {(-20.0, -90.0), (20.0, -90.0), (20.0, -110.0), (-20.0, -110.0)}


def test_oblique_from_straight_ahead_is_the_front_view_and_from_port_the_side_view():
    for look, azimuth in ((FRONT, 0), (SIDE, 90)):
        turned = oblique(azimuth, 0)
        assert turned.right == pytest.approx(look.right, abs=1e-12)
        assert turned.up == pytest.approx(look.up, abs=1e-12)


def test_oblique_from_straight_above_is_the_top_view():
    turned = oblique(0, 90)
    assert turned.right == pytest.approx(TOP.right, abs=1e-12)
    assert turned.up == pytest.approx(TOP.up, abs=1e-12)


@pytest.mark.parametrize(("azimuth", "elevation"), [(30, 25), (200, -40), (315, 60)])
def test_oblique_bars_are_the_body_turned_by_hand(azimuth, elevation):
    """Turn the body by -azimuth about z, then lower the bow's end by the elevation; y and z are the sheet."""
    results = survey(box_design())
    a, e = radians(azimuth), radians(elevation)

    def by_hand(point):
        x, y, z = (value * 1000 for value in point)
        ahead, across = x * cos(a) + y * sin(a), -x * sin(a) + y * cos(a)
        return across, z * cos(e) - ahead * sin(e)

    scene = oblique_scene(results, azimuth, elevation)
    for stroke in scene.strokes:
        bar = results.frame.bars[stroke.about[1]]
        assert stroke.points[0] == pytest.approx(by_hand(bar.start), abs=1e-9)
        assert stroke.points[1] == pytest.approx(by_hand(bar.end), abs=1e-9)
    assert len(scene.strokes) == len(results.frame.bars)


def test_the_marked_part_is_named_in_the_oblique_view():
    scene = oblique_scene(survey(box_design()), marked=("thruster", "t3"))
    assert any(label.text == "lift" for label in scene.labels)
