"""Single holes of the ties: added, moved, changed, removed, and refused in one sentence.

The port rail of the box runs 400 mm between joint centres; its pipe begins 31.75 - 12.7 = 19.05 mm from the
joint and is 400 - 2 x 19.05 = 361.9 mm long.  It shows from 31.75 to 368.25 mm.  The motor sits at 200 mm.
"""

from itertools import pairwise

import pytest

from model.design import edits
from model.errors import EditError
from model.review import proven_remedy, review
from model.survey import survey
from model.thrust.hole_edits import add_hole, change_hole, place_hole, remove_hole
from model.thrust.mounts import mount_plans
from tests.model.thrust_cases import HOLES, tied

SHORT = 19.05
LONG = 361.9


def holes(design):
    return next(item.tie_holes for item in design.arrangement.thrusters if item.id == "port")


def from_joint(design):
    """[mm] Where the holes are, from the centre of the joint where the rail starts."""
    return [200 + 1000 * hole.along for hole in holes(design)]


def test_holes_are_added_where_they_usually_go_and_then_beside_them():
    """The motor of 60 mm lies along its rail: 18 mm to each side, and no third one nearer than 12 mm."""
    design = tied()
    for count in range(1, 6):
        design = add_hole(design, "port")
        assert len(holes(design)) == count
        places = sorted(from_joint(design))
        assert all(b - a >= 12 - 1e-6 for a, b in pairwise(places))
        assert places[0] >= 31.75 + 3
        assert places[-1] <= 368.25 - 3
        if count == 2:
            assert places == pytest.approx([182, 218])


def test_there_is_an_end_of_room():
    """Holes of 6 mm, 12 mm apart at least, on 336.5 mm of pipe that shows: 28 at the very most."""
    design = tied()
    said = ""
    while not said:
        try:
            design = add_hole(design, "port")
        except EditError as problem:
            said = str(problem)
        assert len(holes(design)) <= 28
    assert said == "there is no room on bar 2 for another hole of port motor"
    assert len(holes(design)) >= 14


def test_a_hole_is_moved_by_its_distance_from_the_sawn_end():
    moved = place_hole(tied(*HOLES), "port", 1, 0.25)
    assert from_joint(moved) == pytest.approx([182, 250 + SHORT])
    found = survey(moved)
    (plan,) = [
        plan
        for plan in mount_plans(moved, found.arrangement, found.frame, found.parts)
        if plan.thruster == "port"
    ]
    assert [hole.from_end * 1000 for hole in plan.holes] == pytest.approx([182 - SHORT, 250])


@pytest.mark.parametrize("place", [0.0029, (LONG - 2.9) / 1000, -0.1, 5.0])
def test_a_hole_outside_its_pipe_is_refused_with_the_room_that_there_is(place):
    with pytest.raises(EditError, match=r"pipe of bar 2 is 361.9 mm long: .* 3 mm to 358.9 mm"):
        place_hole(tied(*HOLES), "port", 0, place)
    for near in (0.0031, (LONG - 3.1) / 1000):
        assert from_joint(place_hole(tied(*HOLES), "port", 0, near))[0] == pytest.approx(1000 * near + SHORT)


def test_holes_do_not_run_into_each_other():
    """Both of 6 mm: 6 mm apart they touch."""
    with pytest.raises(EditError, match=r"run into hole 2 of port motor, only 5.5 mm away; keep 6 mm"):
        change_hole(tied(*HOLES), "port", 0, along=0.018 - 0.0055)
    assert len(holes(change_hole(tied(*HOLES), "port", 0, along=0.018 - 0.0061))) == 2
    with pytest.raises(EditError, match="run into"):
        change_hole(tied(HOLES[0], HOLES[0].but(along=-0.011)), "port", 0, diameter=0.009)


def test_a_side_must_be_a_side_and_a_drill_narrower_than_the_pipe():
    with pytest.raises(EditError, match="that side is an end of bar 2"):
        change_hole(tied(*HOLES), "port", 0, face="+x")
    assert holes(change_hole(tied(*HOLES), "port", 0, face="-y+z"))[0].face == "-y+z"
    with pytest.raises(EditError, match=r"a hole of 21.4 mm cuts bar 2 in two: its pipe is 21.3 mm wide"):
        change_hole(tied(*HOLES), "port", 0, diameter=0.0214)
    with pytest.raises(EditError, match="diameter must be more than 0"):
        change_hole(tied(*HOLES), "port", 0, diameter=0.0)


def test_removing_leaves_the_others_and_no_hole_is_no_error():
    assert holes(remove_hole(tied(*HOLES), "port", 0)) == HOLES[1:]
    assert holes(remove_hole(remove_hole(tied(*HOLES), "port", 1), "port", 0)) == ()
    for edit in (remove_hole, lambda design, *where: change_hole(design, *where, face="-z")):
        with pytest.raises(EditError, match="port motor has no hole 3 any more"):
            edit(tied(*HOLES), "port", 2)


def test_inches_are_said_in_inches():
    with pytest.raises(EditError, match=r"pipe of bar 2 is 14 1/4 in long"):
        place_hole(edits.use_units(tied(*HOLES), "in"), "port", 0, 1.0)


def one_sided(design):
    """What the coach says of ties on one side."""
    return [f for f in review(design).findings if f.code == "thruster.tie-aside"]


@pytest.mark.parametrize(
    ("offset", "places", "told"),
    [
        (0.0, (-0.03, -0.012), "12 mm"),
        (0.0, (0.012, 0.03, 0.045), "12 mm"),
        (0.0, (-0.03, 0.001), ""),
        (0.02, (0.012, 0.03), ""),  # the motor sits 20 mm ahead of its foot, between them
        (0.02, (-0.03, 0.012), "8 mm"),  # both astern of it
        (0.0, (0.012,), ""),  # one alone is another matter
    ],
)
def test_ties_on_one_side_of_the_motor_let_it_swing_out(offset, places, told):
    """The port rail runs ahead, so that places along it count from the motor's foot as the offset does."""
    design = tied(*(HOLES[0].but(along=along) for along in places))
    for item in design.arrangement.thrusters:
        design = edits.set_field(design, edits.Ref("thruster", item.id), "offset", (offset, *item.offset[1:]))
    assert [told in f.message for f in one_sided(design)] == ([True] if told else [])


def test_a_motor_across_its_pipe_is_judged_alike_and_one_key_puts_it_right():
    design = tied(HOLES[0].but(along=0.02, face="+z"), HOLES[0].but(along=0.035, face="+z"))
    design = edits.set_field(design, edits.Ref("thruster", "port"), "to", "+z")
    (found,) = one_sided(design)
    assert found.severity == "should"
    remedy = proven_remedy(review(design), found)
    assert remedy is not None
    assert remedy.label == "Plan two holes for the ties of port motor"
    assert not one_sided(remedy.edit(design))
