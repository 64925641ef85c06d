"""The pen on the drawing: where keys take it, and what it does there, on any frame."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from model.design import edits
from model.drawing import pen
from model.drawing.projection import VIEWS, oblique
from model.errors import EditError
from model.review import review
from model.survey import survey
from tests.generators import tidy_designs
from tests.model.edits_designs import EMPTY, rectangle

QUIET = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
KEYS = st.lists(st.sampled_from([(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]))
LOOKS = st.sampled_from(sorted(VIEWS))
SLANTED = st.builds(oblique, st.sampled_from(range(0, 360, 15)), st.sampled_from(range(-90, 91, 15)))


def numbers(design):
    """The places of all planes [m] by their ids, from the raw record."""
    run = design.arrangement
    return {plane.id: plane.at for group in (run.stations, run.sides, run.levels) for plane in group}


@QUIET
@given(tidy_designs(), st.one_of(LOOKS, SLANTED), KEYS)
def test_arrows_go_to_the_next_plane_on_the_sheet_and_stop_at_the_last(design, view, keys):
    at = pen.beginning(design)
    if at is None:
        return
    places, seen = numbers(design), survey(design)
    for right, up, nearer in keys:
        look, before = VIEWS[view] if isinstance(view, str) else view, at
        at = pen.moved(design, view, at, right, up, nearer)
        way = look.right if right else look.up if up else look.towards
        was, now = (
            sum(a * b for a, b in zip(way, pen.place(seen, here), strict=True)) for here in (before, at)
        )
        changed = [axis for axis in range(3) if before[axis] != at[axis]]
        assert len(changed) <= 1
        if changed:
            assert (now - was) * (right + up + nearer) > 0, "it goes where the key points"
            group = [plane for n, g in enumerate(groups(design)) if n == changed[0] for plane in g]
            low, high = sorted((places[before[changed[0]]], places[at[changed[0]]]))
            assert not [plane for plane in group if low < plane.at < high], "no plane is jumped over"


def groups(design):
    run = design.arrangement
    return run.stations, run.sides, run.levels


@QUIET
@given(tidy_designs(), st.data())
def test_a_bar_drawn_and_drawn_again_is_gone(design, data):
    if not all(groups(design)):
        return
    ends = [
        tuple(data.draw(st.sampled_from([p.id for p in group])) for group in groups(design)) for _ in "ab"
    ]
    if edits.bar_between(design, *ends) or len(set(ends)) == 1:
        return
    label, draw = pen.stroke(design, *ends)
    try:
        drawn = draw(design)
    except EditError:
        return
    assert label == "bar added"
    assert len(drawn.arrangement.bars) > len(design.arrangement.bars)
    label, rub = pen.stroke(drawn, *ends)
    assert label.endswith("removed")
    assert edits.bar_between(rub(drawn), *ends) is None


@QUIET
@given(tidy_designs(), LOOKS, st.data())
def test_whatever_is_offered_at_a_crossing_can_be_done_or_is_refused(design, view, data):
    at = pen.beginning(design)
    moves = [*pen.new_planes(design, view, at)]
    if at is not None:
        moves += pen.planes_here(design, at)
        moves += [pen.across(bar) for bar in pen.bars_here(design, at)]
        moves += [pen.nudged(design, view, at, right, up) for right, up in ((1, 0), (-1, 0), (0, 1), (0, -1))]
    moves += pen.mirrors()
    label, edit = data.draw(st.sampled_from(moves))
    try:
        after = edit(design)
    except EditError:
        return
    assert label
    here = pen.settled(after, at or ("", "", ""), design)
    if all(groups(after)):
        known = numbers(after)
        assert here is not None
        assert all(plane in known for plane in here)
        assert pen.words(survey(after), here, None)


def test_from_nothing_the_first_planes_come_first():
    assert pen.beginning(EMPTY) is None
    offered = [label for label, _ in pen.new_planes(EMPTY, "front", None)]
    assert offered == ["the first side", "the first level", "the first station"]
    design = EMPTY
    for _, edit in pen.new_planes(EMPTY, "front", None):
        design = edit(design)
    here = pen.settled(design, ("", "", ""))
    assert here == tuple(group[0].id for group in groups(design))
    assert pen.words(survey(design), here, None).endswith("empty. Enter begins a bar here.")


def test_a_new_plane_half_way_lies_half_way_and_has_the_cursor():
    design = rectangle()
    at = pen.beginning(design)
    (move,) = [each for each in pen.new_planes(design, "top", at) if each[0].startswith("station half-way")]
    after = move[1](design)
    places = sorted(plane.at for plane in after.arrangement.stations)
    assert places[1] == pytest.approx((places[0] + places[2]) / 2)
    here = pen.settled(after, at, design)
    assert numbers(after)[here[0]] == places[1]
    assert here[1:] == at[1:]


def test_words_tell_what_enter_does():
    design = rectangle()
    seen, at = survey(design), pen.beginning(design)
    joint = next(joint for joint in seen.frame.joints.values() if joint.id == design.arrangement.joints[0].id)
    assert joint.match.fitting.name in pen.words(seen, at, None)
    assert "Pen down" in pen.words(seen, at, at)
    bar = design.arrangement.bars[0]
    ends = [edits.find(design, edits.Ref("joint", end)).planes for end in (bar.start, bar.end)]
    assert f"takes the bar '{bar.name}' away" in pen.words(seen, ends[1], ends[0])


def test_a_bar_is_split_only_where_one_runs_and_no_joint_is():
    design = edits.add_plane(rectangle(), "station", at=0.05)
    at = pen.beginning(design)
    with pytest.raises(EditError, match="joint here already"):
        pen.split(design, at)
    new = design.arrangement.stations[-1].id
    label, edit = pen.split(design, (new, *at[1:]))
    assert label.endswith("split")
    assert len(edit(design).arrangement.bars) == len(design.arrangement.bars) + 1
    assert review(edit(design)).survey.frame.groups
    levels = edits.add_plane(design, "level")
    with pytest.raises(EditError, match="no bar runs through here"):
        pen.split(levels, (new, at[1], levels.arrangement.levels[-1].id))


@QUIET
@given(tidy_designs(), LOOKS, st.data())
def test_a_bar_that_would_slant_wrongly_is_offered_planes_at_45_degrees(design, view, data):
    """Whichever is taken, the cursor stands on it, and from the pen to there both ways are alike."""
    if not all(groups(design)):
        return
    down, at = (
        tuple(data.draw(st.sampled_from([p.id for p in group])) for group in groups(design)) for _ in "ab"
    )
    places = numbers(design)
    runs = [abs(places[b] - places[a]) for a, b in zip(down, at, strict=True) if a != b]
    offered = [move for move in pen.new_planes(design, view, at, down) if "at 45 degrees" in move[0]]
    if len(runs) != 2 or abs(runs[0] - runs[1]) < 1e-7:
        assert not offered
        return
    assert "45 degrees: p adds a plane" in pen.words(survey(design), at, down) or not offered
    for _, edit in offered:
        after = edit(design)
        here, now = pen.settled(after, at, design), numbers(after)
        ways = [now[b] - now[a] for a, b in zip(down, here, strict=True) if a != b]
        assert len(ways) == 2
        assert abs(ways[0]) == pytest.approx(abs(ways[1]), abs=1e-9)
        before = [places[b] - places[a] for a, b in zip(down, at, strict=True) if a != b]
        assert [way > 0 for way in ways] == [way > 0 for way in before], "it slants towards the cursor"


def test_both_planes_at_45_degrees_are_offered_with_how_far_they_are():
    """400 ahead and 300 to port: a station 300 ahead, or a side 400 to port."""
    design = edits.add_plane(rectangle(), "level")
    run = design.arrangement
    stations, sides = (sorted(group, key=lambda p: p.at) for group in (run.stations, run.sides))
    down = (stations[0].id, sides[0].id, run.levels[0].id)
    at = (stations[-1].id, sides[-1].id, run.levels[0].id)
    long, wide = (1000 * (group[-1].at - group[0].at) for group in (stations, sides))
    labels = [label for label, _ in pen.new_planes(design, "top", at, down)][:2]
    assert labels == [
        f"station at 45 degrees from the pen, {wide:g} mm from {stations[0].name}",
        f"side at 45 degrees from the pen, {long:g} mm from {sides[0].name}",
    ]
