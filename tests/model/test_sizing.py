"""The three ways to size a frame, on frames worked by hand and on generated ones.

Cuts after an edit are worked out from the raw numbers of the file: spacing less what the sockets take off.
"""

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from model.errors import EditError
from model.frame.held import give_up_piece, saw_to, settled
from model.frame.layout import lay_out
from model.sizing import axis_sizes, set_cut, set_outside, set_spacing_between
from model.survey import survey
from tests import worked
from tests.generators import tidy_designs
from tests.reference.raw_frame import Raw
from tests.reference.test_connectivity import take_offs

QUIET = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


def frame_of(design):
    return lay_out(design, design.arrangement)


def planes(design):
    run = design.arrangement
    return {plane.id: plane.at for group in (run.stations, run.sides, run.levels) for plane in group}


def box(**more):
    return worked.design(worked.box(**more))


def three_stations():
    """Two bars of 361.9 mm along each side, and three bars across."""
    ends = [((n, y, 0), (n + 1, y, 0)) for n in (0, 1) for y in (0, 1)]
    ends += [((x, 0, 0), (x, 1, 0)) for x in (0, 1, 2)]
    return worked.design(worked.arrangement((-0.4, 0.0, 0.4), (-0.15, 0.15), (0.0,), ends))


def test_all_three_readings_are_there_at_once():
    """400 mm centre to centre, 427.94 mm over the hubs, cut 361.9 mm."""
    length = axis_sizes(survey(box()))[0]
    assert length.outside == pytest.approx(0.42794)
    (pair,) = length.pairs
    assert pair.spacing == pytest.approx(0.4)
    assert [bar.cut for bar in pair.bars] == pytest.approx([0.3619] * 4)


def test_a_cut_is_set_and_the_other_two_follow():
    length = axis_sizes(survey(set_cut(box(), "b0", 0.3)))[0]
    assert length.outside == pytest.approx(0.42794 - 0.0619)
    assert length.pairs[0].spacing == pytest.approx(0.3381)
    assert {round(bar.cut, 9) for bar in length.pairs[0].bars} == {0.3}


def test_an_outside_size_is_set_and_the_other_two_follow():
    length = axis_sizes(survey(set_outside(box(), 0, 0.35)))[0]
    assert length.outside == pytest.approx(0.35, abs=1e-8)
    assert length.pairs[0].spacing == pytest.approx(0.35 - 0.02794)


def test_a_spacing_is_set_and_the_other_two_follow():
    length = axis_sizes(survey(set_spacing_between(box(), "station", "x1", "x0", 0.25)))[0]
    assert length.outside == pytest.approx(0.27794)
    assert {round(bar.cut, 9) for bar in length.pairs[0].bars} == {0.2119}


@pytest.mark.parametrize(
    ("hold", "places"), [("middle", (-0.17, 0.17)), ("low", (-0.2, 0.14)), ("high", (-0.14, 0.2))]
)
def test_what_stays_in_its_place(hold, places):
    after = planes(set_spacing_between(box(), "station", "x0", "x1", 0.34, hold))
    assert (after["x0"], after["x1"]) == pytest.approx(places)


def test_equal_bars_stay_equal_and_the_middle_stays():
    after = set_cut(three_stations(), "b0", 0.3)
    assert planes(after)["x1"] == 0
    assert {round(frame_of(after).bars[bar].cut, 9) for bar in ("b0", "b1", "b2", "b3")} == {0.3}


def test_equal_bars_stay_equal_when_the_outside_changes():
    after = set_outside(three_stations(), 0, 0.7)
    cuts = {round(frame_of(after).bars[bar].cut, 9) for bar in ("b0", "b1", "b2", "b3")}
    assert len(cuts) == 1


def test_fittings_that_touch_still_touch_when_the_outside_changes():
    """Bars of 25.4 mm at both ends, where a tee touches a corner, keep their length."""
    ends = [((n, y, 0), (n + 1, y, 0)) for n in (0, 1, 2) for y in (0, 1)]
    ends += [((x, 0, 0), (x, 1, 0)) for x in range(4)]
    run = worked.arrangement((-0.2, -0.1365, 0.1365, 0.2), (-0.15, 0.15), (0.0,), ends)
    after = frame_of(set_outside(worked.design(run), 0, 0.6))
    assert after.bars["b0"].cut == pytest.approx(0.0254, abs=1e-8)
    assert after.bars["b4"].cut == pytest.approx(0.0254, abs=1e-8)
    assert after.bars["b2"].spacing == pytest.approx(0.6 - 0.02794 - 2 * 0.0635, abs=1e-8)


def test_a_bar_at_45_degrees_takes_a_cut_too():
    ends = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 1, 0)), ((2, 1, 0), (3, 1, 0))]
    run = worked.arrangement((-0.3, 0.0, 0.2, 0.5), (0.0, 0.2), (0.0,), ends)
    after = frame_of(set_cut(worked.design(run), "b1", 0.3))
    assert after.bars["b1"].cut == pytest.approx(0.3, abs=1e-8)
    assert all(joint.match for joint in after.joints.values() if len(joint.arms) == 2)


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (lambda d: set_cut(d, "b0", 0.02), "must be at least 25.4 mm long"),
        (lambda d: set_cut(d, "gone", 0.2), "not in this design any more"),
        (lambda d: set_spacing_between(d, "station", "x0", "x0", 0.2), "two different stations"),
        (lambda d: set_spacing_between(d, "station", "x0", "y0", 0.2), "two different stations"),
        (lambda d: set_spacing_between(d, "station", "x0", "x1", 0.0), "more than 0"),
        (lambda d: set_spacing_between(d, "station", "x0", "x1", 0.06), "need 63.5 mm from centre to centre"),
        (lambda d: set_outside(d, 0, 0.05), "alone take 91.4 mm here"),
        (lambda d: set_cut(saw_to(d, "b1", 0.3), "b0", 0.35), "sawn already"),
        (lambda d: saw_to(d, "b0", 0.02), "at least 25.4 mm"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(edit, words):
    design = box()
    with pytest.raises(EditError, match=words):
        edit(design)
    assert design == box()


def test_one_station_has_no_length_to_set():
    ends = [((0, 0, 0), (0, 1, 0))]
    design = worked.design(worked.arrangement((0.0,), (0.0, 0.2), (0.0,), ends))
    with pytest.raises(EditError, match="must be two stations"):
        set_outside(design, 0, 0.3)


def raw_cuts(design, bar):
    """What a bar may be cut to [mm], from the raw numbers of the file."""
    raw = Raw(design)
    ends = raw.bars[bar]["start"], raw.bars[bar]["end"]
    spacing = float(np.linalg.norm(raw.at[ends[1]] - raw.at[ends[0]]))
    return [spacing - a - b for a in take_offs(raw, bar, ends[0]) for b in take_offs(raw, bar, ends[1])]


@QUIET
@given(tidy_designs(), st.integers(0, 1000), st.floats(0.03, 0.6))
def test_on_any_frame_a_cut_is_what_was_asked_and_its_likes_stay_alike(design, number, wanted):
    frame = frame_of(design)
    known = [bar for bar in frame.bars.values() if bar.cut is not None]
    assume(known)
    bar = known[number % len(known)]
    alike = [
        other.id
        for other in known
        if abs(other.cut - bar.cut) < 1e-6
        and other.pipe == bar.pipe
        and np.allclose(np.abs(other.along), np.abs(bar.along))
        and other.letter == bar.letter
    ]
    try:
        after = set_cut(design, bar.id, wanted)
    except EditError:
        return
    for other in alike:
        if frame_of(after).bars[other].cut is not None:
            assert min(abs(cut - wanted * 1000) for cut in raw_cuts(after, other)) < 1e-4
    assert min(abs(cut - wanted * 1000) for cut in raw_cuts(after, bar.id)) < 1e-4


@QUIET
@given(tidy_designs(), st.integers(0, 2), st.floats(0.05, 2.0))
def test_on_any_frame_the_outside_is_what_was_asked(design, axis, wanted):
    try:
        after = set_outside(design, axis, wanted)
    except EditError:
        return
    assert survey(after).extents.size[axis] == pytest.approx(wanted, abs=1e-6)


def test_a_piece_that_is_given_up_leaves_everything_where_it_is():
    held = saw_to(box(), "b0", 0.3)
    free = give_up_piece(held, "b0")
    assert frame_of(free).planes == pytest.approx(frame_of(held).planes)
    assert frame_of(free).bars["b0"].sawn is None


def test_a_sawn_piece_holds_its_length_when_the_push_in_depth_changes():
    """The dry joint goes 2.7 mm less deep: the piece stays, its planes go 5.4 mm further apart."""
    held = saw_to(box(), "b0", 0.3)
    pipe = held.stock.pipes[0].but(insertion=0.01)
    after = held.but(stock=held.stock.but(pipes=(pipe,)))
    bars = frame_of(after).bars
    assert bars["b0"].cut == 0.3
    assert bars["b0"].spacing == pytest.approx(frame_of(held).bars["b0"].spacing + 0.0054)
    assert bars["b1"].cut == pytest.approx(0.3)
    assert bars["b4"].spacing == pytest.approx(0.3)
    assert planes(settled(after))["x1"] == pytest.approx(frame_of(after).planes["x1"])


def test_the_outer_plane_gives_way_and_the_inner_one_stays():
    held = saw_to(three_stations(), "b2", 0.3)
    assert planes(held) == pytest.approx(
        {"x0": -0.4, "x1": 0.0, "x2": 0.3381, "y0": -0.15, "y1": 0.15, "z0": 0}
    )
