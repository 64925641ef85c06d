"""Room round propellers, streams, mounts and depths against raw numbers, sampling and simple cases."""

from math import acos, pi, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial import cKDTree

from model.design import TieHole
from model.motion.attitude import hand_moment
from model.parts import Block, Cylinder
from model.survey import motion_of, survey
from model.thrust.depth import propeller_depths, share_above, waterline
from model.thrust.mounts import mount_plans
from model.thrust.nearest import gap
from model.thrust.stream import Jet, frontal
from model.vectors import ORIGIN
from tests import worked
from tests.model.thrust_cases import GOOD, port, starboard, swimmer, upright

numbers = st.floats(-0.2, 0.2).map(lambda x: round(x, 4))
points = st.tuples(numbers, numbers, numbers)
cylinders = st.builds(Cylinder, points, points, st.sampled_from((0.005, 0.02, 0.06))).filter(
    lambda c: sum((a - b) ** 2 for a, b in zip(c.start, c.end, strict=True)) > 1e-4
)
blocks = st.builds(Block, points, st.tuples(*[st.sampled_from((0.01, 0.05, 0.1))] * 3))


def surface(solid, count=40):
    """Points all over a solid's outside and inside."""
    if isinstance(solid, Block):
        grid = np.array(np.meshgrid(*[np.linspace(-0.5, 0.5, 15)] * 3)).reshape(3, -1).T
        return np.array(solid.centre) + grid * np.array(solid.size)
    a, b = np.array(solid.start), np.array(solid.end)
    axis = (b - a) / np.linalg.norm(b - a)
    side = np.cross(axis, [1, 0, 0] if abs(axis[0]) < 0.9 else [0, 1, 0])
    side /= np.linalg.norm(side)
    up = np.cross(axis, side)
    turns = np.linspace(0, 2 * pi, 36, endpoint=False)
    ring = np.outer(np.cos(turns), side) + np.outer(np.sin(turns), up)
    rings = [solid.radius * share * ring for share in (0, 0.5, 1)]
    return np.concatenate([a + t * (b - a) + one for t in np.linspace(0, 1, count) for one in rings])


@settings(max_examples=60, deadline=None)
@given(cylinders, st.one_of(cylinders, blocks))
def test_room_between_two_solids_is_that_of_points_spread_over_them(a, b):
    """The points bound it from above, and lie within a step of the true nearest pair."""
    spread = cKDTree(surface(a)).query(surface(b))[0].min()
    room = gap(a, b)
    assert room <= spread + 1e-5
    assert room >= spread - 0.02


@pytest.mark.parametrize("slope", [0.0, 0.0005, 0.003, 0.02])
def test_nearly_parallel_pipes_and_nearly_level_ends(slope):
    """Side by side: axes 30 mm apart at the near end, less 10 and 8 mm of radius.

    End to end, with 5 mm of room on the axis: the rim of 60 mm comes nearer by 60 mm of the slope.
    """
    flat = Cylinder((0.0, 0.0, 0.0), (0.3, 0.0, 0.0), 0.01)
    beside = Cylinder((0.0, 0.03, 0.0), (0.3, 0.03 + 0.3 * slope, 0.0), 0.008)
    assert gap(flat, beside) == pytest.approx(0.012, abs=2e-6 + 0.008 * slope**2)
    assert gap(beside, flat) == pytest.approx(0.012, abs=2e-6 + 0.008 * slope**2)
    wide = Cylinder((0.0, 0.0, 0.0), (0.3, 0.0, 0.0), 0.06)
    turn = sqrt(1 - slope**2)
    behind = Cylinder((0.305, 0.0, 0.0), (0.305 + 0.3 * turn, 0.3 * slope, 0.0), 0.06)
    assert gap(wide, behind) == pytest.approx(0.005 - 0.06 * slope, abs=2e-5)


def test_a_disc_beside_and_behind_a_pipe():
    """A disc of 50 mm: 20 mm before a pipe of 20 mm there are 10 mm; off its rim 30 mm there are 20 mm."""
    pipe = Cylinder((0.0, -1.0, 0.0), (0.0, 1.0, 0.0), 0.01)
    before = Cylinder((0.020, 0.0, 0.0), (0.030, 0.0, 0.0), 0.025)
    assert gap(before, pipe) == pytest.approx(0.010, abs=1e-6)
    above = Cylinder((-0.005, 0.0, 0.065), (0.005, 0.0, 0.065), 0.025)
    assert gap(above, pipe) == pytest.approx(0.030, abs=1e-6)
    assert gap(Cylinder((-0.005, 0.0, 0.0), (0.005, 0.0, 0.0), 0.025), pipe) == 0.0


def test_a_plate_that_fills_the_stream_far_behind_costs_all_that_the_rule_says():
    """There the water has twice its speed, so C_D S/A x 2^2/4 of the pull is lost: 1.1 S/A."""
    jet = Jet(ORIGIN, (1.0, 0.0, 0.0), 0.025)
    small = Block((0.14, 0.0, 0.0), (0.002, 0.01, 0.01))
    assert jet.lost(small) == pytest.approx(1.1 * 0.01**2 / (pi * 0.025**2), rel=0.05)
    assert jet.lost(Block((0.0, 0.0, 0.0), (0.002, 0.01, 0.01))) == pytest.approx(
        1.1 * 0.01**2 / (pi * 0.025**2) / 4, rel=0.05
    )


def test_what_stands_beside_or_out_of_reach_costs_nothing():
    jet = Jet(ORIGIN, (1.0, 0.0, 0.0), 0.025)
    for place in ((0.05, 0.06, 0.0), (0.3, 0.0, 0.0), (-0.2, 0.0, 0.0)):
        assert jet.lost(Block(place, (0.01, 0.01, 0.01))) == 0.0


def test_speed_in_the_stream_is_that_of_an_actuator_disc():
    """Half the final speed at the disc, 1 + x/sqrt(x^2 + R^2) of it behind; nothing far before."""
    jet = Jet(ORIGIN, (1.0, 0.0, 0.0), 0.025)
    assert jet.speed(0.0) == 1.0
    assert jet.speed(0.025) == pytest.approx(1 + 1 / sqrt(2))
    assert jet.speed(10.0) == pytest.approx(2.0, abs=1e-4)
    assert jet.speed(-10.0) == pytest.approx(0.0, abs=1e-4)


@pytest.mark.parametrize("angle", [0.0, 0.4, 1.0, pi / 2])
def test_frontal_area_of_a_cylinder(angle):
    along = (np.cos(angle), np.sin(angle), 0.0)
    pipe = Cylinder((0.0, 0.0, 0.0), (0.3, 0.0, 0.0), 0.01)
    expected = 2 * 0.01 * 0.3 * np.sin(angle) + pi * 0.01**2 * np.cos(angle)
    assert frontal(pipe, along) == pytest.approx(expected)


def test_where_the_holes_for_the_ties_go():
    """Motor of 60 mm along its rail of 400 mm, in the middle: holes 200 -+ 18 mm from the joint.

    The sawn end lies 31.75 - 12.7 = 19.05 mm from the joint's centre.
    """
    plan = plans(swimmer(port(mount="ties", offset=(0, 0.06, 0)), starboard()))["port"]
    assert not plan.planned
    assert [hole.from_end * 1000 for hole in plan.holes] == pytest.approx(
        [200 - 18 - 19.05, 200 + 18 - 19.05]
    )
    assert {hole.face for hole in plan.holes} == {"+z"}
    assert all(hole.diameter == 0.006 for hole in plan.holes)
    assert plan.gap * 1000 == pytest.approx(60 - 15 - 21.336 / 2)
    assert any("cable tie" in words and count == 2 for count, words in plan.parts)
    assert any("block 34.3 mm" in words for _, words in plan.parts)


def test_an_upright_motor_on_a_level_rail_is_held_by_two_crossed_ties():
    """One tie on each side of its body of 30 mm: 15 + 4.8 mm from the middle."""
    plan = plans(swimmer(upright(mount="ties", offset=(0, 0.06, 0))))["lift"]
    middle = 200 - 19.05
    assert [hole.from_end * 1000 for hole in plan.holes] == pytest.approx([middle - 19.8, middle + 19.8])
    assert {hole.face for hole in plan.holes} == {"+z"}


def test_the_teams_own_holes_go_before_the_proposed_ones():
    own = (TieHole(along=-0.03, face="-z", diameter=0.005),)
    plan = plans(swimmer(port(mount="ties", tie_holes=own), starboard()))["port"]
    assert plan.planned
    assert [(hole.face, hole.diameter) for hole in plan.holes] == [("-z", 0.005)]
    assert plan.holes[0].from_end * 1000 == pytest.approx(200 - 30 - 19.05)


def test_a_hand_and_a_drill_need_room():
    free = plans(swimmer(port(mount="ties"), starboard()))["port"].holes
    assert all(hole.hand and hole.tool for hole in free)
    low = worked.box(0.4, 0.3, 0.09, thrusters=(port(mount="ties", offset=(0, 0.06, 0)),))
    tight = plans(worked.design(low, supplies=GOOD.supplies))["port"].holes
    assert all(hole.hand and not hole.tool for hole in tight)  # the top rail is 90 - 21.3 mm above


def test_a_mount_at_a_corner_sits_on_the_hub():
    assert plans(swimmer(port(at=0.095), starboard()))["port"].hub is None  # from 38 - 6 mm
    assert plans(swimmer(port(at=0.07), starboard()))["port"].hub is not None


def plans(design):
    """The mount plans by thruster."""
    found = survey(design)
    made = mount_plans(design, found.arrangement, found.frame, found.parts)
    return {plan.thruster: plan for plan in made}


@pytest.mark.parametrize("height", [-0.9, -0.3, 0.0, 0.5, 0.95])
def test_the_part_of_a_level_cylinder_above_the_water(height):
    """The segment of a circle, handbook: (acos h - h sqrt(1 - h^2))/pi."""
    rod = Cylinder((0.0, 0.0, 0.0), (0.3, 0.0, 0.0), 0.02)
    expected = (acos(height) - height * sqrt(1 - height**2)) / pi
    assert share_above(rod, 0.02 * height, rod.box) == pytest.approx(expected)


def test_the_waterline_holds_as_much_above_as_it_floats_with():
    found = survey(GOOD)
    level = waterline(found.parts, found.balance)
    out = sum(
        part.volume * np.mean([share_above(solid, level, solid.box) for solid in part.solids])
        for part in found.parts
        if part.kind in ("float", "bar", "thruster", "ballast") and part.solids
    )
    assert out * found.balance.density == pytest.approx(found.balance.spare, rel=0.05)
    depths = propeller_depths(found.parts, found.balance)
    assert depths["port"] == pytest.approx(level - (0.0 + 0.025), abs=1e-6)  # half way up, 25 mm of propeller


def test_a_vehicle_that_sinks_has_no_waterline():
    found = survey(swimmer(port(), starboard(), floats=()))
    assert waterline(found.parts, found.balance) is None
    assert propeller_depths(found.parts, found.balance) == {}


def test_two_hands_cancel_and_one_hand_rolls():
    """Torque 0.115 T D each: two right-handed of 3 N and 50 mm leave 34.5 mN m, port side down."""
    bare = {"power": None}
    alike = motion_of(survey(swimmer(port(hand="right"), starboard(), **bare))).body
    assert hand_moment(alike) == pytest.approx(-2 * 0.115 * 3.0 * 0.05)
    assert hand_moment(motion_of(survey(swimmer(port(), starboard(), **bare))).body) == pytest.approx(0.0)
    unknown = motion_of(survey(swimmer(port(hand=None), starboard(), **bare))).body
    assert hand_moment(unknown) is None
