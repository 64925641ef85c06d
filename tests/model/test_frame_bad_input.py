"""Frames that cannot be, or are very large: a clear sentence or a result, and never a traceback."""

from time import perf_counter

import pytest

from model.design import Design, Plane, edits
from model.errors import EditError
from model.frame.layout import lay_out
from model.hoop import smallest_hoop
from model.review import review
from model.silhouette import silhouettes
from model.sizing import axis_sizes, set_outside
from model.survey import survey
from model.tolerance import rectangles
from tests import worked


def codes(design):
    return {finding.code for finding in review(design).findings}


def test_planes_in_one_place_are_named():
    design = worked.design(worked.arrangement((0.1, 0.1), (0.0, 0.2), (0.0,), [((0, 0, 0), (1, 0, 0))]))
    messages = [f.message for f in review(design).findings if f.code == "frame.joints-together"]
    assert messages == ["j000 and j100 are in the same place: move one of their planes."]


def test_planes_in_the_wrong_order_are_a_frame_like_any_other():
    """A box whose bow station lies aft of its stern station is the same box, turned round."""
    run = worked.box()
    turned = tuple(plane.but(at=-plane.at) for plane in run.stations)
    straight, swapped = (survey(worked.design(r)) for r in (run, run.but(stations=turned)))
    assert swapped.extents.size == pytest.approx(straight.extents.size)
    assert [group.cut for group in swapped.cuts] == pytest.approx([group.cut for group in straight.cuts])
    axis_sizes(swapped)


def test_a_plane_moved_past_another_is_refused_where_a_joint_would_lie_in_a_bar():
    """Aft, mid, bow: the mid station moved ahead of the bow leaves the bow joints on the bar behind it."""
    ends = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 0, 0)), ((2, 0, 0), (2, 1, 0))]
    design = worked.design(worked.arrangement((0.0, 0.2, 0.4), (0.0, 0.2), (0.0,), ends))
    with pytest.raises(EditError, match="'j200' would lie inside the bar 'bar 0'"):
        edits.move_plane(design, "station", "x1", 0.6)
    with pytest.raises(EditError, match="already at 400 mm"):
        edits.move_plane(design, "station", "x1", 0.4)


def test_a_bar_longer_than_the_pipe_on_sale_is_named_with_both_lengths():
    pipe = worked.pipe(sticks=worked.pipe().sticks[:1])
    design = worked.design(worked.box(length=3.2), stock=worked.stock(pipes=(pipe,)))
    message = next(f.message for f in review(design).findings if f.code == "stock.bar-long")
    assert "3161.9 mm of pipe, but the longest on sale is 3048 mm" in message


def test_a_cut_shorter_than_two_push_in_depths_is_two_joints_too_close():
    """55 mm from centre to centre: fittings need 63.5 mm, the cut would be 16.9 mm, less than 25.4 mm."""
    assert "frame.joints-close" in codes(worked.design(worked.box(height=0.055)))


def test_a_push_in_depth_over_the_socket_depth_stops_at_the_stop():
    design = worked.design(worked.box(), stock=worked.stock(pipes=(worked.pipe(insertion=0.05),)))
    assert lay_out(design, design.arrangement).bars["b0"].insertions == pytest.approx((0.0174752, 0.0174752))


def many_planes(count: int) -> Design:
    """A box among thousands of planes that carry nothing."""
    run = worked.box()
    idle = tuple(Plane(id=f"idle{n}", name=f"idle {n}", at=1 + n / 1000) for n in range(count))
    return worked.design(run.but(stations=(*run.stations, *idle)))


def test_thousands_of_planes_are_carried_along():
    design = many_planes(5000)
    began = perf_counter()
    found = survey(design)
    axis_sizes(found)
    after = set_outside(design, 0, 0.5)
    assert perf_counter() - began < 5
    assert survey(after).extents.size[0] == pytest.approx(0.5)
    assert [p.at for p in after.arrangement.stations[2:]] == sorted(
        p.at for p in after.arrangement.stations[2:]
    )


def test_a_plane_in_the_way_is_named():
    """Growing the box by 2 m pushes its bow plane along, and those beyond it with it: nothing is passed."""
    after = set_outside(many_planes(3), 0, 2.4)
    order = [plane.id for plane in sorted(after.arrangement.stations, key=lambda plane: plane.at)]
    assert order == ["x0", "x1", "idle0", "idle1", "idle2"]


def ladder(count: int) -> Design:
    """A flat ladder of some rungs: two joints and three bars each."""
    ends = [((n, y, 0), (n + 1, y, 0)) for n in range(count - 1) for y in (0, 1)]
    ends += [((n, 0, 0), (n, 1, 0)) for n in range(count)]
    places = tuple(n / 10 for n in range(count))
    return worked.design(worked.arrangement(places, (0.0, 0.3), (0.0,), ends))


def test_a_large_frame_is_measured_in_time():
    found = survey(ladder(250))
    began = perf_counter()
    silhouettes(found.parts)
    smallest_hoop(found.parts)
    assert len(rectangles(found.frame, found.design.brief.thresholds)) == 249
    assert perf_counter() - began < 20


def test_joints_without_bars_and_no_bars_at_all_stop_nothing():
    run = worked.box()
    for design in (worked.design(run.but(bars=())), worked.design(run.but(bars=run.bars[:1]))):
        found = survey(design)
        axis_sizes(found)
        silhouettes(found.parts)
        smallest_hoop(found.parts)
        rectangles(found.frame, design.brief.thresholds)
        codes(design)
