"""Front, top and side views against coordinates projected by hand from the plane positions."""

import pytest
from msgspec.structs import replace

from model.drawing.projection import FRONT, SIDE, TOP
from model.drawing.views import three_views, view_scene
from model.survey import survey
from model.vectors import cross
from tests.drawing_designs import X, Y, Z, box_bars, box_design, random_design

BY_HAND = {
    "front": lambda x, y, z: (y, z),
    "top": lambda x, y, z: (y, -x),
    "side": lambda x, y, z: (-x, z),
}
"""x ahead, y to port, z up, to right and up on the sheet: looking aft, port is on the right; from above
with port on the right the bow is below; from port the bow is on the left."""


def hand_ends(design, bar, view):
    """Both ends of a bar on the sheet [mm], straight from the design's planes."""
    arrangement = design.arrangement
    at = {plane.id: plane.at for plane in (*arrangement.stations, *arrangement.sides, *arrangement.levels)}
    joints = {joint.id: [at[plane] * 1000 for plane in joint.planes] for joint in arrangement.joints}
    return [BY_HAND[view](*joints[end]) for end in (bar.start, bar.end)]


def on_segment(point, ends, slack=1e-6):
    """Whether a point lies on an upright or level segment."""
    return all(min(a, b) - slack <= p <= max(a, b) + slack for p, a, b in zip(point, *ends, strict=True))


def drawn(scene):
    return [stroke for stroke in scene.strokes if stroke.role == "bar"]


def test_the_sheet_looks_out_of_the_page_at_the_viewer():
    for look in (FRONT, TOP, SIDE):
        assert cross(look.right, look.up) == look.towards


@pytest.mark.parametrize("view", BY_HAND)
def test_bars_of_the_box_lie_where_hand_projection_puts_them(view):
    design = box_design()
    bars = {bar.id: bar for bar in design.arrangement.bars}
    for stroke in drawn(view_scene(survey(design), view)):
        ends = hand_ends(design, bars[stroke.about[1]], view)
        assert all(on_segment(point, ends) for point in stroke.points)


def test_front_view_of_the_box_is_its_rectangle_drawn_once():
    lines = {frozenset(stroke.points) for stroke in drawn(view_scene(survey(box_design()), "front"))}
    left, right, low, high = (value * 1000 for value in (Y[0], Y[1], Z[0], Z[2]))
    corners = ((left, low), (right, low), (right, high), (left, high))
    assert lines == {frozenset((corners[k], corners[k - 1])) for k in range(4)}


def test_of_bars_behind_each_other_the_nearest_is_drawn_and_labelled():
    scene = view_scene(survey(box_design()), "front")
    bars = box_bars()
    for stroke in drawn(scene):
        start, end = bars[int(stroke.about[1][1:])]
        assert start[0] == end[0] == 2  # the bow station
    assert len([label for label in scene.labels if label.role == "bar"]) == 4


def test_what_is_under_the_cursor_is_drawn_even_behind_another():
    behind = box_bars().index(((0, 0, 0), (0, 1, 0)))
    scene = view_scene(survey(box_design()), "front", ("bar", f"b{behind}"))
    assert ("bar", f"b{behind}") in {stroke.about for stroke in drawn(scene)}


@pytest.mark.parametrize("seed", range(25))
@pytest.mark.parametrize("view", BY_HAND)
def test_every_bar_of_a_random_frame_is_covered_by_what_is_drawn(seed, view):
    """Each bar that is not seen end-on: every millimetre of it lies on a drawn line; none is drawn twice."""
    design = random_design(seed)
    lines = [stroke.points for stroke in drawn(view_scene(survey(design), view))]
    for bar in design.arrangement.bars:
        (u0, v0), (u1, v1) = hand_ends(design, bar, view)
        steps = int(max(abs(u1 - u0), abs(v1 - v0)))
        for k in range(1, steps):
            point = (u0 + (u1 - u0) * k / steps, v0 + (v1 - v0) * k / steps)
            along = [ends for ends in lines if on_segment(point, ends) and parallel(ends, u1 - u0, v1 - v0)]
            assert len(along) in (1, 2)  # two only where pieces touch
            assert len(along) == 1 or any(point in (a, b) for a, b in along) or touching(along, point)


def parallel(ends, right, up):
    (u0, v0), (u1, v1) = ends
    return abs((u1 - u0) * up - (v1 - v0) * right) < 1e-6


def touching(lines, point):
    ends = [end for line in lines for end in line]
    return sum(abs(u - point[0]) + abs(v - point[1]) < 1e-6 for u, v in ends) == 2


def test_overall_and_chain_dimensions_come_from_the_raw_numbers():
    scene = view_scene(survey(box_design()), "side")
    chain = [
        (item.start, item.end, item.text) for item in scene.dimensions if item.axis == "u" and item.lane == 1
    ]
    assert chain == [(-300.0, -150.0, "150"), (-150.0, 0.0, "150")]
    overall = next(item for item in scene.dimensions if item.axis == "u" and item.lane == 2)
    # from the hub at the stern, 14 mm abaft the station, to the hook: 300 + 40 offset + half of 70
    assert (overall.start, overall.end) == pytest.approx((-375.0, 14.0))
    assert overall.text == "389 mm"


def test_dimensions_follow_the_unit_of_the_design():
    scene = view_scene(survey(box_design(units="in")), "front")
    texts = {item.text for item in scene.dimensions if item.axis == "u"}
    assert "9 13/16" in texts  # 250 mm is 9.8425 in; 9 13/16 is 9.8125 in


def test_third_angle_puts_each_view_on_the_side_it_is_seen_from():
    places = {
        place.scene.name: (place.column, place.row) for place in three_views(survey(box_design())).places
    }
    assert places == {"front": (0, 1), "top": (0, 0), "side": (1, 1)}


def test_first_angle_puts_each_view_on_the_far_side():
    sheet = three_views(survey(box_design()), angle="first")
    places = {place.scene.name: (place.column, place.row) for place in sheet.places}
    assert places == {"front": (1, 0), "top": (1, 1), "side": (0, 0)}
    assert sheet.title == "First angle"


@pytest.mark.parametrize("angle", ["third", "first"])
def test_neighbouring_views_of_a_sheet_share_their_axis(angle):
    """A joint has the same u in front and top, the same v in front and side: it can be carried across."""
    scenes = {
        place.scene.name: place.scene for place in three_views(survey(box_design()), angle=angle).places
    }
    along = lambda scene, axis: {round(p[axis], 6) for stroke in drawn(scene) for p in stroke.points}  # noqa: E731
    assert along(scenes["front"], 0) == along(scenes["top"], 0)
    assert along(scenes["front"], 1) == {Z[0] * 1000, Z[2] * 1000}
    assert {Z[0] * 1000, Z[2] * 1000} <= along(scenes["side"], 1)


def test_a_sheet_gives_length_width_and_height_once():
    sheet = three_views(survey(box_design()))
    overall = [item.text for place in sheet.places for item in place.scene.dimensions if item.lane == 2]
    assert sorted(overall) == ["252.9 mm", "310.4 mm", "389 mm"]


def test_a_limit_box_is_drawn_around_the_middle_unless_it_is_far_larger():
    results = survey(box_design())
    shape = next(shape for shape in view_scene(results, "front").shapes if shape.role == "limit")
    (u0, v0), (u1, v1) = shape.box
    assert (u1 - u0, v1 - v0) == pytest.approx((320, 300))
    design = results.design
    wide = design.but(brief=design.brief.but(size_limit=(2.0, 2.0, 2.0)))
    scene = view_scene(survey(wide), "front")
    assert not any(shape.role == "limit" for shape in scene.shapes)
    assert any("far larger" in entry.meaning for entry in scene.legend)


def test_thrusters_are_drawn_as_what_they_are():
    scene = view_scene(survey(box_design()), "front")
    arrows = {mark.about[1]: (mark.heading, mark.towards) for mark in scene.marks if mark.role == "thruster"}
    assert arrows["t1"] == ((0, 0), True)  # pushes ahead, towards who looks at the bow
    assert arrows["t3"][0] == (0, 1)  # pushes up
    discs = [circle for circle in scene.circles if circle.role == "propeller"]
    assert {(circle.centre, circle.radius) for circle in discs} == {
        ((-125.0, 35.0), 30.0),
        ((125.0, 35.0), 30.0),
    }


def test_g_and_b_stand_where_the_balance_puts_them():
    results = survey(box_design())
    marks = {mark.role: mark.at for mark in view_scene(results, "side").marks}
    (gx, _, gz), (bx, _, bz) = results.balance.g, results.balance.b
    assert marks["gravity"] == pytest.approx((-gx * 1000, gz * 1000))
    assert marks["buoyancy"] == pytest.approx((-bx * 1000, bz * 1000))


def test_letters_are_those_of_the_cut_list():
    results = survey(box_design())
    for label in view_scene(results, "top").labels:
        assert label.text == results.frame.bars[label.about[1]].letter


@pytest.mark.parametrize(
    ("kind", "plane", "view"),
    [("station", "st1", "side"), ("side", "si0", "front"), ("level", "le2", "side")],
)
def test_a_plane_under_the_cursor_is_a_centre_line_with_its_name(kind, plane, view):
    scene = view_scene(survey(box_design()), view, (kind, plane))
    stroke = next(stroke for stroke in scene.strokes if stroke.role == "centre")
    axis = 1 if kind == "level" else 0
    place = {"st1": -X[1], "si0": Y[0], "le2": Z[2]}[plane] * 1000
    assert [point[axis] for point in stroke.points] == [place, place]
    assert any(label.text == f"{kind} {plane[2:]}" for label in scene.labels)


def test_a_plane_seen_face_on_is_not_drawn():
    scene = view_scene(survey(box_design()), "front", ("station", "st1"))
    assert not any(stroke.role == "centre" for stroke in scene.strokes)


def test_joints_without_a_fitting_are_marked():
    design = box_design()
    bare = design.but(stock=design.stock.but(fittings=()))
    marks = [mark for mark in view_scene(survey(bare), "top").marks if mark.role == "unfitted"]
    assert len(marks) == len({(joint.station, joint.side) for joint in design.arrangement.joints})


def test_an_empty_design_gives_an_empty_scene():
    design = box_design()
    bare = {
        "joints": (),
        "bars": (),
        "thrusters": (),
        "floats": (),
        "ballasts": (),
        "attachments": (),
        "tether": None,
        "openings": (),
        "plugs": (),
    }
    empty = design.but(arrangements=(design.arrangement.but(**bare),))
    scene = view_scene(survey(empty), "front")
    assert scene.empty
    assert replace(scene, title="").dimensions == ()
